"""The live pane on a screen: what shows at which size, and how little of it is sent again."""

from __future__ import annotations

from contextlib import AbstractAsyncContextManager
from dataclasses import replace
from typing import Any

import pytest
from rich.console import Console
from textual.app import App, ComposeResult
from textual.geometry import Region
from textual.pilot import Pilot
from textual.strip import Strip
from textual.widget import Widget

from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.live.answer import answer_lines
from fuelwiz.wizard.live.layout import layout_for
from fuelwiz.wizard.live.pane import LivePane
from fuelwiz.wizard.live.rule import VIEWS
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .results import LOOKS, NAMES, crossing_lines, drawn_result

SIZES = [(60, 13), (80, 14), (80, 21), (59, 27), (59, 34), (80, 48), (109, 20), (59, 10), (60, 5)]
HELD = "Not updated: still using boost 22\u00a0psi until yours can be read."


class Shown(App[None]):
    """An app that is nothing but the pane, and keeps what it asks to be drawn again."""

    def __init__(self, look: Look) -> None:
        super().__init__(ansi_color=True)
        self.pane = LivePane(look, crossing_lines)
        self.regions: list[Region] = []

    def compose(self) -> ComposeResult:
        yield self.pane

    def on_mount(self) -> None:
        refresh = self.pane.refresh

        def kept(*regions: Region, **options: Any) -> Widget:
            self.regions.extend(regions)
            return refresh(*regions, **options)

        self.pane.refresh = kept  # type: ignore[method-assign,assignment]


def app_of(pilot: Pilot[None]) -> Shown:
    app = pilot.app
    assert isinstance(app, Shown)
    return app


def lines_of(pane: LivePane) -> list[str]:
    return [pane.render_line(y).text.rstrip() for y in range(pane.size.height)]


def shown(
    size: tuple[int, int] = (80, 14), look: Look | None = None
) -> AbstractAsyncContextManager[Pilot[None]]:
    return Shown(look or Look()).run_test(size=size)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("view", VIEWS)
async def test_every_view_fills_every_size(size: tuple[int, int], view: str) -> None:
    async with shown(size) as pilot:
        pane = app_of(pilot).pane
        for name in NAMES:
            for focused in (False, True):
                pane.table_focused = focused
                for held in (None, HELD):
                    pane.show(drawn_result(name), "-8", held=held, view=view)
                    drawn = [pane.render_line(y) for y in range(size[1])]
                    assert {line.cell_length for line in drawn} == {size[0]}
                    assert f"[{view}]" in drawn[0].text


@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
async def test_reading_order_is_rule_answer_table_words(look: Look) -> None:
    async with shown(look=look) as pilot:
        app_of(pilot).pane.show(drawn_result("hill-climb-six"), "-6")
        lines = lines_of(app_of(pilot).pane)
        assert "[sizes]" in lines[0] and "Short of your reserve" in lines[1] and "Tightest" in lines[2]
        assert lines[5].split()[0] == "Size" and "-4" in lines[6] and "-16" in lines[11]
        assert [line.split()[0] for line in lines[12:]] == ["no", "means"]


async def test_a_view_takes_the_place_of_the_table_on_a_small_screen() -> None:
    async with shown((80, 14)) as pilot:
        app_of(pilot).pane.show(drawn_result("hill-climb-six"), "-8", view="ladder")
        lines = lines_of(app_of(pilot).pane)
        assert (
            "Short of your reserve" in lines[1] and "-8 at goal" in lines[5] and "must make" in "".join(lines)
        )
        assert not any("Velocity is" in line for line in lines)


@pytest.mark.parametrize("view", VIEWS)
async def test_a_view_turns_the_picture_alone_on_a_high_screen(view: str) -> None:
    async with shown((59, 34)) as pilot:
        app_of(pilot).pane.show(drawn_result("hill-climb-six"), "-8", view=view)
        lines = "\n".join(lines_of(app_of(pilot).pane))
        assert "Velocity is" in lines and "means" in lines
        sign = {
            "path": "-8 PTFE",
            "changes": "One change",
            "how sure": "Breaks at",
            "curves": "meet at",
            "ceilings": "By rule of thumb",
            "bad days": "Case",
            "findings": "Stop",
        }
        assert sign.get(view, "could make") in lines


async def test_ladder_and_curves_both_show_where_there_is_room() -> None:
    async with shown((80, 48)) as pilot:
        for view in ("sizes", "ladder", "curves"):
            app_of(pilot).pane.show(drawn_result("hill-climb-six"), "-8", view=view)
            lines = "\n".join(lines_of(app_of(pilot).pane))
            assert "could make" in lines and "meet at" in lines


async def test_before_the_first_answer_it_says_where_to_begin() -> None:
    async with shown() as pilot:
        app_of(pilot).pane.show(None, "")
        assert "power" in lines_of(app_of(pilot).pane)[1]


async def test_a_held_answer_is_grey_and_says_why() -> None:
    async with shown() as pilot:
        pane = app_of(pilot).pane
        pane.show(drawn_result("hill-climb-six"), "-8", held=HELD)
        assert "Not updated: still using" in lines_of(pane)[2]
        table = [style.color for y in range(5, 14) for _, style, _ in pane.render_line(y)]
        assert set(table) == {Look().style("muted").color}


async def test_only_the_cells_that_changed_are_drawn_again() -> None:
    async with shown() as pilot:
        app, result = app_of(pilot), drawn_result("hill-climb-six")
        app.pane.show(result, "-8")
        await pilot.pause()
        app.regions.clear()
        app.pane.show(result, "-8")
        assert app.regions == []
        faster = replace(result.figures.sizes[5], velocity_m_s=0.5)
        changed = replace(result, figures=replace(result.figures, sizes=(*result.figures.sizes[:5], faster)))
        app.pane.show(changed, "-8")
        (region,) = app.regions
        assert (region.y, region.height) == (11, 1)  # -16 stands in line 11; 0.9 ft/s becomes 1.6 ft/s
        before, after = "-16        0.875     0.9", "-16        0.875     1.6"
        first = next(at for at, pair in enumerate(zip(before, after, strict=True)) if pair[0] != pair[1])
        assert (region.x, region.right) == (3 + first, 3 + len(after))


@pytest.mark.parametrize("look", [Look(), Look(light=True)])
async def test_a_change_of_every_row_costs_little(look: Look) -> None:
    """The terminal gets each changed line up to its last changed cell, and a move of the cursor before it."""
    async with shown(look=look) as pilot:
        app, console = app_of(pilot), Console(color_system="256", force_terminal=True)
        app.pane.show(drawn_result("hill-climb-six"), "-8")
        await pilot.pause()
        for name in ("twins", "full-session", "mild", "hill-climb-six"):
            app.regions.clear()
            app.pane.show(drawn_result(name), "-8")
            assert len(app.regions) >= 8
            sent = [app.pane.render_line(region.y).crop(0, region.right) for region in app.regions]
            moves = len("\x1b[24;80H") * len(sent)
            assert sum(len(Strip(list(line)).render(console).encode()) for line in sent) + moves <= 3000


async def test_a_resized_pane_is_laid_out_anew() -> None:
    async with shown((80, 14)) as pilot:
        pane = app_of(pilot).pane
        pane.show(drawn_result("hill-climb-six"), "-8")
        await pilot.resize_terminal(60, 13)
        await pilot.pause()
        assert lines_of(pane)[1].startswith(" ! Short of your reserve")
        assert lines_of(pane)[4].split()[:3] == ["Size", "in", "ft/s"]


async def test_a_long_list_scrolls_and_stops_at_its_end() -> None:
    async with shown() as pilot:
        pane = app_of(pilot).pane
        pane.show(drawn_result("hill-climb-six"), "-8", view="findings")
        assert lines_of(pane)[-1].strip().startswith("more below")
        top = lines_of(pane)[3]
        pane.scroll_lines(500)
        assert not lines_of(pane)[-1].strip().startswith("more below")
        last = drawn_result("hill-climb-six").words.cautions[-1]
        assert lines_of(pane)[-1].strip() in last and last.endswith(lines_of(pane)[-1].strip())
        pane.scroll_lines(-500)
        assert lines_of(pane)[3] == top


async def test_the_table_in_focus_has_the_longer_words() -> None:
    async with shown((80, 21)) as pilot:
        pane = app_of(pilot).pane
        pane.show(drawn_result("hill-climb-six"), "-8")
        assert not any("quoted" in line for line in lines_of(pane))
        pane.table_focused = True
        pane.repaint()
        assert any("quoted" in line for line in lines_of(pane))


async def test_wide_letters_are_compared_by_cells() -> None:
    async with shown() as pilot:
        app, result = app_of(pilot), drawn_result("full-session")
        names = tuple(f"燃料 {at}" for at in range(len(result.figures.stress)))
        wide = replace(result, words=replace(result.words, case_names=names))
        app.pane.show(wide, "-8", view="bad days")
        app.regions.clear()
        app.pane.show(result, "-8", view="bad days")
        assert app.regions and all(region.right <= 80 for region in app.regions)


@pytest.mark.parametrize("focused", [False, True])
@pytest.mark.parametrize("width", [59, 60, 80, 109])
@pytest.mark.parametrize("sizes", [1, 6, 24])
def test_the_parts_fit_into_the_pane(width: int, sizes: int, focused: bool) -> None:
    for height in range(3, 70):
        layout = layout_for(width, height, sizes, focused)
        pictures = sum(layout.pictures) + len(layout.pictures)
        least = min(layout.table, layout.rest)
        assert 1 + layout.answer + layout.rest <= max(height, 1 + layout.answer)
        assert least + layout.gap + layout.explanation + pictures <= max(layout.rest, layout.table)
        assert all(rows >= 10 for rows in layout.pictures)


@pytest.mark.parametrize("wanted", [4, 5, 6, 7, 9, 20])
@pytest.mark.parametrize("free", [0, 1, 3])
@pytest.mark.parametrize(("width", "height"), [(59, 27), (59, 32), (80, 14), (80, 44), (80, 48)])
def test_an_explanation_takes_blank_rows_before_it_is_cut(
    width: int, height: int, free: int, wanted: int
) -> None:
    before = layout_for(width, height, 6, False, wanted)
    free = free if before.pictures else 0
    after = before.with_words(wanted, free)
    assert after.explanation == max(before.explanation, min(wanted, before.explanation + free + before.gap))
    rows = [part.gap + part.explanation + sum(part.pictures) for part in (before, after)]
    assert rows[0] == rows[1]
    assert after.gap == before.gap or after.explanation >= before.explanation + free + 1


def test_what_an_explanation_does_not_want_goes_to_the_pictures() -> None:
    short, long = (layout_for(80, 44, 6, False, wanted) for wanted in (5, 7))
    assert short.explanation == 5 and long.explanation == 7
    assert sum(short.pictures) == sum(long.pictures) + 2


@pytest.mark.parametrize(("size", "height"), [("-4", 31), ("-6", 31), ("-8", 31), ("-6", 44)])
async def test_no_word_of_an_explanation_is_cut_while_a_row_is_free(size: str, height: int) -> None:
    result = drawn_result("hill-climb-coupe")
    area = Area(Look(), 59 if height == 31 else 80, height)
    async with shown((area.width, height)) as pilot:
        pane = app_of(pilot).pane
        pane.show(result, size)
        lines = lines_of(pane)
        at = next(row for row, line in enumerate(lines) if line.strip().startswith("-16"))
        end = next(row for row, line in enumerate(lines) if "at goal" in line)
        said = [row for row in range(at + 1, end) if lines[row].strip()]
        is_cut = any(lines[row].rstrip().endswith("…") for row in said)
        free = end - at - 1 - len(said) - 1 + sum(not line.strip() for line in lines[end:])
        assert not (is_cut and free) and end - said[-1] - 1 <= 2


@pytest.mark.parametrize(
    ("width", "height", "pictures"),
    [(60, 13, 0), (80, 14, 0), (59, 27, 0), (59, 32, 1), (80, 44, 2)],
)
def test_pictures_stand_under_the_table_where_there_is_room(width: int, height: int, pictures: int) -> None:
    # of a terminal of 60x20, 80x24 or 110x30 none; of 120 columns one from 34 rows on; of 160 two from 46 on
    assert len(layout_for(width, height, 6, False).pictures) == pictures


@pytest.mark.parametrize(("name", "role"), [("hill-climb-coupe", "easy"), ("hill-climb-six", "too fast")])
@pytest.mark.parametrize("look", [Look(), Look(light=True)])
def test_the_verdict_is_what_the_eye_meets_first(name: str, role: Role, look: Look) -> None:
    """Alone among the lines of the answer it has a color, bold, on a ground of its own."""
    first, *others = answer_lines(drawn_result(name), Area(look, 80, 4))
    wanted = look.style(role, "row", bold=True)
    assert {style for piece, style, _ in first if piece.strip()} == {wanted}
    for line in others:
        assert all(style == look.style("text") for piece, style, _ in line if piece.strip())


@pytest.mark.parametrize("name", ["hill-climb-coupe", "hill-climb-six"])
def test_with_sixteen_colors_its_mark_is_a_colored_cell_and_its_words_are_the_terminals_own(
    name: str,
) -> None:
    first, *_ = answer_lines(drawn_result(name), Area(Look(colors="16"), 80, 4))
    (mark, chip, _), (_, words, _) = [piece for piece in first if piece[0].strip()]
    assert mark.strip() in ("✓", "!") and chip.bgcolor is not None
    assert words.bold and words.color is None and words.bgcolor is None
