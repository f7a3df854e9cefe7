"""Wires and injectors that would do: each against the rules, worked out here by hand."""

from __future__ import annotations

from math import pi
from typing import Any

import pytest

from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .builds import EXAMPLES, build
from .builds import figures as figures_of

NAMES = sorted(path.stem for path in EXAMPLES.glob("*.toml"))
CC_MIN = 1e-6 / 60
AMPS_105C = {18: 20, 16: 25, 14: 35, 12: 45, 10: 60, 8: 80, 6: 120, 4: 160}  # 33 CFR 183.425 table 5
ENGINE_SPACE = 0.85  # its note 1, from memory
COPPER_OHM_M, PER_K = 1.724e-8, 0.00393  # IACS 100 % at 20 degC


def wired(**wiring: object) -> dict[str, Any]:
    """An example with its wiring changed."""
    data = build("full-session")
    return data | {"wiring": data["wiring"] | wiring}


def test_a_wire_loses_what_its_copper_does_and_carries_the_rule() -> None:
    session = validate(wired(length="14 ft", temperature="40 degC"), "build")
    figures = quick_figures(session)
    current = figures.wiring.current_A if figures.wiring else None
    assert current is not None and session.wiring is not None
    assert [choice.gauge for choice in figures.wire_choices] == sorted(AMPS_105C, reverse=True)
    for choice in figures.wire_choices:
        area = pi / 4 * (0.127e-3 * 92 ** ((36 - choice.gauge) / 39)) ** 2  # ASTM B258
        loop = 14 * 0.3048 * (1 if session.wiring.return_path == "chassis" else 2)
        ohms = COPPER_OHM_M * (1 + PER_K * 20) * loop / area
        assert choice.loss_V == pytest.approx(current * ohms, rel=1e-9)
        assert choice.ampacity_A == pytest.approx(AMPS_105C[choice.gauge] * ENGINE_SPACE)


@pytest.mark.parametrize("length", ["3 ft", "14 ft", "40 ft"])
def test_a_wire_does_that_loses_half_a_volt_at_most_and_carries_the_fuse(length: str) -> None:
    figures = figures_of(wired(length=length))
    assert figures.wiring is not None and figures.wiring.fuse_A is not None
    for choice in figures.wire_choices:
        assert choice.does == (choice.loss_V <= 0.5 and choice.ampacity_A >= figures.wiring.fuse_A)
    thinnest = next((choice for choice in figures.wire_choices if choice.does), None)
    assert figures.wiring.smallest_wire == (f"{thinnest.gauge} AWG" if thinnest else None)


@pytest.mark.parametrize(("wire", "gauges"), [("12 AWG", [12]), ("10 AWG", [10]), ("4 mm2", [])])
def test_the_wire_that_is_fitted_is_marked(wire: str, gauges: list[int]) -> None:
    choices = figures_of(wired(wire=wire)).wire_choices
    assert choices and [choice.gauge for choice in choices if choice.given] == gauges


WIRES = (
    *(f"{gauge} AWG" for gauge in (24, 22, *AMPS_105C, 11, 2, 0)),
    *(f"{area} mm^2" for area in (0.5, 0.75, 1, 1.5, 2.5, 3, 4, 6, 10, 16, 25, 35)),
)
MM2 = {"24 AWG": 0.205, "14 AWG": 2.08, "12 AWG": 3.31, "0 AWG": 53.5}  # ASTM B258, three figures


@pytest.mark.parametrize("wire", WIRES)
@pytest.mark.parametrize("name", [name for name in NAMES if "pump" in build(name)])
def test_the_row_of_a_wire_is_the_wire_that_the_build_is_solved_with(name: str, wire: str) -> None:
    """Its area is the one typed, its loss what the volts at the pump lack, its yes or no that of the verdict."""
    data = build(name)
    data["pump"] = {"current": [["40 psi", "9 A"], ["80 psi", "15 A"]]} | data["pump"]
    data["pump"].pop("volts", None)
    wiring = {"supply": "13.8 V", "length": "9 ft"} | data.get("wiring", {}) | {"wire": wire}
    session = validate(data | {"wiring": wiring}, "build")
    figures, wired_with = quick_figures(session), session.wiring
    if figures.wiring is None or figures.wiring.fuse_A is None:
        pytest.skip("no feed line, or no fuse that is large enough")
    both = (figures.wire_choices, figures.metric_wire_choices)
    (own,) = (choice for choices in both for choice in choices if choice.given)
    assert wired_with is not None and own.area_m2 == wired_with.wire
    assert own.area_m2 * 1e6 == pytest.approx(MM2.get(wire, own.area_m2 * 1e6), rel=2e-3)
    assert own in (both[0] if "AWG" in wire else both[1])
    assert figures.wiring.loss_V == pytest.approx(own.loss_V + wired_with.connections, abs=1e-6)
    assert own.carries_fuse == ("fuse" not in figures.verdict.limits)
    assert own.does == (own.carries_fuse and own.loss_V <= 0.5)
    for choices in both:
        assert [choice.area_m2 for choice in choices] == sorted({choice.area_m2 for choice in choices})


def test_metric_wire_comes_in_the_sizes_that_are_sold() -> None:
    """IEC 60228, from memory; one that is not sold stands among them, by its area alone."""
    choices = figures_of(wired(wire="3 mm^2")).metric_wire_choices
    sizes = [1, 1.5, 2.5, 3, 4, 6, 10, 16, 25]
    assert [choice.area_m2 * 1e6 for choice in choices] == pytest.approx(sizes)
    assert {choice.gauge for choice in choices} == {None}
    assert [choice.area_m2 for choice in choices if choice.given] == [pytest.approx(3e-6)]


def test_no_wire_is_offered_without_what_judges_it() -> None:
    without_length = wired()
    del without_length["wiring"]["length"]
    without_current = wired()
    del without_current["pump"]["current"]
    without_wiring = wired()
    del without_wiring["wiring"]
    for data in (without_length, without_current, without_wiring):
        assert figures_of(data).wire_choices == ()


@pytest.mark.parametrize("name", [name for name in NAMES if "injectors" in build(name)])
def test_an_injector_does_at_its_duty_limit_or_below(name: str) -> None:
    session = validate(build(name), name)
    figures = quick_figures(session)
    assert session.injectors is not None and figures.injectors is not None
    choices, limit = figures.injector_choices, session.injectors.duty_limit
    smallest = figures.injectors.smallest_rating_m3_s
    assert choices and smallest is not None
    dead = (session.injectors.dead_time or 0.0) * (session.engine.rpm or 0) / 120
    for choice in choices:
        assert (choice.duty - dead) * choice.rating_m3_s == pytest.approx(smallest * (limit - dead))
        assert choice.does == (choice.duty <= limit) == (choice.rating_m3_s >= smallest)
    (given,) = (choice for choice in choices if choice.given)
    assert given.rating_m3_s == session.injectors.rated_flow
    assert given.duty == pytest.approx(figures.injectors.duty)


@pytest.mark.parametrize("name", [name for name in NAMES if "injectors" in build(name)])
def test_injectors_are_offered_in_steps_of_fifty_around_the_smallest_that_does(name: str) -> None:
    figures = quick_figures(validate(build(name), name))
    offered = [choice.rating_m3_s / CC_MIN for choice in figures.injector_choices if not choice.given]
    assert offered == sorted(offered) and all(abs(cc / 50 - round(cc / 50)) < 1e-9 for cc in offered)
    does = [choice.does for choice in figures.injector_choices]
    assert does == sorted(does) and len(set(does)) == 2


def test_no_injector_is_offered_without_pressure_across_it() -> None:
    data = build("full-session")
    data["pressure"] = data["pressure"] | {"base": "5 psi", "reference": "atmosphere"}
    figures = figures_of(data)
    assert figures.injectors is not None and figures.injectors.duty is None
    assert figures.injector_choices == ()


def test_where_little_is_wanted_no_injector_of_nothing_is_offered() -> None:
    data = build("full-session")
    data["goal"] = {"power": "15 hp"}
    figures = figures_of(data)
    assert figures.injectors is not None and figures.injectors.smallest_rating_m3_s is not None
    assert 0 < figures.injectors.smallest_rating_m3_s < 50 * CC_MIN
    assert round(figures.injector_choices[0].rating_m3_s / CC_MIN) == 50
