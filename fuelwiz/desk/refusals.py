"""Why a field is refused, and what a question counts as that is left to its fallback, in words."""

from __future__ import annotations

import re

from fuelwiz import units
from fuelwiz.desk.field_numbers import pretty, sensible, split_or_whole
from fuelwiz.desk.field_questions import OF_A_POINT, noun_of
from fuelwiz.errors import Fault
from fuelwiz.printable import clean
from fuelwiz.session import FieldSpec
from fuelwiz.shown_units import unit_sign
from fuelwiz.unit_table import Kind

BESIDE = 32
"""Columns that there are beside a field."""

_CHANGES = "stress.case.change"
_STAYS = "What you typed stays here."
_MARKED = "It is marked as assumed, on the sheet too, until you type your own."
_LONGEST_QUOTE = 24
_OUT_OF_ORDER = re.compile(r"(must (?:not )?rise .+), got (.+)")
_WANTS = re.compile(r"wants (.+?)(?:, as |, got |: |$)")


class Refusal(Exception):  # noqa: N818  it carries words to a field, and never reaches the user as an error
    """Why a field's text is not taken: `short` beside the field, in 32 columns, and `why` as whole sentences.

    `is_missing` says that nothing was told there, though the rest of the section needs it.
    """

    def __init__(self, short: str, why: str, *, is_missing: bool = False) -> None:
        self.short = short
        self.is_missing = is_missing
        self.why = why[:1].upper() + why[1:]
        super().__init__(why)


def no_number(noun: str, raw: str, example: str) -> Refusal:
    """Something that does not begin with a number."""
    why = f'"{_quoted(raw)}" is not a number. Enter {_the(noun)}, for example {pretty(example)}. {_STAYS}'
    return Refusal("a number is wanted", why)


def wrong_unit(noun: str, unit: str, kind: Kind) -> Refusal:
    """A unit that is not known, or that measures something else."""
    wanted = units.describe(kind)
    kinds = units.kinds_of(unit)
    exactly = wanted
    measured = units.describe(kinds[0]) if kinds else "not a known unit"
    if measured == wanted:
        measured, exactly = (units.describe(one, with_zero=True) for one in (kinds[0], kind))
    which = units.any_of(tuple(map(unit_sign, units.units_of(kind))))
    why = f'"{_quoted(unit)}" is {measured}; {noun} wants {exactly}: {which}. {_STAYS}'
    short = f"{wanted} is wanted"
    return Refusal(short if len(short) <= BESIDE else "another unit is wanted", why)


def out_of_range(noun: str, raw: str, allowed: str) -> Refusal:
    """A value beyond what is allowed."""
    return Refusal(
        f"{allowed} is wanted", f"{noun} can be {allowed}; {_quoted(raw)} is outside that. {_STAYS}"
    )


def wanted_number(noun: str, raw: str, allowed: str, kind: str) -> Refusal:
    """A bare number that cannot be read as one."""
    return Refusal(
        f"{kind} is wanted", f'"{_quoted(raw)}" is not {kind}. Enter {_the(noun)}, {allowed}. {_STAYS}'
    )


def fault_in_words(noun: str, words: str, short: str = "this cannot be read") -> Refusal:
    """A refusal in words that follow the name of a key."""
    return Refusal(short, f"{noun} {words}. {_STAYS}")


def emptied(noun: str, spec: FieldSpec) -> Refusal:
    """A field that has to hold something is empty."""
    wanted = units.describe(spec.kind) if spec.kind else "an answer"
    return Refusal(f"{wanted} is wanted", f"Enter {_the(noun)}: {wanted} is wanted here.", is_missing=True)


def emptied_on_a_day(noun: str) -> Refusal:
    """An answer of a bad day is taken out of its field; it goes once the field is left."""
    why = f"Type the {noun} of that day, or leave it empty: then it stays as it is today, and the row goes."
    return Refusal("that day's answer is wanted", why)


def of_fault(path: str, spec: FieldSpec | None, fault: Fault) -> Refusal:
    """A fault of the build as a whole, said at its field."""
    noun = noun_of(path)
    if fault.text.startswith("is missing"):
        return _missing(noun, spec)
    if fault.text.startswith("wants a size or a bore"):
        why = "A suction hose follows no other size: enter its own, such as -10, or its bore."
        return Refusal("needed: a size", why, is_missing=True)
    out_of_order = _OUT_OF_ORDER.fullmatch(fault.text)
    if out_of_order:
        rule, found = out_of_order.groups()
        return Refusal(rule, f"{noun.removesuffix(OF_A_POINT)} {rule}: {found}.")
    words = re.sub(r"`([^`]+)`", lambda key: _named(key[1]), fault.text)
    return Refusal(_short(fault.text), f"{noun} {words}.")


def _named(key: str) -> str:
    """What a sentence calls a key, or one of the pump's curves."""
    curve, _, number = key.rpartition(".")
    if curve == "pump.curve" and number.isdecimal():
        return "the first curve" if number == "0" else f"curve {int(number) + 1}"
    return noun_of(key)


def _missing(noun: str, spec: FieldSpec | None) -> Refusal:
    """Something that the rest of its section needs is not given yet."""
    if noun == noun_of(_CHANGES):
        return Refusal("needed: an answer", "Pick an answer that differs that day.", is_missing=True)
    if spec is None or spec.kind is None:
        wanted = "at least one point" if spec is None or spec.type == "points" else "an answer"
    else:
        wanted = units.describe(spec.kind)
    return Refusal(f"needed: {wanted}", f"Enter {_the(noun)}: {wanted} is wanted here.", is_missing=True)


def _short(text: str) -> str:
    """What is wanted, where that is said and short enough."""
    wants = _WANTS.match(text)
    short = f"{wants[1]} is wanted" if wants and "`" not in wants[1] else ""
    return short if 0 < len(short) <= BESIDE else "does not fit the rest"


def fallback_words(taken: str | None, reason: str) -> str:
    """What is said of a question that is left to its fallback.

    Args:
        taken: the fallback; empty where nothing is taken, None where there has to be an answer.
        reason: why the fallback is what it is, or why there is none.
    """
    if taken is None:
        return f"This one needs an answer: {reason}."
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


def _quoted(raw: str) -> str:
    text = clean(raw).strip()
    return text if len(text) <= _LONGEST_QUOTE else f"{text[: _LONGEST_QUOTE - 1]}…"


def _the(noun: str) -> str:
    return noun if noun.startswith(("this ", "the ")) else f"the {noun}"
