"""Reading one plain value that has several readings or several entries: sizes, wire, fittings, points."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from typing import Any, TypeVar

from fuelwiz import units
from fuelwiz.errors import UnitError
from fuelwiz.physics.injector import LB_H_IN_CC_MIN, TEST_FLUID_KG_M3
from fuelwiz.physics.wire import awg_area_m2
from fuelwiz.printable import clean, quoted
from fuelwiz.record import record
from fuelwiz.session.scalars import (
    Problem,
    Rejected,
    count,
    edges,
    nearest,
    quantity,
    range_text,
    refuse,
    si,
    within,
)
from fuelwiz.session.spec import FieldSpec
from fuelwiz.unit_table import Kind

T = TypeVar("T")

CC_MIN_M3_S = 1e-6 / 60
_DASH = re.compile(r"(?:an *-?|#|-)? *([0-9]{1,3}) *(?:an)?", re.IGNORECASE)
_PIPE = re.compile(r"(.*?) *\b(?:pipe|tube|tubing|od)", re.IGNORECASE | re.DOTALL)
_FRACTION = re.compile(r"(?:[0-9]+ +)?[0-9]+ */ *[0-9]+")
_GAUGE = re.compile(r"(?P<before>[^a-z]*?) *(?:awg|gauge|ga)|#(?P<after>.*)", re.IGNORECASE | re.DOTALL)


@record
class Size:
    """A candidate: a dash size, or a length: the bore of a hose, the outside diameter of a tube.

    `inches` tells a length that was given in inches or feet: a tube of that size has a wall of the trade's in inches.
    """

    text: str
    dash: int | None
    length_m: float | None
    inches: bool = False


def size(spec: FieldSpec, value: Any) -> Size:
    """A dash size as people say it, or a length."""
    wanted = 'wants a dash size such as "-8" or "AN8", or a length such as "8 mm" or "3/8 in"'
    if not isinstance(value, str):
        raise refuse(f"{wanted}, got {quoted(value)}")
    typed = value.strip()
    dash = _DASH.fullmatch(typed)
    if dash:
        number = int(dash[1])
        if not 2 <= number <= 32:
            raise refuse(f"wants a dash size from -2 to -32, got {typed}")
        return Size(f"-{number}", number, None)
    pipe = _PIPE.fullmatch(typed)
    length = pipe[1].strip() if pipe else typed
    if _FRACTION.fullmatch(length):
        length = f"{length} in"
    try:
        si(length, "length")
    except UnitError:
        raise refuse(f"{wanted}, got {quoted(value)}") from None
    return Size(clean(length), None, quantity(spec.parts[0], length), units.is_in_inches(length))


def wire(spec: FieldSpec, value: Any) -> float:
    """The area of a wire, m2, from its gauge or its area."""
    wanted = f"wants a gauge of {range_text(spec)}, or an area of {range_text(spec.parts[0])}"
    if not isinstance(value, str):
        raise refuse(f'{wanted}, in quotes such as "12 AWG" or "4 mm^2", got {quoted(value)}')
    gauge = _GAUGE.fullmatch(value.strip())
    if gauge:
        number = gauge["before"] if gauge["after"] is None else gauge["after"]
        if not re.fullmatch("[0-9]{1,3}", number) or int(number) > 24:
            raise refuse(f"{wanted}, got {quoted(value)}")
        return awg_area_m2(int(number))
    try:
        area = si(value, "area")
    except UnitError:
        raise refuse(f"{wanted}, got {quoted(value)}") from None
    if not within(spec.parts[0], area):
        raise refuse(f"{wanted}, got {clean(value)}")
    return area


def rated_flow(spec: FieldSpec, value: Any) -> float:
    """What an injector passes of n-heptane, m3/s, from a flow by volume or by mass.

    "850 cc" and "80 lb" are what people say for cc/min and lb/h; a maker's lb/h is 10.5 cc/min each.
    """
    by_volume, by_mass = spec.parts
    if not isinstance(value, str):
        return quantity(by_volume, value)
    try:
        number, unit = units.split(value)
        value = {"cc": f"{number} cc/min", "lb": f"{number} lb/h"}.get(units.name_of(unit), value)
        kinds = _kinds_of(value)
    except UnitError as error:
        raise refuse(str(error)) from None
    if "mass_flow" in kinds:
        mass_flow = quantity(by_mass, value)
        if units.name_of(units.split(value)[1]) == "lb/h":
            return units.from_si(mass_flow, "lb/h") * LB_H_IN_CC_MIN * CC_MIN_M3_S
        return mass_flow / TEST_FLUID_KG_M3
    if "flow" in kinds:
        return quantity(by_volume, value)
    examples = f'"{by_volume.example}", or by mass such as "{by_mass.example}"'
    raise refuse(f"wants a flow such as {examples}, got {quoted(value)}")


@lru_cache(maxsize=512)
def _kinds_of(text: str) -> tuple[Kind, ...]:
    return units.kinds_of(units.split(text)[1])


def words(spec: FieldSpec, value: Any) -> tuple[str, ...]:
    """Words of a list of known ones, each once, in the order of that list."""
    if not isinstance(value, list):
        raise refuse(f"wants a list of words, such as {_listed(spec.example)}, got {quoted(value)}")
    found = []
    for at, word in enumerate(value):
        if not isinstance(word, str) or word not in spec.choices:
            meant = nearest(word, spec.choices) if isinstance(word, str) else None
            hint = f"did you mean {meant}?" if meant else f"known are {', '.join(spec.choices)}"
            found.append(((at,), f"is not a word here, got {quoted(word)}; {hint}"))
    if found:
        raise Rejected(*found)
    return tuple(word for word in spec.choices if word in value)


def sizes(spec: FieldSpec, value: Any) -> tuple[Size, ...]:
    """Candidates."""
    items = _entries(spec, value, 'dash sizes or bores, such as ["-6", "-8"]')
    return tuple(_each(items, size, spec.parts[0]))


def velocities(spec: FieldSpec, value: Any) -> tuple[float, ...]:
    """Velocities, each above the one before, m/s."""
    return _rising(spec, value, "four rising velocities")


def span(spec: FieldSpec, value: Any) -> tuple[float, ...]:
    """From where to where, SI."""
    return _rising(spec, value, "two values, the lower one first")


def _rising(spec: FieldSpec, value: Any, wanted: str) -> tuple[float, ...]:
    items = _entries(spec, value, f"{wanted}, such as {_listed(spec.example)}")
    values = _each(items, quantity, spec.parts[0])
    falls = [at for at in range(1, len(values)) if not values[at] > values[at - 1]]
    if falls:
        raise Rejected(
            *(((at,), f"must lie above {items[at - 1]} before it, got {items[at]}") for at in falls)
        )
    return tuple(values)


def _listed(items: list[str]) -> str:
    return "[" + ", ".join(f'"{item}"' for item in items) + "]"


def _entries(spec: FieldSpec, value: Any, words: str) -> list[Any]:
    """The entries of a list that is not empty and not too long."""
    least, most = edges(spec)
    if not isinstance(value, list):
        raise refuse(f"wants a list of {words}, got {quoted(value)}")
    if not int(least) <= len(value) <= int(most):
        number = least if least == most else f"{least} to {most}"
        raise refuse(f"wants {number} entries, got {len(value) or 'none'}")
    return value


def _each(items: list[Any], reader: Callable[[FieldSpec, Any], T], spec: FieldSpec) -> list[T]:
    """Every entry read; all that is wrong in any of them is refused together."""
    values: list[T] = []
    problems: list[Problem] = []
    for at, item in enumerate(items):
        try:
            values.append(reader(spec, item))
        except Rejected as rejected:
            problems += [((at, *key_path), words) for key_path, words in rejected.problems]
    if problems:
        raise Rejected(*problems)
    return values


def fittings(spec: FieldSpec, value: Any) -> dict[str, int]:
    """How many of each fitting."""
    if not isinstance(value, dict):
        raise refuse(f"wants a table such as {{ straight = 2, exit = 1 }}, got {quoted(value)}")
    counts: dict[str, int] = {}
    problems: list[Problem] = []
    for name, number in value.items():
        try:
            counts[name] = count(_fitting(spec, name), number)
        except Rejected as rejected:
            problems += [((name, *key_path), words) for key_path, words in rejected.problems]
    if problems:
        raise Rejected(*problems)
    return counts


def _fitting(spec: FieldSpec, name: str) -> FieldSpec:
    if name in spec.choices:
        return spec.parts[0]
    meant = nearest(name, spec.choices)
    hint = f"did you mean `{meant}`?" if meant else f"known are {', '.join(spec.choices)}"
    raise refuse(f"is not a fitting here; {hint}")


_Row = tuple[float | None, float | None]


def points(spec: FieldSpec, value: Any) -> tuple[tuple[float, float], ...]:
    """Points of pressure and flow or current, rising in pressure."""
    items = _entries(spec, value, f"points, such as {_listed(spec.example[0])} each")
    rows: list[_Row] = []
    problems: list[Problem] = []
    for at, item in enumerate(items):
        row, rejected = _row(spec, item)
        rows.append(row)
        problems += [((at, *key_path), words) for key_path, words in rejected]
    problems += _out_of_order(spec, items, rows)
    if problems:
        raise Rejected(*sorted(problems, key=lambda one: [int(part) for part in one[0]]))
    return tuple((pa, amount) for pa, amount in rows if pa is not None and amount is not None)


def _row(spec: FieldSpec, item: Any) -> tuple[_Row, list[Problem]]:
    """One point, and what is wrong in it; None for what cannot be read."""
    if not isinstance(item, list) or len(item) != 2:
        got = f"a list of {len(item)}" if isinstance(item, list) and item else quoted(item)
        return (None, None), [((), f"wants two entries such as {_listed(spec.example[0])}, got {got}")]
    row: list[float | None] = []
    problems: list[Problem] = []
    for column, part in enumerate(spec.parts):
        try:
            row.append(quantity(part, item[column]))
        except Rejected as rejected:
            row.append(None)
            problems += [((column, *key_path), words) for key_path, words in rejected.problems]
    return (row[0], row[1]), problems


def _out_of_order(spec: FieldSpec, items: list[Any], rows: list[_Row]) -> list[Problem]:
    """Points that do not rise in pressure, or that rise in flow where they may not."""
    problems: list[Problem] = []
    for at in range(1, len(rows)):
        (before, more), (here, less) = rows[at - 1], rows[at]
        if before is not None and here is not None and not here > before:
            got = f"{clean(items[at][0])} after {clean(items[at - 1][0])}"
            problems.append(((at, 0), f"must rise from point to point, got {got}"))
        if spec.falls and more is not None and less is not None and less > more:
            got = f"{clean(items[at][1])} after {clean(items[at - 1][1])}"
            problems.append(((at, 1), f"must not rise as pressure rises, got {got}"))
    return problems


def change(spec: FieldSpec, value: Any) -> dict[str, Any]:
    """Values by path; what they do is judged on a copy of the build."""
    if isinstance(value, dict) and value:
        return value
    example = '{ "fuel.temperature" = "55 degC" }'
    raise refuse(f"wants keys by their path, such as {example}, got {quoted(value)}")
