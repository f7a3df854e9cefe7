"""What stands in braces in the texts of the questions, filled in for one system of units.

- `{5 to 12 psi}`: quantities of one unit, turned into the build's units and rounded so that they read well.
- `{80 gal/h|300 L/h}`: the words for US units, and those for metric ones.
- `{fallback}`, `{low}`, `{high}`: what the model declares of the question's own key; `{fallback goal.reserve}`
  the same of another key.
- `{sag share}`: a constant by its name in `constants`.
"""

from __future__ import annotations

import re
from functools import cache

from fuelwiz.errors import FactError
from fuelwiz.printable import NO_BREAK
from fuelwiz.shown_units import PAIRS, base_system, of_pair, unit_sign
from fuelwiz.units import UnitSystem, from_si, to_si

MINUS = "\u2212"
NEAR_ENOUGH = 0.035
"""How far a quantity may move where it is turned into another unit: the texts speak of usual figures."""
EXACT = 0.006
"""The same for what is declared: three digits."""
DEGREES_NEAR_ENOUGH = 1.2
METRIC = {unit_sign(us): unit_sign(metric) for us, metric in PAIRS}
_BRACES = re.compile(r"\{([^{}]*)\}")
_NUMBER = re.compile(r"(?<![\w.])[−-]?\d+(?:\.\d+)?")
_APART = re.compile(
    r"(?<=\d) (?=(?:psi|bar|hp|kW|gal|cc|lb|L|ft|in|m|mm|inHg|kPa|V|A|AWG|micron|g|kg|MJ|mm²)\b|[%°])"
)


def filled(text: str, key: str, system: UnitSystem) -> str:
    """A text with its braces filled in, and no line end between a number and its unit.

    Args:
        text: as it is written in the files of questions.
        key: the key of the session file that the question answers.
        system: the units that figures are shown in.

    Raises:
        FactError: nothing is known by what stands in the braces.
    """
    return _APART.sub(NO_BREAK, _BRACES.sub(lambda found: _worth(found[1], key, system), text))


def in_system(si: float, unit: str, system: UnitSystem) -> str:
    """An SI value in a US unit, or in the metric one that goes with it."""
    shown = of_pair(unit, METRIC.get(unit, unit), system)
    return f"{readable(from_si(si, shown), shown, EXACT)} {shown}"


def readable(value: float, unit: str = "", near_enough: float = NEAR_ENOUGH) -> str:
    """The roundest number that is near enough: 3 for 2.999, 0.35 for 0.3447, 100 for 98.7."""
    if unit in ("°F", "°C"):
        return _signed(_roundest(value, DEGREES_NEAR_ENOUGH, 1))
    return _signed(_roundest(value, near_enough * abs(value), 5))


def _roundest(value: float, allowed: float, places: int) -> str:
    for decimals in range(-4, places + 1):
        for step in (10.0**-decimals, 5 * 10.0 ** -(decimals + 1)):
            shown = round(value / step) * step
            if abs(shown - value) <= allowed + 1e-12:
                return f"{shown:.{max(decimals + (step < 10.0**-decimals), 0)}f}"
    return f"{value:.{places}f}"


def _signed(text: str) -> str:
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return text.replace("-", MINUS) if text.strip("-0") else "0"


@cache
def _worth(inside: str, key: str, system: UnitSystem) -> str:
    if "|" in inside:
        return _either(inside.split("|"), system)
    word, _, other = inside.partition(" ")
    if word in ("fallback", "low", "high"):
        from fuelwiz.questions.taken import declared  # it needs the model, which few texts do

        return declared(word, other or key, system)
    number, _, unit = inside.rpartition(" ")
    if unit in METRIC and _NUMBER.search(number):
        shown = of_pair(unit, METRIC[unit], system)
        return inside if shown == unit else f"{_converted(number, unit, shown)} {shown}"
    from fuelwiz.questions.constants import constant  # it needs the rooms that hold them

    said = constant(inside, system)
    if said is None:
        raise FactError(f"{key}: {{{inside}}} is no quantity and no known constant")
    return said


def _either(texts: list[str], system: UnitSystem) -> str:
    """The words for US units, or for metric ones; of words for a power alone, those in its unit."""
    us_words, metric_words = texts
    if us_words.endswith(" hp") and _NUMBER.fullmatch(us_words.removesuffix(" hp")):
        return us_words if of_pair("hp", "kW", system) == "hp" else metric_words
    return us_words if base_system(system) == "us" else metric_words


def _converted(numbers: str, unit: str, shown: str) -> str:
    def turned(found: re.Match[str]) -> str:
        si = to_si(float(found[0].replace(MINUS, "-")), unit)
        return readable(from_si(si, shown), shown)

    return _NUMBER.sub(turned, numbers)
