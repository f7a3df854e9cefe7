"""The questions on the screen: the rows around the pointer, and why the one under it is asked."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.wizard.editor.why import why_lines
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.paint import row_strip
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted


class FormView(Painted):
    """Draws a form; scrolls by rows, the pointer always in sight."""

    def __init__(self, look: Look, form: Form) -> None:
        super().__init__(look, id="form")
        self.form = form
        self.why_rows = 2
        self.has_keys = True
        self._top = 0

    def painted(self, area: Area) -> list[Strip]:
        """The rows, and the lines under them."""
        form = self.form
        form.width = area.width
        why_rows = min(self.why_rows, max(area.rows - 1, 0))
        room = area.rows - why_rows
        self._top = min(max(self._top, form.at - room + 1), form.at)
        if form.at > 0 and self._top == form.at and room > 1:
            self._top = form.at - 1  # what stands above, such as the heads of a list
        self._top = max(0, min(self._top, len(form.rows) - room))
        lines = []
        for i, row in enumerate(form.rows[self._top : self._top + room], self._top):
            focus = form.focus if i == form.at and self.has_keys else None
            lines.append(row_strip(row, form.desk, area, focus))
        lines = area.high(room).filled(lines)
        return [*lines, *why_lines(form, area.high(why_rows))]
