"""What stands in an empty folder: one thing to do, what to have at hand, what to do without it, the caution."""

from __future__ import annotations

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.wizard.paint import Area, pad

POINTER, WORD, SAYS = 1, 3, 32
EMPTY = "No builds here yet."
CHOICES = (
    (
        "sample",
        "Start with a guided sample",
        ("an invented build: change it, watch the answer", "change an invented build"),
    ),
    ("new", "New build", ("an answer after five steps, about ten minutes", "about ten minutes")),
    ("file", "Open a file", ("a build from elsewhere",)),
    ("folder", "Another folder", ("builds are in {folder}", "builds kept elsewhere")),
)
"""What can be done first: its id, what it is called, and what it is, the last where a screen is narrow."""
WORDS = (
    "Good to have at hand: the power you want, the fuel, the boost, the pump's table of flow against pressure, "
    "and how much hose runs where.",
    "Nothing at hand? Type ? at most questions: a usual value is put in, marked as assumed, and you can change "
    "it later. Nothing you type is lost.",
    "Fuel under pressure burns people and cars. This is an aid to design, not an approval: makers' ratings, "
    "local codes, your sanctioning body and qualified people come first.",
)
_READS_WELL = 80


def first_time_lines(at: int, folder: str, area: Area) -> list[Strip]:
    """The choices with the pointer on one of them, and the words under them."""
    lines = [area.row().put(WORD, EMPTY, bold=True).strip(), area.row().strip()]
    for number, (_, word, says) in enumerate(CHOICES):
        line = area.row("chosen" if number == at else "background")
        if number == at:
            line.put(POINTER, area.look.mark("pointer"), "focus", True)
        line.put(WORD, pad(word, SAYS - WORD - 1), "focus" if number == at else "text", number == at)
        forms = [area.look.fold(form.format(folder=folder)) for form in says]
        said = next((form for form in forms if cell_len(form) < area.width - SAYS), forms[-1])
        line.put(SAYS, said, "text" if number == at else "muted")
        lines.append(line.strip())
    words = Area(area.look, min(area.width, _READS_WELL), area.rows)
    spaced = area.rows >= 19
    for text in WORDS:
        if spaced or text is WORDS[0]:
            lines.append(area.row().strip())
        for part in words.wrapped(text, WORD):
            lines.append(area.row().put(WORD, part, "muted" if text is not WORDS[-1] else "text").strip())
    return area.filled(lines)
