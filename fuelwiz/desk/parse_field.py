"""From what stands in a field to the plain value that the file keeps, or to why it is refused."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from fuelwiz import units
from fuelwiz.desk.field_numbers import sensible, split_or_whole, unit_sign
from fuelwiz.desk.field_specs import shown_unit
from fuelwiz.desk.refusals import (
    Refusal,
    as_said,
    no_number,
    out_of_range,
    range_in,
    wanted_number,
    wrong_unit,
)
from fuelwiz.errors import UnitError
from fuelwiz.printable import clean
from fuelwiz.session import FieldSpec, Rejected, read
from fuelwiz.units import UnitSystem

_WHOLE = re.compile(r"\+?[0-9]{1,9}")
_DECIMAL = re.compile(r"[-+\u2212]?(?:[0-9]{1,20}(?:\.[0-9]{0,20})?|\.[0-9]{1,20})")
_BETWEEN_SIZES = re.compile(
    r"[,;]|\s+(?=[-\u2212])|(?<=[-\u2212][0-9])\s+|(?<=[-\u2212][0-9][0-9])\s+|(?<=[a-zA-Z\"'])\s+(?=[.0-9])"
)
_BETWEEN_SPEEDS = re.compile(r"[,;]|\s+(?=[.0-9])")
_SIZE_SHORT = 'type "-8" or "8 mm"'


def parse_field(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> Any:
    """The plain value of a text that is not empty.

    Args:
        spec: what is declared about the field.
        raw: what stands in it; a number alone takes the unit shown.
        system: the units shown.
        named: what the field is called inside a sentence.

    Raises:
        Refusal: in words for beside the field, and in whole sentences.
    """
    reader = _READERS.get(spec.type)
    if reader is None:
        raise as_said(named, "is not for typing into", "not for typing into")
    return reader(spec, raw, system, named)


def _quantity(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> str:
    assert spec.kind is not None
    unit = shown_unit(spec, system)
    kept = kept_text(spec, raw, unit, named)
    _in_range(spec, kept, unit, raw, named)
    return kept


def kept_text(spec: FieldSpec, raw: str, unit: str, named: str) -> str:
    """A number with its unit as the file keeps it, whatever its size."""
    assert spec.kind is not None
    try:
        return units.parse_typed(raw, spec.kind, unit)[1]
    except UnitError as error:
        raise _refused_unit(spec, raw, unit, named, str(error)) from None


def _refused_unit(spec: FieldSpec, raw: str, unit: str, named: str, words: str) -> Refusal:
    assert spec.kind is not None
    if "decimal point" in words or "thousands" in words:
        return as_said(
            named, words, "a decimal point is wanted" if "decimal" in words else "no thousands mark"
        )
    try:
        _, typed = units.split(raw)
    except UnitError:
        return no_number(named, raw, f"{_number_of(spec, unit)} {unit_sign(unit)}")
    if typed and not re.search("[0-9]", typed):
        return wrong_unit(named, typed, spec.kind)
    return as_said(named, words)


def _number_of(spec: FieldSpec, unit: str) -> str:
    """The number of the declared example, in the unit shown."""
    assert spec.kind is not None
    return sensible(units.from_si(units.parse(str(spec.example or spec.high), spec.kind), unit))


def _in_range(spec: FieldSpec, kept: str, unit: str, raw: str, named: str) -> None:
    try:
        read(spec, kept)
    except Rejected:
        raise out_of_range(named, raw, range_in(spec, unit)) from None


def _count(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> int:
    allowed = range_in(spec, "")
    if not _WHOLE.fullmatch(raw.strip()):
        raise wanted_number(named, raw, allowed, "a whole number")
    return int(_checked(spec, int(raw), raw, allowed, named))


def _ratio(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> float | int:
    allowed, text = range_in(spec, ""), raw.strip().replace("\u2212", "-")
    if not _DECIMAL.fullmatch(text):
        if re.fullmatch(r"[0-9]*,[0-9]+", text):
            raise as_said(
                named, f'wants a decimal point: "{text.replace(",", ".")}"', "a decimal point is wanted"
            )
        raise wanted_number(named, raw, allowed, "a bare number")
    number: float | int = _checked(spec, float(text) if "." in text else int(text), raw, allowed, named)
    return number


def _checked(spec: FieldSpec, value: Any, raw: str, allowed: str, named: str) -> Any:
    try:
        read(spec, value)
    except Rejected:
        raise out_of_range(named, raw, allowed) from None
    return value


def _choice(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> str:
    word = raw.strip().lower()
    if word not in spec.choices:
        raise as_said(named, f"may be {' or '.join(spec.choices)}", "one of the answers is wanted")
    return word


def _text(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> str:
    kept = clean(raw, lines=spec.type == "note")
    if len(kept) > int(spec.high or 0):
        raise as_said(
            named,
            f"may be {spec.high} characters long, this is {len(kept)}",
            f"{spec.high} characters at most",
        )
    return kept


def _size(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> str:
    typed = raw.strip().replace("\u2212", "-")
    try:
        read(spec, typed)
    except Rejected as rejected:
        raise as_said(named, rejected.problems[0][1], _SIZE_SHORT) from None
    return typed


def _sizes(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> list[str]:
    sizes = [_size(spec.parts[0], entry, system, named) for entry in _entries(_BETWEEN_SIZES, raw)]
    return _checked_list(spec, sizes, named)


def _entries(between: re.Pattern[str], raw: str) -> list[str]:
    """The entries of a list in one field, parted by commas, semicolons or blanks."""
    return [entry.strip() for entry in between.split(raw.strip()) if entry.strip()]


def _velocities(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> list[str]:
    return _checked_list(
        spec,
        [_quantity(spec.parts[0], entry, system, named) for entry in _entries(_BETWEEN_SPEEDS, raw)],
        named,
    )


def _checked_list(spec: FieldSpec, values: list[str], named: str) -> list[str]:
    try:
        read(spec, values)
    except Rejected as rejected:
        words = rejected.problems[0][1]
        short = "each above the one before" if "above" in words else f"{spec.low} entries are wanted"
        raise as_said(
            named, words, short if spec.low == spec.high else f"{spec.high} entries at most"
        ) from None
    return values


def _wire(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> str:
    typed = raw.strip()
    kept = f"{typed} {shown_unit(spec, system)}" if _DECIMAL.fullmatch(typed) else typed
    try:
        read(spec, kept)
    except Rejected as rejected:
        raise as_said(named, rejected.problems[0][1], 'type "12 AWG" or "4 mm^2"') from None
    return kept


def _rated_flow(spec: FieldSpec, raw: str, system: UnitSystem, named: str) -> str:
    by_volume, by_mass = spec.parts
    _, unit = split_or_whole(raw)
    part = by_mass if "mass_flow" in units.kinds_of(unit) else by_volume
    shown = unit if part is by_mass else shown_unit(by_volume, system)
    kept = kept_text(part, raw, shown, named)
    try:
        read(spec, kept)
    except Rejected:
        raise out_of_range(named, raw, range_in(part, shown_unit(part, system))) from None
    return kept


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
}
