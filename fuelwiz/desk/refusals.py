"""What the desk says: which field, why something is refused, what is taken where nothing is known."""

from __future__ import annotations

import re

from fuelwiz import units
from fuelwiz.desk.field_numbers import pretty, sensible, split_or_whole, unit_sign
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.errors import Fault
from fuelwiz.printable import clean
from fuelwiz.session import FieldSpec
from fuelwiz.unit_table import Kind

BESIDE = 32
"""Columns that there are beside a field."""

_STAYS = "What you typed stays here."
_MARKED = "It is marked as assumed, on the sheet too, until you type your own."
_LONGEST_SAID = 24
_WANTS = re.compile(r"wants (.+?)(?:, as |, got |: |$)")


class Refusal(Exception):  # noqa: N818  it carries words to the desk, and never reaches the user as an error
    """Why a field's text is not taken: `short` beside the field, in 32 columns, and `why` as whole sentences."""

    def __init__(self, short: str, why: str) -> None:
        self.short = short
        self.why = why[:1].upper() + why[1:]
        super().__init__(why)


def no_number(named: str, raw: str, example: str) -> Refusal:
    """Something that does not begin with a number."""
    why = f'"{_said(raw)}" is no number; {named} wants one such as {pretty(example)}. {_STAYS}'
    return Refusal("a number is wanted", why)


def wrong_unit(named: str, unit: str, kind: Kind) -> Refusal:
    """A unit that is not known, or that measures something else."""
    wanted = units.describe(kind)
    kinds = units.kinds_of(unit)
    found = units.describe(kinds[0]) if kinds else "no unit that is known here"
    if found == wanted:
        found = "counted from another zero"
    which = _any_of(tuple(map(unit_sign, units.units_of(kind))))
    why = f'"{_said(unit)}" is {found}; {named} wants {wanted}: {which}. {_STAYS}'
    return Refusal(f"{wanted} is wanted", why)


def out_of_range(named: str, raw: str, allowed: str) -> Refusal:
    """A value beyond what is allowed."""
    return Refusal(f"{allowed} is wanted", f"{named} may be {allowed}; {_said(raw)} is beyond that. {_STAYS}")


def wanted_number(named: str, raw: str, allowed: str, kind: str) -> Refusal:
    """A bare number that cannot be read as one."""
    return Refusal(f"{kind} is wanted", f'"{_said(raw)}" is not {kind}; {named} wants {allowed}. {_STAYS}')


def as_said(named: str, words: str, short: str = "this cannot be read") -> Refusal:
    """A refusal in words that follow the name of a key."""
    return Refusal(short, f"{named} {words}. {_STAYS}")


def emptied(named: str, spec: FieldSpec) -> Refusal:
    """A field that has to hold something is empty."""
    wanted = units.describe(spec.kind) if spec.kind else "an answer"
    return Refusal(f"{wanted} is wanted", f"{named}: {wanted} is wanted here.")


def of_fault(path: str, spec: FieldSpec | None, fault: Fault) -> Refusal:
    """A fault of the build as a whole, said at its field."""
    named = noun_of(path)
    if fault.text.startswith("is missing"):
        return _missing(named, spec)
    words = re.sub(r"`([^`]+)`", lambda key: noun_of(key[1]), fault.text)
    short = next((text for text in _shorter(fault.text) if len(text) <= BESIDE), "does not fit the rest")
    return Refusal(short, f"{named} {words}.")


def _missing(named: str, spec: FieldSpec | None) -> Refusal:
    if spec is None or spec.kind is None:
        wanted = "at least one point" if spec is None or spec.type == "points" else "an answer"
        return Refusal(f"{wanted} is wanted", f"{named}: {wanted} is wanted here.")
    return emptied(named, spec)


def _shorter(text: str) -> list[str]:
    found = _WANTS.match(text)
    told = [f"{found[1]} is wanted"] if found and "`" not in found[1] else []
    if text.startswith("must"):
        told.append(text.partition(" from point")[0])
    return told


def when_left(taken: str | None, reason: str) -> str:
    """What is said of a question that is left to its fallback.

    Args:
        taken: the fallback; empty where nothing is taken, None where there has to be an answer.
        reason: why the fallback is what it is, or why there is none.
    """
    if taken is None:
        return f"Nothing can be taken here: {reason}."
    if taken:
        return f"{taken} is taken: {reason}. {_MARKED}"
    return f"L{reason[1:]}." if reason.startswith("left empty") else f"Left empty: {reason}."


def range_in(spec: FieldSpec, unit: str) -> str:
    """What is allowed, in the unit of the row: "0 to 100 psi"."""
    assert spec.low is not None and spec.high is not None
    if spec.kind is None or unit not in _units_of(spec):
        return f"{spec.low} to {spec.high}"
    ends = [split_or_whole(end) for end in (spec.low, spec.high)]
    if all(of == unit for _, of in ends):
        low, high = (number for number, _ in ends)
    else:
        low = sensible(units.from_si(units.parse(spec.low, spec.kind), unit), "up")
        high = sensible(units.from_si(units.parse(spec.high, spec.kind), unit), "down")
    return f"{low} to {high} {unit_sign(unit)}"


def _units_of(spec: FieldSpec) -> tuple[str | None, str | None]:
    return spec.us_unit, spec.metric_unit


def _said(raw: str) -> str:
    text = clean(raw).strip()
    return text if len(text) <= _LONGEST_SAID else f"{text[: _LONGEST_SAID - 1]}…"


def _any_of(names: tuple[str, ...]) -> str:
    return " or ".join(part for part in (", ".join(names[:-1]), names[-1]) if part)
