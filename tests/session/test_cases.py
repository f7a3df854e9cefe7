"""Stress cases of the builder's own: keys by their path, judged on a copy of the build."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.errors import SessionError
from fuelwiz.session import apply_change, validate

from .builds import faults, full, smallest


def case(change: dict[str, Any]) -> dict[str, Any]:
    return full() | {"stress": {"case": [{"name": "mine", "change": change}]}}


def words(change: dict[str, Any]) -> dict[str, str]:
    return faults(case(change))


def test_a_change_leaves_the_build_as_it_is() -> None:
    plain = full()
    changed = apply_change(plain, {"feed.filter.0.clogging": 2.0, "feed.run.0.fittings.exit": 1})
    assert changed["feed"]["filter"][0]["clogging"] == 2.0
    assert changed["feed"]["run"][0]["fittings"] == {"straight": 2, "swept_90": 2, "exit": 1}
    assert plain == full()


def test_a_change_may_give_what_the_file_leaves_out() -> None:
    changed = apply_change(smallest(), {"fuel.temperature": "55 degC", "goal.next_power": "500 hp"})
    assert changed == smallest() | {
        "goal": {"power": "410 hp", "next_power": "500 hp"},
        "fuel": {"temperature": "55 degC"},
    }


def test_a_path_without_quotes_is_a_path_too() -> None:
    """TOML reads { fuel.temperature = "55 degC" } as a table in a table."""
    plain = smallest() | {"fuel": {"ethanol": "85 %"}}
    changed = apply_change(plain, {"fuel": {"temperature": "55 degC"}})
    assert changed["fuel"] == {"ethanol": "85 %", "temperature": "55 degC"}


def test_a_whole_value_is_put_in_the_place_of_the_old_one() -> None:
    changed = apply_change(full(), {"feed.run.0.fittings": {"exit": 1}, "feed.sizes": ["-8"]})
    assert changed["feed"]["run"][0]["fittings"] == {"exit": 1}
    assert changed["feed"]["sizes"] == ["-8"]


def test_points_are_reached_by_number() -> None:
    changed = apply_change(full(), {"pump.curve.0.points.1.1": "90 gal/h"})
    assert changed["pump"]["curve"][0]["points"][1] == ["40 psi", "90 gal/h"]


def test_what_is_put_in_is_a_copy() -> None:
    sizes = ["-8"]
    changed = apply_change(full(), {"feed.sizes": sizes})
    changed["feed"]["sizes"].append("-10")
    assert sizes == ["-8"]


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("fuel.temprature", "is not a key here; did you mean `temperature`?"),
        ("temperature", "is not a key here; did you mean `fuel.temperature`?"),
        ("feed.filter.3.clogging", "leads nowhere: `feed.filter` has 1, counted from 0"),
        ("feed.filter.first.clogging", "leads nowhere: `feed.filter` has 1, counted from 0"),
        ("return_line.part.0.rated_loss", "leads nowhere: the file has no `return_line.part` to change"),
        ("goal.power.x", "leads nowhere: `goal.power` is a single value"),
        ("stress.case.0.name", "cannot be changed by a case"),
        ("record.works", "cannot be changed by a case"),
        ("", "is not a key here; known are format, name, notes"),
    ],
)
def test_a_path_that_leads_nowhere(path: str, said: str) -> None:
    with pytest.raises(SessionError) as caught:
        apply_change(full(), {path: 1.0})
    assert len(caught.value.faults) == 1
    assert caught.value.faults[0].text.startswith(said)
    assert [text.startswith(said) for text in words({path: 1.0}).values()] == [True]


def test_a_changed_value_is_judged_where_the_case_stands() -> None:
    assert words({"fuel.temperature": "200 degC", "goal.power": "1 A"}) == {
        "stress.case.0.change.fuel.temperature": "wants -40 to 90 degC, got 200 degC",
        "stress.case.0.change.goal.power": "wants a power, got A",
    }


def test_a_change_may_not_make_a_build_that_cannot_be() -> None:
    assert words({"feed.run.0.hose": "nominal", "feed.sizes": ["-7"], "feed.chosen": "-9"}) == {}
    found = words({"pump.count": 1, "fuel.kind": "own"})
    assert list(found) == ["stress.case.0.change"]
    assert found["stress.case.0.change"].startswith("makes a build that cannot be: `fuel.")


def test_what_is_wrong_without_the_case_is_said_once() -> None:
    plain = case({"fuel.temperature": "50 degC"})
    plain["goal"]["reserve"] = "900 %"
    assert list(faults(plain)) == ["goal.reserve"]


def test_a_newer_format_is_no_stress_case() -> None:
    assert list(words({"format": 2})) == ["stress.case.0.change.format"]


def test_a_case_holds_the_build_that_it_makes() -> None:
    built = validate(case({"engine.induction": "none", "fuel.temperature": "55 degC"}), "a build")
    changed = built.stress.case[0].changed
    assert (built.fuel.temperature, changed.fuel.temperature) == (
        pytest.approx(313.15),
        pytest.approx(328.15),
    )
    assert changed.name == built.name
    assert changed.stress.case == ()


def test_fallbacks_of_a_case_follow_its_own_values() -> None:
    plain = smallest() | {"stress": {"case": [{"change": {"engine.induction": "none"}}]}}
    built = validate(plain)
    assert built.pressure.boost > 0
    assert built.stress.case[0].changed.pressure.boost == 0
