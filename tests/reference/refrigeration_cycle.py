"""Vapour-compression cycle of a real fluid by CoolProp: what a second-law effectiveness must lie between."""

from CoolProp.CoolProp import PropsSI

from table import fixture, table

SUPERHEAT_K = 5.0
SUBCOOLING_K = 5.0
EFFICIENCIES = [0.5, 0.65, 0.75]


def cycle(fluid, evaporating_c, condensing_c):
    """Enthalpies, J/kg: suction, after isentropic compression, and after the condenser; pressure ratio."""
    evaporating, condensing = evaporating_c + 273.15, condensing_c + 273.15
    low, high = PropsSI("P", "T", evaporating, "Q", 1, fluid), PropsSI("P", "T", condensing, "Q", 0, fluid)
    suction = PropsSI("H", "T", evaporating + SUPERHEAT_K, "P", low, fluid)
    entropy = PropsSI("S", "T", evaporating + SUPERHEAT_K, "P", low, fluid)
    discharge = PropsSI("H", "S", entropy, "P", high, fluid)
    liquid = PropsSI("H", "T", condensing - SUBCOOLING_K, "P", high, fluid)
    return suction, discharge, liquid, high / low


def grid(fluid, evaporating, condensing):
    rows = []
    for te in evaporating:
        for tc in condensing:
            suction, isentropic, liquid, ratio = cycle(fluid, te, tc)
            carnot = (tc + 273.15) / (tc - te)
            cops = []
            for efficiency in EFFICIENCIES:
                work = (isentropic - suction) / efficiency
                cops.append((suction + work - liquid) / work)
            rows.append([te, tc, ratio, carnot, *cops])
    columns = ["evaporating_c", "condensing_c", "pressure_ratio", "carnot_cop",
               *(f"heating_cop_at_{round(100 * e)}" for e in EFFICIENCIES)]
    return table(columns, rows)


def compute():
    return fixture(
        ["CoolProp"],
        "heating COP (condenser heat over compressor work); superheat 5 K, subcooling 5 K, isentropic efficiency 0.50, "
        "0.65, 0.75, no pressure drop, no fan; R513A.mix: evaporating by its dew, condensing by its bubble temperature",
        isentropic_efficiencies=EFFICIENCIES,
        r134a=grid("R134a", range(-10, 21, 5), range(35, 71, 5)),
        r513a=grid("R513A.mix", range(-10, 21, 10), (35, 50, 60, 70)),
    )
