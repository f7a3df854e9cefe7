"""What the form says of itself: the way back, what is taken, and texts that are cut between words."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.editor.row_painter import row_strip
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import DoRow, FieldRow, ItemRow
from fuelwiz.wizard.live.path import _short
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area, clip_words

from .keyboard import at_build, copy_of, flat


def with_a_run(folder: Path) -> Form:
    desk = Desk.new(folder)
    desk.type("goal.power", "410 hp")
    desk.type("feed.length", "16 ft")
    form = Form(desk, "lines")
    form.toggle_more()
    adds = [
        at
        for at, row in enumerate(form.pointer.rows)
        if isinstance(row, DoRow) and row.act == "add" and row.list_path == "feed.run"
    ]
    form.focus_on(adds[0])
    return form


def test_the_length_that_is_taken_for_a_further_run_is_named(tmp_path: Path) -> None:
    form = with_a_run(tmp_path)
    form.key("enter", None)
    taken = form.desk.text_in_field("feed.run.1.length")
    assert taken.assumed
    assert form.note == f"Taken as {taken.text} {taken.unit} long until you type its length. Esc goes back."


def test_the_row_of_a_run_says_which_of_its_figures_is_assumed(tmp_path: Path) -> None:
    form = with_a_run(tmp_path)
    form.key("enter", None)
    form.close_entry()
    first, second = [
        row for row in form.pointer.rows if isinstance(row, ItemRow) and row.list_path == "feed.run"
    ]
    assert (first.columns[3], first.is_guessed) == ("no fittings", False)
    assert (second.columns[3], second.is_guessed) == ("length assumed, no fittings", True)
    grounds = [row_strip(row, form.desk, Area(Look(), 60, 1), None) for row in (first, second)]
    inks = [[style.color for text, style, _ in strip if "16" in text or "15" in text] for strip in grounds]
    assert inks == [[Look().style("text").color], [Look().style("muted").color]]
    form.desk.type("feed.run.1.length", "15")
    form.rebuild()
    told = [row for row in form.pointer.rows if isinstance(row, ItemRow) and row.list_path == "feed.run"][1]
    assert (told.columns[3], told.is_guessed) == ("no fittings", False)


@pytest.mark.parametrize("width", [80, 60])
def test_a_supply_is_said_to_be_needed_with_a_wire_and_asked_for_once_there_is_one(
    tmp_path: Path, width: int
) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    form = Form(desk, "wiring")

    def rows() -> list[str]:
        fields = [row for row in form.pointer.rows if isinstance(row, FieldRow)]
        return [row_strip(row, desk, Area(Look(), width, 1), None).text.rstrip() for row in fields[:2]]

    supply, wire = rows()
    assert supply.endswith("needed with wire") and wire.endswith("may stay empty")
    desk.type("wiring.wire", "12 AWG")
    assert rows()[0].endswith("! needed: a voltage")
    assert desk.held == "Wiring: give the supply voltage; what it belongs to is left out until then."


@pytest.mark.parametrize("size", [(80, 24), (60, 20)])
async def test_the_footer_of_an_entry_says_how_to_leave_it(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        keys.form.open_entry("feed.run", 0)
        await keys.press("down")
        assert "Esc back" in flat(keys.part("footer"))
        await keys.press("escape")
        assert not keys.form.place.in_entry and "Esc back" not in flat(keys.part("footer"))


async def test_the_further_steps_offer_to_try_something(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), (120, 36)) as keys:
        keys.form.go_to_step("lines")
        await keys.press("down")
        assert "PgDn size" in flat(keys.part("footer"))
        for step in ("inlet", "summary"):
            keys.form.go_to_step(step)
            await keys.press("down")
            assert "Ctrl+G x what if" in flat(keys.part("footer")), step
            assert ("F4 step" in flat(keys.part("footer"))) is (step != "summary"), step
        await keys.press("ctrl+g", "x")
        keys.form.go_to_step("summary")
        await keys.press("down")
        assert "what if" not in flat(keys.part("footer")), "there is none of a what-if"


@pytest.mark.parametrize("width", [45, 53])
def test_in_a_narrow_form_what_is_assumed_is_said_in_one_column(tmp_path: Path, width: int) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    lines = []
    for step in ("goal", "pressure", "wiring", "injectors"):
        rows = Form(desk, step).pointer.rows
        lines += [row_strip(row, desk, Area(Look(), width, 1), None).text for row in rows]
    tagged = [line.rstrip() for line in lines if line.rstrip().endswith("assumed")]
    of_choices = [line for line in tagged if "<" in line]
    assert len(of_choices) > 2 and len(tagged) > len(of_choices) + 1
    assert {len(line) for line in tagged} == {width}
    assert all(" assumed" in line for line in tagged)


@pytest.mark.parametrize("size", [(80, 24), (120, 36)])
async def test_what_is_taken_for_the_kind_of_pump_is_said(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        keys.desk.unsure("pump.kind")
        keys.form.go_to_path("pump.kind")
        await keys.press("up")
        row = next(line for line in keys.part("form") if "Kind of pump" in line)
        assert "assumed" in row and "lower of " in row and "•" not in row
        keys.form.go_to_path("pump.kind")
        await keys.press("right", "up")
        row = next(line for line in keys.part("form") if "Kind of pump" in line)
        assert "lower of " not in row


@pytest.mark.parametrize(
    ("text", "width", "shown"),
    [
        ("more: reserve, fuel use, points of a pull", 30, "more: reserve, fuel use …"),
        ("more: reserve, fuel use, points of a pull", 60, "more: reserve, fuel use, points of a pull"),
        ("more: reserve, fuel use, points of a pull", 25, "more: reserve, fuel use …"),
        ("regulator", 5, "regu…"),
    ],
)
def test_a_text_is_cut_between_words(text: str, width: int, shown: str) -> None:
    assert clip_words(text, width, "…") == shown


@pytest.mark.parametrize(
    ("room", "shown"),
    [
        (30, "1.05 of 2.38 bar at idle"),
        (18, "1.05 of 2.38 bar"),
        (14, "1.05"),
    ],
)
def test_what_comes_out_is_said_shorter_before_it_is_cut(room: int, shown: str) -> None:
    assert _short("1.05 of 2.38 bar at idle", room) == shown


@pytest.mark.parametrize(
    ("room", "shown"),
    [
        (24, "needs 76.8, has 66.0\u00a0psi"),
        (23, "needs 76.8, has 66.0"),
        (20, "needs 76.8, has 66.0"),
        (19, "needs 76.8"),
    ],
)
def test_what_a_pump_has_is_never_cut_within_its_figure(room: int, shown: str) -> None:
    assert _short("needs 76.8, has 66.0\u00a0psi", room) == shown


@pytest.mark.parametrize("width", [45, 60, 80])
def test_what_is_on_a_row_of_a_list_is_cut_between_its_parts(tmp_path: Path, width: int) -> None:
    path = copy_of("full-session", tmp_path)
    path.write_text(
        path.read_text(encoding="utf-8")
        + '[[stress.case]]\nname = "hill"\n[stress.case.change]\n'
        + '"fuel.temperature" = "55 degC"\n"goal.power" = "430 hp"\n"pressure.boost" = "21 psi"\n',
        encoding="utf-8",
    )
    desk = Desk.open(path)
    rows = [row for row in Form(desk, "stress").pointer.rows if isinstance(row, ItemRow)]
    line = row_strip(rows[-1], desk, Area(Look(), width, 1), None).text.rstrip()
    assert line.startswith("   hill "), line
    assert line.endswith({45: " …", 60: "fuel temperature 55 °C …", 80: "boost 21 psi"}[width]), line
    assert "fuel temperature" in line
