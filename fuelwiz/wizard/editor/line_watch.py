"""Says why the line to fit is another one than before: some answers decide it that nobody would think of."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.printable import NO_BREAK


class LineWatch:
    """The line to fit as it was when the question was entered."""

    def __init__(self) -> None:
        self._path = ""
        self._line: str | None = None

    def moved(self, desk: Desk, path: str) -> str:
        """What is said once the pointer has left a question; empty where the line is as it was."""
        if path == self._path:
            return ""
        left, before, now = self._path, self._line, _line_to_fit(desk)
        self._path, self._line = path, now
        if not left or before is None or now is None or before == now:
            return ""
        try:
            field = desk.text_in_field(left)
        except NoSuchField:
            return f"The line to fit is {now} now; it was {before}."
        value = (
            f" {field.text}{NO_BREAK}{field.unit}".rstrip(f"{NO_BREAK} ") if field.text[:1].isdigit() else ""
        )
        return f"With {noun_of(left)}{value} the line to fit is {now}; it was {before}."


def _line_to_fit(desk: Desk) -> str | None:
    return desk.result.figures.line_to_fit if desk.result is not None and desk.refused == {} else None
