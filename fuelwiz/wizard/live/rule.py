"""The rule above the live pane: which view shows, and what else belongs there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.sections import headings
from fuelwiz.advice.sections.captions import CAPTIONS

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.wizard.paint import Area

PATH, SIZES, CHANGES, HOW_SURE, BAD_DAYS, LADDER, CURVES, CEILINGS, FINDINGS = VIEWS = tuple(
    name.lower()
    for name in (
        headings.PATH,
        headings.SIZES,
        headings.CHANGES,
        headings.HOW_SURE,
        headings.BAD_DAYS,
        headings.LADDER,
        "curves",
        headings.CEILINGS,
        headings.FINDINGS,
    )
)
LOG = "log"
"""The view of the log, which a build has that names one."""
READ = (PATH, HOW_SURE, BAD_DAYS, FINDINGS, LOG)
"""The views that are read from top to bottom and may be longer than their room."""
OF_A_SIZE = (PATH, LADDER, CURVES)
"""The views whose figures are those of the highlighted size, beside the table of sizes itself."""

LETTERS = dict(zip("pswoblcef", VIEWS, strict=True))
"""The views by the letter that shows each."""
LOG_LETTER = "g"


def views_of(result: Result | None, shown: str = "") -> tuple[str, ...]:
    """The views that a build has, and the one that is shown."""
    has_log = result is not None and bool(result.session.log.file)
    return (*VIEWS, LOG) if has_log or shown == LOG else VIEWS


def letters_of(result: Result | None) -> dict[str, str]:
    """Those by the letter that shows each."""
    return {**LETTERS, LOG_LETTER: LOG} if LOG in views_of(result) else LETTERS


def next_view(view: str, views: tuple[str, ...] = VIEWS) -> str:
    """The view after that one, around again after the last."""
    return views[(views.index(view) + 1) % len(views)]


def rule_line(
    view: str,
    notes: tuple[str, ...],
    area: Area,
    views: tuple[str, ...] = VIEWS,
    *,
    all_names: bool = False,
    caption: str = "",
    looked_at: str = "",
) -> Strip:
    """The shown view in brackets and which one F5 brings, or `all_names` where they fit; that a size is only looked
    at; then notes, the last first, and what the view shows, or the caption says instead, as far as there is room."""
    line, dash = area.row(), area.look.mark("rule")
    line.put(0, dash, "muted")
    room = area.width - 1
    names = [f"[{name}]" if name == view else f" {name} " for name in views]
    tail = f"{dash} {area.look.fold(looked_at)} " if looked_at else ""
    if not all_names or sum(map(len, names)) + len(tail) > room:
        at = views.index(view) + 1
        names = [f"[{view}]", f" {at} of {len(views)}, F5 {next_view(view, views)} "]
    for name in names:
        shown = name == f"[{view}]"
        line.put(0, name, "text" if shown else "muted", shown)
    room -= sum(map(len, names))
    for note in reversed(notes):
        longer = f"{dash} {area.look.fold(note)} {tail}"
        if len(longer) > room:
            break
        tail = longer
    caption = f" {area.look.fold(caption or CAPTIONS[view])} {dash}"
    if len(tail) + len(caption) + 1 > room:
        caption = ""
    return line.put(0, tail + dash * (room - len(tail) - len(caption)) + caption, "muted").strip()
