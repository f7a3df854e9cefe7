"""Which view a build shows before one is picked: the path of a new one, else sizes; at its step a part's own table."""

from __future__ import annotations

from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.live.rule import PATH, SIZES

PARTS_OF_THEIR_OWN = ("wiring", "injectors")
"""The steps whose table of what would do takes the place of that of sizes, and of a path that nobody asked for."""


class StepView:
    """The view of a screen; one that was picked stays, whatever the step."""

    form: Form
    is_new = False
    _picked = ""

    @property
    def view(self) -> str:
        """The view that shows under the answer."""
        begins_with = PATH if self.is_new and self.form.place.step not in PARTS_OF_THEIR_OWN else SIZES
        return self._picked or begins_with

    @view.setter
    def view(self, view: str) -> None:
        """Pick one; it stays."""
        self._picked = view
