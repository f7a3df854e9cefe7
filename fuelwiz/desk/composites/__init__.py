"""Questions that stand for several keys, or for a part of one: how each is read off a build and written into it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from fuelwiz.desk.composites.fuel_choice import FUEL
from fuelwiz.desk.composites.hoses import BENDS, HOSES, RETURN_BENDS, RETURN_HOSES
from fuelwiz.desk.composites.kinds import ChoiceQuestion, CountQuestion
from fuelwiz.desk.composites.on_the_car import FITTED_SIZES, size_and_kind
from fuelwiz.desk.composites.one_run import SEVERAL, field_of, has_several_runs, without_item
from fuelwiz.desk.composites.optional_sections import SURGE_POT
from fuelwiz.desk.composites.pump_known import KNOWN
from fuelwiz.desk.composites.three_ways import FILTER, REGULATOR, STRAINER
from fuelwiz.desk.composites.units_shown import UNITS

__all__ = [
    "CHOICE_QUESTIONS",
    "COUNT_QUESTIONS",
    "FITTED_SIZES",
    "SEVERAL",
    "CountQuestion",
    "field_of",
    "has_several_runs",
    "size_and_kind",
    "without_item",
]

COUNT_QUESTIONS: Mapping[str, CountQuestion] = MappingProxyType(
    {
        "feed.hoses": HOSES,
        "feed.bends": BENDS,
        "return.hoses": RETURN_HOSES,
        "return.bends": RETURN_BENDS,
    }
)
CHOICE_QUESTIONS: Mapping[str, ChoiceQuestion] = MappingProxyType(
    {question.key: question for question in (UNITS, FUEL, KNOWN, FILTER, STRAINER, REGULATOR, SURGE_POT)}
)
