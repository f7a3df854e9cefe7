"""The answer follows what is told, and stands on what can be read while the rest cannot."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from fuelwiz.advice import result
from fuelwiz.desk import Desk
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .desks import EXAMPLES, NB, empty, opened, told


def sentence(desk: Desk) -> str:
    assert desk.result is not None
    return desk.result.words.answer[0]


def test_the_answer_lives_from_the_first_answer_on(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    assert desk.result is None
    desk.type("goal.power", "750")
    assert desk.result is not None
    assert [row.size for row in desk.result.figures.sizes] == ["-4", "-6", "-8", "-10", "-12", "-16"]
    # 750 hp on E10 burns 78 gal/h.
    assert "78" in sentence(desk)


@pytest.mark.parametrize("example", sorted(path.stem for path in EXAMPLES.glob("*.toml")))
def test_the_answer_is_that_of_the_file(tmp_path: Path, example: str) -> None:
    desk = opened(tmp_path, example)
    session = validate(desk.plain, example)
    assert not desk.complete
    desk.finish()
    assert desk.complete
    figures = quick_figures(session)
    assert desk.result == result(session, figures)


def test_the_slower_parts_come_when_typing_pauses(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    assert desk.result is not None
    assert desk.result.figures.stress == ()
    desk.finish()
    assert desk.result.figures.stress
    desk.type("goal.power", "740")
    assert not desk.complete


def test_the_answer_stands_on_the_last_good_value(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    before = sentence(desk)
    desk.type("pressure.boost", "22 gal/h")
    assert desk.held == f"Not updated: still using boost 22{NB}psi until yours can be read."
    assert sentence(desk) == before
    desk.type("goal.power", "300")
    assert sentence(desk) != before
    assert desk.held is not None
    desk.type("pressure.boost", "10")
    assert desk.held is None


def test_all_that_cannot_be_read_is_named(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("pressure.boost", "22 gal/h")
    desk.type("fuel.temperature", "hot")
    desk.type("pressure.base", "lots")
    assert desk.held is not None
    first, nor = desk.held.split(" until yours can be read.")
    named = {"boost", "base pressure", "fuel temperature"}
    (held,) = {noun for noun in named if noun in first}
    assert nor.startswith(" Nor can yours of ")
    assert set(nor.removeprefix(" Nor can yours of ").rstrip(".").split(", ")) == named - {held}


def test_the_answer_stands_on_a_fallback_where_nothing_was_told(tmp_path: Path) -> None:
    desk = told(tmp_path, pressure__boost="lots")
    assert desk.held == f"Not updated: still using boost 15{NB}psi until yours can be read."


def test_an_emptied_power_holds_the_answer(tmp_path: Path) -> None:
    desk = told(tmp_path)
    before = sentence(desk)
    desk.type("goal.power", "")
    assert sentence(desk) == before
    assert desk.held == f"Not updated: still using power 750{NB}hp until yours can be read."


def test_what_is_begun_is_left_out_until_it_is_whole(tmp_path: Path) -> None:
    desk = told(tmp_path, wiring__length="14")
    assert desk.result is not None
    assert desk.result.session.wiring is None
    assert list(desk.refused) == ["wiring.supply"]
    assert desk.held is not None
    assert desk.held.startswith("Wiring: give the supply voltage;")
    desk.type("wiring.supply", "lots")
    assert desk.held == "Not updated: supply voltage is left out until it can be read."
    desk.type("goal.power", "400")
    assert desk.result.session.goal.power == pytest.approx(400 * 745.69987, rel=1e-6)
    desk.type("wiring.supply", "13.8")
    assert desk.refused == {}
    assert desk.result.session.wiring is not None


def test_two_answers_that_do_not_fit_are_said_at_the_one_to_change(tmp_path: Path) -> None:
    desk = opened(tmp_path, "twins")
    desk.type("pump.running_at_idle", "2")
    desk.type("pump.count", "1")
    assert desk.text_in_field("pump.running_at_idle").refused == "1 is wanted"
    assert (
        desk.refused["pump.running_at_idle"]
        == "Number of pumps at idle wants 1, as number of pumps is 1, got 2."
    )
    desk.type("pump.running_at_idle", "")
    assert desk.refused == {}


def test_a_fuel_of_ones_own_holds_the_answer_until_its_figures_are_there(tmp_path: Path) -> None:
    desk = told(tmp_path)
    before = desk.result
    desk.choose("fuel.which", "own")
    assert list(desk.refused) == ["fuel.density", "fuel.viscosity", "fuel.lhv"]
    assert desk.result == before
    desk.type("fuel.density", "745")
    desk.type("fuel.viscosity", "0.6")
    desk.type("fuel.lhv", "43.4")
    assert desk.refused == {}
    assert desk.result is not None
    assert desk.result.figures.fuel.density_kg_m3 == pytest.approx(745)


def test_a_size_that_the_hose_has_not_is_refused_where_it_stands(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("feed.chosen", "-7")
    assert desk.refused["feed.chosen"].startswith("Chosen size wants a size that its hose has")
    assert desk.held is not None
    desk.type("feed.chosen", "-8")
    assert desk.refused == {}


def test_another_runs_fault_is_not_that_of_the_one_taken_away(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("feed.run.1.length", "wide")
    desk.remove("feed.run", 0)
    assert desk.text_in_field("feed.run.0.length").text == "wide"
    assert list(desk.refused) == ["feed.run.0.length"]
    assert desk.held == f"Not updated: still using length of the run 3.5{NB}ft until yours can be read."
    desk.remove("feed.run", 0)
    assert desk.refused == {}


def test_runs_move_with_what_stands_in_them(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("feed.run.1.length", "wide")
    desk.move("feed.run", 1, 0)
    assert desk.value("feed.run.0.what") == "along the rail"
    assert desk.text_in_field("feed.run.0.length").text == "wide"
    assert desk.value("feed.run.1.length") == "13 ft"


def test_opening_a_build_loads_nothing_that_calculates() -> None:
    code = (
        "import sys; from pathlib import Path; from fuelwiz.desk import Desk\n"
        f"desk = Desk.open(Path({str(EXAMPLES / 'hill-climb-six.toml')!r}))\n"
        "print(desk.text_in_field('goal.power').text, desk.text_in_field('goal.reserve').text, desk.name)\n"
        "print(sorted({'pint', 'scipy', 'fluids', 'tomlkit', 'textual', 'rich'} & set(sys.modules)))\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "750 15 Hill-climb six\n[]\n"
