"""Single processes in a tank, one at a time: standby decay, conduction, plug flow with a stirred inlet."""

import json
import pathlib

import numpy as np
from scipy.integrate import solve_ivp

from table import fixture, number, table
from tank import conduction_matrix

LAYERS, FINE = 12, 192
HOURS = [1.0, 3.0, 8.0, 24.0, 72.0]


def integrate(p, layers, start, hours):
    """Layer temperatures after the hours, by an implicit solver of the layers' own equations."""
    matrix = conduction_matrix(p, layers)
    solution = solve_ivp(lambda _, x: matrix @ x, (0.0, hours[-1] * 3600.0), np.asarray(start) - p["room_c"],
                         method="Radau", jac=matrix, t_eval=[h * 3600.0 for h in hours], rtol=1e-10, atol=1e-10)
    assert solution.success, solution.message
    return solution.y.T + p["room_c"]


def step_profile(layers, cold, hot):
    """Cold below half height, hot above."""
    return [cold if i < layers // 2 else hot for i in range(layers)]


def compute():
    p = json.loads((pathlib.Path(__file__).parent / "tank_parameters.json").read_text(encoding="utf-8"))
    cold, hot = p["inlet_c"], p["start_c"]
    decay = [[h, x[0]] for h, x in zip(HOURS, integrate(p, LAYERS, [hot] * LAYERS, HOURS))]
    same = integrate(p, LAYERS, step_profile(LAYERS, cold, hot), HOURS)
    fine = integrate(p, FINE, step_profile(FINE, cold, hot), HOURS)
    fine = fine.reshape(len(HOURS), LAYERS, FINE // LAYERS).mean(axis=2)
    layer_columns = ["hours", *(f"layer_{i}_c" for i in range(LAYERS))]
    # Plug flow behind a stirred zone z of the volume V: the zone's water leaves it as an exponential of the
    # volume fed, and reaches the outlet V − z later. solve_ivp of the zone's own equation.
    plug = []
    for share in (0.04, 0.1, 0.25):
        zone = share * p["volume_m3"]
        ahead = p["volume_m3"] - zone
        drawn = np.linspace(0.0, 1.4 * p["volume_m3"], 57)
        fed = drawn[drawn > ahead] - ahead
        # State: the zone's temperature, and the heat (K·m³) that has passed out of it.
        mixing = solve_ivp(lambda _, x, z=zone: [(cold - x[0]) / z, x[0]], (0.0, fed[-1]), [hot, 0.0],
                           method="Radau", t_eval=fed, rtol=1e-10, atol=1e-10)
        whole = len(drawn) - len(fed)
        outlet = np.concatenate((np.full(whole, hot), mixing.y[0]))
        heat = np.concatenate((hot * drawn[:whole], hot * ahead + mixing.y[1]))
        plug += [[share, v, t, h / v] for v, t, h in zip(drawn, outlet, heat) if v > 0.0]
    return fixture(
        ["scipy", "numpy"],
        "solve_ivp(method='Radau', rtol=1e-10): uniform tank; step of temperature at half height, on 12 layers and on "
        "192 averaged to 12; plug flow behind a stirred inlet zone without conduction or loss",
        parameters=p,
        cold_c=number(cold),
        hot_c=number(hot),
        decay=table(["hours", "t_c"], decay),
        conduction_12=table(layer_columns, [[h, *x] for h, x in zip(HOURS, same)]),
        conduction_192=table(layer_columns, [[h, *x] for h, x in zip(HOURS, fine)]),
        plug_flow=table(["inlet_zone_share", "drawn_m3", "outlet_c", "mean_since_start_c"], plug),
    )
