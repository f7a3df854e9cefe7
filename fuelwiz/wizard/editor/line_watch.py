"""Says why the line to fit is another one than before: some answers decide it that nobody would think of."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.field_text import FieldText
from fuelwiz.printable import NO_BREAK


class LineWatch:
    """The line to fit, and what stood in the question, as they were when it was entered."""

    def __init__(self) -> None:
        self._path = ""
        self._text: FieldText | None = None
        self._line: str | None = None

    def moved(self, desk: Desk, path: str) -> str:
        """What is said once the pointer has left a question; empty where the line is as it was."""
        if path == self._path:
            return ""
        left, entered, before = self._path, self._text, self._line
        self._path, self._text, self._line = path, _text_at(desk, path), line_to_fit(desk)
        now = self._line
        if not left or before is None or now is None or before == now:
            return ""
        text = _text_at(desk, left)
        if text is None or (entered is not None and _same(text, entered)):
            return f"The line to fit is {now} now; it was {before}."
        value = f" {text.text}{NO_BREAK}{text.unit}".rstrip(f"{NO_BREAK} ") if text.text[:1].isdigit() else ""
        return f"With {noun_of(left)}{value} the line to fit is {now}; it was {before}."


def line_to_fit(desk: Desk) -> str | None:
    """The line to fit; None while a text is refused or nothing is sized."""
    return desk.result.figures.line_to_fit if desk.result is not None and desk.refused == {} else None


def _same(text: FieldText, entered: FieldText) -> bool:
    """Whether the answer is the one that stood; what is assumed for none is no answer."""
    if text.assumed and entered.assumed:
        return True
    return f"{text.text} {text.unit}".strip() == f"{entered.text} {entered.unit}".strip()


def _text_at(desk: Desk, path: str) -> FieldText | None:
    try:
        return desk.text_in_field(path)
    except NoSuchField:
        return None
