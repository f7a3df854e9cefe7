"""The page that F1 opens on the list: what its columns and marks mean, and the words of the trade."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.words_screen import word_lines

LABEL, TEXT = 1, 12
BELOW = "PgDn for the rest"
BANDS: tuple[Role, ...] = ("easy", "good", "brisk", "fast", "too fast")
VELOCITY = "Velocity"
WORDS = (
    ("Builds", "All builds in this folder, the last changed on top. Each is a plain text file."),
    ("Goal", "The power wanted, as you gave it: at the crank or at the wheels."),
    ("Line", "The chosen size of the feed line, or the one to fit."),
    ("Works", "Yes where pump, line and everything else known is big enough for the goal plus your reserve."),
    (VELOCITY, "How fast the fuel runs in that line, or how many steps are still open."),
    ("Changed", "When the file was last written. A draft is work that is not saved yet."),
    ("Below", "The answer for the highlighted build, its last change, and how much is only assumed."),
    ("Compare", "Space marks a build; x shows the marked ones side by side."),
    ("Bin", "d moves a build to the folder .bin beside the others; u restores the last one."),
)  # fmt: skip


def help_lines(scrolled: int, area: Area) -> list[Strip]:
    """The page from a line on."""
    title = area.row().put(LABEL, "Past builds: F1 or Esc closes", "focus", True).strip()
    most = most_scrolled(area)
    start = min(scrolled, most)
    lines = area.filled([title, area.row().strip(), *_all_lines(area)[start:]])
    return lines if start == most else [*lines[:-1], area.row().put(LABEL, BELOW, "muted").strip()]


def most_scrolled(area: Area) -> int:
    """How many lines the page can be scrolled."""
    return max(len(_all_lines(area)) + 2 - area.rows, 0)


def _all_lines(area: Area) -> list[Strip]:
    lines = []
    for label, text in WORDS:
        for number, part in enumerate(area.wrapped(text, TEXT)):
            line = area.row()
            if number == 0:
                line.put(LABEL, label, "muted")
            lines.append(line.put(TEXT, part).strip())
        if label == VELOCITY:
            lines.append(_bands(area))
    heading = area.row().put(LABEL, "Words of the trade", "focus", True).strip()
    return [*lines, area.row().strip(), heading, *word_lines(area)]


def _bands(area: Area) -> Strip:
    """The marks and words in their colors, from good to bad."""
    line = area.row().put(TEXT, "")
    for band in BANDS:
        line.lay(0, f"{area.look.mark(band):<2}", area.look.chip(band))
        line.put(0, f" {band}", band).put(0, " ")
    return line.strip()
