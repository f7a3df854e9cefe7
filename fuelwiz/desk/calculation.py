"""What a build comes to while it is being told: figures and words, and everything that is refused or wanting."""

from __future__ import annotations

import time
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

from fuelwiz.advice import Result, result
from fuelwiz.desk import edits
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_specs import spec_at
from fuelwiz.desk.last_valid import LastValid, nearest_valid
from fuelwiz.desk.log_read import LogOnDesk
from fuelwiz.desk.outside_data import with_unreadable_in_fields
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.points.point_cells import half_points
from fuelwiz.desk.refusals import Refusal, of_fault
from fuelwiz.desk.state import State
from fuelwiz.errors import Fault
from fuelwiz.session import FieldSpec, Session
from fuelwiz.sizing import Figures, first_figures, in_steps, with_slower_parts
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.units import UnitSystem


class Calculation:
    """The result of the build as far as it is valid, and why the rest is refused.

    `is_loaded` tells whether the values have been read at all: the first time loads the units. `is_complete`
    tells whether the result has the parts that take longer, `is_filled_in` whether it also has those that `fill_in`
    adds a little at a time. A build that chooses no size is judged at `kept_size`, where that is given.
    """

    def __init__(self, log: LogOnDesk, kept_size: str | None = None) -> None:
        self.log = log
        self._kept_size = kept_size
        self.session: Session | None = None
        self.result: Result | None = None
        self.is_complete = False
        self.is_filled_in = False
        self.is_loaded = False
        self.refusals: Mapping[str, Refusal] = MappingProxyType({})
        self._last_valid = LastValid(None, None, ())
        self._inputs: tuple[Plain | None, str] = (None, "")
        self._filling: Iterator[Figures] | None = None
        self._comments: Mapping[str, str] = {}

    @property
    def plain(self) -> Plain | None:
        """The data that the result was made of; None where there is none."""
        return self._last_valid.plain

    def update(self, state: State, system: UnitSystem, name: str) -> State:
        """Calculates anew all but what `finish` adds; the state with what can be read by now taken in.

        Args:
            state: what is told of the build.
            system: the units that it is shown in.
            name: of a build that gives none.
        """
        if not self.is_loaded:
            state, self.is_loaded = with_unreadable_in_fields(state), True
        state = edits.read_again(state, system)
        self._last_valid = nearest_valid(state.plain, state.good, name)
        if not self._last_valid.faults:
            state = replace(state, good=self._last_valid.plain)
        self.refusals = _refusals(state, self._last_valid.faults, system)
        if self.result is None or self._inputs != (self.plain, name):
            self._inputs = (self.plain, name)
            self.session = _kept_at(self._kept_size, self._last_valid.session)
            self.result = (
                None if self.session is None else self._result_of(self.session, first_figures(self.session))
            )
            self.is_complete = self.is_filled_in = False
            self._filling = None
        self._comments = state.measured
        if self.result is not None and not self._is_up_to_date(self.result):
            self.result = replace(self.result, log=self.log.shows(self.session), comments=self._comments)
        return state

    def _is_up_to_date(self, found: Result) -> bool:
        """Whether a result has what the log shows, and what measured its values."""
        return found.log is self.log.shows(self.session) and found.comments == self._comments

    def _result_of(self, session: Session, figures: Figures) -> Result:
        """Figures in words, beside what the log shows of the build as it is now."""
        found = result(session, figures, self.log.shows(session))
        return replace(found, comments=self._comments) if self._comments else found

    def keep_no_size(self) -> None:
        """A build that chooses no size is judged at the best again, from the next update on."""
        if self._kept_size is not None:
            self._kept_size, self._inputs = None, (None, "")

    def finish(self) -> None:
        """Adds the stress cases and the next goal to the result."""
        if self.session is not None and self.result is not None and not self.is_complete:
            self.result = self._result_of(self.session, with_slower_parts(self.session, self.result.figures))
            self.is_complete = True

    def fill_in(self, seconds: float) -> bool:
        """Goes on with what changes buy and how sure it all is; true where the result has more than before.

        Args:
            seconds: after which it stops, in the middle of the work; what is typed meanwhile drops it.
        """
        if self.session is None or self.result is None or self.is_filled_in:
            return False
        self.finish()
        if self._filling is None:
            self._filling = in_steps(self.session, self.result.figures)
        before = figures = self.result.figures
        until = time.perf_counter() + seconds
        while time.perf_counter() < until:
            found = next(self._filling, None)
            if found is None:
                self.is_filled_in, self._filling = True, None
                break
            figures = found
        if figures is not before:
            self.result = self._result_of(self.session, figures)
        return figures is not before or self.is_filled_in


def _kept_at(size: str | None, session: Session | None) -> Session | None:
    """A build that chooses no size as if it chose that one, where it is among its candidates."""
    if size is None or session is None or session.feed.chosen is not None:
        return session
    kept = next((row for row in feed_candidates(session.feed) if spelled(row) == size), None)
    if kept is None:
        return session
    return session.model_copy(update={"feed": session.feed.model_copy(update={"chosen": kept})})


def _refusals(state: State, faults: Iterable[Fault], system: UnitSystem) -> dict[str, Refusal]:
    """Why each field is refused; first what cannot be read, then what is wanting, then what does not fit together."""
    refusals: dict[str, Refusal] = {}
    for path in state.raw:
        refusal = edits.refusal_of(state, path, system)
        if refusal is not None:
            refusals[path] = refusal
    for path, refusal in half_points(state):
        refusals.setdefault(path, refusal)
    for fault in faults:
        path = _field_of_fault(fault.key)
        if path not in edits.ALWAYS_WANTED:
            refusals.setdefault(path, of_fault(path, _spec(path), fault))
    return refusals


def _field_of_fault(key: str) -> str:
    """The field to put a fault right in: a suction hose without a size wants one; a pump, its first point."""
    if key.startswith("inlet.run.") and key.rpartition(".")[2].isdecimal():
        return f"{key}.size"
    return key


def _spec(path: str) -> FieldSpec | None:
    try:
        return spec_at(path)
    except NoSuchField:
        return None
