"""The steps of a build on its screen: which is shown, and how each stands."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.desk.steps import StepState
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.chrome import StepMark, steps_column, steps_row
from fuelwiz.wizard.form.answered import is_answered
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted


class StepsView(Painted):
    """The steps in a row or a column.

    Which are answered takes all questions of all steps, so it is looked over when typing pauses, not at each key.
    """

    def __init__(self, look: Look, form: Form) -> None:
        super().__init__(look, id="steps")
        self.form = form
        self.in_column = False
        self._answered: frozenset[str] = frozenset()

    def look_over(self) -> None:
        """Find out anew which steps are answered."""
        desk = self.form.desk
        self._answered = frozenset(step.id for step in STEPS if is_answered(desk, step.id))
        self.repaint()

    def painted(self, area: Area) -> list[Strip]:
        """Every step with its mark."""
        marks = [StepMark(step.name, step.short, self._state(step.id)) for step in STEPS]
        if self.in_column:
            return steps_column(marks, self.form.step_number, area)
        return [steps_row(marks, self.form.step_number, area, self.form.desk.name)]

    def _state(self, step: str) -> StepState:
        """A step is ticked when it is answered, not when it was walked through."""
        if self.form.desk.step_state(step) == "look":
            return "look"
        return "done" if step in self._answered else "untouched"
