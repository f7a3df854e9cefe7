"""Text to SI and back: the units that people type, and what is wrong with a text, in words."""

from __future__ import annotations

import re
from fractions import Fraction
from math import isfinite
from typing import Literal

from fuelwiz.errors import UnitError
from fuelwiz.unit_table import BLANKS, SIGNS, Kind, Scale, kind_in_words, scale_of, unit_called

BaseSystem = Literal["us", "metric"]
PowerUnit = Literal["hp", "kW"]
UnitSystem = Literal["us", "metric", "us_kw", "metric_hp"]
"""The ways in which figures are shown: a system of units, and power in its own unit or in that of the other."""

_LONGEST_NUMBER = 40
_LONGEST_TEXT = 120
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
    number, unit = _parts(term, kind_in_words(kind).example)
    if not unit:
        raise UnitError(f"wants a unit after the number: {any_of(units_of(kind))}")
    if kind in _PRESSURES and name_of(unit) == "lb":
        unit = "psi"  # so much pressure is said in pounds
    _refuse_unfit(unit, kind, text)
    return to_si(_number(number), unit)


def _terms(text: str) -> list[str]:
    """The lengths that a length is added up from: those between plus signs, feet and inches apart."""
    plain = text.translate(BLANKS).strip()
    if len(plain) > _LONGEST_TEXT:
        return [plain]
    terms = []
    for term in re.split(r"(?<=[^\s+]) *\+ *(?=[0-9.])", plain):
        both = _FEET_AND_INCHES.fullmatch(term.translate(SIGNS))
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
    with_unit = text.strip()
    if not _parts(with_unit, kind_in_words(kind).example)[1]:
        with_unit = f"{with_unit} {bare_unit}"
    return parse(with_unit, kind), with_unit


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
    return kind_in_words(kind).suggest


def kinds_of(unit: str) -> tuple[Kind, ...]:
    """The kinds that a unit may measure; none where there is no such unit."""
    known = unit_called(unit)
    return known.kinds if known else ()


def name_of(unit: str) -> str:
    """The usual spelling of a unit; empty where there is no such unit."""
    known = unit_called(unit)
    return known.name if known else ""


def is_in_inches(text: str) -> bool:
    """Whether a length is said in inches or feet."""
    return name_of(split(text)[1]) in {"in", "ft"}


def describe(kind: Kind, *, with_zero: bool = False) -> str:
    """A kind in words: "a pressure", or with what it counts from, "a pressure above vacuum"."""
    words = kind_in_words(kind)
    return (words.with_zero if with_zero else None) or words.words


def _parts(text: str, example: str) -> tuple[str, str]:
    """The number and the unit, as typed; what is no number is refused with an example of one."""
    plain = text.translate(BLANKS).strip()
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
    wanted, known = kind_in_words(kind), unit_called(unit)
    if known is None and re.search("[0-9]", unit):
        raise UnitError(f'wants one number and one unit such as "{wanted.example}", got {_quoted(text)}')
    if known is None:
        raise UnitError(f"wants {wanted.words} in {any_of(wanted.suggest)}, got {_quoted(unit)}")
    if kind in known.kinds:
        return
    if known.zero and wanted.with_zero:
        raise UnitError(f"wants {wanted.with_zero}, got {_shown(unit)}, which counts from {known.zero}")
    raise UnitError(f"wants {wanted.words}, got {_shown(unit)}")


def any_of(names: tuple[str, ...]) -> str:
    """Names of which one is wanted: "psi, bar or kPa"."""
    return " or ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)


def _quoted(text: str) -> str:
    return f'"{_shown(text)}"'


def _shown(text: str) -> str:
    """A text that is short and harmless enough to be said back."""
    clipped = text if len(text) <= _LONGEST_NUMBER else f"{text[: _LONGEST_NUMBER - 1]}…"
    return "".join(sign if sign.isprintable() else "?" for sign in clipped)


def _scale(unit: str) -> Scale:
    scale = scale_of(unit)
    if scale is None:
        raise UnitError(f"wants a unit that is known here, got {_quoted(unit)}")
    return scale
