"""Reading one plain value of a session file: to SI, or what is wrong with it in words that follow the key."""

from __future__ import annotations

import difflib
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from fuelwiz import units
from fuelwiz.errors import UnitError
from fuelwiz.physics.wire import awg_area_m2
from fuelwiz.session.clean import clean, shown
from fuelwiz.session.spec import FieldSpec, Type
from fuelwiz.units import Kind

HEPTANE_KG_M3 = 684.0
"""Density of n-heptane, on which injectors are rated (SAE J1832 practice)."""

NEAR = 1e-9
_DASH = re.compile(r"-([0-9]{1,3})")
_GAUGE = re.compile(r"(.*?)\s*awg", re.IGNORECASE | re.DOTALL)


@dataclass(frozen=True, slots=True)
class Size:
    """A candidate: a dash size, or a bore that is the same in any hose."""

    text: str
    dash: int | None
    bore_m: float | None


Found = tuple[tuple[str | int, ...], str]
"""One thing that is wrong: the way to it inside the value, and words."""


class Wrong(Exception):  # noqa: N818  it carries faults to the model, and never reaches the user
    """A value is refused; holds all that is wrong with it."""

    def __init__(self, *found: Found) -> None:
        self.found = found
        super().__init__(found)


def refuse(words: str) -> Wrong:
    """The refusal of a value as a whole."""
    return Wrong(((), words))


def read(spec: FieldSpec, value: Any) -> Any:
    """The value that the session holds for a plain value.

    Raises:
        Wrong: with everything that is wrong in it.
    """
    return _READERS[spec.type](spec, value)


@lru_cache(maxsize=8192)
def si(text: str, kind: Kind) -> float:
    """units.parse, remembered: the same texts are read at every keystroke."""
    return units.parse(text, kind)


def range_text(spec: FieldSpec) -> str:
    """What is allowed, in words: "0 to 100 psi"."""
    assert spec.low is not None and spec.high is not None
    low_number, _, low_unit = spec.low.partition(" ")
    _, _, high_unit = spec.high.partition(" ")
    return f"{low_number if low_unit == high_unit else spec.low} to {spec.high}"


def nearest(word: str, words: tuple[str, ...]) -> str | None:
    """The word that was probably meant."""
    close = difflib.get_close_matches(word[:60], words, n=1, cutoff=0.6)
    return close[0] if close else None


def _quantity(spec: FieldSpec, value: Any) -> float:
    assert spec.kind is not None
    if not isinstance(value, str):
        described = units.describe(spec.kind)
        raise refuse(
            f'wants {described} in quotes with its unit, such as "{_example(spec)}", got {shown(value)}'
        )
    try:
        number = si(value, spec.kind)
    except UnitError as error:
        raise refuse(str(error)) from None
    if not _within(number, *_bounds(spec)):
        raise refuse(f"wants {range_text(spec)}, got {clean(value)}")
    return number


def _example(spec: FieldSpec) -> str:
    return str(spec.example or spec.high)


@lru_cache(maxsize=512)
def _limits(low: str, high: str, kind: Kind) -> tuple[float, float]:
    return si(low, kind), si(high, kind)


def _bounds(spec: FieldSpec) -> tuple[float, float]:
    assert spec.kind is not None and spec.low is not None and spec.high is not None
    return _limits(spec.low, spec.high, spec.kind)


def _within(number: float, low: float, high: float) -> bool:
    """Whether a number lies in a range, an edge that was typed in another unit included."""
    return math.isfinite(number) and low - NEAR * abs(low) <= number <= high + NEAR * abs(high)


def _count(spec: FieldSpec, value: Any) -> int:
    assert spec.low is not None and spec.high is not None
    if isinstance(value, bool) or not isinstance(value, int):
        raise refuse(
            f"wants a whole number from {spec.low} to {spec.high}, without quotes, got {shown(value)}"
        )
    if not int(spec.low) <= value <= int(spec.high):
        raise refuse(f"wants {range_text(spec)}, got {shown(value)}")
    return value


def _ratio(spec: FieldSpec, value: Any) -> float:
    assert spec.low is not None and spec.high is not None
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise refuse(
            f"wants a bare number from {spec.low} to {spec.high}, without unit or quotes, got {shown(value)}"
        )
    if not float(spec.low) <= value <= float(spec.high):
        raise refuse(f"wants {range_text(spec)}, got {shown(value)}")
    return float(value)


def _choice(spec: FieldSpec, value: Any) -> str:
    if isinstance(value, str) and value in spec.choices:
        return value
    words = f"wants {_any_of(spec.choices)}, got {shown(value)}"
    meant = nearest(value.lower(), spec.choices) if isinstance(value, str) else None
    raise refuse(f'{words}; did you mean "{meant}"?' if meant else words)


def _any_of(words: tuple[str, ...]) -> str:
    quoted = [f'"{word}"' for word in words]
    return f"{', '.join(quoted[:-1])} or {quoted[-1]}"


def _text(spec: FieldSpec, value: Any) -> str:
    assert spec.high is not None
    if not isinstance(value, str):
        raise refuse(f"wants a text in quotes, got {shown(value)}")
    if len(value) > int(spec.high):
        raise refuse(f"wants a text of {spec.high} characters at most, got {len(value)}")
    return clean(value, lines=spec.type == "note")


def _size(spec: FieldSpec, value: Any) -> Size:
    wanted = 'wants a dash size such as "-8", or a bore such as "8 mm" or "3/8 in"'
    if not isinstance(value, str):
        raise refuse(f"{wanted}, got {shown(value)}")
    typed = value.strip()
    dash = _DASH.fullmatch(typed)
    if dash:
        number = int(dash[1])
        if not 2 <= number <= 32:
            raise refuse(f"wants a dash size from -2 to -32, got {typed}")
        return Size(f"-{number}", number, None)
    try:
        si(typed, "length")
    except UnitError:
        raise refuse(f"{wanted}, got {shown(value)}") from None
    return Size(clean(typed), None, _quantity(spec.parts[0], typed))


def _sizes(spec: FieldSpec, value: Any) -> tuple[Size, ...]:
    items = _items(spec, value, 'dash sizes or bores, such as ["-6", "-8"]')
    return tuple(_each(items, spec.parts[0]))


def _velocities(spec: FieldSpec, value: Any) -> tuple[float, ...]:
    items = _items(spec, value, f"four rising velocities, such as {_toml_list(spec.example)}")
    speeds = _each(items, spec.parts[0])
    falls = [i for i in range(1, len(speeds)) if not speeds[i] > speeds[i - 1]]
    if falls:
        raise Wrong(*(((i,), f"must lie above {items[i - 1]} before it, got {items[i]}") for i in falls))
    return tuple(speeds)


def _toml_list(items: list[str]) -> str:
    return "[" + ", ".join(f'"{item}"' for item in items) + "]"


def _items(spec: FieldSpec, value: Any, words: str) -> list[Any]:
    """The entries of a list that is not empty and not too long."""
    assert spec.low is not None and spec.high is not None
    if not isinstance(value, list):
        raise refuse(f"wants a list of {words}, got {shown(value)}")
    if not int(spec.low) <= len(value) <= int(spec.high):
        number = spec.low if spec.low == spec.high else f"{spec.low} to {spec.high}"
        raise refuse(f"wants {number} entries, got {len(value) or 'none'}")
    return value


def _each(items: list[Any], spec: FieldSpec) -> list[Any]:
    """Every entry read; all that is wrong in any of them is refused together."""
    read_items: list[Any] = []
    found: list[Found] = []
    for index, item in enumerate(items):
        try:
            read_items.append(read(spec, item))
        except Wrong as wrong:
            found += [((index, *way), words) for way, words in wrong.found]
    if found:
        raise Wrong(*found)
    return read_items


def _fittings(spec: FieldSpec, value: Any) -> dict[str, int]:
    if not isinstance(value, dict):
        raise refuse(f"wants a table such as {{ straight = 2, exit = 1 }}, got {shown(value)}")
    counts: dict[str, int] = {}
    found: list[Found] = []
    for name, number in value.items():
        if name not in spec.choices:
            found.append(((name,), _unknown_fitting(str(name), spec.choices)))
            continue
        try:
            counts[name] = _count(spec.parts[0], number)
        except Wrong as wrong:
            found += [((name, *way), words) for way, words in wrong.found]
    if found:
        raise Wrong(*found)
    return counts


def _unknown_fitting(name: str, known: tuple[str, ...]) -> str:
    meant = nearest(name, known)
    return (
        f"is not a fitting; did you mean `{meant}`?"
        if meant
        else f"is not a fitting; known are {' '.join(known)}"
    )


def _points(spec: FieldSpec, value: Any) -> tuple[tuple[float, float], ...]:
    items = _items(spec, value, f"points such as {_toml_list(spec.example[0])}")
    pressure, other = spec.parts
    rows: list[tuple[float | None, float | None]] = []
    found: list[Found] = []
    for index, item in enumerate(items):
        if not isinstance(item, list) or len(item) != 2:
            got = f"a list of {len(item)}" if isinstance(item, list) else shown(item)
            found.append(((index,), f"wants two entries such as {_toml_list(spec.example[0])}, got {got}"))
            rows.append((None, None))
            continue
        row: list[float | None] = []
        for column, part in enumerate((pressure, other)):
            try:
                row.append(_quantity(part, item[column]))
            except Wrong as wrong:
                found += [((index, column, *way), words) for way, words in wrong.found]
                row.append(None)
        rows.append((row[0], row[1]))
    found += _out_of_order(spec, items, rows)
    if found:
        raise Wrong(*sorted(found, key=lambda one: one[0]))  # type: ignore[arg-type,return-value]
    return tuple((pa, amount) for pa, amount in rows if pa is not None and amount is not None)


def _out_of_order(
    spec: FieldSpec, items: list[Any], rows: list[tuple[float | None, float | None]]
) -> list[Found]:
    """Points that do not rise in pressure, or that rise in flow where they may not."""
    found: list[Found] = []
    for index in range(1, len(rows)):
        (before, more), (here, less) = rows[index - 1], rows[index]
        if before is not None and here is not None and not here > before:
            got = f"{clean(items[index][0])} after {clean(items[index - 1][0])}"
            found.append(((index, 0), f"must rise in pressure from point to point, got {got}"))
        if spec.falls and more is not None and less is not None and less > more:
            got = f"{clean(items[index][1])} after {clean(items[index - 1][1])}"
            found.append(((index, 1), f"must not rise in flow from point to point, got {got}"))
    return found


def _wire(spec: FieldSpec, value: Any) -> float:
    wanted = f"wants a gauge of {range_text(spec)}, or an area of {range_text(spec.parts[0])}"
    if not isinstance(value, str):
        raise refuse(f'{wanted}, in quotes such as "12 AWG" or "4 mm^2", got {shown(value)}')
    gauge = _GAUGE.fullmatch(value.strip())
    if gauge:
        if not re.fullmatch("[0-9]{1,3}", gauge[1]) or int(gauge[1]) > 24:
            raise refuse(f"{wanted}, got {clean(value)}")
        return awg_area_m2(int(gauge[1]))
    try:
        area = si(value, "area")
    except UnitError:
        raise refuse(f"{wanted}, got {shown(value)}") from None
    if not _within(area, *_bounds(spec.parts[0])):
        raise refuse(f"{wanted}, got {clean(value)}")
    return area


def _rated_flow(spec: FieldSpec, value: Any) -> float:
    by_volume, by_mass = spec.parts
    if isinstance(value, str):
        try:
            si(value, "mass_flow")
        except UnitError as error:
            if any("mass_flow" in units.kinds_of(unit) for unit in _unit_typed(value)):
                raise refuse(str(error)) from None
        else:
            return _quantity(by_mass, value) / HEPTANE_KG_M3
    return _quantity(by_volume, value)


def _unit_typed(text: str) -> tuple[str, ...]:
    try:
        return (units.split(text)[1],)
    except UnitError:
        return ()


def _format(spec: FieldSpec, value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or value < 1:
        raise refuse(f"wants the whole number 1, without quotes, got {shown(value)}")
    if value > 1:
        raise refuse(f"is a newer format ({shown(value)}); this program writes 1 and will not open it")
    return value


def _change(spec: FieldSpec, value: Any) -> dict[str, Any]:
    if not isinstance(value, dict) or not value:
        raise refuse(
            f'wants keys by their path, such as {{ "fuel.temperature" = "55 degC" }}, got {shown(value)}'
        )
    return value


def _kept(spec: FieldSpec, value: Any) -> str:
    """What the program noted at the last save: whatever stands there, no figure hangs on it."""
    assert spec.high is not None
    if isinstance(value, bool | int | float | list | dict):
        return ""
    return clean(str(value)[: int(spec.high)])


def _flag(spec: FieldSpec, value: Any) -> bool | None:
    return value if isinstance(value, bool) else None


_READERS: dict[Type, Callable[[FieldSpec, Any], Any]] = {
    "format": _format,
    "quantity": _quantity,
    "count": _count,
    "ratio": _ratio,
    "choice": _choice,
    "text": _text,
    "note": _text,
    "size": _size,
    "sizes": _sizes,
    "fittings": _fittings,
    "points": _points,
    "wire": _wire,
    "rated_flow": _rated_flow,
    "velocities": _velocities,
    "change": _change,
    "kept": _kept,
    "flag": _flag,
}
