"""Says a word of doubt again once its question is left: whoever types and goes on in one go saw it for no moment."""

from __future__ import annotations

from typing import Any

from fuelwiz.desk.composites import field_of
from fuelwiz.desk.doubt import doubt
from fuelwiz.questions.catalogue import Question
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import is_to_answer


class DoubtWatch:
    """The question that the pointer is on, and what was answered there when it came."""

    def __init__(self) -> None:
        self._path = ""
        self._question: Question | None = None
        self._entered: Any = None

    def moved(self, form: Form) -> str:
        """What is said once the pointer has left an answer that was changed; empty where there is no doubt of it."""
        desk, path = form.desk, form.path
        if path == self._path:
            return ""
        left, asked, before = self._path, self._question, self._entered
        self._path, self._question = path, form.question if is_to_answer(form.row) else None
        self._entered = desk.value(field_of(path))
        if asked is None or desk.value(field_of(left)) == before:
            return ""
        doubted = doubt(desk, asked, left)
        return f"{asked.label}, {doubted}" if doubted[:1].isdigit() else doubted
