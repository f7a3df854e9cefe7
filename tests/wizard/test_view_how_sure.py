"""How sure the answer is: one sentence, and a bar for each input, on a scale that all share."""

from __future__ import annotations

import re

import pytest
from advice.builds import spaced

from fuelwiz.advice.sections.how_sure import guess_rows
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.live.how_sure import sure_lines
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .results import LOOKS, filled_result, text, unfilled_result
from .results import NAMES as EXAMPLE_NAMES

NAMES = ("hill-climb-six", "twins", "full-session", "street-turbo")
BAR = re.compile(r"(?P<low>[−\d.]+) (?P<bar>[░█]+) +(?P<high>[−\d.]+)")


def drawn(name: str, *, width: int = 80, units: str = "us") -> list[str]:
    return text(sure_lines(filled_result(name, units), Area(Look(), width, 9)))


@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
@pytest.mark.parametrize("name", NAMES)
def test_it_keeps_to_its_width(name: str, look: Look) -> None:
    for units in ("us", "metric"):
        for width in (59, 60, 75, 76, 80, 109):
            lines = sure_lines(filled_result(name, units), Area(look, width, 9))
            assert all(line.cell_length == width for line in lines)
            assert look.unicode or all(line.text.isascii() for line in lines)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width", [60, 80])
def test_every_input_has_its_bar_from_low_to_high(name: str, width: int) -> None:
    spread = filled_result(name).figures.spread
    assert spread is not None
    bars = [match for line in drawn(name, width=width) if (match := BAR.search(line))]
    assert len(bars) == len(spread.inputs)
    for match, one in zip(bars, spread.inputs, strict=True):
        low, high = sorted((100 * one.low, 100 * one.high))
        assert float(match["low"].replace("−", "-")) == pytest.approx(low, abs=0.5)
        assert float(match["high"].replace("−", "-")) == pytest.approx(high, abs=0.5)
        assert "█" in match["bar"]
    assert len({len(match["bar"]) for match in bars}) == 1


@pytest.mark.parametrize("look", [LOOKS["256 dark"], LOOKS["ascii"]], ids=["unicode", "ascii"])
@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("width", [59, 60, 80])
def test_the_name_of_a_guess_and_where_it_breaks_are_never_cut(width: int, units: str, look: Look) -> None:
    for name in EXAMPLE_NAMES:
        result = filled_result(name, units)
        lines = text(sure_lines(result, Area(look, width, 9)))
        for one in guess_rows(Subject(result.session, result.figures)):
            own = [line[3:] for line in lines if line[3:].startswith((f"{one.name}  ", f"{one.short}  "))]
            assert len(own) == 1, (name, one.name, lines)
            assert own[0].endswith(look.fold(spaced(one.breaks)))


def test_a_wider_effect_has_a_longer_bar() -> None:
    spread = filled_result("hill-climb-six").figures.spread
    assert spread is not None
    bars = [match["bar"].count("█") for line in drawn("hill-climb-six") if (match := BAR.search(line))]
    by_effect = sorted(zip([one.effect for one in spread.inputs], bars, strict=True))
    widest, narrowest = by_effect[-1][1], by_effect[0][1]
    assert widest > 3 * narrowest


def test_the_sentence_speaks_in_fractions() -> None:
    spread = filled_result("hill-climb-six").figures.spread
    assert spread is not None
    sentence = " ".join(drawn("hill-climb-six")[:2]).strip()
    low, high = round(100 * spread.margin.low), round(100 * spread.margin.high)
    assert sentence.startswith(f"9 in 10: {low} to {high} % to spare; 1 in {round(1 / spread.short)} short")


def test_what_is_assumed_says_so_and_what_may_break_is_marked() -> None:
    lines = drawn("twins")
    regulator = next(line for line in lines if "regulator" in line and "█" in line)
    assert regulator.startswith(" ! ") and "100 % assumed" in regulator
    spread = filled_result("twins").figures.spread
    assert spread is not None and spread.inputs[0].input == "return_regulator"
    assert "psi" in regulator.split("█")[-1]
    fuel = next(line for line in lines if "fuel use" in line and "█" in line)
    assert fuel.startswith(" ? ") and "12 % assumed" in fuel
    assert all(line[1] == " " for line in lines if "pump's flow" in line)


def test_it_says_what_it_waits_for() -> None:
    for name, told in (
        ("goal-alone", "a feed line and a pump"),
        ("no-pump-yet", "a pump"),
        ("mild", "worked out"),
    ):
        assert told in text(sure_lines(unfilled_result(name), Area(Look(), 80, 9)))[0]
