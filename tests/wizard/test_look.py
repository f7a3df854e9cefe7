"""What a terminal is taken for, and that every color on it can be read."""

from __future__ import annotations

from typing import Any, get_args

import pytest
from rich.color import ColorType
from rich.style import Style

from fuelwiz.terminal.palette import Ground, Role
from fuelwiz.wizard.look import Look, look_of

# Contrast on the background and on the highlighted row, as the project's design table prints them.
PRINTED: dict[Role, tuple[tuple[float, float], tuple[float, float]]] = {
    "text": ((13.4, 9.4), (17.0, 14.7)),
    "muted": ((7.9, 5.6), (7.1, 6.1)),
    "focus": ((11.8, 8.3), (6.4, 5.6)),
    "easy": ((10.5, 7.4), (7.5, 6.5)),
    "good": ((11.3, 8.0), (8.0, 6.9)),
    "brisk": ((13.5, 9.5), (6.7, 5.8)),
    "fast": ((10.3, 7.3), (5.7, 4.9)),
    "too fast": ((8.1, 5.7), (7.4, 6.4)),
    "fault": ((8.1, 5.7), (7.4, 6.4)),
}
GROUNDS: tuple[Ground, ...] = get_args(Ground)
BANDS: tuple[Role, ...] = ("easy", "good", "brisk", "fast", "too fast")
OTHER_MARKS = (
    *("works", "stop", "warning", "note", "untouched", "done", "look here", "not sure", "pointer", "unknown"),
    *("chosen", "bar", "could", "goal", "rule", "axis", "corner", "crossing"),
)
# The sixteen colors of a VGA text console, the first eight and bright white; from memory.
VGA = {
    0: (0, 0, 0),
    1: (170, 0, 0),
    2: (0, 170, 0),
    3: (170, 85, 0),
    5: (170, 0, 170),
    6: (0, 170, 170),
    15: (255, 255, 255),
}


def luminance(red: int, green: int, blue: int) -> float:
    """Relative luminance as WCAG 2.2 defines it (W3C Recommendation, section "relative luminance")."""
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in (red / 255, green / 255, blue / 255)
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: tuple[int, ...], other: tuple[int, ...]) -> float:
    """Contrast ratio as WCAG 2.2 defines it (section "contrast ratio")."""
    lighter, darker = sorted((luminance(*one), luminance(*other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def on_screen(style: Style) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Ink and paper of a style, as the library rich has the cells of the xterm palette that it names."""
    assert style.color.type is ColorType.EIGHT_BIT and style.bgcolor.type is ColorType.EIGHT_BIT
    return tuple(style.color.get_truecolor()), tuple(style.bgcolor.get_truecolor())


def test_contrast_of_black_and_white_is_the_one_of_the_standard() -> None:
    assert contrast((0, 0, 0), (255, 255, 255)) == pytest.approx(21.0)  # WCAG 2.2: ratios range from 1 to 21


@pytest.mark.parametrize("light", [False, True])
@pytest.mark.parametrize("role", PRINTED)
def test_every_role_reads_on_background_and_row(role: Role, light: bool) -> None:
    look = Look(light=light)
    for ground, printed in zip(GROUNDS[:2], PRINTED[role][light], strict=True):
        for style in (look.style(role, ground), look.chip(role, ground), look.style(role, "chosen")):
            assert contrast(*on_screen(style)) >= 4.5  # WCAG 2.2, 1.4.3, level AA
        # The table prints one decimal.
        assert contrast(*on_screen(look.style(role, ground))) == pytest.approx(printed, abs=0.06)


@pytest.mark.parametrize("light", [False, True])
@pytest.mark.parametrize("ground", ["field", "bar"])
def test_text_reads_in_fields_and_bars(ground: Ground, light: bool) -> None:
    roles: tuple[Role, ...] = ("text", "muted", "focus", "fault")
    for role in roles:
        assert contrast(*on_screen(Look(light=light).style(role, ground))) >= 4.5


@pytest.mark.parametrize("role", BANDS)
def test_sixteen_colors_color_the_mark_alone(role: Role) -> None:
    look = Look(colors="16")
    chip = look.chip(role)
    ink, paper = VGA[chip.color.number], VGA[chip.bgcolor.number]
    assert contrast(ink, paper) >= 3.0  # WCAG 2.2, 1.4.11: a graphical object; its word stands beside it
    word = look.style(role)
    assert word.color is None and word.bgcolor is None


def test_without_colors_no_style_has_one() -> None:
    look = Look(colors="none")
    for role in PRINTED:
        for ground in GROUNDS:
            for style in (look.style(role, ground), look.chip(role, ground, True)):
                assert style.color is None and style.bgcolor is None


def test_focus_and_highlight_show_without_colors() -> None:
    for colors in ("16", "none"):
        look = Look(colors=colors)
        assert look.style("focus").bold and look.style("fault").bold and look.style("text", "row").bold
        assert look.style("text", "chosen").reverse and look.style("text", "field").underline


def test_a_held_answer_has_no_hue() -> None:
    for colors in ("256", "16", "none"):
        look = Look(colors=colors)
        for role in PRINTED:
            assert look.grayed.style(role, "row") == look.grayed.style("muted", "row")
            assert look.grayed.chip(role) == look.grayed.style("muted")


@pytest.mark.parametrize(
    ("environ", "expected"),
    [
        ({"TERM": "xterm-256color", "LANG": "en_GB.UTF-8"}, Look()),
        ({"TERM": "xterm-256color", "COLORTERM": "truecolor", "LC_ALL": "de_DE.utf8"}, Look()),
        ({"TERM": "xterm", "COLORTERM": "24bit", "LC_CTYPE": "UTF-8"}, Look()),
        ({"TERM": "xterm-kitty", "LANG": "C.UTF-8"}, Look()),
        ({"TERM": "screen", "LANG": "C.UTF-8"}, Look(colors="16")),
        ({"TERM": "linux", "LANG": "C.UTF-8"}, Look(unicode=False, colors="16")),
        ({"TERM": "vt100", "LANG": "C.UTF-8"}, Look(unicode=False, colors="none")),
        ({"TERM": "vt220", "COLORTERM": "truecolor"}, Look(unicode=False, colors="none")),
        ({"TERM": "dumb", "LANG": "C.UTF-8"}, Look(unicode=False, colors="none")),
        ({}, Look(unicode=False, colors="none")),
        ({"TERM": "xterm-256color", "NO_COLOR": "1", "LANG": "C.UTF-8"}, Look(colors="none")),
        (
            {"TERM": "xterm-256color", "NO_COLOR": "", "LANG": "C.UTF-8"},
            Look(),
        ),  # no-color.org: not when empty
        ({"TERM": "xterm-256color", "LANG": "en_GB.ISO-8859-1"}, Look(unicode=False)),
        ({"TERM": "xterm-256color", "LANG": "en_GB.UTF-8", "LC_ALL": "C"}, Look(unicode=False)),
        # PEP 538: Python puts LC_CTYPE=C.UTF-8 into the C locale by itself
        ({"TERM": "xterm-256color", "LANG": "C", "LC_CTYPE": "C.UTF-8"}, Look(unicode=False)),
        ({"TERM": "xterm-256color", "LANG": "C.UTF-8", "FUELWIZ_BACKGROUND": "light"}, Look(light=True)),
        ({"TERM": "xterm-256color", "LANG": "C.UTF-8", "COLORFGBG": "0;15"}, Look(light=True)),
        ({"TERM": "xterm-256color", "LANG": "C.UTF-8", "COLORFGBG": "15;default;0"}, Look()),
        (
            {"TERM": "xterm-256color", "LANG": "C.UTF-8", "COLORFGBG": "0;15", "FUELWIZ_BACKGROUND": "dark"},
            Look(),
        ),
    ],
)
def test_a_terminal_is_known_by_its_environment(environ: dict[str, str], expected: Any) -> None:
    assert look_of(environ) == expected


@pytest.mark.parametrize(
    ("text", "folded"),
    [
        ("−20 … 90° at 40 °C", "-20 ... 90 deg at 40 C"),
        ("Café Mühle, 3½ in", "Cafe Muhle, 3 1/2 in"),
        ("✓✓ ~ ✗ ▸ – · ─│└┊◆█▒", "++ ~ x > - . -|+:X#="),
        ("燃料", "??"),
        ("4 mm² × 2", "4 mm2 x 2"),
    ],
)
def test_text_folds_to_ascii(text: str, folded: str) -> None:
    assert Look(unicode=False).fold(text) == folded
    assert Look().fold(text) == text


def test_a_no_break_space_outlives_folding() -> None:
    assert Look(unicode=False).fold("3\u00a0psi ✓") == "3\u00a0psi +"


def test_every_mark_has_an_ascii_form() -> None:
    for name in (*BANDS, *OTHER_MARKS):
        mark = Look(unicode=False).mark(name)
        assert mark.isascii() and len(mark) == len(Look().mark(name))
    assert len({Look(unicode=False).mark(band) for band in BANDS}) == len(BANDS)
