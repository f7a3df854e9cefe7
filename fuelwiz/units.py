"""Text to SI and back: the units that people type, and what is wrong with a text, in words.

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
from math import isfinite, lcm
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from fuelwiz.errors import UnitError
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

UnitSystem = Literal["us", "metric"]
"""The two ways in which figures are shown."""

_LONGEST_NUMBER = 40
_LONGEST_TEXT = 120
_BLANKS = str.maketrans(dict.fromkeys("\t\u00a0\u2009\u202f", " "))
_SIGNS = str.maketrans("²³·⋅×’′”″º", "23***''\"\"°", "^")
_NUMBER = re.compile(
    r"(?P<sign>[-+\u2212]?) *"
    r"(?:(?:(?P<whole>[0-9]+) +)?(?P<over>[0-9]+) */ *(?P<under>[0-9]+)"
    r"|(?P<decimal>(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?))"
)
_FEET_AND_INCHES = re.compile(
    r"(?P<feet>[-+]? *[0-9][0-9.]* *(?:'|ft\.?|foot|feet)) *(?P<inches>[0-9][0-9./ ]* *(?:\"|''|in\.?|inch|inches))",
    re.IGNORECASE,
)
_PRESSURES = {"gauge_pressure", "absolute_pressure", "pressure_change"}
_THOUSANDS = re.compile(r"[-+\u2212]? *[0-9]{1,3}(?:(?:,[0-9]{3})+(?![0-9])|(?: [0-9]{3})+(?![0-9/]))")
_DECIMAL_COMMA = re.compile(r"(?P<before>[-+\u2212]? *[0-9]*),(?P<after>[0-9]+)")
_WORD_OR_SIGN = re.compile(r"[^\W\d_]+|.")


@dataclass(frozen=True, slots=True)
class _Unit:
    name: str
    pint: str
    kinds: tuple[Kind, ...]
    spellings: tuple[str, ...]
    never: tuple[str, ...] = ()
    zero: str | None = None


@dataclass(frozen=True, slots=True)
class _KindInWords:
    words: str
    example: str
    suggest: tuple[str, ...]
    with_zero: str | None = None


@dataclass(frozen=True, slots=True)
class _Table:
    kinds: dict[str, _KindInWords]
    words: dict[str, str]
    units: dict[str, _Unit]


@dataclass(frozen=True, slots=True)
class _Scale:
    """SI = (number * times + shift) / over, in whole numbers where they fit: 7 % is 0.07 to the last bit."""

    times: float
    shift: float
    over: float


def parse(text: str, kind: Kind) -> float:
    """The SI value of one number and one unit.

    Args:
        text: a number or a plain fraction, then a unit: "43.5 psi", "3/8 in"; a length may be added up from
            several: "16' 6\"", "4.5 m + 0.5 m".
        kind: what the unit has to measure.

    Raises:
        UnitError: in words that follow the name of a key.
    """
    terms = _terms(text) if kind == "length" else [text]
    value = sum(_one(term, kind, text) for term in terms)
    if not isfinite(value):
        raise UnitError(f"is too large a number: {_quoted(text)}")
    return value


def _one(term: str, kind: Kind, text: str) -> float:
    """The SI value of one number and one unit; `text` is all that was typed."""
    number, unit = _parts(term, _kind(kind).example)
    if not unit:
        raise UnitError(f"wants a unit after the number: {_any_of(units_of(kind))}")
    if kind in _PRESSURES and _folded(unit) == "lb":
        unit = "psi"  # so much pressure is said in pounds
    _refuse_unfit(unit, kind, text)
    return to_si(_number(number), unit)


def _terms(text: str) -> list[str]:
    """The lengths that a length is added up from: those between plus signs, feet and inches apart."""
    plain = text.translate(_BLANKS).strip()
    if len(plain) > _LONGEST_TEXT:
        return [plain]
    terms = []
    for term in re.split(r"(?<=[^\s+]) *\+ *(?=[0-9.])", plain):
        both = _FEET_AND_INCHES.fullmatch(term.translate(_SIGNS))
        terms += [both["feet"], both["inches"]] if both else [term]
    return terms


def parse_typed(text: str, kind: Kind, bare_unit: str) -> tuple[float, str]:
    """The SI value of what was typed into a form, and the text that the file keeps.

    Args:
        text: as `parse`, or a number alone.
        kind: what the unit has to measure.
        bare_unit: the unit of a number alone; the kept text then has it: "22" is kept as "22 psi".

    Raises:
        UnitError: in words that follow the name of a key.
    """
    kept = text.strip()
    if not _parts(kept, _kind(kind).example)[1]:
        kept = f"{kept} {bare_unit}"
    return parse(kept, kind), kept


def split(text: str) -> tuple[str, str]:
    """The number and the unit of a text, as typed; the unit is empty where there is none.

    Raises:
        UnitError: the text does not begin with a number.
    """
    return _parts(text, "43.5 psi")


def to_si(number: float, unit: str) -> float:
    """A number of a unit, in SI; kelvin for a temperature.

    Args:
        number: how many of the unit.
        unit: in any spelling: "psi", "gal/h", "degF".

    Raises:
        UnitError: there is no such unit.
    """
    scale = _scale(unit)
    return (number * scale.times + scale.shift) / scale.over


def from_si(value: float, unit: str) -> float:
    """How many of a unit an SI value is.

    Args:
        value: in SI; kelvin for a temperature.
        unit: in any spelling: "psi", "gal/h", "degF".

    Raises:
        UnitError: there is no such unit.
    """
    scale = _scale(unit)
    return (value * scale.over - scale.shift) / scale.times


def units_of(kind: Kind) -> tuple[str, ...]:
    """The units to suggest for a kind, in their usual spelling."""
    return _kind(kind).suggest


def kinds_of(unit: str) -> tuple[Kind, ...]:
    """The kinds that a unit may measure; none where there is no such unit."""
    found = _unit(unit)
    return found.kinds if found else ()


def name_of(unit: str) -> str:
    """The usual spelling of a unit; empty where there is no such unit."""
    found = _unit(unit)
    return found.name if found else ""


def is_in_inches(text: str) -> bool:
    """Whether a length is said in inches or feet."""
    return name_of(split(text)[1]) in {"in", "ft"}


def describe(kind: Kind) -> str:
    """A kind in words: "a pressure"."""
    return _kind(kind).words


def _parts(text: str, example: str) -> tuple[str, str]:
    """The number and the unit, as typed; what is no number is refused with an example of one."""
    plain = text.translate(_BLANKS).strip()
    if not plain.isprintable():
        raise UnitError(f"holds a character that cannot be seen: {_quoted(plain)}")
    if len(plain) > _LONGEST_TEXT:
        raise UnitError(f'wants a number and a unit such as "{example}", got {len(plain)} characters')
    _refuse_commas(plain)
    match = _NUMBER.match(plain)
    if match is None:
        raise UnitError(f'wants a number and a unit such as "{example}", got {_quoted(plain)}')
    number, unit = match[0], plain[match.end() :].strip()
    if len(number) > _LONGEST_NUMBER:
        raise UnitError(f"wants a number of {_LONGEST_NUMBER} characters at most, got {_quoted(number)}")
    return number, unit


def _refuse_commas(plain: str) -> None:
    if grouped := _THOUSANDS.match(plain):
        whole = re.sub("[, ]", "", grouped[0])
        raise UnitError(f'wants a number without thousands separators, "{whole}", got {_quoted(plain)}')
    if comma := _DECIMAL_COMMA.match(plain):
        pointed = f"{comma['before']}.{comma['after']}"
        raise UnitError(f"wants a decimal point, {_quoted(pointed)}, not a comma, got {_quoted(plain)}")


def _number(text: str) -> float:
    """The value of the number part; infinite where it is too large for a float."""
    match = _NUMBER.fullmatch(text)
    assert match is not None
    size = float(match["decimal"]) if match["decimal"] else float(_fraction(match))
    return -size if match["sign"] in {"-", "\u2212"} else size


def _fraction(match: re.Match[str]) -> Fraction:
    over, under = int(match["over"]), int(match["under"])
    if under == 0:
        raise UnitError("cannot be read: a fraction over zero")
    if match["whole"] and over >= under:
        raise UnitError(f"wants a fraction below one after a whole number, got {_quoted(match[0])}")
    return int(match["whole"] or 0) + Fraction(over, under)


def _refuse_unfit(unit: str, kind: Kind, text: str) -> None:
    """Refuse a unit that is unknown, or that measures something else."""
    wanted, found = _kind(kind), _unit(unit)
    if found is None and re.search("[0-9]", unit):
        raise UnitError(f'wants one number and one unit such as "{wanted.example}", got {_quoted(text)}')
    if found is None:
        raise UnitError(f"wants {wanted.words} in {_any_of(wanted.suggest)}, got {_quoted(unit)}")
    if kind in found.kinds:
        return
    if found.zero and wanted.with_zero:
        raise UnitError(f"wants {wanted.with_zero}, got {_shown(unit)}, which counts from {found.zero}")
    raise UnitError(f"wants {wanted.words}, got {_shown(unit)}")


def _any_of(names: tuple[str, ...]) -> str:
    return " or ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)


def _quoted(text: str) -> str:
    return f'"{_shown(text)}"'


def _shown(text: str) -> str:
    """A text that is short and harmless enough to be said back."""
    clipped = text if len(text) <= _LONGEST_NUMBER else f"{text[: _LONGEST_NUMBER - 1]}…"
    return "".join(sign if sign.isprintable() else "?" for sign in clipped)


def _unit(typed: str) -> _Unit | None:
    found = _table().units.get(_folded(typed))
    return None if found is None or typed.strip().startswith(found.never) else found


def _folded(unit: str) -> str:
    """A unit in the spelling of the table."""
    words = _table().words
    plain = unit.translate(_BLANKS).translate(_SIGNS).casefold().strip()
    plain = re.sub(r"(?<=[a-z])\.", "", plain)
    plain = re.sub(r" *([^\w ]) *", r"\1", re.sub(" +", " ", plain))
    return "".join(words.get(word, word) for word in _WORD_OR_SIGN.findall(plain))


@lru_cache(maxsize=512)
def _scale(spelling: str) -> _Scale:
    unit = _unit(spelling)
    if unit is None:
        raise UnitError(f"wants a unit that is known here, got {_quoted(spelling)}")
    return _scales()[unit.pint]


@cache
def _scales() -> dict[str, _Scale]:
    """The scale of every unit in the table."""
    expressions = {unit.pint for unit in _table().units.values()}
    kept = factors(_cache_folder(), expressions, _factor_from_pint)
    return {expression: _Scale(*factor) for expression, factor in kept.items()}


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


def _kind(kind: Kind) -> _KindInWords:
    return _table().kinds[kind]


@cache
def _table() -> _Table:
    source = resources.files("fuelwiz").joinpath("facts/units.toml").read_text(encoding="utf-8")
    plain = tomllib.loads(source)
    kinds = {kind: _KindInWords(**_with_tuples(row)) for kind, row in plain["kinds"].items()}
    words = {typed: word for word, spellings in plain["words"].items() for typed in spellings}
    units = [_Unit(**_with_tuples(row)) for row in plain["unit"]]
    return _Table(kinds, words, {spelling: unit for unit in units for spelling in unit.spellings})


def _with_tuples(row: dict[str, Any]) -> dict[str, Any]:
    return {key: tuple(value) if isinstance(value, list) else value for key, value in row.items()}
