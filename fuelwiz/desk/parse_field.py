"""From what stands in a field to the plain value that the file keeps, or to why it is refused."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from fuelwiz import units
from fuelwiz.desk.field_numbers import sensible, split_or_whole
from fuelwiz.desk.field_specs import unit_of
from fuelwiz.desk.refusals import (
    Refusal,
    fault_in_words,
    no_number,
    out_of_range,
    range_in,
    wanted_number,
    wrong_unit,
)
from fuelwiz.errors import UnitError
from fuelwiz.printable import MINUS, clean
from fuelwiz.session import FieldSpec, Rejected, Size, fits, read
from fuelwiz.shown_units import unit_sign
from fuelwiz.terms import ON_THE_CAR
from fuelwiz.units import UnitSystem

_WHOLE = re.compile(r"\+?[0-9]{1,9}")
_DECIMAL = re.compile(r"[-+\u2212]?(?:[0-9]{1,20}(?:\.[0-9]{0,20})?|\.[0-9]{1,20})")
_BETWEEN_SIZES = re.compile(
    r"[,;]|\s+(?=[-\u2212])|(?<=[-\u2212][0-9])\s+|(?<=[-\u2212][0-9][0-9])\s+|(?<=[a-zA-Z\"'])\s+(?=[.0-9])"
)
_BETWEEN_WORDS = re.compile(r"[,;]")
_BETWEEN_SPEEDS = re.compile(r"[,;]|\s+(?=[.0-9])")
_SAID_SHORT = {"cc": "cc/min", "lb": "lb/h"}
"""What people call an injector's flow, and what is meant."""
_SIZE_SHORT = 'type "-8" or "8 mm"'


def parse_field(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> Any:
    """The plain value of a text that is not empty.

    Args:
        spec: what is declared about the field.
        raw: what stands in it; a number alone takes the unit shown.
        system: the units shown.
        noun: what the field is called inside a sentence.

    Raises:
        Refusal: in words for beside the field, and in whole sentences.
    """
    reader = _READERS.get(spec.type)
    if reader is None:
        raise fault_in_words(noun, "is not for typing into", "not for typing into")
    return reader(spec, raw, system, noun)


def _quantity(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> str:
    assert spec.kind is not None
    unit = unit_of(spec, system)
    text = text_with_unit(spec, raw, unit, noun)
    _in_range(spec, text, unit, raw, noun)
    return text


def text_with_unit(spec: FieldSpec, raw: str, unit: str, noun: str) -> str:
    """A number with its unit as the file keeps it, whatever its size."""
    assert spec.kind is not None
    try:
        return units.parse_typed(raw, spec.kind, unit)[1]
    except UnitError as error:
        raise _refused_unit(spec, raw, unit, noun, str(error)) from None


def _refused_unit(spec: FieldSpec, raw: str, unit: str, noun: str, words: str) -> Refusal:
    assert spec.kind is not None
    if "decimal point" in words or "thousands" in words:
        return fault_in_words(
            noun, words, "a decimal point is wanted" if "decimal" in words else "no thousands mark"
        )
    try:
        _, typed = units.split(raw)
    except UnitError:
        return no_number(noun, raw, f"{_number_of(spec, unit)} {unit_sign(unit)}")
    if typed and not re.search("[0-9]", typed):
        return wrong_unit(noun, typed, spec.kind)
    return fault_in_words(noun, words)


def _number_of(spec: FieldSpec, unit: str) -> str:
    """The number of the declared example, in the unit shown."""
    assert spec.kind is not None
    return sensible(units.from_si(units.parse(str(spec.example or spec.high), spec.kind), unit))


def _in_range(spec: FieldSpec, text: str, unit: str, raw: str, noun: str) -> None:
    try:
        read(spec, text)
    except Rejected:
        raise out_of_range(noun, raw, range_in(spec, unit)) from None


def _count(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> int:
    allowed = range_in(spec, "")
    if not _WHOLE.fullmatch(raw.strip()):
        raise wanted_number(noun, raw, allowed, "a whole number")
    return int(_checked(spec, int(raw), raw, allowed, noun))


def _ratio(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> float | int:
    allowed, text = range_in(spec, ""), raw.strip().replace(MINUS, "-")
    if not _DECIMAL.fullmatch(text):
        if re.fullmatch(r"[0-9]*,[0-9]+", text):
            raise fault_in_words(
                noun, f'wants a decimal point: "{text.replace(",", ".")}"', "a decimal point is wanted"
            )
        raise wanted_number(noun, raw, allowed, "a plain number")
    number: float | int = _checked(spec, float(text) if "." in text else int(text), raw, allowed, noun)
    return number


def _checked(spec: FieldSpec, value: Any, raw: str, allowed: str, noun: str) -> Any:
    try:
        read(spec, value)
    except Rejected:
        raise out_of_range(noun, raw, allowed) from None
    return value


def _choice(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> str:
    word = raw.strip().lower()
    if word not in spec.choices:
        raise fault_in_words(noun, f"can be {' or '.join(spec.choices)}", "one of the answers is wanted")
    return word


def _text(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> str:
    text = clean(raw, lines=spec.type == "note")
    if len(text) > int(spec.high or 0):
        raise fault_in_words(
            noun,
            f"can have {spec.high} characters; this has {len(text)}",
            f"{spec.high} characters at most",
        )
    return text


def _size(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> str:
    typed = raw.strip().replace(MINUS, "-")
    try:
        size: Size = read(spec, typed)
    except Rejected as rejected:
        raise fault_in_words(noun, rejected.problems[0][1], _SIZE_SHORT) from None
    return size.text


def _sizes(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> list[str]:
    sizes = [_size(spec.parts[0], entry, system, noun) for entry in _entries(_BETWEEN_SIZES, raw)]
    return _checked_list(spec, sizes, noun)


def _words(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> list[str]:
    """Parts by their names, parted by commas; a name of one word by blanks too."""
    named = {name: word for word, name in ON_THE_CAR.items()}
    words: list[str] = []
    for entry in _entries(_BETWEEN_WORDS, raw.lower()):
        words += [named[entry]] if entry in named else [named.get(word, word) for word in entry.split()]
    try:
        read(spec, words)
    except Rejected:
        known = f"takes {', '.join(named)}, with commas between them"
        raise fault_in_words(noun, known, "type feed line, pump") from None
    return words


def _entries(between: re.Pattern[str], raw: str) -> list[str]:
    """The entries of a list in one field, parted by commas, semicolons or blanks."""
    return [entry.strip() for entry in between.split(raw.strip()) if entry.strip()]


def _velocities(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> list[str]:
    return _checked_list(
        spec,
        [_quantity(spec.parts[0], entry, system, noun) for entry in _entries(_BETWEEN_SPEEDS, raw)],
        noun,
    )


def _checked_list(spec: FieldSpec, values: list[str], noun: str) -> list[str]:
    try:
        read(spec, values)
    except Rejected as rejected:
        words = rejected.problems[0][1]
        short = "each above the one before" if "above" in words else f"{spec.low} entries are wanted"
        raise fault_in_words(
            noun, words, short if spec.low == spec.high else f"{spec.high} entries at most"
        ) from None
    return values


def _wire(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> str:
    typed = raw.strip()
    text = f"{typed} {unit_of(spec, system)}" if _DECIMAL.fullmatch(typed) else typed
    try:
        read(spec, text)
    except Rejected as rejected:
        raise fault_in_words(noun, rejected.problems[0][1], 'type "12 AWG" or "4 mm^2"') from None
    return text


def _rated_flow(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> str:
    by_volume, by_mass = spec.parts
    _, unit = split_or_whole(raw)
    if units.name_of(unit) in _SAID_SHORT:
        unit = _SAID_SHORT[units.name_of(unit)]
        raw = f"{split_or_whole(raw)[0]} {unit}"
    part = by_mass if "mass_flow" in units.kinds_of(unit) else by_volume
    shown = unit if part is by_mass else unit_of(by_volume, system)
    text = text_with_unit(part, raw, shown, noun)
    try:
        read(spec, text)
    except Rejected:
        raise out_of_range(noun, raw, range_in(part, unit_of(part, system))) from None
    return text


def _column(spec: FieldSpec, raw: str, system: UnitSystem, noun: str) -> str | list[str]:
    """The head of a column as it stands in the file; one without a unit there has it behind a comma."""
    text = clean(raw).strip()
    head, comma, unit = (part.strip() for part in text.rpartition(","))
    value = [head, unit] if comma and head and unit and fits(spec, unit) else text
    try:
        read(spec, value)
    except Rejected as rejected:
        raise fault_in_words(noun, rejected.problems[0][1], "the head of a column is wanted") from None
    return value


_READERS: dict[str, Callable[[FieldSpec, str, UnitSystem, str], Any]] = {
    "quantity": _quantity,
    "count": _count,
    "ratio": _ratio,
    "choice": _choice,
    "text": _text,
    "note": _text,
    "size": _size,
    "sizes": _sizes,
    "velocities": _velocities,
    "wire": _wire,
    "rated_flow": _rated_flow,
    "words": _words,
    "column": _column,
}
