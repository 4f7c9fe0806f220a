"""Moist air: psychrolib (the same ideal-gas relations, iterated to 1e-9 K) and CoolProp's HAPropsSI (a real mixture)."""

import psychrolib
from CoolProp.CoolProp import HAPropsSI

from table import fixture, table

ELEVATIONS_M = [0.0, 750.0, 1500.0, 2500.0]
TEMPERATURES_C = [-10.0, -5.0, -1.0, 0.5, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0]
HUMIDITIES = [0.05, 0.15, 0.3, 0.45, 0.5, 0.6, 0.75, 0.9, 0.95]


def compute():
    psychrolib.SetUnitSystem(psychrolib.SI)
    # Its own iterations (dew point, wet bulb) stop at 1e-3 K by default: too coarse to compare with.
    psychrolib.PSYCHROLIB_TOLERANCE = 1e-9
    ideal, real = [], []
    for elevation in ELEVATIONS_M:
        pressure = psychrolib.GetStandardAtmPressure(elevation)
        for t in TEMPERATURES_C:
            for rh in HUMIDITIES:
                w = psychrolib.GetHumRatioFromRelHum(t, rh, pressure)
                ideal.append([
                    elevation, pressure, t, rh, w,
                    psychrolib.GetTDewPointFromHumRatio(t, w, pressure),
                    psychrolib.GetTWetBulbFromHumRatio(t, w, pressure),
                    psychrolib.GetMoistAirEnthalpy(t, w),
                    psychrolib.GetMoistAirVolume(t, w, pressure),
                    psychrolib.GetMoistAirDensity(t, w, pressure),
                ])
                given = ("T", t + 273.15, "R", rh, "P", pressure)
                # Enthalpy above dry air at 0 °C and the same pressure, as the ideal relations count it.
                zero = HAPropsSI("H", "T", 273.15, "W", 0.0, "P", pressure)
                real.append([
                    elevation, pressure, t, rh,
                    HAPropsSI("W", *given),
                    HAPropsSI("D", *given) - 273.15,
                    HAPropsSI("B", *given) - 273.15,
                    HAPropsSI("H", *given) - zero,
                    HAPropsSI("V", *given),
                ])
    saturation = [[t / 2, psychrolib.GetSatVapPres(t / 2)] for t in range(-120, 191)]
    columns = ["elevation_m", "pressure_pa", "t_c", "relative_humidity", "humidity_ratio", "dew_point_c",
               "wet_bulb_c", "enthalpy_j_per_kg", "volume_m3_per_kg"]
    return fixture(
        ["PsychroLib", "CoolProp"],
        "psychrolib Get… from (t, rh, GetStandardAtmPressure(elevation)); HAPropsSI(…, 'T', t, 'R', rh, 'P', p), "
        "H less that of dry air at 0 °C; volume and enthalpy per kg of dry air",
        psychrolib=table([*columns, "density_kg_per_m3"], ideal),
        coolprop=table(columns, real),
        saturation=table(["t_c", "pressure_pa"], saturation),
    )
