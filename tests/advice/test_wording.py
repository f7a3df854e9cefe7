"""Whole sentences of the answer and the findings, most from an independent solver's figures."""

from __future__ import annotations

import pytest

from .builds import independent, spaced, told

ANSWERS = {
    "hill-climb-coupe": "-8 is the line to fit: 3.3 ft/s, 1.8 psi lost, 18 % to spare.",
    "hill-climb-six": (
        "-6, settled on (*), no longer works: 13 % to spare, 15 % is wanted."
        " -8 is the line to fit: 4.4 ft/s, 17 % to spare."
    ),
    "twins": (
        "Full power holds, 32 % to spare through -8. Idle does not: a -6 return needs 41 psi where the"
        " regulator wants 34.5, so the rail creeps 7 psi high. -8 is the smallest return that holds."
        " One pump dead at full boost gives 31 % less than the engine burns: fit a pressure cut."
    ),
    "no-pump-yet": (
        "Look for a pump that gives 122 gal/h at 70 psi and the volts it will see. -8 is the line to fit."
    ),
    "goal-alone": "750 hp on E10 (assumed) burns 78 gal/h. Which line works shows after Lines.",
}


@pytest.mark.parametrize("name", ANSWERS)
def test_answer(name):
    assert spaced(independent(name).words.answer) == ANSWERS[name]


def test_answer_where_no_line_cures():
    words = told("hill-climb-coupe", pump__volts="12.7 V").words
    assert spaced(words.answer) == (
        "No line cures this: the pump is short. The goal burns 79 gal/h, 91 with reserve; through -8 this"
        " pump gives 81 at 12.7 V. Look at the wiring first; -8 is the line to fit."
    )


HEADLINES = {
    "hill-climb-six": "-6* is refused. Fit -8: 4.4 ft/s, 17 % to spare.",
    "no-pump-yet": "No pump yet: look for 122 gal/h at 70 psi.",
}


@pytest.mark.parametrize("name", HEADLINES)
def test_headline(name):
    assert spaced(independent(name).words.headline) == HEADLINES[name]


def explained(name, size):
    said = independent(name)
    at = [row.size for row in said.figures.sizes].index(size)
    return said.words.explanations[at]


EXPLAINED = {
    ("hill-climb-coupe", "-6", "no"): "refused: 14.8 % to spare, 15 % is wanted; 5.5 ft/s, 4.1 psi",
    ("hill-climb-coupe", "-8", "next"): "-10 saves 0.6 psi and feeds 5 hp more: not worth buying",
    ("hill-climb-coupe", "-8", "smaller"): "-6 is refused: 14.8 % to spare, 15 % is wanted",
    ("hill-climb-six", "-8", "means"): "some loss, usually fine",
    ("hill-climb-six", "-8", "next"): "-10 saves 1.2 psi and feeds 8 hp more",
    ("hill-climb-six", "-8", "smaller"): "-6 is refused: 13 % to spare, 15 % is wanted",
    ("hill-climb-six", "-6", "means"): "the loss is real; 8.4 ft/s, fast, with the return flow on top",
    ("hill-climb-six", "-6", "next"): "-8 saves 4.7 psi and feeds 29 hp more",
    ("goal-alone", "-8", "means"): "the loss hardly matters",
    ("no-pump-yet", "-8", "next"): "-10 saves 1.2 psi",
}


@pytest.mark.parametrize(("name", "size", "part"), EXPLAINED)
def test_explanation(name, size, part):
    assert spaced(getattr(explained(name, size), part)) == EXPLAINED[name, size, part]


def test_cost_in_flow_and_power():
    """Hill-climb six, -8: 127.3 gal/h without the feed's loss, 124.4 with it, 105.9 burnt for 750 hp."""
    assert spaced(explained("hill-climb-six", "-8").costs) == "3.3 psi, so 2 % of the pump's flow, or 21 hp"


def test_without_runs_only_velocity_is_explained():
    for one in independent("goal-alone").words.explanations:
        assert one.means is not None
        assert (one.costs, one.next, one.smaller) == (None, None, None)


def test_to_do_on_the_first_answer():
    words = independent("goal-alone").words
    assert words.to_do == "Next: the other questions here, then Fuel, which moves this most."


def test_comfortable_where_nothing_is_more_urgent():
    words = told("hill-climb-six", feed__chosen=None, goal__power="600 hp", fuel__ethanol="10 %").words
    assert "would be comfortable" not in words.answer
    words = told("hill-climb-coupe", goal__power="350 hp").words
    assert spaced(words.to_do) == "-8 would be comfortable: under 4 ft/s with all the pump gives"


def test_assumed_volts_and_a_guessed_curve_are_said_in_the_answer():
    assert "13.0 V (assumed)" in spaced(told("hill-climb-coupe", pump__volts=None).words.answer)
    assert "probably: the rest of the pump's curve is guessed" in told("mild").words.answer


def test_gives_out_first():
    """The pump's 492.6 kW and the injectors' 524.3 kW of the independent solver, in hp of 745.7 W."""
    words = independent("hill-climb-coupe").words
    assert spaced(words.gives_out_first) == (
        "The pump gives out first, at 661 hp; with it changed, the injectors, at 703 hp."
    )
