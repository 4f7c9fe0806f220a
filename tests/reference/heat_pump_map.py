"""The band of a real-fluid heat pump over room and water temperature by CoolProp: the least and the most that its
coefficient of performance can be with real compressors and plausible approaches."""

from CoolProp.CoolProp import PropsSI

from refrigeration_cycle import SUBCOOLING_K, SUPERHEAT_K, cycle
from table import fixture, table

# Isentropic efficiencies of small hermetic compressors, the poorest with the widest approaches.
POOR, GOOD = 0.50, 0.75
# The refrigerant evaporates so far below the room's air: that is cooled by 3 to 10 K (published: 5 to 18 F), and the
# coil is some kelvins colder than what leaves it. In a room of 20 C it condenses so far above the water, elsewhere in
# proportion to the vapour's density: the compressor swallows the same volume, so that the condenser passes more heat
# in a warm room, up to the valve's highest operating pressure. Common practice, no source.
EVAPORATING_K = (18.0, 6.0)
CONDENSING_K = (18.0, 2.0)
RATED_ROOM_C = 20.0
MOST_HEAT = 1.5
# The least pressure ratio at which the expansion passes the refrigerant's flow: with cold water in a warm room the coil
# is starved until there is as much, at 1.5 by a good electronic valve, at 2.5 by a capillary sized for hot water.
# Without that the poorest cycle would give 18 there, which no machine does. Common practice, no source.
LEAST_PRESSURE_RATIO = (2.5, 1.5)
ROOMS_C = range(4, 41, 4)
WATERS_C = range(5, 61, 5)


def cop(fluid, room_c, water_c, efficiency, evaporating_k, condensing_k, least_ratio):
    def density(evaporating_c):
        return PropsSI("D", "T", evaporating_c + 273.15, "Q", 1, fluid)

    more_heat = min(MOST_HEAT, density(room_c - evaporating_k) / density(RATED_ROOM_C - evaporating_k))
    condensing_c = water_c + condensing_k * more_heat
    high = PropsSI("P", "T", condensing_c + 273.15, "Q", 0, fluid)
    starved_c = PropsSI("T", "P", high / least_ratio, "Q", 1, fluid) - 273.15
    evaporating_c = min(room_c - evaporating_k, starved_c)
    suction, isentropic, liquid, _ = cycle(fluid, evaporating_c, condensing_c)
    work = (isentropic - suction) / efficiency
    return (suction + work - liquid) / work


def band(fluid, rooms_c, waters_c):
    rows = [[room, water,
             cop(fluid, room, water, POOR, EVAPORATING_K[0], CONDENSING_K[0], LEAST_PRESSURE_RATIO[0]),
             cop(fluid, room, water, GOOD, EVAPORATING_K[1], CONDENSING_K[1], LEAST_PRESSURE_RATIO[1])]
            for room in rooms_c for water in waters_c]
    return table(["room_c", "water_c", "least_cop", "most_cop"], rows)


def compute():
    return fixture(
        ["CoolProp"],
        "heating COP of the compressor (condenser heat over compressor work, no fan): least with isentropic efficiency "
        "0.50, evaporating 18 K below the room and condensing 18 K above the water in a room of 20 C, else in "
        "proportion to the vapour's density up to half more, pressure ratio at least 2.5; most with 0.75, 6 K, 2 K and 1.5; superheat and "
        "subcooling 5 K, no pressure drop",
        superheat_k=SUPERHEAT_K,
        subcooling_k=SUBCOOLING_K,
        r134a=band("R134a", ROOMS_C, WATERS_C),
        r513a=band("R513A.mix", (4, 12, 20, 32, 40), (5, 20, 35, 50, 60)),
    )
