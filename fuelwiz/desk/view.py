"""A build as its fields show it, at one moment."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from fuelwiz.advice import Result
from fuelwiz.desk import shown
from fuelwiz.desk.composites import COUNTED, PICKED, SEVERAL, field_of, several
from fuelwiz.desk.edits import NOTHING_WITHOUT, place_of
from fuelwiz.desk.errors import NoSuchField
from fuelwiz.desk.fallbacks import fallback_in
from fuelwiz.desk.fields import spec_at
from fuelwiz.desk.numbers import NO_BREAK
from fuelwiz.desk.plain import Plain, value_at, way
from fuelwiz.desk.shown import FieldText
from fuelwiz.desk.state import State
from fuelwiz.desk.words import Refusal, label, question_of, when_left
from fuelwiz.units import UnitSystem


@dataclass(frozen=True, slots=True)
class View:
    """What is told, what the answer stands on, and what is refused; `typing` is the text of the field in use."""

    state: State
    stands_on: Plain | None
    refusals: Mapping[str, Refusal]
    result: Result | None
    system: UnitSystem
    warm: bool
    typing: tuple[str, str] | None = None

    def field(self, path: str) -> FieldText:
        """What stands in the field at a path; NoSuchField where it leads to none."""
        place = place_of(self.state, path)
        refusal = self.refusals.get(place)
        return replace(self._field(path, place), refused=refusal.short if refusal else None)

    def _field(self, path: str, place: str) -> FieldText:
        if path in PICKED:
            answer = PICKED[path].read(self.state)
            return FieldText(answer or PICKED[path].fallback, assumed=answer is None)
        if path in COUNTED:
            return self._counted(path)
        spec = spec_at(field_of(path))
        raw = self.state.raw.get(place)
        if raw is not None:
            return shown.typed(spec, raw, self.system)
        if several(self.state, path):
            return FieldText(SEVERAL)
        value = value_at(self.state.plain, way(place))
        if value is None:
            return self._fallback(place)
        field = shown.given(spec, value, self.system, self.warm)
        if self.typing and self.typing[0] == place:
            return replace(shown.typed(spec, self.typing[1], self.system), echo=field.echo)
        return field

    def _counted(self, path: str) -> FieldText:
        raw = self.state.raw.get(path)
        if raw is not None:
            return FieldText(raw)
        if several(self.state, path):
            return FieldText(SEVERAL)
        count = COUNTED[path].read(self.state)
        return FieldText("" if count is None else str(count))

    def _fallback(self, place: str) -> FieldText:
        spec = spec_at(place)
        text = fallback_in(self.state.plain, place, self.result, self.warm)
        if not text:
            return shown.empty(spec, self.system)
        return shown.fallback(spec, text, self.system, self.warm)

    def held(self) -> str | None:
        """What the answer stands on while something is refused; None where it stands on all that is told."""
        if self.result is None or not self.refusals:
            return None
        place = next(iter(self.refusals))
        stands = self._stands(place)
        if stands is None:
            return f"the answer leaves out {label(place)} until it can be read"
        return f"the answer stands on {label(place)} {stands} until yours can be read"

    def _stands(self, place: str) -> str | None:
        """What the answer takes for a field, as a sentence says it."""
        told = replace(self, state=State(self.stands_on or {}), typing=None)
        try:
            return _said(told.field(place)) or None
        except NoSuchField:
            return None

    def left(self, path: str) -> str:
        """What is said of a question that is left to its fallback: what is taken, and why."""
        place = place_of(self.state, path)
        asked = question_of(path, self.system)
        reason = asked.fallback if asked else ""
        if several(self.state, path) or place in COUNTED or path in NOTHING_WITHOUT:
            return when_left("", reason)
        if path not in PICKED and spec_at(place).required:
            return when_left(None, reason)
        field = self.field(path)
        choice = next((one for one in asked.choices if one.value == field.text), None) if asked else None
        text = choice.say if choice and (path in PICKED or spec_at(place).type == "choice") else _said(field)
        if field.unit and field.echo:
            text = f"{text} ({field.echo})"
        return when_left(text if field.assumed or path in PICKED else "", reason)


def _said(field: FieldText) -> str:
    return f"{field.text}{NO_BREAK}{field.unit}" if field.unit and field.text else field.text
