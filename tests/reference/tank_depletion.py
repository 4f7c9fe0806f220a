"""A full draw at 3 gal a minute from a hot tank, elements off and on, with and without a stirred inlet zone."""

import json
import pathlib

from table import fixture, number, table
from tank import Tank

GALLON_M3 = 231.0 * 0.0254**3
FLOW_M3_PER_S = 3.0 * GALLON_M3 / 60.0
CELLS, STEP_S = 192, 1.0
# 15 °F below the start: where the federal first-hour test ends a draw.
DROP_K = 15.0 / 1.8


def run(parameters):
    tank = Tank(parameters, CELLS, STEP_S)
    volume = FLOW_M3_PER_S * STEP_S
    end_c = parameters["start_c"] - DROP_K
    drawn, heat_above_inlet, usable, rows = 0.0, 0.0, None, []
    last_outlet = parameters["start_c"]
    while drawn < 1.3 * parameters["volume_m3"]:
        heat = tank.step(volume)
        outlet = heat / (volume * parameters["volumetric_heat_j_per_m3_k"])
        heat_above_inlet += heat - volume * parameters["volumetric_heat_j_per_m3_k"] * parameters["inlet_c"]
        if usable is None and outlet <= end_c < last_outlet:
            # The outlet temperature belongs to the middle of a step.
            part = (last_outlet - end_c) / (last_outlet - outlet)
            usable = drawn - 0.5 * volume + part * volume
        drawn += volume
        last_outlet = outlet
        if len(rows) < 60 and drawn >= 0.004 * (len(rows) + 1):
            rows.append([drawn - 0.5 * volume, outlet, heat_above_inlet])
    assert abs(tank.residual_j()) < 1e-9 * tank.delivered_j, "the reference's own energy account does not close"
    return {
        "usable_m3": number(usable),
        "outlet": table(["drawn_m3", "outlet_c", "delivered_j_by_the_end_of_that_second"], rows),
    }


def compute():
    parameters = json.loads((pathlib.Path(__file__).parent / "tank_parameters.json").read_text(encoding="utf-8"))
    cases = []
    for element_w in (0.0, 4500.0):
        for share in (0.0, 0.01, 0.1, 0.3):
            case = {**parameters, "element_w": element_w, "inlet_zone_share": share}
            cases.append({"element_w": element_w, "inlet_zone_share": share, **run(case)})
    return fixture(
        ["numpy"],
        "tests/reference/tank.py at 1 s: 3 US gal a minute; usable_m3 until the outlet is 15 °F below its start",
        parameters=parameters,
        flow_m3_per_s=number(FLOW_M3_PER_S),
        cells=CELLS,
        step_s=STEP_S,
        cases=cases,
    )
