"""Not sure: what is taken, and why."""

from __future__ import annotations

from pathlib import Path

import pytest

from .desks import opened, told

MARKED = "It is marked as assumed, on the sheet too, until you type your own."


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("goal.reserve", f"15 % is taken: a usual allowance for wear and heat. {MARKED}"),
        ("fuel.temperature", f"104 °F (40 °C) is taken: a warm tank after some driving. {MARKED}"),
        (
            "pressure.base",
            f"43.5 psi (3 bar) is taken: the pressure that most injectors are rated at. {MARKED}",
        ),
        ("goal.power", "This one needs an answer: every size follows from it."),
        ("goal.next_power", "Left empty, nothing is said about a next goal."),
        ("name", "Left empty: without one the file's name is shown."),
        (
            "filter.have",
            "yes, no figures is taken: most cars have one; not knowing its figures never makes the answer "
            "better. It is marked as assumed, on the sheet too, until you type your own.",
        ),
    ],
)
def test_it_says_what_is_taken_and_why(tmp_path: Path, path: str, said: str) -> None:
    desk = told(tmp_path)
    assert desk.unsure(path).replace("\u00a0", " ") == said


def test_the_value_is_taken_out_and_assumed(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.unsure("pressure.boost")
    assert desk.value("pressure.boost") is None
    assert desk.text_in_field("pressure.boost").assumed
    assert desk.result is not None
    assert "pressure.boost" in {one.key for one in desk.result.figures.assumed}


def test_a_refused_text_goes_too(tmp_path: Path) -> None:
    desk = told(tmp_path, pressure__boost="lots")
    desk.unsure("pressure.boost")
    assert desk.refused == {}


def test_what_has_no_fallback_stays(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.unsure("goal.power")
    assert desk.value("goal.power") == "750 hp"


def test_choices_are_said_in_words(tmp_path: Path) -> None:
    desk = told(tmp_path)
    assert desk.unsure("fuel.which").startswith("pump fuel (E10) is taken: ")
    assert desk.unsure("pressure.regulator").startswith("on the rail is taken: ")


def test_not_sure_of_the_pump_puts_it_aside(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    curve = desk.value("pump.curve")
    desk.unsure("pump.known")
    assert "pump" not in desk.plain
    desk.choose("pump.known", "curve")
    assert desk.value("pump.curve") == curve
