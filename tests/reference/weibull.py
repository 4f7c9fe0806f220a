"""Weibull survival and conditional failure: scipy.stats.weibull_min."""

from scipy.stats import weibull_min

from table import fixture, table


def compute():
    rows = []
    for shape in (1.0, 2.0, 3.0, 4.5, 6.0):
        for scale in (8.0, 12.0, 15.0, 20.0):
            life = weibull_min(shape, scale=scale)
            for age in (0.0, 1.0, 5.0, 10.0, 15.0, 20.0, 25.0):
                survival = life.sf(age)
                if survival < 1e-12:
                    continue
                within = [1.0 - life.sf(age + years) / survival for years in (1.0, 5.0)]
                rows.append([shape, scale, age, survival, *within, life.isf(0.5 * survival) - age, life.mean()])
    columns = ["shape", "scale_years", "age_years", "survival", "failure_within_1_year", "failure_within_5_years",
               "median_years_left", "mean_life_years"]
    return fixture(["scipy"], "weibull_min(shape, scale=scale).sf, .isf, .mean", life=table(columns, rows))
