"""Units, ranges and fallbacks that the texts name are those that the session's model holds."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from fuelwiz import units
from fuelwiz.errors import UnitError
from fuelwiz.questions import Question, catalogue
from fuelwiz.session import FieldSpec, field_at, leaf_paths
from fuelwiz.units import UnitSystem

QUESTIONS = catalogue()
LEAVES = leaf_paths()
UNIT_WORDS = {"°F": "degF", "°C": "degC", "L": "l", "lb/hp·h": "lb/(hp*h)", "mm²": "mm^2", "mm²/s": "mm^2/s"}
UNIT_WORDS |= {"kg/m³": "kg/m^3"}
TWO_DIGITS = 0.06
"""How far a limit of two digits that is rounded inwards may lie from the one that is declared."""
SYSTEMS: tuple[UnitSystem, ...] = ("us", "metric")


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
    """The examples in "A bare number is in psi. 1.5 bar, 150 kPa and 44 inHg are understood."."""
    plain = said.replace("\u00a0", " ")
    found = re.search(r"(?:^|\. )([^.]*?\d(?:[^.]|\.\d)*?) (?:are|is) understood", plain) or re.search(
        r"or a bore(?: with its unit)?: (.*?)\.$", plain
    )
    return re.split(r", | and ", found[1]) if found else []


def number_and_unit(text: str) -> tuple[float, str]:
    number, _, unit = text.replace("\u00a0", " ").replace("−", "-").partition(" ")
    return float(number), UNIT_WORDS.get(unit, unit)


WITH_EXAMPLES = {key: examples(question.help.units) for key, question in QUESTIONS.items()}


@pytest.mark.parametrize("key", [key for key, found in WITH_EXAMPLES.items() if found])
def test_units_that_are_said_to_be_understood_are(key: str) -> None:
    for example in WITH_EXAMPLES[key]:
        assert any(is_understood(example, spec) for spec in written_specs(QUESTIONS[key])), example


def test_examples_are_given_for_most_quantities() -> None:
    assert sum(bool(found) for found in WITH_EXAMPLES.values()) > 45


QUANTITIES = {
    key: spec
    for key, question in QUESTIONS.items()
    if (spec := own_spec(question)) is not None and spec.type in {"quantity", "wire", "rated_flow"}
}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("key", QUANTITIES)
def test_the_page_says_which_unit_a_bare_number_takes(key: str, system: UnitSystem) -> None:
    said = re.match(
        r"A bare number is in (\S+?)( \(US gallons\))?\.(?: |$)", catalogue(system)[key].help.units
    )
    assert said is not None
    spec = QUANTITIES[key]
    assert UNIT_WORDS.get(said[1], said[1]) == (spec.us_unit if system == "us" else spec.metric_unit)
    assert bool(said[2]) == said[1].startswith("gal")


WITH_LIMITS = {
    key: spec
    for key, question in QUESTIONS.items()
    if (spec := own_spec(question)) is not None and spec.type in {"quantity", "count", "ratio"}
}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("key", WITH_LIMITS)
def test_limits_that_are_said_are_accepted_and_near_those_of_the_model(key: str, system: UnitSystem) -> None:
    said = re.search(r"Accepted: (\S+) to (.+)\.$", catalogue(system)[key].help.usual)
    assert said is not None
    spec = WITH_LIMITS[key]
    assert spec.low is not None
    assert spec.high is not None
    high, unit = number_and_unit(said[2])
    low = float(said[1].replace("−", "-"))
    if spec.kind is None:
        assert (low, high) == (float(spec.low), float(spec.high))
        return
    ends = [units.to_si(end, unit) for end in (low, high)]
    held = [units.parse(end, spec.kind) for end in (spec.low, spec.high)]
    assert held[0] <= ends[0] + 1e-9 * abs(ends[0])
    assert ends[1] <= held[1] + 1e-9 * abs(ends[1])
    assert ends == pytest.approx(held, rel=TWO_DIGITS)


TAKEN = re.compile(r"Type \? and (?P<value>[^,]+?)(?: \([^)]*\))? (?:is|are) (?:taken|used)")


@pytest.mark.parametrize("key", [key for key, spec in QUANTITIES.items() if spec.fallback is not None])
def test_the_value_that_not_sure_is_said_to_take_is_the_fallback(key: str) -> None:
    """In the entry it is no figure but the fallback's place, so that the two cannot part."""
    written = QUESTIONS[key].entry["help"]["unsure"]
    assert not re.search(r"Type \? and [\d−]", written)
    found = TAKEN.search(QUESTIONS[key].help.unsure)
    if found is not None:
        spec = QUANTITIES[key]
        number, unit = number_and_unit(found["value"])
        assert spec.kind is not None
        assert units.parse(f"{number} {unit}", spec.kind) == pytest.approx(
            units.parse(str(spec.fallback), spec.kind), rel=6e-3, abs=1e-9
        )


def test_not_sure_says_what_is_taken_for_most() -> None:
    said = [
        key for key, spec in QUANTITIES.items() if spec.fallback and TAKEN.search(QUESTIONS[key].help.unsure)
    ]
    assert len(said) > 15
