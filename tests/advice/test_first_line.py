"""The first line of the answer agrees with verdict and ceilings, whatever the build."""

from __future__ import annotations

import random
import re
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.session import validate
from fuelwiz.sizing import assess, first_figures

from .builds import NAMES, changed, plain, spaced

BUILDS = 300
RANDOM: dict[str, tuple[Any, ...]] = {
    "goal__power": tuple(f"{power} hp" for power in (120, 250, 400, 560, 700, 950, 1500)),
    "goal__reserve": ("0 %", "15 %", "40 %"),
    "goal__power_at": ("crank", "wheels"),
    "fuel__temperature": ("10 degC", "40 degC", "65 degC"),
    "pressure__boost": ("0 psi", "12 psi", "35 psi"),
    "pressure__base": ("40 psi", "58 psi"),
    "pressure__regulator": ("rail", "tank", "none"),
    "pressure__reference": ("manifold", "atmosphere", None),
    "feed__chosen": ("-4", "-6", "-10", None),
    "pump__place": ("tank", "outside"),
    "pump__relief": ("70 psi", "120 psi", None),
    "pump__volts": ("11.5 V", "13.5 V", None),
    "feed__filter__0__pressure_rating": ("60 psi", None),
    "pull": ([{"rpm": 4000, "power": "500 hp", "boost": "25 psi"}], []),
}
OF_EXAMPLES = [name for name in NAMES if name not in ("goal-alone", "pipe")]


def random_build(seed: int) -> Result:
    """An example with some keys of every kind changed."""
    draw = random.Random(seed)
    name = draw.choice(OF_EXAMPLES)
    data = plain(name)
    keys = draw.sample(sorted(RANDOM), draw.randint(1, 6))
    changes = {key: draw.choice(RANDOM[key]) for key in keys}
    if "pump" not in data:
        changes = {key: value for key, value in changes.items() if not key.startswith("pump")}
    if not data["feed"].get("filter"):
        changes.pop("feed__filter__0__pressure_rating", None)
    session = validate(changed(data, changes), name)
    return result(session, first_figures(session))


def number(text: str) -> float:
    return float(text.replace("\u2212", "-"))


@pytest.mark.parametrize("seed", range(BUILDS))
def test_the_first_line_agrees_with_verdict_and_ceilings(seed: int) -> None:
    one = random_build(seed)
    first, figures = spaced(one.words.answer[0]), one.figures
    works, limits = figures.verdict.works, figures.verdict.limits
    good = re.fullmatch(
        r"Good for ([\d.]+) (?:hp|kW) of the ([\d.]+) wanted: .* (?:is|are) the limit.*\.", first
    )
    assert bool(good) == (works is True), (first, limits)
    assert first.startswith("No pump yet: look for ") == (figures.pump is None)
    if figures.pump is None:
        return
    solved = min(item.max_power_W for item in figures.ceilings if item.basis == "solved")
    goal = figures.demand.crank_power_W
    share = 1.0 - one.session.goal.driveline_loss if one.session.goal.power_at == "wheels" else 1.0
    unit = 745.69987 if "hp" in first else 1000.0
    told = re.search(r"(?:Good for|Short:|good for) ([\d.]+) (?:hp )?of (?:the )?([\d.]+)", first)
    if told is not None:
        assert number(told[1]) == pytest.approx(solved * share / unit, abs=0.51)
        assert number(told[2]) == pytest.approx(goal * share / unit, abs=0.51)
        assert (number(told[1]) < number(told[2])) == (solved < goal)
    if first.startswith("Short:"):
        assert solved < goal and works is False
    if first.startswith("Short at"):
        assert figures.pull and any(point.limits for point in figures.pull)
    if first.startswith("Short of"):
        assert "pump" in limits and solved >= goal
    if first.startswith("Full power is fine"):
        assert "return" in limits and solved >= goal
    if works is False:
        assert re.match(r"Short|Full power is fine|Good for .* but ", first), first


def test_all_forms_are_met() -> None:
    firsts = [spaced(random_build(seed).words.answer[0]) for seed in range(BUILDS)]
    forms = ("Good for .* the limit", "Short: ", "Short at ", "Short of", "No pump yet", "Good .* but ")
    for form in forms:
        assert any(re.match(form, first) for first in firsts), form


@pytest.mark.parametrize("power", ["500 hp", "900 hp"])
def test_a_next_goal_with_boost_says_so_beside_a_power_without(power: str) -> None:
    """Else "good for 744 hp" and "buy first for 500 hp" would stand one above the other."""
    then = {"goal__next_power": power, "goal__next_boost": "8 psi", "goal__next_induction": "supercharger"}
    session = validate(changed(plain("mild"), then), "mild")
    third = [spaced(form) for form in result(session, assess(session)).words.answer_forms[2]]
    assert f"{power} at 8.0 psi of boost" in third[0] and len(third[-1]) <= 56


def test_a_next_goal_without_boost_says_nothing_of_it() -> None:
    session = validate(changed(plain("mild"), {"goal__next_power": "900 hp"}), "mild")
    assert "boost" not in result(session, assess(session)).words.answer[2]


@pytest.mark.parametrize(
    ("power", "without", "short"),
    [
        ("400 hp", True, "(2 % to spare there, you want 15)"),
        ("500 hp", True, "(19 % short there)"),
        ("700 hp", False, ""),
    ],
)
def test_power_without_boost_is_not_held_against_a_boosted_goal_that_fails(
    power: str, without: bool, short: str
) -> None:
    """Good for 521 hp as it is, which is no promise for 500 with boost; 700 are beyond it anyway."""
    then = {"goal__next_power": power, "goal__next_boost": "8 psi", "goal__next_induction": "supercharger"}
    curve = [{"points": [["58 psi", "46 gal/h"], ["80 psi", "30 gal/h"]]}]
    session = validate(changed(plain("mild"), {**then, "pump__curve": curve}), "mild")
    words = result(session, assess(session)).words
    assert all(("without boost" in form) == without for form in words.answer_forms[0])
    assert len(words.answer_forms[0][-1]) <= 56 and short in spaced(words.answer[2])
