"""Reading one plain value that is a single number, word or text."""

from __future__ import annotations

import difflib
import math
from functools import lru_cache
from typing import Any

from fuelwiz import units
from fuelwiz.errors import UnitError
from fuelwiz.facts import NEAR
from fuelwiz.printable import clean, quoted
from fuelwiz.session.spec import FieldSpec
from fuelwiz.unit_table import Kind

Problem = tuple[tuple[str | int, ...], str]
"""One thing that is wrong: the path to it inside the value, and words that follow the key."""


class Rejected(Exception):  # noqa: N818  it carries what was found to the model, and never reaches the user
    """A value is refused; holds all that is wrong with it."""

    def __init__(self, *problems: Problem) -> None:
        self.problems = problems
        super().__init__(problems)


def refuse(words: str) -> Rejected:
    """The refusal of a value as a whole."""
    return Rejected(((), words))


@lru_cache(maxsize=8192)
def si(text: str, kind: Kind) -> float:
    """units.parse, remembered: the same texts are read at every keystroke."""
    return units.parse(text, kind)


def range_text(spec: FieldSpec) -> str:
    """What is allowed, in words: "0 to 100 psi"."""
    low, high = edges(spec)
    number, _, unit = low.partition(" ")
    return f"{number if unit == high.partition(' ')[2] else low} to {high}"


def edges(spec: FieldSpec) -> tuple[str, str]:
    """Both ends of the range of a key that has one."""
    assert spec.low is not None and spec.high is not None
    return spec.low, spec.high


def nearest(word: str, words: tuple[str, ...]) -> str | None:
    """The word that was probably meant."""
    close = difflib.get_close_matches(word[:60], words, n=1, cutoff=0.6)
    return close[0] if close else None


def within(spec: FieldSpec, number: float) -> bool:
    """Whether an SI value lies in the range of its key, an edge that was typed in another unit included."""
    assert spec.kind is not None
    low, high = _limits(*edges(spec), spec.kind)
    return math.isfinite(number) and low - NEAR * abs(low) <= number <= high + NEAR * abs(high)


@lru_cache(maxsize=512)
def _limits(low: str, high: str, kind: Kind) -> tuple[float, float]:
    return si(low, kind), si(high, kind)


def quantity(spec: FieldSpec, value: Any) -> float:
    """The SI value of a text with its unit."""
    assert spec.kind is not None
    if not isinstance(value, str):
        example = spec.example or spec.high
        described = units.describe(spec.kind)
        raise refuse(f'wants {described} in quotes with its unit, such as "{example}", got {quoted(value)}')
    try:
        number = si(value, spec.kind)
    except UnitError as error:
        raise refuse(str(error)) from None
    if not within(spec, number):
        raise refuse(f"wants {range_text(spec)}, got {clean(value)}")
    return number


def count(spec: FieldSpec, value: Any) -> int:
    """A bare whole number."""
    low, high = edges(spec)
    if isinstance(value, bool) or not isinstance(value, int):
        raise refuse(f"wants a whole number from {low} to {high}, without quotes, got {quoted(value)}")
    if not int(low) <= value <= int(high):
        raise refuse(f"wants {low} to {high}, got {quoted(value)}")
    return value


def ratio(spec: FieldSpec, value: Any) -> float:
    """A bare number without a unit."""
    low, high = edges(spec)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise refuse(f"wants a bare number from {low} to {high}, no unit and no quotes, got {quoted(value)}")
    if not float(low) <= value <= float(high):
        raise refuse(f"wants {low} to {high}, got {quoted(value)}")
    return float(value)


def choice(spec: FieldSpec, value: Any) -> str:
    """One of a few words."""
    if isinstance(value, str) and value in spec.choices:
        return value
    *first, last = (f'"{word}"' for word in spec.choices)
    listed = f"{', '.join(first)} or {last}" if first else last
    words = f"wants {listed}, got {quoted(value)}"
    meant = nearest(value.lower(), spec.choices) if isinstance(value, str) else None
    raise refuse(f'{words}; did you mean "{meant}"?' if meant else words)


def text(spec: FieldSpec, value: Any) -> str:
    """A text, without the characters that must not reach a screen."""
    _, most = edges(spec)
    if not isinstance(value, str):
        raise refuse(f"wants a text in quotes, got {quoted(value)}")
    if len(value) > int(most):
        raise refuse(f"wants a text of {most} characters at most, got {len(value)}")
    return clean(value, lines=spec.type == "note")


def format_number(spec: FieldSpec, value: Any) -> int:
    """The format of the file: 1."""
    if isinstance(value, bool) or not isinstance(value, int) or value < 1:
        raise refuse(f"wants the whole number 1, without quotes, got {quoted(value)}")
    if value > 1:
        raise refuse(f"is a newer format ({quoted(value)}); this program writes 1 and will not open it")
    return value


def kept(spec: FieldSpec, value: Any) -> str:
    """What the program noted at the last save: whatever stands there, no figure depends on it."""
    if isinstance(value, bool | int | float | list | dict):
        return ""
    return clean(str(value)[: int(edges(spec)[1])])


def flag(spec: FieldSpec, value: Any) -> bool | None:
    """Yes, no, or not known."""
    return value if isinstance(value, bool) else None


def yes_no(spec: FieldSpec, value: Any) -> bool:
    """True or false."""
    if not isinstance(value, bool):
        raise refuse(f"wants true or false, without quotes, got {quoted(value)}")
    return value
