"""Wet coil by the bypass-factor method, its states in and out by psychrolib and by HAPropsSI."""

import psychrolib
from CoolProp.CoolProp import HAPropsSI

from table import fixture, table

FLOW_KG_PER_S = 0.12
LIQUID_J_PER_KG_K = 4186.0


def bypass(t, w, h, adp_t, adp_w, adp_h, factor):
    """Outlet humidity, condensate and heat to the coil: a balance over inlet, outlet and condensate."""
    w_out = factor * w + (1 - factor) * adp_w
    h_out = factor * h + (1 - factor) * adp_h
    condensate = FLOW_KG_PER_S * (w - w_out)
    heat = FLOW_KG_PER_S * (h - h_out) - condensate * LIQUID_J_PER_KG_K * adp_t
    return w_out, h_out, condensate, heat


def compute():
    psychrolib.SetUnitSystem(psychrolib.SI)
    ideal, real = [], []
    for elevation in (0.0, 1500.0, 2500.0):
        p = psychrolib.GetStandardAtmPressure(elevation)
        for t in (2.0, 8.0, 15.0, 19.7, 27.0, 35.0, 45.0):
            for rh in (0.2, 0.4, 0.5, 0.6, 0.8, 0.95):
                for depth in (4.0, 8.0, 14.0, 20.0):
                    for factor in (0.05, 0.2, 0.4):
                        adp = t - depth
                        w = psychrolib.GetHumRatioFromRelHum(t, rh, p)
                        adp_w = min(w, psychrolib.GetHumRatioFromRelHum(adp, 1.0, p))
                        h, adp_h = psychrolib.GetMoistAirEnthalpy(t, w), psychrolib.GetMoistAirEnthalpy(adp, adp_w)
                        w_out, h_out, condensate, heat = bypass(t, w, h, adp, adp_w, adp_h, factor)
                        t_out = psychrolib.GetTDryBulbFromEnthalpyAndHumRatio(h_out, w_out)
                        state = [p, t, rh, adp, factor]
                        ideal.append([*state, w, t_out, w_out, condensate, heat])
                        # The real mixture's enthalpy below 0 °C counts condensate as ice: keep to liquid.
                        if factor == 0.2 and adp > 0.5:
                            given = ("T", t + 273.15, "R", rh, "P", p)
                            w, h = HAPropsSI("W", *given), HAPropsSI("H", *given)
                            wet = HAPropsSI("W", "T", adp + 273.15, "R", 1.0, "P", p)
                            adp_w = min(w, wet)
                            adp_h = HAPropsSI("H", "T", adp + 273.15, "W", adp_w * (1 - 1e-9), "P", p)
                            w_out, _, condensate, heat = bypass(t, w, h, adp, adp_w, adp_h, factor)
                            real.append([*state, w, w_out, condensate, heat])
    state = ["pressure_pa", "t_c", "relative_humidity", "apparatus_c", "bypass_factor", "humidity_ratio"]
    return fixture(
        ["PsychroLib", "CoolProp"],
        "bypass-factor mixture of inlet air and saturated air at the apparatus temperature, each state by the library",
        dry_air_kg_per_s=FLOW_KG_PER_S,
        psychrolib=table([*state, "t_out_c", "w_out", "condensate_kg_per_s", "heat_w"], ideal),
        coolprop=table([*state, "w_out", "condensate_kg_per_s", "heat_w"], real),
    )
