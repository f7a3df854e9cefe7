"""Pressures to expect on a gauge: by hand from base, boost and vacuum, and from the independent solver's figures."""

from __future__ import annotations

import json
from typing import Any

import pytest

from fuelwiz.sizing.part_figures import GaugeReading

from .builds import EXAMPLES, PSI, build, figures


def independent(name: str) -> dict[str, Any]:
    """The figures of the independent solver."""
    figures: dict[str, Any] = json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8"))
    return figures


def readings(data: dict[str, Any]) -> dict[str, GaugeReading]:
    """The readings of plain session data, by state."""
    return {reading.when: reading for reading in figures(data).gauge}


def picked(figures: dict[str, Any]) -> dict[str, Any]:
    """The row of the pick."""
    return next(row for row in figures["sizes"] if row["size"] == figures["verdict"]["size"])


@pytest.mark.parametrize("name", ["full-session", "hill-climb-coupe", "hill-climb-six"])
def test_the_rail_is_base_less_vacuum_and_plus_boost(name: str) -> None:
    # Pressure balance of a regulator that follows the manifold; 3 bar where the file says so.
    data = build(name)
    boost = {"full-session": 21, "hill-climb-coupe": 20, "hill-climb-six": 22}[name] * PSI
    base = 3e5 if data["pressure"].get("base", "3 bar") == "3 bar" else 43.5 * PSI
    found = readings(data)
    assert found["hose off"].rail_Pa == pytest.approx(base)
    assert found["idle"].rail_Pa == pytest.approx(base - 9 * PSI)
    assert found["full power"].rail_Pa == pytest.approx(base + boost)


@pytest.mark.parametrize("name", ["full-session", "hill-climb-coupe", "hill-climb-six", "twins"])
def test_behind_the_pump_the_loss_of_all_that_it_gives_comes_on_top(name: str) -> None:
    row = picked(independent(name))
    full = readings(build(name))["full power"]
    assert full.pump_Pa == pytest.approx(row["rail_at_goal_Pa"] + row["full_delivery_loss_Pa"], rel=1e-4)


def test_a_return_that_is_too_small_lets_the_rail_creep() -> None:
    figures = independent("twins")
    found = readings(build("twins"))
    idle = figures["pressure"]["idle_rail_Pa"] + figures["return_line"]["creep_Pa"]
    assert found["idle"].rail_Pa == pytest.approx(idle, rel=1e-4)
    # With the hose off the regulator wants 43.5 psi, and the return needs less than that: it holds.
    assert found["hose off"].rail_Pa == pytest.approx(43.5 * PSI)


def test_at_idle_the_pump_stands_above_the_rail_by_what_the_feed_loses() -> None:
    # 93 gal/h comes back at idle (tests/examples/full-session.json) and the goal loses 1.3 psi at 51: about 3 at 94.
    found = readings(build("full-session"))
    for when in ("idle", "hose off"):
        rail, pump = found[when].rail_Pa, found[when].pump_Pa
        assert rail is not None and pump is not None
        assert 2 * PSI < pump - rail < 4 * PSI


def test_with_the_regulator_at_the_tank_the_rail_sags() -> None:
    row = picked(independent("mild"))
    full = readings(build("mild"))["full power"]
    assert full.rail_Pa == pytest.approx(58 * PSI - row["rail_sag_Pa"], rel=1e-4)
    assert full.pump_Pa == pytest.approx(58 * PSI, rel=1e-4)


def test_with_a_filter_before_that_regulator_the_pump_makes_more() -> None:
    data = build("mild")
    bare = readings(data)["full power"].pump_Pa
    data["feed"]["filter"][0]["place"] = "pump"
    filtered = readings(data)["full power"].pump_Pa
    assert bare is not None and filtered is not None and filtered > bare + 0.05 * PSI


def test_without_a_regulator_there_is_no_hose_and_the_feed_carries_the_demand() -> None:
    data = build("full-session")
    data["pressure"]["regulator"] = "none"
    found = readings(data)
    assert list(found) == ["idle", "full power"]
    full = found["full power"]
    # The loss at the demand does not hang on the regulator: 1.3 psi.
    loss = picked(independent("full-session"))["feed_loss_Pa"]
    assert full.rail_Pa is not None and full.pump_Pa is not None
    assert full.pump_Pa - full.rail_Pa == pytest.approx(loss, rel=1e-4)


def test_a_regulator_that_follows_the_air_has_no_hose() -> None:
    data = build("hill-climb-coupe")
    data["pressure"]["reference"] = "atmosphere"
    found = readings(data)
    assert list(found) == ["idle", "full power"]
    assert found["idle"].rail_Pa == pytest.approx(43.5 * PSI)


def test_without_a_pump_only_the_rail_is_known() -> None:
    found = readings(build("no-pump-yet"))
    assert found["idle"].rail_Pa == pytest.approx(3e5 - 9 * PSI)
    assert found["full power"].rail_Pa == pytest.approx(3e5 + 22 * PSI)
    assert [reading.pump_Pa for reading in found.values()] == [None, None, None]


def test_without_a_line_only_the_rail_is_known() -> None:
    found = readings(build("goal-alone"))
    assert found["full power"].rail_Pa == pytest.approx(3e5 + 15 * PSI)
    assert found["full power"].pump_Pa is None


def test_a_pump_that_cannot_hold_idle_has_no_reading() -> None:
    data = build("full-session")
    data["pump"]["curve"][0]["points"] = [["5 psi", "50 gal/h"], ["10 psi", "1 gal/h"]]
    found = readings(data)
    assert found["idle"] == GaugeReading("idle", None, None)


@pytest.mark.parametrize("volts", ["8 V", "11 V", "12 V"])
def test_a_pump_that_is_short_lowers_the_rail_at_full_power(volts: str) -> None:
    data = build("hill-climb-six")
    data["pump"]["volts"] = volts
    full = readings(data)["full power"]
    assert full.rail_Pa is None or full.rail_Pa < 3e5 + 22 * PSI
