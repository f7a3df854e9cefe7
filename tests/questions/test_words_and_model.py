"""Units, ranges and fallbacks that the texts name are those that the session's model holds."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from fuelwiz import units
from fuelwiz.errors import UnitError
from fuelwiz.questions import Question, catalogue
from fuelwiz.session import FieldSpec, field_at, leaf_paths

QUESTIONS = catalogue()
LEAVES = leaf_paths()
UNIT_WORDS = {"gal/h (US)": "gal/h", "gal (US)": "gal", "°F": "degF", "°C": "degC", "AWG": "AWG"}
ROUNDED = 0.02
"""Limits are rounded to two or three digits where they are turned into the other system."""


def own_spec(question: Question) -> FieldSpec | None:
    """What the model says of the one key that the question writes; None where there is not just one."""
    return (
        field_at(question.writes[0]) if len(question.writes) == 1 and question.writes[0] in LEAVES else None
    )


def written_specs(question: Question) -> Iterator[FieldSpec]:
    """What the model says of every key that the question writes, lists opened, and of the parts of each."""
    for path in question.writes:
        for leaf in LEAVES:
            if leaf == path or leaf.startswith(f"{path}."):
                yield from _with_parts(field_at(leaf))


def _with_parts(spec: FieldSpec) -> Iterator[FieldSpec]:
    yield spec
    for part in spec.parts:
        yield from _with_parts(part)


def is_understood(example: str, spec: FieldSpec) -> bool:
    if spec.type == "wire" and re.fullmatch(r"\d+ AWG", example):
        return True
    try:
        return spec.kind is not None and units.parse(example, spec.kind) is not None
    except UnitError:
        return False


def examples(said: str) -> list[str]:
    """The examples in "psi if none is typed; 1.5 bar, 150 kPa and 44 inHg are understood."."""
    found = re.search(r"(?:^|; )([^;]*?\d[^;]*?) (?:are|is) understood", said) or re.search(
        r"none is typed: ([^;]*?)\.$|or a bore(?: with its unit)?: (.*?)\.$", said
    )
    if found is None:
        return []
    return re.split(r", | and ", next(group for group in found.groups() if group))


WITH_EXAMPLES = {key: examples(question.help.units) for key, question in QUESTIONS.items()}


@pytest.mark.parametrize("key", [key for key, found in WITH_EXAMPLES.items() if found])
def test_units_that_are_said_to_be_understood_are(key):
    for example in WITH_EXAMPLES[key]:
        assert any(is_understood(example, spec) for spec in written_specs(QUESTIONS[key])), example


QUANTITIES = {
    key: spec
    for key, question in QUESTIONS.items()
    if (spec := own_spec(question)) is not None and spec.type in {"quantity", "wire", "rated_flow"}
}


@pytest.mark.parametrize("key", QUANTITIES)
def test_a_bare_number_takes_the_unit_that_the_help_names(key):
    said, spec = QUESTIONS[key].help.units, QUANTITIES[key]
    assert WITH_EXAMPLES[key]
    us = re.match(r"(.+?) (?:is understood and is taken where|if) none is typed", said)
    assert us is not None
    assert UNIT_WORDS.get(us[1], us[1]) == spec.us_unit
    metric = re.search(r"none is typed, (\S+) where metric units are shown", said)
    assert bool(metric) == (spec.us_unit != spec.metric_unit)
    if metric:
        assert UNIT_WORDS.get(metric[1], metric[1]) == spec.metric_unit


BETWEEN = re.compile(r"Between (?P<low>[−\d.]+) and (?P<high>[−\d.]+)(?: (?P<unit>[^ .(]+))?")


def limits_said(usual: str, spec: FieldSpec) -> tuple[float, float] | None:
    found = BETWEEN.search(usual)
    if found is None:
        return None
    low, high = (float(found[name].rstrip(".").replace("−", "-")) for name in ("low", "high"))
    if spec.kind is None:
        return low, high
    unit = (found["unit"] or spec.us_unit or "").rstrip(".")
    unit = UNIT_WORDS.get(unit, unit)
    return units.to_si(low, unit), units.to_si(high, unit)


WITH_LIMITS = {
    key: (limits, spec)
    for key, question in QUESTIONS.items()
    if (spec := own_spec(question)) is not None
    and spec.type in {"quantity", "count", "ratio"}
    and (limits := limits_said(question.help.usual, spec)) is not None
}


def test_limits_are_mostly_said():
    assert len(WITH_LIMITS) > 50


@pytest.mark.parametrize("key", WITH_LIMITS)
def test_limits_that_are_said_are_those_of_the_model(key):
    said, spec = WITH_LIMITS[key]
    held = [float(end) if spec.kind is None else units.parse(end, spec.kind) for end in (spec.low, spec.high)]
    assert said == pytest.approx(held, rel=ROUNDED)


TAKEN = re.compile(r"Type \? and (?P<value>[^,]+?)(?: \([^)]*\))? is taken")


@pytest.mark.parametrize("key", [key for key, spec in QUANTITIES.items() if spec.fallback is not None])
def test_the_value_that_not_sure_is_said_to_take_is_the_fallback(key):
    found = TAKEN.search(QUESTIONS[key].help.unsure)
    if found is None:
        return
    spec = QUANTITIES[key]
    unit = "" if re.search(r"[^\d.−]", found["value"]) else spec.us_unit
    value = re.sub(r"°([FC])", r"deg\1", f"{found['value']} {unit}".strip())
    assert units.parse(value, spec.kind) == pytest.approx(
        units.parse(spec.fallback, spec.kind), rel=1e-3, abs=1e-9
    )


def test_not_sure_mostly_says_what_is_taken():
    said = [
        key for key, spec in QUANTITIES.items() if spec.fallback and TAKEN.search(QUESTIONS[key].help.unsure)
    ]
    assert len(said) > 15
