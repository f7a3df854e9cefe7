"""The rule above the live pane: which view shows, and what else belongs there."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.advice.sections import bad_days, ceilings, pressure, sizes
from fuelwiz.wizard.paint import Area

SIZES, LADDER, CURVES, CEILINGS, BAD_DAYS, FINDINGS = VIEWS = tuple(
    name.lower()
    for name in (sizes.NAME, pressure.NAME, "curves", ceilings.NAME, bad_days.NAME, bad_days.FINDINGS)
)
READ = (BAD_DAYS, FINDINGS)  # views that are read from top to bottom and may be longer than their room


def rule_line(view: str, notes: tuple[str, ...], area: Area) -> Strip:
    """The names of the views, the shown one in brackets; then as many notes as fit, the last one first."""
    line, dash = area.row(), area.look.mark("rule")
    line.put(0, dash, "muted")
    names = [f"[{name}]" if name == view else f" {name} " for name in VIEWS]
    for name, shown in zip(names, VIEWS, strict=True):
        line.put(0, name, "text" if shown == view else "muted", shown == view)
    room = area.width - 1 - sum(len(name) for name in names)
    tail = ""
    for note in reversed(notes):
        longer = f"{dash} {area.look.fold(note)} {tail}"
        if len(longer) > room:
            break
        tail = longer
    return line.put(0, tail + dash * (room - len(tail)), "muted").strip()
