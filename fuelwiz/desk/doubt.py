"""A word of doubt on a value that is taken, but far outside what is usual: 5 bar of boost is most often 5 psi."""

from __future__ import annotations

from fuelwiz.desk.composites import field_of
from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_numbers import in_unit, pretty
from fuelwiz.desk.field_questions import question_of
from fuelwiz.desk.field_specs import spec_at, unit_of
from fuelwiz.errors import UnitError
from fuelwiz.questions import Question
from fuelwiz.units import parse


def doubt(desk: Desk, question: Question, path: str) -> str:
    """What is said of the value at a path; empty where it is a usual one, or none."""
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
    if low <= given <= high or (given == 0 and low > 0):
        return ""
    shown, typed = in_unit(given, unit_of(spec, desk.system)), pretty(value)
    named = typed if typed == shown else f"{typed} is {shown}"
    asked = question_of(path, desk.system) or question
    return f"{named}: are you sure? Usual: {asked.usual}."
