"""Whole sentences of the answer and the findings, most from an independent solver's figures."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.advice import Explanation
from fuelwiz.advice.answer import fitting

from .builds import independent, spaced, told
from .scenarios import KEPT

# The first two lines, from the independent solver's figures of today and of the bad days.
ANSWERS = {
    "hill-climb-coupe": (
        "Good for 661 hp of the 560 wanted: the pump is the limit.",
        "Tightest: 1 % short on low volts (18 % today). Fails too: combined bad day"
        " (low volts, dirty filters, worn pump).",
    ),
    "hill-climb-six": (
        "Short of your reserve: good for 851 of 750 hp, 13 % to spare, you want 15.",
        "Tightest: 2 % short on low volts (13 % today). Fails too: combined bad day"
        " (low volts, dirty filters, worn pump).",
    ),
    "twins": (
        "Full power is fine, idle is not: the regulator is too small for the return flow.",
        "Tightest: 31 % short with one pump stopped (32 % today). Fails too: combined bad day"
        " (low volts, dirty filters, worn pump). The others fail as today does.",
    ),
    "street-turbo": (
        "Good for 548 hp of the 432 wanted: the pump is the limit.",
        "Tightest: 12 % short on low volts (19 % at 5100 rpm). Fails too: combined bad day"
        " (low volts, dirty filters, worn pump).",
    ),
    "no-pump-yet": (
        "No pump yet: look for 122 gal/h at 70 psi.",
        "Injectors: 6 of 1387 cc/min or more.",
    ),
    "goal-alone": (
        "750 hp on E10 (assumed) needs 78 gal/h. No feed line is given yet.",
        "Measure or look up first: ethanol in the fuel, now assumed.",
    ),
}


@pytest.mark.parametrize("name", ANSWERS)
def test_answer(name: str) -> None:
    assert tuple(spaced(text) for text in independent(name).words.answer[:2]) == ANSWERS[name]


FIRST_LINES: dict[str, tuple[str, dict[str, Any], str]] = {
    "goal not reached": (
        "hill-climb-coupe",
        {"goal__power": "700 hp"},
        "Short: 661 of the 700 hp wanted; the pump is the limit.",
    ),
    "relief": (
        "hill-climb-coupe",
        {"pump__relief": "60 psi"},
        "Short: 0 of the 560 hp wanted; the relief valve is the limit.",
    ),
    "a chosen line too small": (
        "hill-climb-coupe",
        {"feed__chosen": "-4", "goal__power": "400 hp", "pull": []},
        "but your -4 is too small",
    ),
    "a kept run": ("hill-climb-coupe", {"feed__run": KEPT}, "\u201cold hard line\u201d"),
    "boiling": (
        "hill-climb-coupe",
        {"fuel__temperature": "70 degC", "pump__place": "outside", "goal__reserve": "0 %"},
        "but the fuel is too close to boiling at the pump inlet.",
    ),
    "a point of the pull": (
        "street-turbo",
        {"pull__1__power": "700 hp"},
        "Short at",
    ),
}


@pytest.mark.parametrize("name", FIRST_LINES)
def test_the_first_line_says_what_is_wrong_in_its_place(name: str) -> None:
    example, changes, wanted = FIRST_LINES[name]
    assert wanted in spaced(told(example, **changes).words.answer[0])


def explained(name: str, size: str) -> Explanation:
    said = independent(name)
    at = [row.size for row in said.figures.sizes].index(size)
    return said.words.explanations[at]


EXPLAINED = {
    ("hill-climb-coupe", "-6", "no"): "too small: 14.8 % to spare, you want 15 %; 5.5 ft/s, 4.1 psi",
    ("hill-climb-coupe", "-8", "next"): "-10 gains 0.6 psi and 5 hp: not worth it",
    ("hill-climb-coupe", "-8", "smaller"): "-6 is too small: 14.8 % to spare, you want 15 %",
    ("hill-climb-six", "-8", "means"): "some loss, usually fine; 5.1 ft/s with the return flow on top",
    ("hill-climb-six", "-8", "next"): "-10 gains 1.2 psi and 8 hp",
    ("hill-climb-six", "-8", "smaller"): "-6 is too small: 13 % to spare, you want 15 %",
    ("hill-climb-six", "-6", "means"): "noticeable loss; 8.4 ft/s, fast, with the return flow on top",
    ("hill-climb-six", "-6", "next"): "-8 gains 4.7 psi and 29 hp",
    ("goal-alone", "-8", "means"): "the loss hardly matters",
    ("no-pump-yet", "-8", "next"): "-10 gains 1.2 psi",
}


@pytest.mark.parametrize(("name", "size", "part"), EXPLAINED)
def test_explanation(name: str, size: str, part: str) -> None:
    assert spaced(getattr(explained(name, size), part)) == EXPLAINED[name, size, part]


def test_cost_in_flow_and_power() -> None:
    """Hill-climb six, -8: 127.3 gal/h without the feed's loss, 124.4 with it, 105.9 burnt for 750 hp."""
    assert (
        spaced(explained("hill-climb-six", "-8").costs or "")
        == "3.3 psi: 2 % of the pump's flow, worth 21 hp"
    )


def test_without_runs_only_velocity_is_explained() -> None:
    for one in independent("goal-alone").words.explanations:
        assert one.means is not None
        assert (one.costs, one.next, one.smaller) == (None, None, None)


def test_next_step_on_the_first_answer() -> None:
    words = independent("goal-alone").words
    assert words.next_step == "Next: finish this step, then Fuel; it changes the result most."
    assert independent("hill-climb-coupe").words.next_step == ""


def test_assumed_volts_and_a_guessed_curve_are_said() -> None:
    said = told("hill-climb-coupe", pump__volts=None).words.line_to_fit
    assert said is not None and "13.0 V (assumed)" in spaced(said)
    assert "a guess from one point of the pump's curve" in told("mild").words.answer[0]


@pytest.mark.parametrize(("flow", "known_at"), [("145 gal/h", "30 psi"), ("97 gal/h", "68 psi")])
@pytest.mark.parametrize("columns", [160, 80, 56])
def test_an_answer_from_one_point_of_the_pump_says_that_it_is_a_guess(
    flow: str, known_at: str, columns: int
) -> None:
    """In what remains to be measured, whatever the room; where the pump is the limit, in the first line too."""
    curve = [{"voltage": "13.5 V", "points": [[known_at, flow]]}]
    forms = told("hill-climb-coupe", pump__curve=curve).words.answer_forms
    said = [spaced(fitting(one, columns)) for one in forms]
    assert "pump is the limit" in spaced(forms[0][0])
    assert "a guess" in said[0]
    assert "guess" in said[3]
    if known_at == "30 psi":
        assert "flow at 65 psi" in said[3]
    else:
        assert "flow at" not in said[3]


def test_first_limit() -> None:
    """The pump's 492.6 kW and the injectors' 512.2 kW of the independent solver, in hp of 745.7 W."""
    words = independent("hill-climb-coupe").words
    assert spaced(words.first_limit or "") == (
        "The pump reaches its limit first, at 661 hp; then the injectors, at 687 hp."
    )
