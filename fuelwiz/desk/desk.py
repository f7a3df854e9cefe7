"""One build while it is being told, without a screen: its answers, what it comes to, undo, file and draft."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fuelwiz.desk import edits, lists
from fuelwiz.desk.asked import texts_not_asked
from fuelwiz.desk.calculation import Calculation
from fuelwiz.desk.composites import field_of
from fuelwiz.desk.composites.units_shown import system_of
from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.desk.last_valid import for_file
from fuelwiz.desk.log_read import LogOnDesk
from fuelwiz.desk.look_here import LookHere, what_to_look_at
from fuelwiz.desk.measuring import place_of_proposal, with_measured
from fuelwiz.desk.outside_data import with_unreadable_in_fields
from fuelwiz.desk.plain import Plain, value_at, value_path
from fuelwiz.desk.points.head_units import unit_in_row
from fuelwiz.desk.points.point_cells import with_table
from fuelwiz.desk.save_rules import allowed_name, left_out, refuse_unfinished
from fuelwiz.desk.state import State, with_sections
from fuelwiz.desk.steps import Progress, StepState
from fuelwiz.desk.storage import Save, Saved, Storage, open_draft, open_file
from fuelwiz.desk.undo import UndoHistory
from fuelwiz.desk.view import View
from fuelwiz.desk.visit import Visit
from fuelwiz.file_limits import SUFFIX, UNNAMED
from fuelwiz.printable import clean
from fuelwiz.store.folder import file_name

if TYPE_CHECKING:
    from fuelwiz.advice import Result
    from fuelwiz.desk.field_text import FieldText
    from fuelwiz.desk.points.paste import Points
    from fuelwiz.measured.figures import Proposal
    from fuelwiz.session import Session
    from fuelwiz.units import UnitSystem


class Desk:
    """What is told of one build, what it comes to, and where it is kept.

    Nothing that a person types is an error here: what cannot be read stands in its field, with why. `update` runs by
    itself after every change; after `new` or `open` it is called once the screen is up: it loads all that calculates.
    """

    def __init__(self, state: State, storage: Storage, *, saved: State | None = None) -> None:
        self.origin: Desk | None = None
        self.log = LogOnDesk()
        self.table = ("", "")  # what stands on the page for a table of points, behind the path that it is for
        self._state = state
        self.as_saved = state if saved is None else saved
        self.storage = storage
        self._calculation = Calculation(self.log)
        self._history = UndoHistory()
        self.progress = Progress(state.plain)
        self._typing: tuple[str, str] | None = None
        self._visit = Visit("", state)

    @classmethod
    def new(cls, folder: Path) -> Desk:
        """An empty build that is to be saved in a folder."""
        return cls(State({"format": 1}), Storage(folder))

    @classmethod
    def open(cls, path: Path) -> Desk:
        """A build from its file, an empty one where there is none; SessionError where it cannot be used."""
        return cls(*open_file(path))

    @classmethod
    def from_draft(cls, place: Path) -> Desk:
        """A build as its draft has it, refused texts and all. DraftError where it cannot be read."""
        contents, saved, storage = open_draft(place)
        desk = cls(contents.state, storage, saved=saved)
        desk.progress.seen |= contents.seen
        desk.table = contents.table
        return desk

    def what_if(self) -> Desk:
        """A scratch copy to try things on, at today's size of line; it has no file until it is saved."""
        copy = Desk(self._state, self.storage.scratch(self.name))
        copy.origin = self
        if self.result is not None and self.result.session.feed.run:
            copy._calculation = Calculation(copy.log, kept_size=self.result.figures.verdict.size)
        copy.progress.seen = set(self.progress.seen)
        copy.update()
        return copy

    def begun(self) -> Desk:
        """The same build as one that has just been begun: nothing to undo, and nothing unsaved until it is changed."""
        return Desk(self._state, Storage(self.folder))

    @property
    def name(self) -> str:
        """What the build is called, safe to show: its own name, else its file's."""
        own = self._state.plain.get("name")
        given = clean(own).strip() if isinstance(own, str) else ""
        return given or clean(self._default_name)

    @property
    def _default_name(self) -> str:
        return self.path.name.removesuffix(SUFFIX) if self.path is not None else UNNAMED

    @property
    def folder(self) -> Path:
        """Where the build is kept, or will be."""
        return self.storage.folder

    @property
    def path(self) -> Path | None:
        """The build's file; None for one that was never saved."""
        return self.storage.path

    @property
    def only_looks(self) -> bool:
        """Whether it is somebody else's just now, so that a change raises OnlyLooks."""
        return self.storage.looks_at is not None

    @property
    def dirty(self) -> bool:
        """Whether anything is told that is not saved."""
        return bool(self.table[1].strip()) or not self._state.same(self.as_saved)

    @property
    def system(self) -> UnitSystem:
        """The unit system that is shown."""
        return system_of(self._state.plain)

    @property
    def plain(self) -> Plain:
        """What a save would write, without the record."""
        return {key: value for key, value in for_file(self._state.plain).items() if key != "record"}

    @property
    def is_loaded(self) -> bool:
        """Whether `update` has run, and the values have been read."""
        return self._calculation.is_loaded

    @property
    def session(self) -> Session | None:
        """The build that the result is of; None where there is none yet."""
        return self._calculation.session

    @property
    def result(self) -> Result | None:
        """Figures and words; None while the power is not known."""
        return self._calculation.result

    @property
    def complete(self) -> bool:
        """Whether the result has the parts that take longer."""
        return self._calculation.is_complete

    @property
    def filled_in(self) -> bool:
        """Whether the result has all that there is, what `fill_in` adds among it."""
        return self._calculation.is_filled_in

    @property
    def refused(self) -> Mapping[str, str]:
        """What is refused or wanting, by path, in whole sentences."""
        return {path: refusal.why for path, refusal in self._calculation.refusals.items()}

    @property
    def held(self) -> str | None:
        """What the result is calculated with while something is refused; None where with all that is told."""
        return self._view().held(self._visit.path)

    def text_in_field(self, path: str) -> FieldText:
        """What stands in the field at a path, or in that of a question; NoSuchField where it leads to none."""
        return self._view().field(path, self._visit.path)

    def is_given(self, path: str) -> bool:
        """Whether the builder has said something there, refused or not; NoSuchField where it leads to no field."""
        return edits.is_given(self._state, path)

    def unit_of_row(self, path: str) -> str:
        """The unit that a bare number takes in a cell of a table, as it is shown."""
        return unit_in_row(self._state, path, self.system)

    def value(self, path: str) -> Any:
        """The plain value, list or table at a path; None where there is none."""
        return value_at(self._state.plain, value_path(path))

    def type(self, path: str, raw: str) -> None:
        """A text is typed into a field; an empty one takes the value out. NoSuchField where there is no field."""
        text = clean(raw, lines=path == "notes")
        state, place = self._visit.typed(self._state, path, text, self.system)
        self._change(path, state, (place, text))

    def choose(self, path: str, value: str | None) -> None:
        """One of its answers for a question, or None for what stood when it was entered; NoSuchField for any other."""
        self._change(path, self._visit.chosen(self._state, path, value, self.system))

    def unsure(self, path: str) -> str:
        """A question is left to its fallback; says which one and why. NoSuchField where there is no field."""
        self._change(path, edits.use_fallback(self._state, path))
        return self._view().fallback_sentence(path)

    def set_points(self, path: str, points: Sequence[tuple[str, str]] | Points) -> None:
        """A whole table in place of the points at a path, each a text with its unit; of a sheet all that it has."""
        self._change(path, with_table(self._state, field_of(path), points))

    def add(self, path: str, values: Mapping[str, Any] | None = None) -> int:
        """One entry more in the list at a path; its number. NoSuchField where that cannot be."""
        state, number = lists.with_entry(self._state, path, values or {})
        self._change(path, state)
        return number

    def take(self, proposal: Proposal) -> None:
        """A value that was measured takes the place of what stands there."""
        self._change(place_of_proposal(proposal), with_measured(self._state, proposal))

    def fit(self, sections: Mapping[str, Any]) -> None:
        """Whole sections take the place of those that stand there; one undo brings them all back."""
        self._change(next(iter(sections), ""), with_sections(self._state, sections))

    def remove(self, path: str, number: int) -> None:
        """An entry is taken out of the list at a path; NoSuchField where there is none."""
        self._change(path, lists.without_entry(self._state, path, number))

    def move(self, path: str, number: int, to: int) -> None:
        """An entry of the list at a path is put in another place; NoSuchField where there is none."""
        self._change(path, lists.with_entry_moved(self._state, path, number, to))

    def visit(self, path: str) -> None:
        """The pointer enters a question: what is changed from here on can be undone in one go."""
        self._history.visit(path)
        self.progress.visit(path)
        self._typing = None
        self._visit = Visit(path, self._state)

    def undo(self) -> str | None:
        """Goes back one visit; the question to show, None where there is nothing to undo."""
        return self._go(self._history.undo(self._state))

    def redo(self) -> str | None:
        """Goes forward one visit; the question to show, None where there is nothing to redo."""
        return self._go(self._history.redo(self._state))

    def update(self) -> None:
        """Calculates the result anew: all but what `finish` adds."""
        if not self.is_loaded and self.as_saved is not self._state:
            self.as_saved = with_unreadable_in_fields(self.as_saved)
        is_first = not self.is_loaded
        is_saved = self.as_saved is self._state and is_first
        waiting = texts_not_asked(self, self._state.raw, self._typing[0] if self._typing else "")
        asked = self._state.without_texts(waiting)
        self._state = self._calculation.update(asked, self.system, self._default_name).with_texts(waiting)
        self.as_saved = self._state if is_saved else self.as_saved
        if is_first and self._state.raw:
            self.update()  # which questions are asked is known only now

    def finish(self) -> None:
        """Adds the stress cases and the next goal to the result; for when typing pauses."""
        self._calculation.finish()

    def fill_in(self, seconds: float) -> bool:
        """Goes on with what changes buy and how sure it all is, so long; true where the result has more of it."""
        return self._calculation.fill_in(seconds)

    def step_state(self, step: str) -> StepState:
        """How a step stands."""
        return self.progress.state(step, (look.step for look in self.to_look_at()))

    def to_look_at(self) -> tuple[LookHere, ...]:
        """What is to be put right, step by step."""
        return what_to_look_at(self._calculation.refusals, self.result)

    def save(self, path: Path | None = None, *, overwrite: bool = False) -> Saved:
        """Writes the build to its file, or to another, with what the program says of it today.

        Raises:
            SaveRefused: a field holds something refused, or a file stands in the way and `overwrite` is false.
            OutputError: the file cannot be written.
        """
        return self.saved(self.prepared(path, overwrite=overwrite).written())

    def save_as(self, name: str, *, overwrite: bool = False) -> Saved:
        """Writes the build under a name, in a file called after it; raises as `save` does."""
        return self.saved(self.prepared_as(name, overwrite=overwrite).written())

    def prepared(self, path: Path | None = None, *, overwrite: bool = False) -> Save:
        """A save that only waits for the disk; raises as `save` does for what is known without it."""
        target = path or self.path
        refuse_unfinished(self._calculation.refusals, self.result)
        if target is None:
            raise SaveRefused("name", "Not saved: enter a name first.")
        self._calculation.keep_no_size()
        self.update()
        self.finish()
        result = refuse_unfinished(self._calculation.refusals, self.result)
        text = self.storage.text_of(self.plain, result, self._state.measured)
        return Save(self.storage, target, text, self._state, overwrite)

    def prepared_as(self, name: str, *, overwrite: bool = False) -> Save:
        """The same under a name, in a file called after it."""
        name = allowed_name(name)
        target = self.folder / file_name(name)
        refuse_unfinished(self._calculation.refusals, self.result)
        if not overwrite:
            self.storage.refuse_to_overwrite(target)
        if self._state.plain.get("name") != name:
            self._put("name", self._state.with_value("name", name))
        return self.prepared(target, overwrite=overwrite)

    def saved(self, save: Save) -> Saved:
        """What is so once a save is written; what was told meanwhile is unsaved."""
        self.as_saved = save.state
        self.update()
        self.finish()
        return Saved(save.target, left_out(self.plain, save.state.plain))

    def write_draft(self) -> Path | None:
        """Keeps what is told beside the build, in any thread; None where nothing is unsaved. OutputError if it fails."""
        with self.storage.turn:
            if not self.dirty:
                self.discard_draft()
                return None
            return self.storage.write_draft(self._state, frozenset(self.progress.seen), self.table)

    def discard_draft(self) -> None:
        """Deletes the draft that was written here, or come back to."""
        self.storage.discard_draft()

    def _view(self) -> View:
        return View.of(self._state, self._calculation, self.system, self._typing)

    def _go(self, visit: tuple[str, State] | None) -> str | None:
        if visit is None:
            return None
        path, self._state = visit
        self._typing, self._visit = None, Visit("", self._state)
        self.update()
        return path

    def _change(self, path: str, state: State, typing: tuple[str, str] | None = None) -> None:
        if not state.same(self._state):
            self.storage.refuse_to_change()
        self._put(path, state, typing)

    def _put(self, path: str, state: State, typing: tuple[str, str] | None = None) -> None:
        if not state.same(self._state):
            self._history.record(path, self._state)
        self._state, self._typing = state, typing
        self.update()
