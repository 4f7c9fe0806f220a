"""A week of a resistance tank on a list of draws: energy, and the outlet temperature of every draw."""

import json
import pathlib
import random

from table import fixture, number, table
from tank import Tank

DAYS = 7
CELLS, STEP_S = 192, 5.0


def draw_list(busy=True):
    """Invented draws, 45 a day, 200 L of hot water. Busy: with baths, and an evening that empties the tank.

    Start (s), litres, litres a minute.
    """
    rng = random.Random(20260711)
    draws = []
    for day in range(DAYS):
        wanted = []
        for hour, spread, litres, flow in [(6.6, 0.4, 30, 6.0), (7.2, 0.4, 36, 6.5), (21.3, 0.8, 32, 6.0)]:
            wanted.append((hour + spread * rng.random(), litres * (0.7 + 0.6 * rng.random()), flow))
        if busy and day == 3:
            wanted += [(18.0 + 0.25 * shower, 52.0, 7.0) for shower in range(5)]
        if busy and day in (1, 5):
            wanted.append((19.5 + rng.random(), 60.0, 9.0))
        if day in (0, 2, 4):
            wanted += [(10.0 + 0.35 * fill + 0.1 * rng.random(), 11.0, 8.0) for fill in range(2)]
        wanted += [(20.0 + 0.2 * fill + 0.05 * rng.random(), 3.5, 5.0) for fill in range(3)]
        for _ in range(37):
            hour = 6.0 + 16.5 * rng.random()
            wanted.append((hour, 0.4 + 2.6 * rng.random(), 2.0 + 2.5 * rng.random()))
        end = day * 86400.0
        for hour, litres, flow in sorted(wanted):
            # One after another: none starts before the last has ended.
            start = max(round(day * 86400.0 + hour * 3600.0), round(end) + 10.0)
            litres, flow = round(litres, 2), round(flow, 1)
            draws.append([start, litres, flow])
            end = start + litres / flow * 60.0
    return draws


def follow(tank, draws):
    """Takes a tank through the week; mean and last outlet temperature of each draw, element heat by day."""
    step_s, heat_per_m3 = tank.step_s, tank.p["volumetric_heat_j_per_m3_k"]
    heats, lasts = [0.0] * len(draws), [0.0] * len(draws)
    daily, first = [], 0
    for index in range(round(DAYS * 86400 / step_s)):
        begin, end = index * step_s, (index + 1) * step_s
        volume, at_work = 0.0, first
        if first < len(draws):
            start, litres, flow = draws[first]
            duration = litres / flow * 60.0
            overlap = min(end, start + duration) - max(begin, start)
            if overlap > 0.0:
                volume = flow / 60000.0 * overlap
            if end >= start + duration:
                first += 1
        heat = tank.step(volume)
        if volume > 0.0:
            heats[at_work] += heat
            lasts[at_work] = heat / (volume * heat_per_m3)
        if end % 86400.0 == 0.0:
            daily.append(tank.element_j["upper"] + tank.element_j["lower"])
    return [h / (litres / 1000.0 * heat_per_m3) for h, (_, litres, _) in zip(heats, draws)], lasts, daily


def totals(tank, daily):
    assert abs(tank.residual_j()) < 1e-9 * tank.delivered_j, "the reference's own energy account does not close"
    days = [later - earlier for earlier, later in zip([0.0, *daily], daily)]
    return {
        "upper_element_j": number(tank.element_j["upper"]),
        "lower_element_j": number(tank.element_j["lower"]),
        "delivered_j": number(tank.delivered_j),
        "lost_j": number(tank.lost_j),
        "stored_change_j": number(tank.stored_j() - tank.start_j),
        "element_j_by_day": [number(x) for x in days],
    }


def compute():
    parameters = json.loads((pathlib.Path(__file__).parent / "tank_parameters.json").read_text(encoding="utf-8"))
    draws = draw_list()
    tank, coarse_tank = Tank(parameters, CELLS, STEP_S), Tank(parameters, CELLS // 2, 2 * STEP_S)
    means, lasts, daily = follow(tank, draws)
    coarse_means, _, coarse_daily = follow(coarse_tank, draws)
    rows = [[*draw, mean, last] for draw, mean, last in zip(draws, means, lasts)]
    return fixture(
        ["numpy"],
        "tests/reference/tank.py: finite volumes, van Leer fluxes, exact conduction; thermostats every step",
        parameters=parameters,
        cells=CELLS,
        step_s=STEP_S,
        totals=totals(tank, daily),
        draws=table(["start_s", "litres", "litres_per_minute", "mean_outlet_c", "last_outlet_c"], rows),
        half_resolution={
            "what": "the same with half the cells and twice the step: how far the reference itself is from converged",
            "totals": totals(coarse_tank, coarse_daily),
            "largest_change_of_mean_outlet_k": number(max(abs(a - b) for a, b in zip(means, coarse_means))),
        },
    )
