"""A week of a heat pump tank with element backup: the fine grid of tank.py.

The draws are those of tank_week without baths and the evening that empties the tank: whether a backup element fires
then turns on a fraction of a kelvin, and one firing more or less hides everything else in a week.
"""

import json
import pathlib

import numpy as np
from scipy.interpolate import CubicSpline

import heat_pump
import tank_week
from table import fixture, number, table
from tank import Tank

CELLS, STEP_S = 192, 5.0


class HeatPumpTank(Tank):
    """The tank of tank.py with a condenser along its lower part, and the upper element as backup.

    The condenser has one temperature T and gives each cell U·v·(T − T_cell) where that is positive, U·v being the
    cell's part of its conductance. T is where the sum meets the machine's output at that T.
    """

    def __init__(self, parameters, pump, cells, step_s):
        super().__init__(parameters, cells, step_s)
        self.q = pump
        self.zone = int(pump["condenser_top"] * cells + 0.5)
        self.w_per_k = pump["condenser_w_per_k"] / self.zone
        air = heat_pump.Air.at(pump["air_c"], pump["air_relative_humidity"], pump["air_pressure_pa"])
        grid = np.arange(0.0, 90.1, 1.0)
        states = [heat_pump.run(pump, air, t) for t in grid]
        # Smooth in the condensing temperature: a spline through 1 K steps is exact to 1e-6.
        self.map = CubicSpline(grid, [[s.heat, s.compressor, s.condensate] for s in states])
        self.pump_calls = self.backup_calls = False
        self.condensing = 40.0
        self.pump_heat_j = self.pump_electricity_j = self.condensate_kg = self.pump_s = 0.0

    def sensed(self, height):
        return self.t[int(height * self.cells)]

    def control(self):
        """'upper' (backup), 'pump' or None: one source at a time, the backup first."""
        setpoint = self.p["setpoint_c"]
        upper, lower = self.sensed(self.p["upper_sensor_height"]), self.sensed(self.q["sensor_height"])
        self.backup_calls = upper < setpoint - (0.0 if self.backup_calls else self.q["backup_drop_k"])
        self.pump_calls = lower < setpoint - (0.0 if self.pump_calls else self.q["deadband_k"])
        return "upper" if self.backup_calls else "pump" if self.pump_calls else None

    def heat(self, place):
        if place != "pump":
            return super().heat(place)
        zone = self.t[: self.zone]
        counts = np.arange(1, self.zone + 1)
        sums = np.cumsum(zone)
        for _ in range(30):
            heat, compressor, condensate = self.map(self.condensing)
            # Cells are in order: the first k are reached when the temperature they need lies below cell k.
            levels = (heat / self.w_per_k + sums) / counts
            reached = np.flatnonzero(levels[:-1] <= zone[1:])
            k = reached[0] if len(reached) else self.zone - 1
            moved = levels[k] - self.condensing
            self.condensing = levels[k]
            if abs(moved) < 1e-7:
                break
        given = self.w_per_k * np.maximum(self.condensing - zone, 0.0)
        given *= heat / given.sum()
        zone += given * self.step_s / self.heat_per_cell
        self.pump_heat_j += heat * self.step_s
        self.pump_electricity_j += (compressor + self.q["fan_w"]) * self.step_s
        self.condensate_kg += condensate * self.step_s
        self.pump_s += self.step_s
        # Warmed from below, the zone may pass the cells above it.
        self.settle_from(self.zone)

    def settle_from(self, cell):
        """Pools a warmer run below `cell` with cooler cells above it, if any."""
        while cell < self.cells and self.t[cell] < self.t[cell - 1]:
            low = cell - 1
            high = cell + 1
            mean = self.t[low:high].mean()
            while True:
                if high < self.cells and self.t[high] < mean:
                    high += 1
                elif low > 0 and self.t[low - 1] > mean:
                    low -= 1
                else:
                    break
                mean = self.t[low:high].mean()
            self.t[low:high] = mean
            cell = high

    def residual_j(self):
        return super().residual_j() - self.pump_heat_j


def totals(tank):
    assert abs(tank.residual_j()) < 1e-9 * tank.delivered_j, "the reference's own energy account does not close"
    return {
        "backup_j": number(tank.element_j["upper"]),
        "pump_heat_j": number(tank.pump_heat_j),
        "pump_electricity_j": number(tank.pump_electricity_j),
        "pump_s": number(tank.pump_s),
        "condensate_kg": number(tank.condensate_kg),
        "delivered_j": number(tank.delivered_j),
        "lost_j": number(tank.lost_j),
        "stored_change_j": number(tank.stored_j() - tank.start_j),
    }


def compute():
    parameters = json.loads((pathlib.Path(__file__).parent / "tank_parameters.json").read_text(encoding="utf-8"))
    pump = heat_pump.load()
    draws = tank_week.draw_list(busy=False)
    tank = HeatPumpTank(parameters, pump, CELLS, STEP_S)
    means, lasts, _ = tank_week.follow(tank, draws)
    coarse = HeatPumpTank(parameters, pump, CELLS // 2, 2 * STEP_S)
    coarse_means, _, _ = tank_week.follow(coarse, draws)
    rows = [[*draw, mean, last] for draw, mean, last in zip(draws, means, lasts)]
    return fixture(
        ["numpy", "PsychroLib", "scipy"],
        "tests/reference/tank.py with the condenser of heat_pump_week.py and the map of heat_pump.py",
        parameters=parameters,
        heat_pump=pump,
        cells=CELLS,
        step_s=STEP_S,
        totals=totals(tank),
        draws=table(["start_s", "litres", "litres_per_minute", "mean_outlet_c", "last_outlet_c"], rows),
        half_resolution={
            "what": "the same with half the cells and twice the step: how far the reference itself is from converged",
            "totals": totals(coarse),
            "largest_change_of_mean_outlet_k": number(max(abs(a - b) for a, b in zip(means, coarse_means))),
        },
    )
