"""Points of a pull off a dyno sheet: power, boost and engine speed, pasted as a table or typed in lines."""

from __future__ import annotations

import re
from itertools import zip_longest

from fuelwiz import units
from fuelwiz.desk.points.paste import Points
from fuelwiz.desk.points.point_cells import PULL
from fuelwiz.printable import clean
from fuelwiz.session import Rejected, field_at, read
from fuelwiz.shown_units import shown_unit
from fuelwiz.units import UnitSystem

_MOST = 40
_NUMBER = re.compile(r"(?P<number>\d+(?:\.\d+)?)[ \t]*(?P<unit>[A-Za-z]+(?:/[A-Za-z]+)?)?")
_HEADS = {"rpm": ("rpm", "speed", "turns"), "power": ("power", "hp", "kw"), "boost": ("boost", "psi", "bar")}
_USUAL = {3: ("rpm", "power", "boost"), 2: ("power", "boost")}
Row = dict[str, str]


def read_pull(text: str, system: UnitSystem) -> Points:
    """The points in a text: by the units of its numbers, else by the head of its columns, else in the usual order."""
    order: tuple[str, ...] = ()
    named: Row = {}
    found: list[Row] = []
    left_out: list[str] = []
    for number, line in enumerate(text.splitlines()[:400], 1):
        if not line.strip():
            continue
        if not re.search(r"\d", line):
            order, named = _head(line)
            continue
        row = _row(line, order, named, system)
        if row is None or len(found) == _MOST:
            left_out.append(f'line {number}, "{clean(line).strip()[:24]}": left out')
        else:
            found.append(row)
    return Points(
        tuple((row["power"], row["boost"]) for row in found),
        None,
        tuple(left_out[:8]),
        speeds=tuple(row.get("rpm", "") for row in found),
    )


def _head(line: str) -> tuple[tuple[str, ...], Row]:
    """Which column is which, and the units that the heads name."""
    order, named = [], {}
    for cell in re.split(r"[,;\t|]+", line.lower()):
        what = next((one for one, words in _HEADS.items() if any(word in cell for word in words)), "")
        order.append(what)
        unit = next((word for word in re.findall(r"[a-z/]+", cell) if _kind(word) == what), None)
        if what and unit:
            named[what] = unit
    return tuple(order), named


def _row(line: str, order: tuple[str, ...], named: Row, system: UnitSystem) -> Row | None:
    """One point; None where it has no power and boost that can be read."""
    pieces = list(_NUMBER.finditer(line))
    usual = order or _USUAL.get(len(pieces), ())
    row: Row = {}
    for piece, place in zip_longest(pieces, usual[: len(pieces)]):
        what = _kind(piece["unit"] or "") or place
        if what == "rpm":
            row["rpm"] = str(round(float(piece["number"])))
        elif what:
            unit = piece["unit"] if _kind(piece["unit"] or "") else named.get(what, _unit(what, system))
            row[what] = f"{piece['number']} {unit}"
    return row if _is_point(row) else None


def _kind(unit: str) -> str:
    if unit.lower() == "rpm":
        return "rpm"
    kinds = units.kinds_of(unit) if unit else ()
    return "power" if "power" in kinds else "boost" if "gauge_pressure" in kinds else ""


def _unit(what: str, system: UnitSystem) -> str:
    return shown_unit("power" if what == "power" else "gauge_pressure", system)


def _is_point(row: Row) -> bool:
    try:
        for key, text in row.items():
            read(field_at(f"{PULL}.{key}"), int(text) if key == "rpm" else text)
    except Rejected:
        return False
    return {"power", "boost"} <= set(row)
