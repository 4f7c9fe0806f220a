"""Sobol indices, quantiles and normal quantiles: scipy.stats.sobol_indices and norm, numpy.quantile; variance in closed form."""

import numpy as np
from scipy.stats import norm, sobol_indices, uniform

from table import fixture, table


def ishigami(x):
    return np.sin(x[0]) + 7.0 * np.sin(x[1]) ** 2 + 0.1 * x[2] ** 4 * np.sin(x[0])


def compute():
    side = uniform(loc=-np.pi, scale=2.0 * np.pi)
    found = sobol_indices(func=ishigami, n=2 ** 16, dists=[side] * 3, rng=np.random.default_rng(1))
    shares = [[k, float(found.first_order[k]), float(found.total_order[k])] for k in range(3)]
    # Closed form of a linear function of independent normal numbers: shares go by the squares of coefficient times deviation.
    slopes = np.array([1.0, -2.0, 0.5, 3.0])
    linear = [[k, float(s), float(s * s / np.sum(slopes ** 2))] for k, s in enumerate(slopes)]
    rows = []
    figures = [3.0, -1.0, 4.0, 1.5, 9.25, 2.5, -6.0, 5.0, 3.5, 8.0, 0.0]
    for count in (1, 2, 5, 11):
        for share in (0.0, 0.05, 0.1, 0.5, 0.9, 0.95, 1.0):
            rows.append([count, share, float(np.quantile(figures[:count], share))])
    normal = [[p, float(norm.ppf(p))] for p in
              (1e-300, 1e-20, 1e-8, 1e-4, 0.01, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 0.9999, 1.0 - 1e-10)]
    return fixture(["numpy", "scipy"], "scipy.stats.sobol_indices of the Ishigami function (7, 0.1), 2^16 points; numpy.quantile; norm.ppf",
                   ishigami=table(["input", "first", "total"], shares),
                   linear=table(["input", "slope", "share"], linear),
                   figures=figures,
                   quantiles=table(["count", "share", "value"], rows),
                   normal=table(["share", "z"], normal))
