"""Net present value, rate of return and discounted payback: numpy-financial."""

import numpy as np
import numpy_financial as npf

from table import fixture, number

# Invented: first the extra price, then yearly savings (one with a repair, one growing, one that never pays).
CASES = {
    "level": [-2300.0] + [310.0] * 12,
    "growing": [-1850.0] + [240.0 * 1.025**year for year in range(15)],
    "repair in year 7": [-1200.0] + [190.0] * 6 + [-260.0] + [190.0] * 6,
    "never": [-3000.0] + [120.0] * 10,
}
RATES = [0.0, 0.02, 0.035, 0.05, 0.08]


def payback_years(flows, rate):
    """When the discounted sum first reaches zero, straight within the year; None when it does not."""
    total = flows[0]
    for year in range(1, len(flows)):
        step = npf.npv(rate, [0.0] * year + [flows[year]])
        if total < 0.0 <= total + step:
            return number(year - 1 - total / step)
        total += step
    return None


def compute():
    cases = []
    for name, flows in CASES.items():
        values = [{"rate": r, "present_value": number(npf.npv(r, flows)), "payback_years": payback_years(flows, r)}
                  for r in RATES]
        cases.append({"name": name, "flows": [number(x) for x in flows], "rate_of_return": number(npf.irr(flows)),
                      "at": values})
    # A level payment that repays 1 over n years, and the worth now of 1 a year that grows.
    annuity = [[r, n, number(-npf.pmt(r, n, 1.0))] for r in RATES for n in (1, 5, 12, 20, 40)]
    growing = [[r, g, n, number(sum(npf.npv(r, np.r_[np.zeros(y), (1 + g) ** y]) for y in range(1, n + 1)))]
               for r in RATES for g in (-0.01, 0.0, 0.03) for n in (1, 12, 40)]
    return fixture(
        ["numpy-financial"],
        "npv(rate, flows) with the first flow now and the others at each year's end; irr(flows); pmt; payback from npv",
        cases=cases,
        annuity={"columns": ["rate", "years", "yearly_payment"], "rows": annuity},
        growing={"columns": ["rate", "growth", "years", "present_value_of_growth_to_the_power_of_the_year"], "rows": growing},
    )
