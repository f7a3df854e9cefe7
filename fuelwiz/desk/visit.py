"""What a question held when it was entered: it stands again while what is typed there is refused.

Half of what one types is often a value too ("2" of "2.5 square mm"), and the answer must not rest on it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from fuelwiz.desk import edits
from fuelwiz.desk.composites import COUNT_QUESTIONS, field_of
from fuelwiz.desk.field_specs import amps_number, cell_of
from fuelwiz.desk.plain import KeyPath, Plain, put, taken_out, value_at, value_path
from fuelwiz.desk.points.amps import amps_of, with_amps
from fuelwiz.desk.spoken_figures import POWER, POWER_AT
from fuelwiz.desk.state import State
from fuelwiz.units import UnitSystem

_FITTINGS = {
    "feed.hoses": "feed.run.0.fittings",
    "feed.bends": "feed.run.0.fittings",
    "return.hoses": "return_line.run.0.fittings",
    "return.bends": "return_line.run.0.fittings",
}


@dataclass(slots=True)
class Visit:
    """The pointer in a question: what was told when it came there, and what the answer picked there last made of it."""

    path: str
    entered: State
    _picked: State | None = None

    def typed(self, now: State, path: str, text: str, system: UnitSystem) -> tuple[State, str]:
        """The build with a text typed, and where it stands; while it is refused, the value that stood holds."""
        entered = self._before(now, path)
        if path == POWER:  # what a text said of where it is measured goes with that text
            now = replace(now, plain=_back(now.plain, value_path(POWER_AT), entered.plain))
        state = edits.with_typed(now, path, text, system)
        place = edits.place_of(state, path)
        if place in state.raw:
            state = _as_entered(state, place, entered)
        return replace(state.measured_as(entered), good=entered.good), place

    def chosen(self, now: State, path: str, answer: str | None, system: UnitSystem) -> State:
        """The build with an answer picked, None for the one that stood; those passed by leave no trace."""
        if answer is None:
            return self._before(now, path)
        begun = self.path == path and any(now.same(one) for one in (self.entered, self._picked) if one)
        state = edits.with_choice(self.entered if begun else now, path, answer, system)
        self._picked = state if begun else None
        return replace(state, good=self._before(now, path).good)

    def _before(self, now: State, path: str) -> State:
        """What was told when the question was entered; one that is not being visited is entered now."""
        return self.entered if self.path == path else now


def _as_entered(state: State, place: str, entered: State) -> State:
    """The build with the value at a place that stood when its question was entered; its text stays typed.

    Args:
        state: what is told, with a refused text at the place.
        place: where the text stands.
        entered: what was told when the question was entered.
    """
    number = amps_number(place)
    if number is not None:
        stood = amps_of(entered.plain, number)
        if amps_of(state.plain, number) == stood:
            return state
        return replace(with_amps(state, number, stood), raw=state.raw)
    cell = cell_of(place)
    if cell is not None:
        return _point_as_entered(state, cell[0], cell[1], entered)
    key_path = value_path(_FITTINGS[place] if place in COUNT_QUESTIONS else field_of(place))
    return replace(state, plain=_back(state.plain, key_path, entered.plain))


def _point_as_entered(state: State, points: str, number: int, entered: State) -> State:
    """A point that was not there is no more; what stands in its cells is kept as text."""
    key_path = (*value_path(points), number)
    stood, stands = value_at(entered.plain, key_path), value_at(state.plain, key_path)
    if stands is None or stood == stands:
        return state
    raw = dict(state.raw)
    for column in (0, 1):
        raw.setdefault(f"{points}.{number}.{column}", str(stands[column]))
    if stood is None and number < len(value_at(state.plain, key_path[:-1])) - 1:
        return state  # those behind it would move
    return replace(state, plain=_back(state.plain, key_path, entered.plain), raw=raw)


def _back(plain: Plain, key_path: KeyPath, entered: Plain) -> Plain:
    stood = value_at(entered, key_path)
    if stood == value_at(plain, key_path):
        return plain
    back: Plain = taken_out(plain, key_path) if stood is None else put(plain, key_path, stood)
    return back
