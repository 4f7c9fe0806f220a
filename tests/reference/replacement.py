"""The best moment to replace a heater that ages: the cost of waiting by quadrature, its lowest by a minimiser."""

import numpy as np
from scipy.integrate import quad
from scipy.optimize import minimize_scalar
from scipy.stats import weibull_min

from table import fixture, table

# Beyond, nobody plans.
LONGEST = 20.0


def waiting(life, age, keep, planned, emergency, rate):
    """Expected discounted cost of keeping up to `years` more against replacing now: running, and a failure."""
    alive = life.sf(age)
    worth = lambda t: (1.0 + rate) ** -t

    def cost(years):
        rate_of_cost = lambda t: worth(t) * ((keep - planned) * life.sf(age + t) + emergency * life.pdf(age + t)) / alive
        return quad(rate_of_cost, 0.0, years, epsabs=1e-11, epsrel=1e-12, limit=200)[0]

    return cost


def compute():
    rows = []
    # Invented costs.
    for shape, scale in ((2.0, 14.0), (3.0, 14.0), (3.0, 10.5), (4.5, 18.0)):
        life = weibull_min(shape, scale=scale)
        for age in (2.0, 8.0, 13.0, 20.0):
            for keep, planned, emergency, rate in (
                (400.0, 520.0, 1500.0, 0.02),
                (400.0, 450.0, 4000.0, 0.0),
                (300.0, 620.0, 800.0, 0.05),
                (600.0, 480.0, 900.0, 0.02),
            ):
                cost = waiting(life, age, keep, planned, emergency, rate)
                # One lowest point only, for the hazard rises: the nearest of a grid, then its neighbourhood.
                grid = np.linspace(0.0, LONGEST, 21)
                lowest = int(np.argmin([cost(t) for t in grid]))
                low, high = grid[max(lowest - 1, 0)], grid[min(lowest + 1, len(grid) - 1)]
                best = minimize_scalar(cost, bounds=(low, high), method="bounded", options={"xatol": 1e-7}).x
                if cost(0.0) <= cost(best):
                    best = 0.0
                # The minimiser's own last digits are noise: its target is flat there.
                rows.append([shape, scale, age, keep, planned, emergency, rate, round(best, 3), cost(5.0)])
    columns = ["shape", "scale_years", "age_years", "keep", "planned", "emergency", "rate", "best_years", "waiting_5_years"]
    return fixture(["numpy", "scipy"], "cost of waiting by scipy.integrate.quad over weibull_min, its lowest by "
                   "scipy.optimize.minimize_scalar; costs are invented", choices=table(columns, rows))
