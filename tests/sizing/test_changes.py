"""What one change buys and the way out: the same as a file with those changes typed in."""

from __future__ import annotations

import copy
import json
import math
from collections.abc import Callable, Iterable
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from fuelwiz.session import Session, validate
from fuelwiz.sizing import Figures, in_steps, quick_figures
from fuelwiz.sizing.slow_figures import ChangeFigures
from fuelwiz.sizing.vocabulary import CHANGES, Change

from .builds import CC_PER_MIN, build

NEXT_GAUGE = {"12 AWG": "10 AWG", "10 AWG": "8 AWG", "14 AWG": "12 AWG", "4 mm^2": "6 mm^2"}
powers, boosts, ethanols = st.floats(200, 900), st.floats(0, 30), st.integers(0, 100)


def session_of(plain: dict[str, Any]) -> Session:
    return validate(plain, "a build")


def with_changes(plain: dict[str, Any]) -> Figures:
    """All that such data come to but the spread."""
    session = session_of(plain)
    first = quick_figures(session)
    return next((step for step in in_steps(session, first) if step.changes), first)


def with_next(plain: dict[str, Any]) -> Figures:
    """The same with the changes at the next goal."""
    session = session_of(plain)
    return next(step for step in in_steps(session, quick_figures(session)) if step.next and step.next.changes)


def larger(rows: Iterable[Any], today: str) -> str:
    sizes = [row.size for row in rows]
    return sizes[sizes.index(today) + 1]


def doubled(text: str) -> str:
    number, unit = text.split()
    return f"{2 * float(number)!r} {unit}"


def feed(plain: dict[str, Any], figures: Figures) -> None:
    plain["feed"]["chosen"] = larger(figures.sizes, figures.verdict.size)


def regulator(plain: dict[str, Any], _figures: Figures) -> None:
    fitted = plain["return_line"].setdefault("regulator", {"rated_flow": "100 gal/h", "rated_loss": "6 psi"})
    fitted["rated_flow"] = doubled(fitted["rated_flow"])


def return_(plain: dict[str, Any], figures: Figures) -> None:
    assert figures.return_line is not None
    plain["return_line"]["chosen"] = larger(figures.return_line.sizes, figures.return_line.size)


def wire(plain: dict[str, Any], _figures: Figures) -> None:
    plain["wiring"]["wire"] = NEXT_GAUGE[plain["wiring"]["wire"]]


def circuits(plain: dict[str, Any], _figures: Figures) -> None:
    plain["wiring"]["circuits"] = plain["pump"]["count"]


def lower_base(plain: dict[str, Any], _figures: Figures) -> None:
    plain["pressure"]["base"] = "3 bar"


def higher_base(plain: dict[str, Any], _figures: Figures) -> None:
    plain["pressure"]["base"] = "4 bar"


def pump(plain: dict[str, Any], _figures: Figures) -> None:
    fitted = plain["pump"]
    count = fitted.get("count", 1)
    fitted.setdefault("running_at_idle", count)
    fitted["count"] = count + 1


def filters(plain: dict[str, Any], _figures: Figures) -> None:
    for part in plain["feed"]["filter"]:
        part["rated_flow"] = doubled(part["rated_flow"])


def clean(plain: dict[str, Any], _figures: Figures) -> None:
    for part in (*plain["feed"].get("filter", []), plain.get("inlet", {}).get("strainer", {})):
        if part.get("clogging", 1) > 1:
            part["clogging"] = 1.0


def injectors(plain: dict[str, Any], figures: Figures) -> None:
    assert figures.injectors is not None and figures.injectors.smallest_rating_m3_s is not None
    steps = math.ceil(figures.injectors.smallest_rating_m3_s / CC_PER_MIN / 50)
    plain["injectors"]["rated_flow"] = f"{50 * steps} cc/min"


def cooler(plain: dict[str, Any], _figures: Figures) -> None:
    number, unit = plain["fuel"].get("temperature", "40 degC").split()
    plain["fuel"]["temperature"] = f"{float(number) - 15!r} {unit}"


TYPED: dict[Change, Callable[[dict[str, Any], Figures], None]] = {
    "feed": feed,
    "regulator": regulator,
    "return": return_,
    "wire": wire,
    "circuits": circuits,
    "lower base": lower_base,
    "higher base": higher_base,
    "pump": pump,
    "filters": filters,
    "clean": clean,
    "injectors": injectors,
    "cooler": cooler,
}


def typed(plain: dict[str, Any], changes: Iterable[Change], figures: Figures) -> Figures:
    """What a file with the changes typed in comes to, feed and return else held as they are today."""
    plain, changes = copy.deepcopy(plain), list(changes)
    if figures.sizes[0].size != "fixed":
        plain["feed"].setdefault("chosen", figures.verdict.size)
        if "feed" not in changes:
            plain["feed"]["chosen"] = figures.verdict.size
    line = figures.return_line
    if line is not None and line.sizes[0].size != "fixed" and "pump" not in changes:
        plain["return_line"]["chosen"] = line.size
    for change in sorted(changes, key=lambda change: change == "circuits"):
        TYPED[change](plain, figures)
    return quick_figures(session_of(plain))


WHOLE: dict[str, Any] = {
    "goal.next_power": None,
    "pump.volts": None,
    "pump.count": 2,
    "pump.running_at_idle": 1,
    "wiring.circuits": 1,
    "wiring.wire": "12 AWG",
    "pull": [],
    "stress": {},
    "injectors.dead_time": None,
    "feed.filter.0.clogging": 2.0,
}


def full(power: float, boost: float, ethanol: int, **more: Any) -> dict[str, Any]:
    """A build where nearly every change applies."""
    changes = {
        "goal.power": f"{power!r} hp",
        "pressure.boost": f"{boost!r} psi",
        "fuel.ethanol": f"{ethanol} %",
    }
    return build("full-session", {**WHOLE, **changes, **more})


@settings(max_examples=25, deadline=None)
@given(powers, boosts, ethanols)
def test_a_change_comes_to_what_a_file_with_it_does(power: float, boost: float, ethanol: int) -> None:
    plain = full(power, boost, ethanol)
    figures = with_changes(plain)
    today = set(figures.verdict.limits)
    for found in figures.changes:
        after = typed(plain, [found.change], figures)
        assert after.pick.least is not None
        assert found.margin == pytest.approx(after.pick.least.margin, rel=1e-9, abs=1e-9), found.change
        limits = set(after.verdict.limits)
        assert (set(found.cures), set(found.brings)) == (today - limits, limits - today), found.change
        assert found.works == (not limits)
        solved = [ceiling.max_power_W for ceiling in after.ceilings if ceiling.basis == "solved"]
        assert found.max_power_W == pytest.approx(min(solved), rel=1e-9), found.change


@settings(max_examples=40, deadline=None)
@given(powers, boosts, ethanols)
def test_the_way_out_leaves_nothing_wrong(power: float, boost: float, ethanol: int) -> None:
    plain = full(power, boost, ethanol)
    figures = with_changes(plain)
    out = figures.way_out
    if not figures.verdict.limits:
        assert out is None
        return
    assume(out is not None)
    assert out is not None
    assert list(out) == sorted(out, key=CHANGES.index) and len(out) <= 3
    assert typed(plain, out, figures).verdict.works
    if len(out) > 1:
        assert not any(found.works for found in figures.changes), "one change would do"


@settings(max_examples=40, deadline=None)
@given(powers, boosts, ethanols, st.sampled_from(["3 bar", "4 bar", "43.5 psi", "45 psi"]))
def test_no_change_is_one_that_the_car_has(power: float, boost: float, ethanol: int, base: str) -> None:
    plain = full(power, boost, ethanol, **{"pressure.base": base, "feed.filter.0.clogging": 1.0})
    figures = with_changes(plain)
    names = [found.change for found in figures.changes]
    assert len(names) == len(set(names))
    assert "clean" not in names
    assert ("lower base" in names) is (base in ("4 bar", "45 psi")), "above 3.1 bar"
    assert ("higher base" in names) is (base != "4 bar")
    assert ("injectors" in names) is ("injectors" in figures.verdict.limits)
    assert ("feed" in names) is (figures.verdict.size != figures.sizes[-1].size)
    assert figures.return_line is not None
    assert ("return" in names) is (figures.return_line.size != figures.return_line.sizes[-1].size)
    for found in figures.changes:
        if found.rated_flow_m3_s is not None:
            assert found.rated_flow_m3_s > session_of(plain).injectors.rated_flow


def names_of(name: str, **changes: Any) -> set[Change]:
    return {found.change for found in with_changes(build(name, changes)).changes}


def test_where_a_change_does_not_apply() -> None:
    six = build("twins", {"pump.count": 6})
    assert "pump" not in {found.change for found in with_changes(six).changes}
    assert "pump" not in names_of("twins", **{"pump.arrangement": "series"})
    assert {"wire", "circuits"}.isdisjoint(names_of("twins"))
    assert {"lower base", "higher base", "injectors"}.isdisjoint(names_of("mild")), "a regulator at the tank"
    assert "filters" not in names_of("twins", **{"feed.filter": None})
    assert {"regulator", "return"}.isdisjoint(names_of("twins", **{"return_line": None}))
    assert {"lower base", "higher base"}.isdisjoint(names_of("twins", **{"engine.injection": "direct"}))


def test_wire_in_square_millimeters_goes_to_the_next_that_is_sold() -> None:
    plain = full(500, 15, 70, **{"wiring.wire": "4 mm^2"})
    figures = with_changes(plain)
    found = next(one for one in figures.changes if one.change == "wire")
    after = typed(plain, ["wire"], figures).pick.least
    assert after is not None and found.margin == pytest.approx(after.margin, rel=1e-9)


def test_best_comes_first() -> None:
    changes = with_changes(build("twins")).changes
    assert [found.works for found in changes] == sorted((found.works for found in changes), reverse=True)
    works = [found for found in changes if found.works]
    assert [round(found.max_power_W) for found in works] == sorted(
        (round(found.max_power_W) for found in works), reverse=True
    )


def test_the_way_out_at_the_next_goal_leaves_nothing_wrong_there() -> None:
    plain = build("hill-climb-coupe")
    figures = with_next(plain)
    assert figures.next is not None and figures.next.way_out is not None
    then = copy.deepcopy(plain)
    then["goal"]["power"] = then["goal"].pop("next_power")
    then["pressure"]["boost"] = f"{figures.next.boost_Pa / 1000!r} kPa"
    del then["pull"]
    then["feed"]["chosen"] = figures.verdict.size
    first = quick_figures(session_of(then))
    assert first.verdict.limits == figures.next.limits
    assert typed(then, figures.next.way_out, first).verdict.works


def test_nothing_to_change_without_a_pump() -> None:
    session = session_of(build("no-pump-yet"))
    last = list(in_steps(session, quick_figures(session)))[-1]
    assert (last.changes, last.way_out) == ((), None)
    assert json.dumps(last.spread) == "null"


STARVED = {
    "surge": None,
    "return_line.chosen": "-4",
    "injectors.rated_flow": "600 cc/min",
    "wiring.wire": "14 AWG",
    "wiring.length": "20 ft",
}


def typed_at_size(plain: dict[str, Any], steps: Iterable[ChangeFigures], figures: Figures) -> Figures:
    """What a file comes to with changes typed in, a line or a wire in the very size of its change."""
    steps = list(steps)
    plain = copy.deepcopy(plain)
    plain["feed"]["chosen"] = figures.verdict.size
    for step in sorted(steps, key=lambda step: step.change == "circuits"):
        if step.change == "feed":
            plain["feed"]["chosen"] = step.size
        elif step.change == "return":
            plain["return_line"]["chosen"] = step.size
        elif step.change == "wire":
            assert step.wire_m2 is not None
            plain["wiring"]["wire"] = f"{step.wire_m2 * 1e6!r} mm^2"
        else:
            TYPED[step.change](plain, figures)
    return quick_figures(session_of(plain))


@pytest.mark.parametrize("power", [520, 600, 680, 760])
@pytest.mark.parametrize("more", [{}, {"pump.count": 1, "wiring.circuits": None}, {"feed.chosen": "-4"}])
def test_larger_steps_leave_nothing_wrong_and_none_of_them_is_for_nothing(power: float, more: Any) -> None:
    plain = full(power, 15, 70, **{**STARVED, **more})
    figures = with_changes(plain)
    assert figures.verdict.limits and (figures.way_out is None) == bool(figures.long_way)
    if not figures.long_way:
        return
    assert typed_at_size(plain, figures.long_way, figures).verdict.works
    for left_out in figures.long_way:
        rest = [step for step in figures.long_way if step is not left_out]
        assert not typed_at_size(plain, rest, figures).verdict.works, left_out.change
