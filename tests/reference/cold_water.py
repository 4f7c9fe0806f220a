"""Building America mains temperature and daily hot-water use, written out in numpy as printed."""

import numpy as np

from table import fixture, table

# Annual mean and spread of the monthly means of outdoor air, °F: invented pairs within the fit's own range
# (means of about 40 to 77 °F: colder ones need bounds that the relation does not have).
PLACES_F = [(40.5, 58.0), (44.0, 50.0), (50.0, 45.0), (56.5, 41.0), (63.0, 30.0), (72.0, 18.0), (77.0, 8.0)]
DAYS = [1, 15, 32, 60, 91, 121, 152, 182, 200, 213, 244, 274, 305, 335, 365]


def mains_f(mean, spread, day):
    ratio = 0.4 + 0.01 * (mean - 44.0)
    lag = 35.0 - 1.0 * (mean - 44.0)
    return mean + 6.0 + ratio * (spread / 2.0) * np.sin(np.deg2rad(0.986 * (day - 15.0 - lag) - 90.0))


def compute():
    mains = [[m, s, d, (mains_f(m, s, d) - 32.0) / 1.8] for m, s in PLACES_F for d in DAYS]
    use = []
    for n in range(0, 8):
        people = 0.59 * n + 0.87
        mixed = [14.0 + 4.67 * n, 3.5 + 1.17 * n, 12.5 + 4.16 * n]
        hot = [2.35 + 0.78 * n, 2.26 + 0.75 * n]
        use.append([n, people, *mixed, *hot])
    return fixture(
        ["numpy"],
        "Building America House Simulation Protocols, mains temperature and daily use per bedroom (relations from "
        "memory, as listed in the README)",
        mains=table(["annual_mean_f", "monthly_spread_f", "day", "mains_c"], mains),
        daily_use_gallons=table(["bedrooms", "people", "showers", "baths", "sinks", "clothes_washer", "dishwasher"], use),
    )
