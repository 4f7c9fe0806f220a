"""A stratified electric tank on a fixed fine grid: the independent integration the simulation is held to.

Same physics as the simulation, other numerics. Equal finite volumes that stay where they are; every
`step_s` seconds, in this order:

1. water drawn leaves at the top and as much enters at the bottom, carried by a second-order flux with van
   Leer's limiter (B. van Leer, J. Comput. Phys. 14 (1974) 361), in sub-steps of at most half a cell;
   after each, the inlet's jet stirs the bottom `inlet_zone_share` of the tank to one temperature;
2. each thermostat calls below setpoint less deadband and stops calling at setpoint; the upper one's call
   has priority, one element at a time;
3. an element's heat enters the cell above the cell face nearest to its height and pools upward with cells that
   are no warmer;
4. conduction between cells and loss to the room in proportion to volume, by the exact propagator of
   those linear equations (symmetric eigendecomposition).

Constant volumetric heat; heat is counted above 0 °C.
"""

import numpy as np


class Tank:
    """State and energy account of one tank."""

    def __init__(self, parameters, cells, step_s):
        p = self.p = parameters
        self.cells, self.step_s = cells, step_s
        self.cell_m3 = p["volume_m3"] / cells
        self.heat_per_cell = p["volumetric_heat_j_per_m3_k"] * self.cell_m3
        self.t = np.full(cells, float(p["start_c"]))
        self.propagator = propagator(p, cells, step_s)
        self.calls = {"upper": False, "lower": False}
        self.element_j = {"upper": 0.0, "lower": 0.0}
        self.delivered_j = self.lost_j = 0.0
        self.start_j = self.stored_j()

    def stored_j(self):
        return float(self.heat_per_cell * self.t.sum())

    def residual_j(self):
        """What the account lacks: rounding only."""
        put_in = self.element_j["upper"] + self.element_j["lower"]
        return self.stored_j() - self.start_j - put_in + self.delivered_j + self.lost_j

    def draw(self, volume_m3):
        """Draws a volume; returns the heat that left with it, J above 0 °C."""
        left = 0.0
        steps = max(1, int(np.ceil(volume_m3 / (0.5 * self.cell_m3) - 1e-9)))
        c = volume_m3 / steps / self.cell_m3
        for _ in range(steps):
            face = self.t + 0.5 * (1.0 - c) * limited_slopes(self.t)
            left += c * face[-1]
            self.t += c * (np.concatenate(([self.p["inlet_c"]], face[:-1])) - face)
            self.stir()
        heat = left * self.heat_per_cell
        self.delivered_j += heat - volume_m3 * self.p["volumetric_heat_j_per_m3_k"] * self.p["inlet_c"]
        return heat

    def stir(self):
        """One temperature in the bottom zone; a cell cut by its edge mixes in proportion."""
        zone = self.p["inlet_zone_share"] * self.cells
        whole = int(zone + 1e-12)
        part = zone - whole
        if zone <= 0.0:
            return
        mean = (self.t[:whole].sum() + part * self.t[whole]) / zone
        self.t[:whole] = mean
        self.t[whole] += part * (mean - self.t[whole])

    def control(self):
        """Which element heats: 'upper', 'lower' or None."""
        for place in ("upper", "lower"):
            sensed = self.t[int(self.p[f"{place}_sensor_height"] * self.cells)]
            if sensed >= self.p["setpoint_c"]:
                self.calls[place] = False
            elif sensed < self.p["setpoint_c"] - self.p["deadband_k"]:
                self.calls[place] = True
        return next((place for place in ("upper", "lower") if self.calls[place]), None)

    def heat(self, place):
        joules = self.p["element_w"] * self.step_s
        self.element_j[place] += joules
        cell = int(self.p[f"{place}_element_height"] * self.cells + 0.5)
        self.t[cell] += joules / self.heat_per_cell
        # All above is in order: the pool ends where its mean no longer exceeds the next cell.
        above = self.t[cell:]
        means = np.cumsum(above) / np.arange(1, len(above) + 1)
        ends = np.flatnonzero(means[:-1] <= above[1:])
        last = ends[0] if len(ends) else len(above) - 1
        above[: last + 1] = means[last]

    def step(self, volume_m3):
        """One time step with a volume drawn in it; returns the heat that left with the water."""
        heat = self.draw(volume_m3) if volume_m3 > 0.0 else 0.0
        place = self.control()
        if place:
            self.heat(place)
        before = self.stored_j()
        self.t = self.p["room_c"] + self.propagator @ (self.t - self.p["room_c"])
        self.lost_j += before - self.stored_j()
        return heat


def limited_slopes(t):
    """Van Leer's limited slope of each cell; none at the two ends."""
    slopes = np.zeros_like(t)
    below, above = t[1:-1] - t[:-2], t[2:] - t[1:-1]
    product = below * above
    slopes[1:-1] = np.where(product > 0.0, 2.0 * product / np.where(product > 0.0, below + above, 1.0), 0.0)
    return slopes


def conduction_matrix(p, cells):
    """Rates, 1/s, of cell temperatures above the room: conduction between neighbours and loss to the room."""
    capacity = p["volumetric_heat_j_per_m3_k"] * p["volume_m3"]
    area = p["volume_m3"] / p["height_m"]
    between = p["conductivity_w_per_m_k"] * area / (p["height_m"] / cells) / (capacity / cells)
    matrix = np.diag(np.full(cells, -2.0 * between - p["ua_w_per_k"] / capacity))
    matrix += between * (np.eye(cells, k=1) + np.eye(cells, k=-1))
    matrix[0, 0] += between
    matrix[-1, -1] += between
    return matrix


def propagator(p, cells, step_s):
    """The exact step of the conduction and loss equations."""
    values, vectors = np.linalg.eigh(conduction_matrix(p, cells))
    return (vectors * np.exp(values * step_s)) @ vectors.T
