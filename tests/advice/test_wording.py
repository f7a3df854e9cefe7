"""Whole sentences of the answer and the findings, most from an independent solver's figures."""

from __future__ import annotations

import pytest

from fuelwiz.advice import Explanation

from .builds import independent, spaced, told

ANSWERS = {
    "hill-climb-coupe": "-8 is the line to fit: 3.3 ft/s, 1.8 psi lost, 18 % to spare.",
    "hill-climb-six": (
        "Your -6 (*) is too small: 13 % to spare, you want 15 %."
        " -8 is the line to fit: 4.4 ft/s, 17 % to spare."
    ),
    "twins": (
        "Full power is fine, 32 % to spare through -8. Idle is not: the -6 return line backs up to 41 psi; the"
        " regulator should hold 34.5, so rail pressure creeps 7 psi high. -8 is the smallest return line that"
        " works. If one pump stops at full boost, fuel is 31 % short: fit a cut-off that drops boost or spark"
        " when fuel pressure falls."
    ),
    "no-pump-yet": (
        "No pump yet: you need one that flows 122 gal/h at 70 psi, at the voltage it really gets."
        " -8 is the line to fit."
    ),
    "goal-alone": "750 hp on E10 (assumed) needs 78 gal/h. No feed line is given yet.",
}


@pytest.mark.parametrize("name", ANSWERS)
def test_answer(name: str) -> None:
    assert spaced(independent(name).words.answer) == ANSWERS[name]


def test_answer_where_no_line_cures() -> None:
    words = told("hill-climb-coupe", pump__volts="12.7 V").words
    assert spaced(words.answer) == (
        "The pump is too small: the goal needs 79 gal/h, 91 with reserve; through -8 this pump flows 81"
        " at 12.7 V. Check the wiring first: the pump gets 12.7 V. -8 is the line to fit."
    )


HEADLINES = {
    "hill-climb-six": "-6* is too small. Fit -8: 4.4 ft/s, 17 % to spare.",
    "no-pump-yet": "No pump yet: look for 122 gal/h at 70 psi.",
}


@pytest.mark.parametrize("name", HEADLINES)
def test_headline(name: str) -> None:
    assert spaced(independent(name).words.headline) == HEADLINES[name]


def explained(name: str, size: str) -> Explanation:
    said = independent(name)
    at = [row.size for row in said.figures.sizes].index(size)
    return said.words.explanations[at]


EXPLAINED = {
    ("hill-climb-coupe", "-6", "no"): "too small: 14.8 % to spare, you want 15 %; 5.5 ft/s, 4.1 psi",
    ("hill-climb-coupe", "-8", "next"): "-10 gains 0.6 psi and 5 hp: not worth it",
    ("hill-climb-coupe", "-8", "smaller"): "-6 is too small: 14.8 % to spare, you want 15 %",
    ("hill-climb-six", "-8", "means"): "some loss, usually fine",
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


def test_to_do_on_the_first_answer() -> None:
    words = independent("goal-alone").words
    assert words.next_step == "Next: finish this step, then Fuel; it changes the result most."
    assert words.to_do.startswith("Not given yet: pump, feed line,")


def test_comfortable_where_nothing_is_more_urgent() -> None:
    words = told("hill-climb-six", feed__chosen=None, goal__power="600 hp", fuel__ethanol="10 %").words
    assert "would be comfortable" not in words.answer
    words = told("hill-climb-coupe", goal__power="350 hp").words
    assert spaced(words.to_do) == "-8 would be comfortable: under 4 ft/s with all the pump delivers."


def test_assumed_volts_and_a_guessed_curve_are_said_in_the_answer() -> None:
    assert "13.0 V (assumed)" in spaced(told("hill-climb-coupe", pump__volts=None).words.answer)
    assert "a guess from one point of the pump's curve" in told("mild").words.answer


def test_first_limit() -> None:
    """The pump's 492.6 kW and the injectors' 524.3 kW of the independent solver, in hp of 745.7 W."""
    words = independent("hill-climb-coupe").words
    assert spaced(words.first_limit or "") == (
        "The pump reaches its limit first, at 661 hp; then the injectors, at 703 hp."
    )
