"""Weibull survival, conditional failure and years left: scipy.stats.weibull_min."""

import numpy as np
from scipy.integrate import quad
from scipy.stats import weibull_min

from table import fixture, table


def compute():
    rows = []
    for shape in (1.0, 2.0, 3.0, 4.5, 6.0):
        for scale in (8.0, 12.0, 14.0, 20.0):
            life = weibull_min(shape, scale=scale)
            for age in (0.0, 1.0, 5.0, 10.0, 15.0, 20.0, 25.0):
                survival = life.sf(age)
                if survival < 1e-12:
                    continue
                within = [1.0 - life.sf(age + years) / survival for years in (1.0, 3.0, 5.0)]
                left, _ = quad(lambda t: np.exp((age / scale) ** shape - ((age + t) / scale) ** shape), 0.0, np.inf,
                               epsabs=1e-12, epsrel=1e-12)
                # What a share of those alive at an age has failed by: the quantile of the whole life, less the age.
                shares = [life.isf(survival * (1.0 - share)) - age for share in (0.1, 0.5, 0.9)]
                rows.append([shape, scale, age, survival, *within, left, *shares, life.mean()])
    columns = ["shape", "scale_years", "age_years", "survival", "failure_within_1_year", "failure_within_3_years",
               "failure_within_5_years", "mean_years_left", "years_left_of_a_tenth", "years_left_of_half",
               "years_left_of_nine_tenths", "mean_life_years"]
    return fixture(["scipy"], "weibull_min(shape, scale=scale).sf, .isf, .mean; mean years left by scipy.integrate.quad",
                   life=table(columns, rows))
