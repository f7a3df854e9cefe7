"""What is told of a build, what of it is refused, and the answer that it comes to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from fuelwiz.advice import Result, result
from fuelwiz.desk import edits, lists
from fuelwiz.desk.composites import COUNTED, PICKED, field_of
from fuelwiz.desk.curves import with_points
from fuelwiz.desk.fields import spec_at
from fuelwiz.desk.plain import Plain, value_at, way
from fuelwiz.desk.reading import sorted_out
from fuelwiz.desk.refusals import all_refused
from fuelwiz.desk.shown import FieldText
from fuelwiz.desk.standing import Standing, for_file, standing
from fuelwiz.desk.state import State
from fuelwiz.desk.steps import StepState, step_of, step_that_needs_attention, steps_in, steps_to_look_at
from fuelwiz.desk.undo import Trail
from fuelwiz.desk.view import View
from fuelwiz.desk.words import Refusal
from fuelwiz.file_limits import UNNAMED
from fuelwiz.printable import clean
from fuelwiz.session import Session
from fuelwiz.sizing import first_figures, with_slower_parts
from fuelwiz.units import UnitSystem

NOTES = "notes"


class Board:
    """What is told of one build, and the answer that it comes to.

    Nothing that a person types is an error here: what cannot be taken stands in its field, with why. `update`
    runs by itself after every change; after `new` or `open` it is called once the screen is up, since it loads
    all that reckons.
    """

    def __init__(self, state: State) -> None:
        self.session: Session | None = None
        self.result: Result | None = None
        self.complete = False
        self._state = state
        self._trail = Trail()
        self._seen = set(steps_in(state.plain))
        self._visited: str | None = None
        self._typing: tuple[str, str] | None = None
        self._standing = Standing(None, None, ())
        self._reckoned: tuple[Plain | None, str] = (None, "")
        self._refusals: Mapping[str, Refusal] = MappingProxyType({})
        self._warm = False

    @property
    def name(self) -> str:
        """What the build is called, safe to show: its own name, else its file's."""
        own = self._state.plain.get("name")
        shown = clean(own).strip() if isinstance(own, str) else ""
        return shown or clean(self._default_name)

    @property
    def plain(self) -> Plain:
        """What a save would write, without the record."""
        return {key: value for key, value in for_file(self._state.plain).items() if key != "record"}

    @property
    def system(self) -> UnitSystem:
        """The unit system that is shown."""
        return "metric" if self._state.plain.get("show_units") == "metric" else "us"

    @property
    def refused(self) -> Mapping[str, str]:
        """What is refused or wanting, by path, in whole sentences."""
        return {path: refusal.why for path, refusal in self._refusals.items()}

    @property
    def held(self) -> str | None:
        """What the answer stands on while something is refused; None where it stands on all that is told."""
        return self._view().held()

    def text_in_field(self, path: str) -> FieldText:
        """What stands in the field at a path, or in that of a question; NoSuchField where it leads to none."""
        return self._view().field(path)

    def is_given(self, path: str) -> bool:
        """Whether the builder has said something there, refused or not; NoSuchField where it leads to no field."""
        place = edits.place_of(self._state, path)
        if place in self._state.raw:
            return True
        if path in PICKED:
            return PICKED[path].read(self._state) is not None
        if path in COUNTED:
            return COUNTED[path].read(self._state) is not None
        spec_at(field_of(path))
        return value_at(self._state.plain, way(field_of(path))) is not None

    def value(self, path: str) -> Any:
        """The plain value, list or table at a path; None where there is none."""
        return value_at(self._state.plain, way(path))

    def type(self, path: str, raw: str) -> None:
        """A text is typed into a field; an empty one takes the value out. NoSuchField where there is no field."""
        text = clean(raw, lines=path == NOTES)
        state = edits.typed(self._state, path, text, self.system)
        self._change(path, state, (edits.place_of(state, path), text))

    def choose(self, path: str, value: str) -> None:
        """One of the answers of a question is picked; NoSuchField where it has no such answer."""
        self._change(path, edits.picked(self._state, path, value, self.system))

    def unsure(self, path: str) -> str:
        """A question is left to its fallback; says which is taken and why. NoSuchField where there is no field."""
        self._change(path, edits.left(self._state, path))
        return self._view().left(path)

    def set_points(self, path: str, points: Sequence[tuple[str, str]]) -> None:
        """A whole table in place of the points at a path, each a text with its unit."""
        self._change(path, with_points(self._state, field_of(path), points))

    def add(self, path: str, values: Mapping[str, Any] | None = None) -> int:
        """One entry more in the list at a path; its number. NoSuchField where that cannot be."""
        state, number = lists.with_entry(self._state, path, values or {})
        self._change(path, state)
        return number

    def remove(self, path: str, number: int) -> None:
        """An entry is taken out of the list at a path; NoSuchField where there is none."""
        self._change(path, lists.without_entry(self._state, path, number))

    def move(self, path: str, number: int, to: int) -> None:
        """An entry of the list at a path is put in another place; NoSuchField where there is none."""
        self._change(path, lists.with_entry_moved(self._state, path, number, to))

    def visit(self, path: str) -> None:
        """A question is come to: what is changed from here on can be undone in one go."""
        self._trail.visit(path)
        self._typing = None
        if self._visited is not None and step_of(self._visited) != step_of(path):
            self._seen.add(step_of(self._visited))
        self._visited = path

    def undo(self) -> str | None:
        """Goes back one visit; the question to show, None where there is nothing to undo."""
        return self._go(self._trail.back(self._state))

    def redo(self) -> str | None:
        """Goes forth one visit; the question to show, None where there is nothing to redo."""
        return self._go(self._trail.forth(self._state))

    def update(self) -> None:
        """Reckons the answer again: all but what `finish` adds."""
        if not self._warm:
            self._warm_up()
        self._state = edits.read_again(self._state, self.system)
        name = self._default_name
        self._standing = standing(self._state.plain, self._state.good, name)
        if not self._standing.faults:
            self._state = replace(self._state, good=self._standing.plain)
        self._refusals = all_refused(self._state, self._standing.faults, self.system)
        if self.result is not None and self._reckoned == (self._standing.plain, name):
            return
        self._reckoned = (self._standing.plain, name)
        self.session = self._standing.session
        self.result = None if self.session is None else result(self.session, first_figures(self.session))
        self.complete = False

    def finish(self) -> None:
        """Adds the stress cases and the next goal to the answer; for when typing pauses."""
        if self.session is None or self.result is None or self.complete:
            return
        self.result = result(self.session, with_slower_parts(self.session, self.result.figures))
        self.complete = True

    def step_state(self, step: str) -> StepState:
        """How a step stands."""
        if step in steps_to_look_at(self._refusals, self.result):
            return "look"
        return "done" if step in self._seen else "untouched"

    def step_that_needs_attention(self) -> str:
        """The step to open first."""
        return step_that_needs_attention(steps_to_look_at(self._refusals, self.result), self._seen)

    @property
    def _default_name(self) -> str:
        return UNNAMED

    def _view(self) -> View:
        return View(
            self._state,
            self._standing.plain,
            self._refusals,
            self.result,
            self.system,
            self._warm,
            self._typing,
        )

    def _warm_up(self) -> None:
        """Reads every value for the first time, which loads the units; what cannot be read stands in its field."""
        self._state = sorted_out(self._state)
        self._warm = True

    def _go(self, found: tuple[str, State] | None) -> str | None:
        if found is None:
            return None
        path, self._state = found
        self._typing = None
        self.update()
        return path

    def _change(self, path: str, state: State, typing: tuple[str, str] | None = None) -> None:
        if not state.same(self._state):
            self._trail.note(path, self._state)
        self._state, self._typing = state, typing
        self.update()
