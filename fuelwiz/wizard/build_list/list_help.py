"""The page that F1 opens on the list: what its columns and marks mean."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area

LABEL, TEXT = 1, 12
BANDS: tuple[Role, ...] = ("easy", "good", "brisk", "fast", "too fast")
VERDICT = "Verdict"
WORDS = (
    ("Builds", "All that is kept in this folder, the last changed on top. Each is a plain text file."),
    ("Goal", "The power wanted, as you gave it: at the crank or at the wheels."),
    ("Line", "The size of feed line that is judged: the one settled on, else the one to fit."),
    (VERDICT, "How fast the fuel runs in that line. While steps are open it says how many."),
    ("Works", "Yes where pump, line and all else that is known hold at the goal, with the reserve on top."),
    ("Changed", "When the file was last written. A draft is work that is kept but not saved yet."),
    ("Below", "The answer for the build under the pointer, its last change, and how much is only assumed."),
    ("Compare", "Space marks a build; x puts the marked ones side by side."),
    ("Bin", "d puts a build into the folder .bin beside the others; u brings the last one back."),
)  # fmt: skip


def help_lines(scrolled: int, area: Area) -> list[Strip]:
    """The page from a line on."""
    title = area.row().put(LABEL, "Past builds: F1 or Esc closes", "focus", True).strip()
    start = min(scrolled, most_scrolled(area))
    return area.filled([title, area.row().strip(), *_all_lines(area)[start:]])


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
        if label == VERDICT:
            lines.append(_bands(area))
    return lines


def _bands(area: Area) -> Strip:
    """The marks and words in their colours, from good to bad."""
    line = area.row().put(TEXT, "")
    for band in BANDS:
        line.lay(0, f"{area.look.mark(band):<2}", area.look.chip(band))
        line.put(0, f" {band}", band).put(0, " ")
    return line.strip()
