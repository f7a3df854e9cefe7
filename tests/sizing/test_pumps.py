"""The pumps in a build: those that run at idle, what they could make, their wiring and their currents."""

from __future__ import annotations

from typing import Any

import pytest

from .builds import PSI, build, figures

FALLING = [["40 psi", "16 A"], ["80 psi", "8 A"]]
RISING = [["40 psi", "8 A"], ["80 psi", "16 A"]]


def twins(changes: dict[str, Any]) -> dict[str, Any]:
    """Two pumps on wires of their own, their sheet taken at the volts that they run at."""
    wiring = {"supply": "13.8 V", "wire": "10 AWG", "length": "14 ft", "connections": "0.1 V", "circuits": 1}
    return build("twins", {"wiring": wiring, **changes})


@pytest.mark.parametrize("base", ["43.5 psi", "150 psi"])
@pytest.mark.parametrize("arrangement", ["parallel", "series"])
def test_at_full_power_all_pumps_run_however_few_do_at_idle(arrangement: str, base: str) -> None:
    """At 150 psi one of them cannot hold the rail, and both in parallel cannot either."""
    changes = {"pump.arrangement": arrangement, "pump.volts": None, "pressure.base": base}
    both = figures(twins({**changes, "pump.running_at_idle": 2}))
    one = figures(twins({**changes, "pump.running_at_idle": 1}))
    assert one.sizes == both.sizes
    assert one.wiring == both.wiring
    assert one.inlet == both.inlet
    assert one.pump is not None and both.pump is not None
    assert one.pump.dead_head_Pa == both.pump.dead_head_Pa
    assert one.pump.capacity_without_feed_loss_m3_s == both.pump.capacity_without_feed_loss_m3_s
    assert both.pump.stages == ()
    assert [stage.pumps for stage in one.pump.stages] == ([1] if arrangement == "parallel" else [])


def test_pumps_that_never_send_the_demand_could_make_nothing() -> None:
    """Not a pressure below zero, by which something would have to push the fuel through them."""
    ladder = figures(build("twins", {"goal.power": "3000 hp"})).pick.ladder
    assert ladder is not None and ladder.could_make_Pa == 0.0


@pytest.mark.parametrize(("arrangement", "each"), [("parallel", 60 * PSI), ("series", 30 * PSI)])
def test_peak_current_is_that_at_the_relief(arrangement: str, each: float) -> None:
    """Across pumps in series the relief divides; both hang on one circuit; by the straight line of the sheet."""
    changes = {"pump.arrangement": arrangement, "pump.relief": "60 psi", "pump.current": RISING}
    wiring = figures(twins({**changes, "pressure.base": "10 psi", "pressure.boost": "0 psi"})).wiring
    assert wiring is not None and wiring.current_A is not None
    assert wiring.peak_current_A == pytest.approx(2 * (8 + 8 * (each / PSI - 40) / 40), rel=1e-9)
    assert wiring.peak_current_A > wiring.current_A


def test_peak_current_is_never_less_than_the_working_one() -> None:
    """A pump that draws less the harder it works draws most at work."""
    wiring = figures(twins({"pump.current": FALLING, "pump.relief": "100 psi"})).wiring
    assert wiring is not None and wiring.current_A is not None
    assert wiring.current_A > 2 * 8.0, "at work it draws more than at the end of its sheet"
    assert wiring.peak_current_A == wiring.current_A


@pytest.mark.parametrize("missing", ["wiring.wire", "wiring.length"])
def test_without_a_wire_or_its_length_the_connections_alone_lose_volts(missing: str) -> None:
    found = figures(twins({"pump.volts": None, missing: None}))
    assert found.wiring is not None and found.wiring.current_A is not None
    assert found.wiring.pump_volts_V == pytest.approx(13.8 - 0.1, abs=1e-12)
    whole = figures(twins({"pump.volts": None}))
    assert whole.wiring is not None and whole.wiring.pump_volts_V < 13.6


@pytest.mark.parametrize("clogging", [1.0, 1.5, 2.5])
def test_dirty_filters_are_twice_as_dirty_as_today(clogging: float) -> None:
    """The bad day is the build whose filter and strainer lose twice what they lose today."""
    size = {"feed.chosen": "-8"}
    today = {**size, "feed.filter.0.clogging": clogging, "inlet.strainer.clogging": clogging}
    dirty = {**size, "feed.filter.0.clogging": 2 * clogging, "inlet.strainer.clogging": 2 * clogging}
    case = next(each for each in figures(build("full-session", today)).stress if each.case == "dirty filters")
    row = figures(build("full-session", dirty)).pick
    assert case.margin == pytest.approx(row.margin, rel=1e-9)
    assert case.vapour_margin_Pa == pytest.approx(row.vapour_margin_Pa, rel=1e-9)


def test_a_kept_run_carries_the_demand_alone_behind_a_regulator_at_the_tank() -> None:
    """With the regulator at the rail it carries all that the pump sends, which is too fast for it here."""
    kept = {"what": "under the floor", "size": "-5", "length": "40 ft"}
    follows = {"what": "the rest", "length": "3 ft"}
    changes = {"goal.power": "150 hp", "pump.curve.0.points": [["58 psi", "150 gal/h"]]}
    plain = build("mild", {**changes, "feed.run": [kept, follows], "feed.chosen": "-8"})
    assert "kept run" not in figures(plain).verdict.limits
    plain["pressure"]["regulator"] = "rail"
    assert "kept run" in figures(plain).verdict.limits
