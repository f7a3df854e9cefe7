"""A word of doubt on a value that is taken, but far outside what is usual: 5 bar of boost is most often 5 psi."""

from __future__ import annotations

from fuelwiz.advice.numbers import Numbers
from fuelwiz.desk.composites import field_of
from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_numbers import in_unit, pretty
from fuelwiz.desk.field_questions import question_of
from fuelwiz.desk.field_specs import spec_at, unit_of
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.errors import UnitError
from fuelwiz.physics.boost import boost_in_step_pa
from fuelwiz.questions import Question
from fuelwiz.units import parse

POWER, BOOST = "goal.power", "pressure.boost"
NEVER_NOTHING = ("feed.length", "return.length", "feed.run.length", "return_line.run.length")
"""What is there has a length: elsewhere 0 is a way to say that there is none."""
ANOTHER_POWER = 0.05
"""Nearer to the power of before, the same boost may well make it."""


def doubt(desk: Desk, question: Question, path: str) -> str:
    """What is said of the value at a path; empty where it is a usual one, or none."""
    found = _boost_from_nothing(desk, path) or _boost_of_another_power(desk, path) or _pointed_out(desk, path)
    if found:
        return found
    value = desk.value(field_of(path))
    if question.sure is None or not isinstance(value, str):
        return ""
    try:
        spec = spec_at(field_of(path))
        kind = spec.kind
        if kind is None:
            return ""
        low, high = (parse(end, kind) for end in question.sure)
        given = parse(value, kind)
    except (NoSuchField, UnitError):
        return ""
    if low <= given <= high or (given == 0 and low > 0 and question.key not in NEVER_NOTHING):
        return ""
    shown, typed = in_unit(given, unit_of(spec, desk.system)), pretty(value)
    named = typed if typed == shown else f"{typed} is {shown}"
    asked = question_of(path, desk.system) or question
    return f"{named}: are you sure? Usual: {asked.usual}."


def _boost_from_nothing(desk: Desk, path: str) -> str:
    """Boost that is given for the next goal, where nothing is said to make it then."""
    if path not in ("goal.next_boost", "goal.next_induction") or desk.value("goal.next_induction") != "none":
        return ""
    boost = desk.text_in_field("goal.next_boost")
    if (
        boost.assumed
        or boost.refused
        or not boost.text
        or not any(digit in boost.text for digit in "123456789")
    ):
        return ""
    given = f"{boost.text} {boost.unit}".strip()
    return f'{given} of boost, but "no boost" as the next induction: one of the two is wrong. What makes it then?'


def _boost_of_another_power(desk: Desk, path: str) -> str:
    """The boost of a build that was saved with another power, such as the one that a copy was made of."""
    before, now, result = desk.as_saved.plain, desk.plain, desk.result
    boost = value_at(now, value_path(BOOST))
    if path != POWER or result is None or boost is None or boost != value_at(before, value_path(BOOST)):
        return ""
    saved = value_at(before, value_path(POWER))
    powers = [value_at(now, value_path(POWER)), saved]
    try:
        boost_pa, (power_w, saved_w) = parse(boost, "gauge_pressure"), (parse(one, "power") for one in powers)
    except (UnitError, TypeError):
        return ""
    share = power_w / saved_w
    if boost_pa <= 0.0 or abs(share - 1.0) < ANOTHER_POWER or desk.refused.get(POWER):
        return ""
    numbers = Numbers.of(result.session)
    in_step = boost_in_step_pa(
        boost_pa=boost_pa, share=share, atmosphere_pa=result.figures.pressure.atmosphere_Pa
    )
    return (
        f"Boost is still {numbers.typed(boost)}, as for {numbers.typed(saved)}; in step with power it would be"
        f" {numbers.figure('pressure', in_step)}. Pressure asks for it."
    )


def _pointed_out(desk: Desk, path: str) -> str:
    """What the findings say of this very answer: rubber with alcohol, a next goal below this one."""
    result, about = desk.result, path if path == "goal.next_power" else ""
    if path.endswith(".hose") and desk.value(field_of(path)) == "rubber":
        about = "feed.run.hose"
    if result is None or not about or not desk.is_given(field_of(path)):  # its row may be gone with its list
        return ""
    return next((finding.text for finding in result.words.findings if finding.about == about), "")
