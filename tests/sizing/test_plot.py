"""The picture of pumps against the system: the pumps' curve is that of their sheet, the system's that of the rows."""

from __future__ import annotations

import pytest

from fuelwiz.session import validate
from fuelwiz.sizing.plot import plot_around

from .builds import GALLON_PER_HOUR, PSI, build, figures

STRAIGHT = [[f"{pressure} psi", f"{110 - pressure / 2} gal/h"] for pressure in (20, 40, 60, 80, 100)]


@pytest.mark.parametrize(
    ("count", "arrangement", "ways", "stages"),
    [(1, "parallel", 1, 1), (2, "parallel", 2, 1), (2, "series", 1, 2)],
)
def test_the_pumps_stand_where_their_sheet_has_them(
    count: int, arrangement: str, ways: int, stages: int
) -> None:
    """A sheet on one straight line, at the volts that the pumps run at, is the same line at every flow."""
    pump = {"pump.count": count, "pump.arrangement": arrangement, "pump.volts": "13.5 V"}
    plain = build("full-session", {**pump, "pump.curve.0.points": STRAIGHT, "pump.relief": None})
    drawn = plot_around(validate(plain, "a build"), "-8")
    assert drawn is not None
    flows = [flow / GALLON_PER_HOUR for flow in drawn.flows]
    wanted = [stages * 2 * (110 - flow / ways) for flow in flows]
    assert [pressure / PSI for pressure in drawn.pump_pressures] == pytest.approx(wanted, abs=0.01)


def test_the_system_stands_where_the_rows_have_it() -> None:
    plain = build("full-session")
    found = figures(plain)
    drawn = plot_around(validate(plain, "a build"), "-8")
    assert drawn is not None and drawn.crossing is not None
    assert drawn.goal_flow == found.demand.volume_flow_m3_s
    row = found.row("-8")
    assert row is not None and drawn.crossing[0] == row.capacity_m3_s
    after = next(number for number, flow in enumerate(drawn.flows) if flow > drawn.goal_flow)
    assert list(drawn.systems) == ["-6", "-8", "-10"]
    for size, pressures in drawn.systems.items():
        at = found.row(size)
        assert at is not None
        assert pressures[after - 1] <= at.pump_rise_Pa <= pressures[after]
        assert list(pressures) == sorted(pressures)


def test_pumps_and_system_meet_at_the_mark() -> None:
    drawn = plot_around(validate(build("full-session"), "a build"), "-8")
    assert drawn is not None and drawn.crossing is not None
    flow, pressure = drawn.crossing
    after = next(number for number, each in enumerate(drawn.flows) if each > flow)
    share = (flow - drawn.flows[after - 1]) / (drawn.flows[after] - drawn.flows[after - 1])
    before, behind = drawn.pump_pressures[after - 1 : after + 1]
    assert pressure == pytest.approx(before + share * (behind - before), abs=0.5 * PSI)
