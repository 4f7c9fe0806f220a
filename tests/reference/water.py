"""Liquid water at one atmosphere: CoolProp (IAPWS-95) and iapws (IAPWS-IF97)."""

import numpy as np
from CoolProp.CoolProp import PropsSI
from iapws import IAPWS97

from table import fixture, table

PRESSURE_PA = 101325.0


def compute():
    coolprop, if97 = [], []
    for t_c in np.arange(0.5, 95.01, 0.5):
        kelvin = t_c + 273.15
        coolprop.append([t_c, *(PropsSI(x, "T", kelvin, "P", PRESSURE_PA, "Water") for x in "DCL")])
        state = IAPWS97(T=kelvin, P=PRESSURE_PA / 1e6)
        if97.append([t_c, state.rho, state.cp * 1000.0, state.k])
    columns = ["t_c", "density_kg_per_m3", "specific_heat_j_per_kg_k", "conductivity_w_per_m_k"]
    return fixture(
        ["CoolProp", "iapws"],
        "PropsSI('D' | 'C' | 'L', 'T', t, 'P', 101325, 'Water'); IAPWS97(T=t, P=0.101325).rho, .cp, .k",
        coolprop=table(columns, coolprop),
        if97=table(columns, if97),
    )
