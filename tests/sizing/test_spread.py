"""How sure the answer is: against closed forms, and against builds that are typed in with the input moved."""

from __future__ import annotations

import math
from functools import cache
from statistics import NormalDist
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.session import validate
from fuelwiz.sizing import assess, quick_figures
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.picked import Picked
from fuelwiz.sizing.slow_figures import InputFigures, SpreadFigures
from fuelwiz.sizing.tolerances import tolerances
from fuelwiz.sizing.vocabulary import INPUTS, LIMITS

from .builds import PSI, build

NOTHING = {"temperature": "0 K", "boost": "0 psi", "base": "0 psi", "voltage": "0 V"}
EXACT = {f"tolerance.{name}": NOTHING.get(name, "0 %") for name in INPUTS if name != "pump_kind"}
"""Every input known exactly."""
AT_WHEELS = {"goal.power_at": "wheels", "goal.driveline_loss": "15 %"}
LEVEL_PUMP = {
    "pump.curve": [{"points": [["20 psi", "110 gal/h"], ["200 psi", "110 gal/h"]]}],
    "pump.volts": "13.5 V",
    "pump.kind": "turbine",
    "pump.relief": None,
}
"""A pump whose flow nothing changes: then the margin hangs on the demand alone."""
FIVE, NINETY_FIVE = NormalDist().inv_cdf(0.05), NormalDist().inv_cdf(0.95)


def spread_of(plain: dict[str, Any]) -> SpreadFigures:
    found = assess(validate(plain, "a build")).spread
    assert found is not None
    return found


@cache
def example(name: str) -> Figures:
    return assess(validate(build(name), name))


def input_of(spread: SpreadFigures, name: str) -> InputFigures:
    return next(one for one in spread.inputs if one.input == name)


def test_a_margin_that_is_linear_in_one_input() -> None:
    """Power at the crank is that at the wheels over one less the loss, so margin + 1 falls with the loss in a line."""
    changes = {**EXACT, **AT_WHEELS, **LEVEL_PUMP, "tolerance.driveline": "10 %"}
    plain = build("mild", changes)
    today = quick_figures(validate(plain, "mild")).pick.margin
    assert today is not None

    def margin(z: float) -> float:
        return (1 + today) * (1 - 0.15 - 0.10 * z / 2) / (1 - 0.15) - 1

    spread = spread_of(plain)
    assert spread.margin.low == pytest.approx(margin(NINETY_FIVE), abs=1e-3)
    assert spread.margin.middle == pytest.approx(today, abs=1e-3)
    assert spread.margin.high == pytest.approx(margin(FIVE), abs=1e-3)
    driveline = input_of(spread, "driveline")
    assert (driveline.low, driveline.high) == pytest.approx((margin(-2), margin(2)))


def test_the_share_of_the_draws_that_fall_short_in_closed_form() -> None:
    """Fuel use alone moves, as a factor: the build falls short where that is above what it has to spare."""
    spare, width = 1.12, 1.40
    plain = build("mild", {**EXACT, **LEVEL_PUMP, "tolerance.fuel_use": "40 %", "pressure.regulator": "none"})
    today = quick_figures(validate(plain, "mild")).pick.margin
    assert today is not None
    plain["goal"]["power"] = f"{350 * (1 + today) / spare!r} hp"
    spread = spread_of(plain)
    breaks_at = 2 * math.log(spare) / math.log(width)
    assert spread.short == pytest.approx(1 - NormalDist().cdf(breaks_at), abs=0.002)
    fuel_use = input_of(spread, "fuel_use")
    assert fuel_use.breaks == pytest.approx(spare, rel=1e-6)
    assert fuel_use.limit == "pump"
    assert spread.margin.low == pytest.approx(spare / width ** (NINETY_FIVE / 2) - 1, abs=1e-3)
    assert spread.margin.high == pytest.approx(spare / width ** (FIVE / 2) - 1, abs=1e-3)


def typed(name: str, changes: dict[str, Any]) -> Figures:
    """An example with values typed in, at the line that it has today."""
    today = example(name)
    return quick_figures(validate(build(name, {"feed.chosen": today.verdict.size, **changes}), name))


MOVED: list[tuple[str, str, dict[str, tuple[str, str]]]] = [
    ("hill-climb-coupe", "temperature", {"fuel.temperature": ("28 degC", "52 degC")}),
    (
        "hill-climb-coupe",
        "boost",
        {
            "pressure.boost": ("19 psi", "21 psi"),
            "pull.0.boost": ("22 psi", "24 psi"),
            "pull.1.boost": ("20 psi", "22 psi"),
        },
    ),
    ("hill-climb-coupe", "voltage", {"pump.volts": ("13.3 V", "13.7 V")}),
    ("hill-climb-coupe", "ethanol", {"fuel.ethanol": ("82 %", "88 %")}),
    ("twins", "base", {"pressure.base": ("42.5 psi", "44.5 psi")}),
    ("twins", "length", {"feed.run.0.length": (f"{15 / 1.05!r} ft", f"{15 * 1.05!r} ft")}),
    (
        "twins",
        "filters",
        {
            "feed.filter.0.rated_loss": ("1 psi", "2.25 psi"),
            "inlet.strainer.rated_loss": (f"{0.5 / 1.5!r} psi", "0.75 psi"),
        },
    ),
    ("pipe", "pump_kind", {"pump.kind": ("turbine", "displacement")}),
]


@pytest.mark.parametrize(("name", "moved", "values"), MOVED)
def test_an_effect_is_that_of_the_values_typed_in(
    name: str, moved: str, values: dict[str, tuple[str, str]]
) -> None:
    spread = example(name).spread
    assert spread is not None
    found = input_of(spread, moved)
    for end, margin in enumerate((found.low, found.high)):
        least = typed(name, {path: both[end] for path, both in values.items()}).pick.least
        assert least is not None
        assert margin == pytest.approx(least.margin, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(("off", "fails"), [(0.9999, False), (1.0001, True)])
def test_a_build_breaks_where_it_is_said_to(off: float, fails: bool) -> None:
    """The full session types its fuel use and has injectors that come to their limit first."""
    spread = example("full-session").spread
    assert spread is not None
    fuel_use = input_of(spread, "fuel_use")
    assert fuel_use.breaks is not None and fuel_use.limit == "injectors"
    bsfc = {"engine.bsfc": f"{0.78 * fuel_use.breaks * off!r} lb/(hp*h)", "goal.reserve": "0 %"}
    assert ("injectors" in typed("full-session", bsfc).verdict.limits) is fails


def test_inputs_that_break_come_first_then_those_that_move_most() -> None:
    spread = example("street-turbo").spread
    assert spread is not None
    names = [one.input for one in spread.inputs]
    assert set(names[:2]) == {"temperature", "vapour"}
    effects = [one.effect for one in spread.inputs[2:]]
    assert effects == sorted(effects, reverse=True)


def test_what_the_builder_says_of_a_tolerance_wins() -> None:
    """On twins a left-out regulator would have 100 %, a typed filter 40 %; the file says 50 % of filters."""
    spread = example("twins").spread
    assert spread is not None
    tolerances = {one.input: one.tolerance for one in spread.inputs}
    assert (tolerances["filters"], tolerances["return_regulator"]) == (0.5, 1.0)
    assert spread_of(build("twins", {"tolerance.filters": "10 %"})).inputs != spread.inputs


def test_nothing_to_draw_without_a_pump() -> None:
    assert example("no-pump-yet").spread is None
    assert example("goal-alone").spread is None


def test_a_build_that_is_known_exactly_is_one_answer() -> None:
    spread = spread_of(build("twins", EXACT))
    assert (spread.chance, spread.short) == (0.0, 0.0)
    assert spread.margin.low == pytest.approx(spread.margin.high, abs=1e-9)
    assert [(one.limit, one.share) for one in spread.limits] == [("return", 1.0)]


@settings(max_examples=6, deadline=None)
@given(st.floats(250, 700), st.floats(0, 30), st.integers(0, 100), st.booleans())
def test_of_any_build(power: float, boost: float, ethanol: int, measured: bool) -> None:
    changes: dict[str, Any] = {
        "goal.power": f"{power!r} hp",
        "pressure.boost": f"{boost!r} psi",
        "fuel.ethanol": f"{ethanol} %",
        "pump.kind": "turbine" if measured else None,
        "engine.bsfc": "0.7 lb/(hp*h)" if measured else None,
    }
    spread = spread_of(build("street-turbo", changes))
    assert 0 <= spread.short <= 1 - spread.chance <= 1
    assert spread.margin.low <= spread.margin.middle <= spread.margin.high
    assert all(0 < one.share <= 1 for one in spread.limits)
    assert 1 - spread.chance <= sum(one.share for one in spread.limits) + 1e-9
    assert [one.limit for one in spread.limits] == [
        limit for limit in LIMITS if limit in {one.limit for one in spread.limits}
    ]
    assert ("boost" in {one.input for one in spread.inputs}) is (boost > 0)
    assert ("pump_kind" in {one.input for one in spread.inputs}) is not measured


SAID = {
    "temperature": ("3 K", 3.0),
    "boost": ("2 psi", 2 * PSI),
    "base": ("2 psi", 2 * PSI),
    "voltage": ("0.3 V", 0.3),
}


@pytest.mark.parametrize("name", [name for name in INPUTS if name != "pump_kind"])
def test_each_key_of_a_tolerance_is_that_of_its_input(name: str) -> None:
    text, wanted = SAID.get(name, ("7 %", 0.07))
    session = validate(build("street-turbo", {f"tolerance.{name}": text}), "a build")
    known = {one.input: one.widest for one in tolerances(Picked.today(session, quick_figures(session)).sized)}
    assert known[name] == pytest.approx(wanted)
    usual = validate(build("street-turbo"), "a build")
    before = {one.input: one.widest for one in tolerances(Picked.today(usual, quick_figures(usual)).sized)}
    assert {other for other in before if before[other] != known[other]} == {name}


def test_what_was_typed_is_surer_than_what_was_left_out() -> None:
    def widest(name: str, changes: dict[str, Any]) -> float | None:
        session = validate(build("street-turbo", changes), "a build")
        sized = Picked.today(session, quick_figures(session)).sized
        return next(one.widest for one in tolerances(sized) if one.input == name)

    assert widest("fuel_use", {"engine.bsfc": "0.6 lb/(hp*h)"}) == 0.06
    assert widest("fuel_use", {"engine.bsfc": None}) == 0.12
    tubes = [{**run, "hose": "tube"} for run in build("street-turbo")["feed"]["run"]]
    assert widest("feed_bore", {"feed.run": tubes}) == 0.01
    assert widest("pump_flow", {"pump.curve": [{"points": [["43.5 psi", "90 gal/h"]]}]}) == 0.12
    assert widest("voltage", {"pump.volts": "13.2 V"}) == 0.2
    assert widest("voltage", {"pump.volts": None}) == 0.4
    assert widest("voltage", {"pump.volts": None, "wiring": None}) == 0.7
    regulator = {"rated_flow": "100 gal/h", "rated_loss": "5 psi"}
    assert widest("return_regulator", {"return_line.regulator": regulator}) == 0.3
    assert widest("return_regulator", {}) == 1.0
