"""Findings: what a careful friend would point out, the gravest first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result, Severity

MARK = 1
WORD = 3
TEXT = 11
_SAID: dict[Severity, tuple[str, Role]] = {
    "stop": ("stop", "fault"),
    "warning": ("look", "brisk"),
    "note": ("note", "muted"),
}


def finding_lines(result: Result, area: Area) -> list[Strip]:
    """Every finding and caution, wrapped; more lines than the area has where there is much to say."""
    lines: list[Strip] = []
    for finding in result.words.findings:
        word, role = _SAID[finding.severity]
        lines += _entry(area.look.mark(finding.severity), word, role, finding.text, area)
    for caution in result.words.cautions:
        lines += _entry("", "always", "muted", caution, area)
    return lines or area.paragraph("Nothing to point out.")


def _entry(mark: str, word: str, role: Role, text: str, area: Area) -> list[Strip]:
    lines = []
    for at, part in enumerate(area.wrapped(text, TEXT)):
        line = area.row()
        if at == 0:
            line.put(MARK, mark, role, True).put(WORD, word, role)
        lines.append(line.put(TEXT, part).strip())
    return lines
