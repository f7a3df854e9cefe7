"""The head of a table of points: which column is which, in what units, at how many volts."""

from __future__ import annotations

import re
from dataclasses import replace

from fuelwiz import units
from fuelwiz.record import record
from fuelwiz.session import FieldSpec, Rejected, field_at, read
from fuelwiz.unit_table import Kind

_IN_BRACKETS = re.compile(r"[(\[{]([^()\[\]{}]{1,30})[)\]}]")
_VOLTS = re.compile(r"(?<![\w.,])(\d{1,2}(?:[.,]\d{1,3})?)\s*(?:V|volts?|VDC)\b", re.IGNORECASE)
_WORDS: dict[str, tuple[str, ...]] = {
    "pressure_change": ("pressure", "press", "rail", "psi", "bar"),
    "flow": ("flow", "delivery", "output", "volume"),
    "current": ("current", "amp", "draw"),
}


@record
class Header:
    """The columns of pressure and of the other figure, their units, the volts if named, and what is said of it."""

    columns: tuple[int, int]
    units: tuple[str, str]
    voltage: str | None = None
    remarks: tuple[str, ...] = ()
    named: bool = False
    others: tuple[tuple[int, str], ...] = ()
    """Further columns of the second kind, each with its volts."""
    complete: bool = False
    """Whether both kinds were named."""

    def then(self, later: Header) -> Header:
        """This head with what a later row of it adds: a row that names columns beats one that names none."""
        best = later if later.named or not self.named else self
        return replace(best, voltage=later.voltage or self.voltage)

    @classmethod
    def none(cls, default_units: tuple[str, str]) -> Header:
        """Where a table has no head: pressure first, then the other."""
        return cls((0, 1), default_units)


def header_of(cells: list[str], default_units: tuple[str, str], spec: FieldSpec) -> Header | None:
    """What a row of words says about the columns; None where it says nothing."""
    if _VOLTS.fullmatch(" ".join(cells)):
        return Header((0, 1), default_units, voltage_in(" ".join(cells)))
    if any(cell[:1].isdigit() for cell in cells):
        return None
    kinds = tuple(part.kind for part in spec.parts if part.kind is not None)
    columns = [_columns_of(cells, kind) for kind in kinds]
    voltage = next(filter(None, map(voltage_in, cells)), None)
    if not any(columns):
        return Header((0, 1), default_units, voltage) if voltage or _is_words(cells) else None
    first = _placed(columns)
    units_named = [
        _unit_in(cells[at], kind) if at < len(cells) else None for at, kind in zip(first, kinds, strict=True)
    ]
    chosen = tuple(unit or usual for unit, usual in zip(units_named, default_units, strict=True))
    further = [at for at in columns[1] if at not in first]
    volts = {at: volts for at in further if (volts := voltage_in(cells[at])) is not None}
    remarks = [
        *_not_understood(cells, first, kinds, units_named, chosen),
        *(f'column {at + 1}, "{cells[at][:24]}": left out' for at in further if at not in volts),
    ]
    at_volts = voltage_in(cells[first[1]]) if first[1] < len(cells) else None
    return Header(
        first,
        (chosen[0], chosen[1]),
        at_volts or voltage,
        tuple(remarks),
        named=True,
        others=tuple(volts.items()),
        complete=all(columns),
    )


def voltage_in(text: str) -> str | None:
    """The voltage that a text names, as the file would hold it; None where it names none that a pump may see."""
    match = _VOLTS.search(text)
    if match is None:
        return None
    volts = f"{match[1].replace(',', '.')} V"
    try:
        read(field_at("pump.curve.voltage"), volts)
    except Rejected:
        return None
    return volts


def _placed(columns: list[list[int]]) -> tuple[int, int]:
    """The first column of each kind; the one that is not named is the first of the other columns."""
    pressure, other = (columns_of_kind[0] if columns_of_kind else None for columns_of_kind in columns)
    if pressure is None:
        pressure = 1 if other == 0 else 0
    if other is None or other == pressure:
        other = next((at for at in columns[1] if at != pressure), 1 if pressure == 0 else 0)
    return pressure, other


def _columns_of(cells: list[str], kind: Kind) -> list[int]:
    """The columns whose head names a kind, or a unit of it."""
    return [at for at, cell in enumerate(cells) if _names(cell, kind)]


def _names(cell: str, kind: Kind) -> bool:
    if _unit_in(cell, kind):
        return True
    others = [units.kinds_of(word) for word in _IN_BRACKETS.findall(cell)]
    if any(others):
        return False
    return any(word in cell.casefold() for word in _WORDS[kind])


def _unit_in(cell: str, kind: Kind) -> str | None:
    """The unit of a kind that a head names: in brackets, by itself, or as a word."""
    words = [*_IN_BRACKETS.findall(cell), cell, *re.split(r"[\s,_]+", cell.strip())]
    return next((word.strip() for word in words if kind in units.kinds_of(word.strip())), None)


def _not_understood(
    cells: list[str],
    columns: tuple[int, int],
    kinds: tuple[Kind, ...],
    units_named: list[str | None],
    chosen: tuple[str, ...],
) -> list[str]:
    """What is said of a unit in brackets that is none of the kind wanted."""
    remarks = []
    for at, kind, unit, taken in zip(columns, kinds, units_named, chosen, strict=True):
        named = _IN_BRACKETS.findall(cells[at]) if at < len(cells) else []
        if unit is None and named and voltage_in(named[0]) is None:
            remarks.append(
                f'"{named[0]}" is not a unit of {units.describe(kind).partition(" ")[2]}: read as {taken}'
            )
    return remarks


def _is_words(cells: list[str]) -> bool:
    """Whether a row has no figure in it."""
    return bool(cells) and not any(sign.isdigit() for cell in cells for sign in cell)
