"""How a field shows what the build holds: number, unit column, the same in the other system, whether assumed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from fuelwiz import units
from fuelwiz.desk.field_numbers import in_unit, is_bare, pretty, same_unit, sensible, split_or_whole
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.field_specs import unit_of
from fuelwiz.physics.injector import LB_H_IN_CC_MIN, TEST_FLUID_KG_M3
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.session import FieldSpec, as_text, read
from fuelwiz.shown_units import other_system, unit_sign
from fuelwiz.terms import ON_THE_CAR
from fuelwiz.units import UnitSystem

if TYPE_CHECKING:
    from fuelwiz.measured.log.layout import Head


@record
class FieldText:
    """One field as it stands.

    `text` is what is in it, `unit` what stands in the unit column (nothing where the text has its own),
    `echo` the same in the other unit system, `assumed` whether it is a fallback, `refused` why what was
    typed is not taken, in 32 columns, `is_missing` whether nothing was typed though the rest of its section needs it.
    """

    text: str
    unit: str = ""
    echo: str = ""
    assumed: bool = False
    refused: str | None = None
    is_missing: bool = False


def empty(spec: FieldSpec, system: UnitSystem) -> FieldText:
    """A field with nothing in it."""
    return FieldText("", _column(spec, system))


def typed(spec: FieldSpec, raw: str, system: UnitSystem) -> FieldText:
    """A text that stands as it was typed; a number alone has its unit in the unit column."""
    bare = not raw.strip() or is_bare(raw)
    return FieldText(clean(raw, lines=spec.type == "note"), _column(spec, system) if bare else "")


def given(spec: FieldSpec, value: Any, system: UnitSystem, loaded: bool) -> FieldText:
    """A value of the build; without its echo until `warm`, as that needs the factors of the units."""
    if spec.type == "velocities" and isinstance(value, list):
        return _velocities(spec, value, system)
    if spec.type == "column" and isinstance(value, list):
        return FieldText(clean(", ".join(map(str, value))))
    if spec.type == "words" and isinstance(value, list):
        return FieldText(", ".join(ON_THE_CAR.get(word, clean(str(word))) for word in value))
    if spec.type == "change" and isinstance(value, dict):
        return FieldText(changes_in_words(value))
    text = one_line(value)
    if not isinstance(value, str) or spec.kind is None:
        return FieldText(text)
    number, unit = split_or_whole(text)
    column = unit_of(spec, system)
    if not unit or not (unit == column or (loaded and same_unit(unit, column))):
        return FieldText(text, "", echo(spec, value, system) if loaded else "")
    return FieldText(number, unit_sign(column), echo(spec, value, system) if loaded else "")


def fallback(spec: FieldSpec, text: str, system: UnitSystem, loaded: bool) -> FieldText:
    """A fallback in the unit of its row, grayed."""
    column = unit_of(spec, system)
    _, unit = split_or_whole(text)
    if spec.type == "velocities" and isinstance(spec.fallback, list) and loaded:
        return _velocities_in_column(spec, spec.fallback, system)
    if isinstance(spec.fallback, list):
        return replace(given(spec, spec.fallback, system, loaded), assumed=True)
    if spec.type != "quantity" or unit == column or not loaded:
        return replace(given(spec, text, system, loaded), assumed=True)
    assert spec.kind is not None
    converted = sensible(units.from_si(units.parse(text, spec.kind), column))
    return FieldText(converted, unit_sign(column), pretty(text), assumed=True)


def guessed(head: Head | None) -> FieldText:
    """The head of a column that nobody has named, with its unit beside it; empty where none is guessed."""
    if head is None:
        return FieldText("")
    text, unit = clean(head.text), clean(head.unit or "")
    return FieldText(text, echo="" if unit in text else unit, assumed=True)


def one_line(value: Any) -> str:
    """A plain value as one line of a field, safe to show; entries parted by blanks where they hold none."""
    if isinstance(value, list) and all(isinstance(item, str) for item in value):
        return clean(("; " if any(" " in item for item in value) else " ").join(value))
    text = as_text(value)
    return clean(text, lines="\n" in text)


def changes_in_words(change: Mapping[str, Any]) -> str:
    """What differs on a bad day, each answer in the words of its question."""
    return ", ".join(f"{noun_of(key)} {pretty(clean(str(value)))}" for key, value in change.items())


def echo(spec: FieldSpec, text: str, system: UnitSystem) -> str:
    """A quantity in the other unit system; nothing where that says the same."""
    if spec.type == "wire":
        return _area(spec, text)
    if spec.type == "rated_flow":
        return _by_the_other_way(spec, text, system)
    if spec.type != "quantity" or spec.kind is None:
        return ""
    _, unit = split_or_whole(text)
    column = unit_of(spec, system)
    other = unit_of(spec, other_system(system)) if same_unit(unit, column) else column
    return "" if same_unit(unit, other) else in_unit(units.parse(text, spec.kind), other)


def _area(spec: FieldSpec, text: str) -> str:
    """The cross-section of a gauge."""
    return "" if split_or_whole(text)[1].upper() != "AWG" else in_unit(read(spec, text), "mm^2")


def _by_the_other_way(spec: FieldSpec, text: str, system: UnitSystem) -> str:
    """An injector's flow by mass where it is given by volume, and the other way round."""
    by_volume, by_mass = spec.parts
    if "flow" in units.kinds_of(split_or_whole(text)[1]):
        unit = unit_of(by_mass, system)
        if unit == "lb/h":
            pounds = units.from_si(read(spec, text), "cc/min") / LB_H_IN_CC_MIN
            return in_unit(units.to_si(pounds, unit), unit)
        return in_unit(read(spec, text) * TEST_FLUID_KG_M3, unit)
    return in_unit(read(spec, text), unit_of(by_volume, system))


def _column(spec: FieldSpec, system: UnitSystem) -> str:
    if spec.type in {"size", "sizes"}:
        return ""
    if spec.type == "velocities":
        return unit_sign(unit_of(spec.parts[0], system))
    return unit_sign(unit_of(spec, system))


def _velocities(spec: FieldSpec, values: list[Any], system: UnitSystem) -> FieldText:
    column = unit_of(spec.parts[0], system)
    parts = [split_or_whole(str(value)) for value in values]
    if all(unit == column for _, unit in parts):
        return FieldText(" ".join(number for number, _ in parts), unit_sign(column))
    return FieldText(one_line(values))


def _velocities_in_column(spec: FieldSpec, values: list[Any], system: UnitSystem) -> FieldText:
    """Those that are taken, in the unit of the row."""
    kind, column = spec.parts[0].kind, unit_of(spec.parts[0], system)
    assert kind is not None
    numbers = [sensible(units.from_si(units.parse(str(value), kind), column)) for value in values]
    return FieldText(" ".join(numbers), unit_sign(column), assumed=True)
