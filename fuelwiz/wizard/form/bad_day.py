"""An answer that differs on a bad day of one's own: picked among the questions, with a field of its own there."""

from __future__ import annotations

from fuelwiz.desk.composites import field_of
from fuelwiz.wizard.form.form import Form


def change_on_that_day(form: Form, key: str) -> None:
    """Give the open case a field for a question, with what stands today in it, and put the pointer there."""
    path = field_of(key)
    changed = f"{form.place.list_path}.{form.place.index}.change.{path}"
    field = form.desk.text_in_field(path)
    form.desk.type(changed, f"{field.text} {field.unit}".strip())
    form.rebuild()
    place = form.pointer.find(changed)
    if place is not None:
        form.focus_on(*place)
