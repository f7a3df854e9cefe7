"""Text to SI and back: the units that people type, and what is wrong with a text, in words.

The one file that knows pint. pint is asked for the factor of each unit once, by the expression in
facts/units.toml; it never sees what was typed.
"""

from __future__ import annotations

import re
import shutil
import tomllib
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from importlib import resources
from math import isfinite
from typing import TYPE_CHECKING, Any, Literal, NewType, NoReturn, get_args

from fuelwiz.errors import UnitError

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
]

GaugePa = NewType("GaugePa", float)
"""A pressure above the atmosphere around the car, Pa: what a gauge shows."""

AbsPa = NewType("AbsPa", float)
"""A pressure above vacuum, Pa: what vapour pressures and air densities rest on."""

_DESCRIBED: dict[Kind, str] = {
    "power": "a power",
    "gauge_pressure": "a pressure",
    "absolute_pressure": "a pressure",
    "pressure_change": "a pressure",
    "flow": "a flow",
    "mass_flow": "a flow by mass",
    "length": "a length",
    "velocity": "a velocity",
    "voltage": "a voltage",
    "current": "a current",
    "temperature": "a temperature",
    "fraction": "a percentage",
    "bsfc": "a fuel consumption for each unit of power",
    "density": "a density",
    "viscosity": "a viscosity",
    "heating_value": "a heating value",
    "area": "a cross-section",
    "volume": "a volume",
}
_EXAMPLES: dict[Kind, str] = {
    "power": "410 hp",
    "gauge_pressure": "43.5 psi",
    "absolute_pressure": "7 psi",
    "pressure_change": "1.5 psi",
    "flow": "97 gal/h",
    "mass_flow": "95 lb/h",
    "length": "13 ft",
    "velocity": "6 ft/s",
    "voltage": "13.5 V",
    "current": "9 A",
    "temperature": "40 degC",
    "fraction": "15 %",
    "bsfc": "0.63 lb/(hp*h)",
    "density": "745 kg/m^3",
    "viscosity": "0.6 mm^2/s",
    "heating_value": "43.4 MJ/kg",
    "area": "4 mm^2",
    "volume": "55 l",
}

_LONGEST_NUMBER = 40
_LONGEST_TEXT = 120
_BLANKS = str.maketrans(dict.fromkeys("\t\u00a0\u2009\u202f", " "))
_SIGNS = str.maketrans(
    {
        "^": "",
        "²": "2",
        "³": "3",
        "·": "*",
        "⋅": "*",
        "×": "*",
        "’": "'",
        "′": "'",
        "”": '"',
        "″": '"',
        "º": "°",
    }
)
_NUMBER = re.compile(
    r"(?P<sign>[-+\u2212]?) *"
    r"(?:(?:(?P<whole>[0-9]+) +)?(?P<over>[0-9]+) */ *(?P<under>[0-9]+)"
    r"|(?P<decimal>(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?))"
)
_THOUSANDS = re.compile(r"[-+\u2212]? *[0-9]{1,3}(?:(?:,[0-9]{3})+(?![0-9])|(?: [0-9]{3})+(?![0-9/]))")
_DECIMAL_COMMA = re.compile(r"[-+\u2212]? *([0-9]*),([0-9]+)")
_WORD = re.compile(r"[^\W\d_]+|.")


@dataclass(frozen=True, slots=True)
class _Unit:
    name: str
    pint: str
    kinds: tuple[Kind, ...]
    never: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Scale:
    """SI value = (number + zero) * times / over; two whole numbers where they fit keep 7 % at 0.07."""

    zero: float
    times: float
    over: float


@dataclass(frozen=True, slots=True)
class _Table:
    units: tuple[_Unit, ...]
    by_spelling: dict[str, _Unit]
    words: dict[str, str]


def parse(text: str, kind: Kind) -> float:
    """The SI value of one number and one unit.

    Args:
        text: a number or a plain fraction, then a unit: "43.5 psi", "3/8 in".
        kind: what the unit must measure.

    Raises:
        UnitError: in words that follow the name of the key.
    """
    number, unit = _parts(text, kind)
    if not unit:
        raise UnitError(f"wants a unit after the number: {_any_of(units_of(kind))}")
    _refuse_other_kinds(unit, kind, text)
    value = to_si(_number(number), unit)
    if not isfinite(value):
        raise UnitError(f"wants a number of a sane size, got {_quoted(text)}")
    return value


def parse_typed(text: str, kind: Kind, bare_unit: str) -> tuple[float, str]:
    """The SI value of what was typed, and the text that the file keeps; a bare number takes `bare_unit`.

    Raises:
        UnitError: in words that follow the name of the key.
    """
    kept = text.strip()
    if not _parts(kept, kind)[1]:
        kept = f"{kept} {bare_unit}"
    return parse(kept, kind), kept


def split(text: str) -> tuple[str, str]:
    """The number and the unit of a text as they were typed; the unit is empty where there is none.

    Raises:
        UnitError: the text does not begin with a number.
    """
    return _parts(text, None)


def to_si(number: float, unit: str) -> float:
    """A number of some unit in SI; kelvin for temperatures.

    Raises:
        UnitError: no such unit.
    """
    scale = _scale(unit)
    return (number + scale.zero) * scale.times / scale.over


def from_si(value: float, unit: str) -> float:
    """An SI value as a number of some unit.

    Raises:
        UnitError: no such unit.
    """
    scale = _scale(unit)
    return value * scale.over / scale.times - scale.zero


def units_of(kind: Kind) -> tuple[str, ...]:
    """The units that measure a kind, each in its usual spelling."""
    return tuple(unit.name for unit in _table().units if kind in unit.kinds)


def kinds_of(unit: str) -> tuple[Kind, ...]:
    """The kinds that a unit may measure; none where it is unknown."""
    found = _find(unit)
    return found.kinds if found else ()


def describe(kind: Kind) -> str:
    """A kind in words: "a pressure"."""
    return _DESCRIBED[kind]


def _parts(text: str, kind: Kind | None) -> tuple[str, str]:
    """The number and the unit as typed; `kind` gives the example of the error."""
    plain = text.translate(_BLANKS).strip()
    if len(plain) > _LONGEST_TEXT:
        raise UnitError(f"wants one number and one unit, got {len(plain)} characters: {_quoted(plain)}")
    if not plain.isprintable():
        raise UnitError(f"holds a character that cannot be seen: {_quoted(plain)}")
    _refuse_commas(plain)
    match = _NUMBER.match(plain)
    if match is None:
        example = _EXAMPLES[kind or "gauge_pressure"]
        raise UnitError(f'wants a number and a unit such as "{example}", got {_quoted(plain)}')
    number, unit = match[0].strip(), plain[match.end() :].strip()
    if len(number) > _LONGEST_NUMBER:
        raise UnitError(f"wants a number of {_LONGEST_NUMBER} characters at most, got {_quoted(number)}")
    return number, unit


def _refuse_commas(plain: str) -> None:
    grouped = _THOUSANDS.match(plain)
    if grouped:
        whole = grouped[0].replace(",", "").replace(" ", "")
        raise UnitError(f'wants a number without thousands separators, "{whole}", got {_quoted(plain)}')
    comma = _DECIMAL_COMMA.match(plain)
    if comma:
        pointed = f"{comma[1] or 0}.{comma[2]}"
        raise UnitError(f'wants a decimal point, "{pointed}", not a comma, got {_quoted(plain)}')


def _number(text: str) -> float:
    """The value of the number part; infinite where it is too large to be held."""
    match = _NUMBER.fullmatch(text)
    assert match is not None
    if match["decimal"]:
        size = float(match["decimal"])
    elif int(match["under"]) == 0:
        raise UnitError("cannot be read: a fraction over zero")
    else:
        size = float(int(match["whole"] or 0) + Fraction(int(match["over"]), int(match["under"])))
    return size if match["sign"] in {"", "+"} else -size


def _refuse_other_kinds(unit: str, kind: Kind, text: str) -> None:
    found = _find(unit)
    if found is None:
        _refuse_unknown(unit, kind, text)
    if kind in found.kinds:
        return
    if found.name == "psia":
        raise UnitError("wants a pressure above the atmosphere, got psia, which counts from vacuum: say psi")
    if found.name == "psig":
        raise UnitError("wants a pressure above vacuum, got psig, which counts from the atmosphere: say psi")
    raise UnitError(f"wants {describe(kind)}, got {_shown(unit)}")


def _refuse_unknown(unit: str, kind: Kind, text: str) -> NoReturn:
    if not re.match(r"[^\W\d_]|[°%'\"#”″’′º˚]", unit) or re.search(r"[0-9.]{2}|[^\w)'\" ]$", unit):
        raise UnitError(f'wants one number and one unit such as "{_EXAMPLES[kind]}", got {_quoted(text)}')
    raise UnitError(f"wants {describe(kind)} in {_any_of(units_of(kind))}, got {_quoted(unit)}")


def _any_of(names: tuple[str, ...]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


def _quoted(text: str) -> str:
    return f'"{_shown(text)}"'


def _shown(text: str) -> str:
    """A text that is safe and short enough to be said back."""
    clipped = text if len(text) <= _LONGEST_NUMBER else f"{text[: _LONGEST_NUMBER - 1]}…"
    return "".join(sign if sign.isprintable() else "?" for sign in clipped)


def _folded(unit: str) -> str:
    """A unit in the spelling of the table."""
    words = _table().words
    plain = unit.translate(_BLANKS).translate(_SIGNS).casefold().strip().removesuffix(".")
    plain = plain.replace("cm3", "cc")
    tidy = re.sub(r" *([^\w ]) *", r"\1", re.sub(" +", " ", plain))
    return "".join(words.get(word, word) for word in _WORD.findall(tidy))


def _find(unit: str) -> _Unit | None:
    found = _table().by_spelling.get(_folded(unit))
    if found is None or unit.strip().startswith(found.never):
        return None
    return found


@lru_cache(maxsize=512)
def _scale(spelling: str) -> _Scale:
    unit = _find(spelling)
    if unit is None:
        raise UnitError(f"wants a unit that is known here, got {_quoted(spelling)}")
    return _scale_from_pint(unit.pint)


@cache
def _scale_from_pint(expression: str) -> _Scale:
    registry = _registry()
    at_zero = Fraction(registry.Quantity(Fraction(0), expression).to_base_units().magnitude)
    at_one = Fraction(registry.Quantity(Fraction(1), expression).to_base_units().magnitude)
    size = at_one - at_zero
    return _Scale(float(at_zero / size), float(size.numerator), float(size.denominator))


@cache
def _registry() -> pint.UnitRegistry[Any]:
    """pint's own units in exact fractions, from the user's cache where that can be read and written."""
    import pint
    from platformdirs import user_cache_path

    folder = user_cache_path("fuelwiz") / "units"
    try:
        return pint.UnitRegistry(non_int_type=Fraction, cache_folder=folder)
    except Exception:
        # A cache that was cut short stays unreadable, and pint lets through whatever its reader raises.
        shutil.rmtree(folder, ignore_errors=True)
        return pint.UnitRegistry(non_int_type=Fraction)


@cache
def _table() -> _Table:
    source = resources.files("fuelwiz").joinpath("facts/units.toml").read_text(encoding="utf-8")
    plain = tomllib.loads(source)
    units = []
    by_spelling: dict[str, _Unit] = {}
    for row in plain["unit"]:
        assert set(row["kinds"]) <= set(get_args(Kind))
        unit = _Unit(row["name"], row["pint"], tuple(row["kinds"]), tuple(row.get("never", ())))
        units.append(unit)
        by_spelling.update(dict.fromkeys(row["spellings"], unit))
    words = {spelling: word for word, spellings in plain["words"].items() for spelling in spellings}
    return _Table(tuple(units), by_spelling, words)
