"""The units that people type: how each is spelled, what it measures, and what it is worth in SI.

The one file that knows pint. pint is asked for the factor of each unit once for all runs, by the expression
in facts/units.toml; it never sees what was typed.
"""

from __future__ import annotations

import re
import shutil
import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from importlib import resources
from math import lcm
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from fuelwiz.factors import Factor, factors

if TYPE_CHECKING:
    import pint

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


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: its expression in pint, what it measures, and the texts that stand for it (`never`: those that do not)."""

    name: str
    pint: str
    kinds: tuple[Kind, ...]
    spellings: tuple[str, ...]
    never: tuple[str, ...] = ()
    zero: str | None = None


@dataclass(frozen=True, slots=True)
class KindInWords:
    """A kind of quantity in words, with an example and the units to suggest."""

    words: str
    example: str
    suggest: tuple[str, ...]
    with_zero: str | None = None


@dataclass(frozen=True, slots=True)
class _Table:
    kinds: dict[str, KindInWords]
    words: dict[str, str]
    units: dict[str, Unit]


@dataclass(frozen=True, slots=True)
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
    return None if unit is None else _scales()[unit.pint]


def _folded(unit: str) -> str:
    """A unit in the spelling of the table."""
    words = _table().words
    plain = unit.translate(BLANKS).translate(SIGNS).casefold().strip()
    plain = re.sub(r"(?<=[a-z])\.", "", plain)
    plain = re.sub(r" *([^\w ]) *", r"\1", re.sub(" +", " ", plain))
    return "".join(words.get(word, word) for word in _WORD_OR_SIGN.findall(plain))


@cache
def _scales() -> dict[str, Scale]:
    """The scale of every unit in the table."""
    expressions = {unit.pint for unit in _table().units.values()}
    known = factors(_cache_folder(), expressions, _factor_from_pint)
    return {expression: Scale(*factor) for expression, factor in known.items()}


def _factor_from_pint(expression: str) -> Factor:
    quantity = _registry().Quantity
    zero, one = (Fraction(quantity(Fraction(n), expression).to_base_units().magnitude) for n in (0, 1))
    over = lcm(zero.denominator, one.denominator)
    return float((one - zero) * over), float(zero * over), float(over)


@cache
def _registry() -> pint.UnitRegistry[Any]:
    """pint's own units in exact fractions, from the user's cache where that can be read and written."""
    import pint

    folder = _cache_folder()
    if folder is not None:
        try:
            return pint.UnitRegistry(non_int_type=Fraction, cache_folder=folder)
        except Exception:
            # A cache cut short by a power cut stays unreadable; pint lets through whatever its reader raises.
            shutil.rmtree(folder, ignore_errors=True)
    return pint.UnitRegistry(non_int_type=Fraction)


def _cache_folder() -> Path | None:
    """Where pint may keep what it has read; None for a user who has no home."""
    from platformdirs import user_cache_path

    try:
        folder = user_cache_path("fuelwiz") / "units"
    except RuntimeError:
        return None
    return folder if folder.is_absolute() else None


@cache
def _table() -> _Table:
    source = resources.files("fuelwiz").joinpath("facts/units.toml").read_text(encoding="utf-8")
    plain = tomllib.loads(source)
    kinds = {kind: KindInWords(**_with_tuples(row)) for kind, row in plain["kinds"].items()}
    words = {typed: word for word, spellings in plain["words"].items() for typed in spellings}
    units = [Unit(**_with_tuples(row)) for row in plain["unit"]]
    return _Table(kinds, words, {spelling: unit for unit in units for spelling in unit.spellings})


def _with_tuples(row: dict[str, Any]) -> dict[str, Any]:
    return {key: tuple(value) if isinstance(value, list) else value for key, value in row.items()}
