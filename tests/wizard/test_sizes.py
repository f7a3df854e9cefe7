"""The table of sizes: columns that align at every width, and dashes for what is not known."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from textual.strip import Strip

from fuelwiz.wizard.live.sizes import header_rows, shown_sizes, size_lines
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .results import LOOKS, NAMES, drawn_result, text

WIDTHS = (59, 60, 66, 75, 76, 78, 79, 80, 95, 109)
NUMBER = re.compile(r"[−\d.]+|–")

# The table of the hill-climb six as it was drawn by hand, with two blanks between columns.
DRAWN_BY_HAND = {
    80: """\
   Size    Bore, in    ft/s  Velocity is  Loss, psi  Spare, %  Feeds, hp  Works
   -6*        0.313     7.4     brisk           8.0        13        851   ✗ no
 ▸ -8         0.406     4.4  ✓  good            3.3        17        880  ✓ yes
   -10        0.500     2.9  ✓✓ easy            2.0        18        888  ✓ yes
   -12        0.625     1.8  ✓✓ easy            1.5        19        891  ✓ yes
   -16        0.875     0.9  ✓✓ easy            1.3        19        893  ✓ yes""",
    60: """\
   Size      in  ft/s  Velocity is   psi     %    hp  Works
   -6*    0.313   7.4     brisk      8.0    13   851   ✗ no
 ▸ -8     0.406   4.4  ✓  good       3.3    17   880  ✓ yes
   -10    0.500   2.9  ✓✓ easy       2.0    18   888  ✓ yes
   -12    0.625   1.8  ✓✓ easy       1.5    19   891  ✓ yes
   -16    0.875   0.9  ✓✓ easy       1.3    19   893  ✓ yes""",
    59: """\
   Size  Bore       Velocity is  Loss  Spare  Feeds  Works
           in ft/s                psi      %     hp
   -6*  0.313  7.4     brisk      8.0     13    851   ✗ no
 ▸ -8   0.406  4.4  ✓  good       3.3     17    880  ✓ yes
   -10  0.500  2.9  ✓✓ easy       2.0     18    888  ✓ yes
   -12  0.625  1.8  ✓✓ easy       1.5     19    891  ✓ yes
   -16  0.875  0.9  ✓✓ easy       1.3     19    893  ✓ yes""",
}


def table(
    name: str = "hill-climb-six",
    width: int = 80,
    *,
    look: Look | None = None,
    rows: int = 8,
    units: str = "us",
    focused: bool = False,
) -> list[Strip]:
    return size_lines(drawn_result(name, units), "-8", Area(look or Look(), width, rows), focused)


@pytest.mark.parametrize("width", DRAWN_BY_HAND)
def test_the_table_is_the_one_drawn_by_hand(width: int) -> None:
    drawn = text(table(width=width))
    assert [line for line in drawn if not line.startswith("   -4")] == DRAWN_BY_HAND[width].splitlines()


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("width", WIDTHS)
def test_numbers_end_where_their_heads_do(name: str, units: str, width: int) -> None:
    lines = table(name, width, units=units)
    heads = lines[: header_rows(width)]
    ends = {match.end() for head in heads for match in re.finditer(r"\S+(?:, \S+)?", head.text)}
    for line in text(lines[len(heads) :]):
        numbers = [match for match in NUMBER.finditer(line, 9) if line[match.start() - 1] == " "]
        assert numbers, line
        assert {match.end() for match in numbers} <= ends, line


@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
@pytest.mark.parametrize("width", WIDTHS)
def test_no_line_is_wider_or_narrower_than_its_place(look: Look, width: int) -> None:
    for name in NAMES:
        for line in table(name, width, look=look):
            assert line.cell_length == width


def test_decimals_are_the_same_all_down_a_column() -> None:
    for units, decimals in (("us", (3, 1, 1, 0, 0)), ("metric", (1, 1, 2, 0, 0))):
        for line in text(table(units=units))[1:]:
            numbers = [part for part in line.split()[1 + line.startswith(" ▸") :] if NUMBER.fullmatch(part)]
            assert tuple(len(part.partition(".")[2]) for part in numbers) == decimals


def test_a_figure_never_lands_on_the_limit_that_judges_it() -> None:
    result = drawn_result("hill-climb-six")
    rows = tuple(replace(row, margin=0.1496, velocity_m_s=6.0004 * 0.3048) for row in result.figures.sizes)
    close = replace(result, figures=replace(result.figures, sizes=rows))
    line = size_lines(close, "-8", Area(Look(), 80, 2))[1].text
    assert " 14.96 " in line  # 15 % is wanted
    assert " 6.0004" in line  # 6 ft/s is the upper edge of "good"


def test_unknown_figures_are_dashes_and_the_verdict_stands() -> None:
    for line in text(table("goal-alone"))[2:]:
        assert line.split()[-4:] == ["–", "–", "–", "?"]
        assert re.search(r"(easy|good|brisk|fast|too fast) ", line)


def test_a_shortfall_has_a_true_minus() -> None:
    assert " −20 " in table()[1].text
    assert " -20 " in table(look=Look(unicode=False))[1].text


def test_the_settled_size_is_starred_and_the_highlighted_one_pointed_at() -> None:
    lines = text(table())
    assert [line[:6].strip() for line in lines if "*" in line] == ["-6*"]
    assert [line[:6] for line in lines if "▸" in line] == [" ▸ -8 "]


@pytest.mark.parametrize(
    ("count", "at", "rows", "first"),
    [(6, 2, 6, 0), (9, 0, 6, 0), (9, 4, 6, 1), (9, 8, 6, 3), (2, 1, 6, 0), (24, 12, 6, 9)],
)
def test_six_sizes_show_around_the_highlighted_one(count: int, at: int, rows: int, first: int) -> None:
    shown = shown_sizes(count, at, rows)
    assert shown.start == first and len(shown) == min(count, rows) and at in shown


def test_more_sizes_than_rows_keep_the_highlighted_one_in_sight() -> None:
    result = drawn_result("hill-climb-six")
    many = tuple(replace(result.figures.sizes[at % 6], size=f"{at + 3} mm") for at in range(20))
    wide = replace(result, figures=replace(result.figures, sizes=many, chosen="10 mm"))
    for row in many:
        drawn = text(size_lines(wide, row.size, Area(Look(), 60, 7)))
        assert len(drawn) == 7
        assert sum(line.startswith(f" ▸ {row.size}") for line in drawn) == 1


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("size", ["fixed", "3/8 in", "15/32 in"])
def test_a_long_size_keeps_clear_of_its_bore(width: int, size: str) -> None:
    result = drawn_result("hill-climb-six")
    rows = (replace(result.figures.sizes[0], size=size), *result.figures.sizes[1:])
    odd = replace(result, figures=replace(result.figures, sizes=rows, chosen=size))
    line = text(size_lines(odd, size, Area(Look(), width, 8)))[header_rows(width)]
    assert re.match(rf" ▸ {size.replace(' ', ' ?')}\* +0\.188 +20\.5 ", line)


def test_verdicts_read_without_color() -> None:
    for look in (LOOKS["none"], LOOKS["ascii"]):
        rows = table(look=look)[1:]
        speeds = {line.text[29:41].strip() for line in rows}
        ticks = {f"{look.mark(band):<2} {band}" for band in ("good", "easy")}
        assert speeds == ticks | {"too fast", "brisk"}
        told = {(bool(line.text[29:31].strip()), line.text[74:79].strip()) for line in rows}
        assert told == {(False, f"{look.mark('stop')} no"), (True, f"{look.mark('works')} yes")}


def test_hues_are_for_the_verdict_alone() -> None:
    look = Look()
    plain = {look.style(role, ground).color for role in ("text", "muted") for ground in ("background", "row")}
    for line in table()[1:]:
        hued = "".join(piece for piece, style, _ in line if style.color not in plain)
        assert " ".join(hued.split()) in {"✗ no", "✓ good ✓ yes", "✓✓ easy ✓ yes"}


def test_whether_it_works_outweighs_how_fast_it_flows() -> None:
    """Bold on every row, also where the velocity is not: the eye goes there first."""
    for line in table()[1:]:
        bold = {piece.strip() for piece, style, _ in line if style.bold}
        assert bold & {"yes", "✓ yes", "no", "✗ no"}
        if "▸" not in line.text:
            assert not bold & {"easy", "good", "✓✓ easy", "✓  good"}


def test_no_tick_stands_on_a_row_that_does_not_work() -> None:
    for name in NAMES:
        for line in table(name)[1:]:
            assert not ("✓" in line.text and " no" in line.text), line.text


def test_the_row_with_the_keys_is_reversed_where_there_are_few_colors() -> None:
    for colors in ("16", "none"):
        line = table(look=Look(colors=colors), focused=True)[3]
        assert "-8" in line.text and all(style.reverse for piece, style, _ in line if "✓" not in piece)
        assert not any(style.reverse for _, style, _ in table(look=Look(colors=colors))[3])


def test_with_sixteen_colors_a_yes_and_a_no_have_a_colored_cell_each() -> None:
    """A colored word would vanish on some background; the cell of the mark has ink and paper."""
    for line in table(look=Look(colors="16"))[1:]:
        ends = [style for piece, style, _ in line if piece.strip() in ("✓", "✗")]
        assert ends and all(style.color and style.bgcolor for style in ends), line.text
