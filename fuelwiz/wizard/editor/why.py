"""The lines under the questions: why one is asked, what is wrong with what was typed, what is taken for it."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.desk.composites import field_of
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import ItemRow, cells_of
from fuelwiz.wizard.form.paint import columns_for
from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area

TEXT = 5


def why_lines(form: Form, area: Area) -> list[Strip]:
    """As much as fits the area's rows; one row gets the first sentence alone."""
    mark, role, text = _said(form)
    if mark == "Why":
        text = _fitting(form, text, area)
    lines = []
    for i, words in enumerate(area.wrapped(text, TEXT, area.rows)):
        line = area.row()
        if (i == 0 and area.rows > 1) or mark != "Why":
            line.put(1, mark if i == 0 else "", "fault" if role == "fault" else "text", True)
        lines.append(line.put(TEXT, words, role).strip())
    return area.filled(lines)


def _said(form: Form) -> tuple[str, Role, str]:
    refused = form.desk.refused.get(form.path) or form.desk.refused.get(field_of(form.path))
    if refused:
        return "!", "fault", refused[0].upper() + refused[1:]
    if form.note:
        return "Why", "muted", form.note
    question = form.question
    if isinstance(form.row, ItemRow):
        return "Why", "muted", f"{question.why} Ctrl+G d takes it out."
    echo = ""
    if cells_of(form.row) and columns_for(form.width).echo == 0:
        said = form.desk.text_in_field(form.path).echo
        echo = f"= {said}. " if said else ""
    usual = f" Usual: {question.usual}." if question.usual else ""
    return "Why", "muted", f"{echo}{question.why}{usual}"


def _fitting(form: Form, text: str, area: Area) -> str:
    """The whole text; where it does not fit, its first sentence and the usual range, else that sentence alone."""
    if len(area.wrapped(text, TEXT)) <= area.rows:
        return text
    end = text.find(". ")
    first = text[: end + 1] if end > 0 else text
    usual = f"{first} Usual: {form.question.usual}." if form.question.usual else first
    return usual if len(area.wrapped(usual, TEXT)) <= area.rows else first
