"""Questions that stand for several keys, or for a part of one: how each is read off a build and written into it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from fuelwiz.desk.composites.fuel_choice import FUEL
from fuelwiz.desk.composites.hoses import BENDS, HOSES
from fuelwiz.desk.composites.kinds import ChoiceQuestion, CountQuestion
from fuelwiz.desk.composites.one_run import SEVERAL, field_of, has_several_runs, with_none, without_item
from fuelwiz.desk.composites.optional_sections import STRAINER, SURGE_POT
from fuelwiz.desk.composites.pump_known import KNOWN
from fuelwiz.desk.composites.units_shown import UNITS

__all__ = [
    "CHOICE_QUESTIONS",
    "COUNT_QUESTIONS",
    "SEVERAL",
    "CountQuestion",
    "field_of",
    "has_several_runs",
    "with_none",
    "without_item",
]

COUNT_QUESTIONS: Mapping[str, CountQuestion] = MappingProxyType({"feed.hoses": HOSES, "feed.bends": BENDS})
CHOICE_QUESTIONS: Mapping[str, ChoiceQuestion] = MappingProxyType(
    {question.key: question for question in (UNITS, FUEL, KNOWN, STRAINER, SURGE_POT)}
)
