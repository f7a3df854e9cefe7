"""What stands in braces in the texts of the questions, filled in for one system of units.

- `{5 to 12 psi}`: quantities of one unit, turned into the build's units and rounded so that they read well.
- `{80 gal/h|300 L/h}`: the words for US units, and those for metric ones.
- `{fallback}`, `{low}`, `{high}`: what the model declares of the question's own key; `{fallback goal.reserve}`
  the same of another key.
- `{sag limit}`: a constant by its name in `constants`.
"""

from __future__ import annotations

import re
from functools import cache

from fuelwiz.errors import FactError
from fuelwiz.printable import MINUS, NO_BREAK
from fuelwiz.questions.round_figures import METRIC, readable
from fuelwiz.shown_units import base_system, of_pair
from fuelwiz.units import UnitSystem, from_si, to_si

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
