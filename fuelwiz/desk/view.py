"""A build as its fields show it, at one moment."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from fuelwiz.advice import Result
from fuelwiz.desk import field_text
from fuelwiz.desk.calculation import Calculation
from fuelwiz.desk.composites import (
    CHOICE_QUESTIONS,
    COUNT_QUESTIONS,
    FITTED_SIZES,
    SEVERAL,
    field_of,
    has_several_runs,
)
from fuelwiz.desk.edits import NOTHING_WITHOUT, place_of
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_fallbacks import fallback_in
from fuelwiz.desk.field_questions import changed_on_a_day, is_list_of_changes, noun_of, question_of
from fuelwiz.desk.field_specs import amps_number, cell_of, spec_at
from fuelwiz.desk.field_text import FieldText
from fuelwiz.desk.log_read import LogOnDesk
from fuelwiz.desk.nouns import noun_here
from fuelwiz.desk.parse_field import parse_field
from fuelwiz.desk.plain import Plain, value_at, value_path
from fuelwiz.desk.points.amps import amps_of
from fuelwiz.desk.points.head_units import spec_in_row
from fuelwiz.desk.points.point_cells import FIRST_CURVE
from fuelwiz.desk.refusals import Refusal, fallback_words
from fuelwiz.desk.state import State
from fuelwiz.desk.steps import step_of
from fuelwiz.printable import NO_BREAK
from fuelwiz.questions import STEPS
from fuelwiz.record import record
from fuelwiz.session import FieldSpec
from fuelwiz.units import UnitSystem


@record
class View:
    """What is told, what the answer stands on, and what is refused; `typing` is the text of the field in use."""

    state: State
    calculated_from: Plain | None
    refusals: Mapping[str, Refusal]
    result: Result | None
    system: UnitSystem
    loaded: bool
    log: LogOnDesk
    typing: tuple[str, str] | None = None

    @classmethod
    def of(
        cls, state: State, calculation: Calculation, system: UnitSystem, typing: tuple[str, str] | None
    ) -> View:
        """What is told, beside what it comes to."""
        return cls(
            state,
            calculation.plain,
            calculation.refusals,
            calculation.result,
            system,
            calculation.is_loaded,
            calculation.log,
            typing,
        )

    def field(self, path: str, pointer: str = "") -> FieldText:
        """What stands in the field at a path; NoSuchField where it leads to none.

        The empty half of a point is wanting, and no fault yet, while the pointer is in its table.
        """
        place = place_of(self.state, path)
        refusal = self.refusals.get(place)
        field = self._field(path, place)
        if refusal is None:
            return field
        if self._is_begun(place, pointer):
            return replace(field, is_missing=True)
        return replace(field, refused=refusal.short, is_missing=refusal.is_missing)

    def _field(self, path: str, place: str) -> FieldText:
        if path in CHOICE_QUESTIONS:
            answer = CHOICE_QUESTIONS[path].read(self.state)
            return FieldText(answer or CHOICE_QUESTIONS[path].fallback, assumed=answer is None)
        if path in COUNT_QUESTIONS:
            return self._counted(path)
        spec = spec_in_row(self.state, field_of(path), self.system)
        raw = self.state.raw.get(place)
        if raw is not None:
            return replace(field_text.typed(spec, raw, self.system), echo=self._echo_of_cell(place, raw))
        if has_several_runs(self.state, path):
            return FieldText(SEVERAL)
        if path in FITTED_SIZES:
            size = FITTED_SIZES[path].read(self.state)
            return FieldText(size or "", echo=FITTED_SIZES[path].kind(self.state) if size else "")
        number = amps_number(field_of(path))
        value = (
            value_at(self.state.plain, value_path(place))
            if number is None
            else amps_of(self.state.plain, number)
        )
        if value is None:
            return self._fallback(place, spec)
        field = field_text.given(spec, value, self.system, self.loaded)
        if not field.echo and isinstance(value, str):
            field = replace(field, echo=self._echo_of_cell(place, value))
        if self.typing and self.typing[0] == place:
            return replace(field_text.typed(spec, self.typing[1], self.system), echo=field.echo)
        return field

    def _echo_of_cell(self, place: str, text: str) -> str:
        """Half of a point in the other unit, where it can be read: its row has taken the unit that it is given in."""
        if not self.loaded or not text.strip() or cell_of(place) is None:
            return ""
        spec = spec_at(place)
        try:
            value = parse_field(spec, text, self.system, noun_of(place))
        except Refusal:
            return ""
        return field_text.echo(spec, value, self.system) if isinstance(value, str) else ""

    def _counted(self, path: str) -> FieldText:
        raw = self.state.raw.get(path)
        if raw is not None:
            return FieldText(raw)
        if has_several_runs(self.state, path):
            return FieldText(SEVERAL)
        count = COUNT_QUESTIONS[path].read(self.state)
        return FieldText("" if count is None else str(count))

    def _fallback(self, place: str, spec: FieldSpec) -> FieldText:
        if spec.type == "column":
            session = None if self.result is None else self.result.session
            return field_text.guessed(self.log.guess(place, session))
        text = fallback_in(self.state.plain, place, self.result, self.loaded)
        if not text:
            return field_text.empty(spec, self.system)
        return field_text.fallback(spec, text, self.system, self.loaded)

    def held(self, pointer: str = "") -> str | None:
        """What the answer stands on while something is refused; None where it stands on all that is told.

        Half a point is no more than begun while the pointer is in its table.
        """
        places = [one for one in self.refusals if not self._is_begun(one, pointer)]
        if self.result is None or not places:
            return None
        return f"{self._held_at(places[0])}{self._nor(places)}"

    def _held_at(self, place: str) -> str:
        stands = self._stands(place)
        if stands is None:
            return self._left_out(place)
        day = " on that day" if changed_on_a_day(place) else ""
        return (
            f"Not updated: still using {noun_here(self.state, place)} {stands}{day} until yours can be read."
        )

    def _nor(self, places: list[str]) -> str:
        """What else cannot be read, by name."""
        named = dict.fromkeys(
            noun_here(self.state, one) for one in places[1:] if not self.refusals[one].is_missing
        )
        others = [noun for noun in named if noun != noun_here(self.state, places[0])]
        return f" Nor can yours of {', '.join(others)}." if others else ""

    def _is_begun(self, place: str, pointer: str) -> bool:
        """Whether a place is the empty half of a point in the table that the pointer is in."""
        cell, here = cell_of(place), cell_of(field_of(pointer)) if pointer else None
        table = FIRST_CURVE if pointer and amps_number(field_of(pointer)) is not None else here and here[0]
        is_empty = not self.state.raw.get(place, "").strip()
        return cell is not None and cell[0] == table and is_empty and self.refusals[place].is_missing

    def _left_out(self, place: str) -> str:
        """What is said of a field that the answer does without: where it is asked, where nothing is typed yet."""
        if not self.refusals[place].is_missing:
            return f"Not updated: {noun_here(self.state, place)} is left out until it can be read."
        if is_list_of_changes(place):
            return "Stress: pick what differs that day; the day is left out until then."
        step = next(step.name for step in STEPS if step.id == step_of(place))
        return f"{step}: give the {noun_here(self.state, place)}; what it belongs to is left out until then."

    def _stands(self, place: str) -> str | None:
        """What the answer takes for a field, as a sentence says it."""
        valid = replace(self, state=State(self.calculated_from or {}), typing=None)
        try:
            return _said(valid.field(place)) or None
        except NoSuchField:
            return None

    def fallback_sentence(self, path: str) -> str:
        """What is said of a question that is left to its fallback: what is taken, and why."""
        if changed_on_a_day(path):
            return f"The {noun_of(path)} is that day what it is today."
        place = place_of(self.state, path)
        asked = question_of(path, self.system)
        reason = asked.fallback if asked else ""
        if (
            has_several_runs(self.state, path)
            or place in COUNT_QUESTIONS
            or path in NOTHING_WITHOUT
            or path in FITTED_SIZES
        ):
            return fallback_words("", reason)
        if path not in CHOICE_QUESTIONS and spec_at(place).required:
            return fallback_words(None, reason)
        field = self.field(path)
        choice = next((one for one in asked.choices if one.value == field.text), None) if asked else None
        text = (
            choice.say
            if choice and (path in CHOICE_QUESTIONS or spec_at(place).type == "choice")
            else _said(field)
        )
        if field.unit and field.echo:
            text = f"{text} ({field.echo})"
        return fallback_words(text if field.assumed or path in CHOICE_QUESTIONS else "", reason)


def _said(field: FieldText) -> str:
    return f"{field.text}{NO_BREAK}{field.unit}" if field.unit and field.text else field.text
