"""The units that people type: how each is spelled, what it measures, and what it is worth in SI.

pint says what each is worth (`unit_judge`), by the expression in facts/units.toml; it never sees what was typed.
"""

from __future__ import annotations

import re
import tomllib
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, Literal

from fuelwiz.record import record

Kind = Literal[
    "power",
    "gauge_pressure",
    "absolute_pressure",
    "pressure_change",
    "flow",
    "mass_flow",
    "length",
    "velocity",
    "voltage",
    "current",
    "temperature",
    "fraction",
    "bsfc",
    "density",
    "viscosity",
    "heating_value",
    "area",
    "volume",
    "time",
    "mass",
    "temperature_change",
]

BLANKS = str.maketrans(dict.fromkeys("\t\u00a0\u2009\u202f", " "))
SIGNS = str.maketrans("²³·⋅×’′”″º", "23***''\"\"°", "^")
_WORD_OR_SIGN = re.compile(r"[^\W\d_]+|.")


@record
class Unit:
    """A unit: its expression in pint, what it measures, and the texts that stand for it (`never`: those that do not)."""

    name: str
    pint: str
    kinds: tuple[Kind, ...]
    spellings: tuple[str, ...]
    never: tuple[str, ...] = ()
    zero: str | None = None


@record
class KindInWords:
    """A kind of quantity in words, with an example and the units to suggest."""

    words: str
    example: str
    suggest: tuple[str, ...]
    with_zero: str | None = None


@record
class _Table:
    kinds: dict[str, KindInWords]
    words: dict[str, str]
    units: dict[str, Unit]


@record
class Scale:
    """SI = (number * times + shift) / over, in whole numbers where they fit: 7 % is 0.07 to the last bit."""

    times: float
    shift: float
    over: float


def kind_in_words(kind: Kind) -> KindInWords:
    """What is said of a kind of quantity."""
    return _table().kinds[kind]


def unit_called(typed: str) -> Unit | None:
    """The unit of that spelling; None where there is none."""
    unit = _table().units.get(_folded(typed))
    return None if unit is None or typed.strip().startswith(unit.never) else unit


@lru_cache(maxsize=512)
def scale_of(spelling: str) -> Scale | None:
    """What a unit in any spelling is worth; None where there is no such unit."""
    unit = unit_called(spelling)
    return None if unit is None else _scale_of_expression(unit.pint)


def _folded(unit: str) -> str:
    """A unit in the spelling of the table."""
    words = _table().words
    plain = unit.translate(BLANKS).translate(SIGNS).casefold().strip()
    plain = re.sub(r"(?<=[a-z])\.", "", plain)
    plain = re.sub(r" *([^\w ]) *", r"\1", re.sub(" +", " ", plain))
    return "".join(words.get(word, word) for word in _WORD_OR_SIGN.findall(plain))


def expressions() -> frozenset[str]:
    """Every unit of the table by pint's name for it."""
    return frozenset(unit.pint for unit in _table().units.values())


@cache
def _scale_of_expression(expression: str) -> Scale:
    """The scale of a unit, from the table that is shipped; pint is loaded for one that is not in it."""
    known = _factors().get(expression)
    if known is None:
        from fuelwiz.unit_judge import factor

        known = list(factor(expression))
    return Scale(*known)


@cache
def _factors() -> dict[str, list[float]]:
    return tomllib.loads(_fact("unit_factors.toml"))


def _fact(name: str) -> str:
    return (Path(__file__).parent / "facts" / name).read_text(encoding="utf-8")


@cache
def _table() -> _Table:
    plain = tomllib.loads(_fact("units.toml"))
    kinds = {kind: KindInWords(**_with_tuples(row)) for kind, row in plain["kinds"].items()}
    words = {typed: word for word, spellings in plain["words"].items() for typed in spellings}
    units = [Unit(**_with_tuples(row)) for row in plain["unit"]]
    return _Table(kinds, words, {spelling: unit for unit in units for spelling in unit.spellings})


def _with_tuples(row: dict[str, Any]) -> dict[str, Any]:
    return {key: tuple(value) if isinstance(value, list) else value for key, value in row.items()}


def _write_factors() -> None:
    """Have pint say anew what every unit is worth."""
    from fuelwiz.unit_judge import table_of

    Path(__file__).with_name("facts").joinpath("unit_factors.toml").write_text(
        table_of(expressions()), encoding="utf-8"
    )


if __name__ == "__main__":
    _write_factors()
