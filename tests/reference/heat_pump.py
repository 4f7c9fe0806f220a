"""The heat pump's map, solved another way: psychrolib states of the wet coil, scipy's bracketed root.

The relations are those of the simulation (a machine of capacity straight in both refrigerant temperatures and
a share of Carnot's efficiency over a lift widened by a constant); what is checked is that the simulation's
iteration finds where coil and compressor agree, and that its balances close.
"""

import json
import pathlib
from dataclasses import dataclass

import numpy as np
import psychrolib
from scipy.optimize import brentq

from table import fixture, table
from wet_coil import LIQUID_J_PER_KG_K


@dataclass
class Air:
    """Inlet air of a coil."""

    t: float
    w: float
    p: float

    @classmethod
    def at(cls, t, rh, p):
        return cls(t, psychrolib.GetHumRatioFromRelHum(t, rh, p), p)


@dataclass
class Running:
    """One state of the machine: W, W, °C, kg/s and W."""

    heat: float
    compressor: float
    evaporating: float
    condensate: float
    sensible: float


def coil(q, air, surface_c):
    """Heat to the coil, W; condensate, kg/s; of which sensible, W."""
    flow = q["air_m3_per_s"] / psychrolib.GetMoistAirVolume(air.t, air.w, air.p) * (1.0 - q["bypass_factor"])
    w = min(air.w, psychrolib.GetHumRatioFromRelHum(surface_c, 1.0, air.p))
    h_in, h_out = psychrolib.GetMoistAirEnthalpy(air.t, air.w), psychrolib.GetMoistAirEnthalpy(surface_c, w)
    condensate = flow * (air.w - w)
    heat = flow * (h_in - h_out) - condensate * LIQUID_J_PER_KG_K * surface_c
    latent = condensate * (2.501e6 + 1860.0 * air.t - LIQUID_J_PER_KG_K * surface_c)
    return heat, condensate, heat - latent


def compressor(q, evaporating, condensing):
    """Heat to the water and compressor power, W, before defrosting."""
    output = q["output_w"]
    output *= max(0.1, 1.0 + q["output_per_evaporating_k"] * (evaporating - q["rated_evaporating_c"]))
    output *= max(0.3, 1.0 - q["output_per_condensing_k"] * (condensing - q["rated_condensing_c"]))
    carnot = (condensing + 273.15) / (condensing - evaporating + q["internal_lift_k"])
    flashed = 1.0 - q["throttling_per_k"] * (condensing - q["rated_condensing_c"])
    return output, output / (q["effectiveness"] * flashed * carnot)


def run(q, air, condensing):
    """Where coil and compressor agree, then what frost takes."""

    def surplus(evaporating):
        output, work = compressor(q, evaporating, condensing)
        return coil(q, air, evaporating + q["coil_approach_k"])[0] - (output - work)

    evaporating = brentq(surplus, -40.0, air.t - q["coil_approach_k"] - 1e-6, xtol=1e-10)
    surface = evaporating + q["coil_approach_k"]
    output, work = compressor(q, evaporating, condensing)
    if evaporating > condensing - q["least_lift_k"]:
        # The valve starves the coil: its surface is as warm as the compressor's demand leaves it.
        evaporating = condensing - q["least_lift_k"]
        output, work = compressor(q, evaporating, condensing)
        surface = brentq(lambda s: coil(q, air, s)[0] - (output - work), -40.0, air.t, xtol=1e-10)
    _, condensate, sensible = coil(q, air, surface)
    below = -(evaporating + q["coil_approach_k"])
    frost = q["defrost_share"] * min(1.0, max(0.0, below / q["defrost_full_below_k"]))
    heat = output * (1.0 - frost)
    kept = (heat - work) / (output - work)
    return Running(heat, work, evaporating, condensate * kept, sensible * kept)


def load():
    """Parameters of the machine; sets psychrolib to SI."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    path = pathlib.Path(__file__).parent / "heat_pump_parameters.json"
    return json.loads(path.read_text(encoding="utf-8"))


def compute():
    q = load()
    rows = []
    for t in (4.0, 10.0, 18.0, 30.0, 45.0):
        for rh in (0.3, 0.55, 0.9):
            air = Air.at(t, rh, q["air_pressure_pa"])
            for condensing in np.arange(20.0, 71.0, 10.0):
                r = run(q, air, condensing)
                rows.append([t, rh, air.w, condensing, r.heat, r.compressor, r.evaporating, r.condensate, r.sensible])
    columns = ["air_c", "relative_humidity", "humidity_ratio", "condensing_c", "heat_w", "compressor_w",
               "evaporating_c", "condensate_kg_per_s", "sensible_w"]
    return fixture(
        ["PsychroLib", "scipy"],
        "scipy.optimize.brentq of coil heat (psychrolib states) less compressor demand; tests/reference/heat_pump.py",
        parameters=q,
        map=table(columns, rows),
    )
