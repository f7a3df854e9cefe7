"""Numbers as a field shows them: three digits that count, no needless zeros, units in their usual spelling."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal
from functools import lru_cache
from typing import Literal

from fuelwiz.errors import UnitError
from fuelwiz.printable import MINUS, NO_BREAK
from fuelwiz.shown_units import unit_sign
from fuelwiz.units import from_si, split, to_si

_DIGITS = 3
_ROUND = {"near": ROUND_HALF_UP, "up": ROUND_CEILING, "down": ROUND_FLOOR}


def sensible(value: float, towards: Literal["near", "up", "down"] = "near") -> str:
    """A number to three digits that count, whole where it has more, without zeros at its end."""
    exact = Decimal(f"{value:.12g}")
    if not exact:
        return "0"
    places = max(0, _DIGITS - 1 - exact.adjusted())
    shown = exact.quantize(Decimal(1).scaleb(-places), _ROUND[towards])
    text = f"{abs(shown):f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return f"{MINUS}{text}" if shown < 0 else text


def pretty(text: str) -> str:
    """A quantity as a sentence says it: "3 bar" with a blank that does not break."""
    number, unit = split_or_whole(text)
    return f"{number}{NO_BREAK}{unit_sign(unit)}" if unit else number


def split_or_whole(text: str) -> tuple[str, str]:
    """Number and unit of a text; the whole text and nothing where it is no quantity."""
    try:
        return split(text)
    except UnitError:
        return text, ""


def is_bare(raw: str) -> bool:
    """Whether a text is a number alone."""
    try:
        return not split(raw)[1]
    except UnitError:
        return False


@lru_cache(maxsize=1024)
def same_unit(one: str, another: str) -> bool:
    """Whether two spellings mean the same unit."""
    if one == another:
        return True
    try:
        return to_si(1.0, one) == to_si(1.0, another) and to_si(0.0, one) == to_si(0.0, another)
    except UnitError:
        return False


def in_unit(si: float, unit: str) -> str:
    """An SI value with a unit, as an echo shows it."""
    return f"{sensible(from_si(si, unit))}{NO_BREAK}{unit_sign(unit)}"
