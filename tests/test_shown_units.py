"""Units that figures are shown in: one pair for each kind, each of its kind, and read back as it is written."""

from __future__ import annotations

from typing import get_args

import pytest

from fuelwiz import units
from fuelwiz.shown_units import PAIRS, SHOWN_UNITS, other_system, shown_unit, unit_sign
from fuelwiz.unit_table import Kind
from fuelwiz.units import UnitSystem

ALL = sorted({unit for pair in (*SHOWN_UNITS.values(), *PAIRS) for unit in pair})


def test_every_kind_has_its_units() -> None:
    assert set(SHOWN_UNITS) == set(get_args(Kind))


@pytest.mark.parametrize("kind", sorted(SHOWN_UNITS))
def test_each_unit_measures_its_kind(kind: Kind) -> None:
    for system in get_args(UnitSystem):
        assert kind in units.kinds_of(shown_unit(kind, system))


@pytest.mark.parametrize("unit", ALL)
def test_what_is_shown_can_be_typed_back(unit: str) -> None:
    for number in (0.0, 1.0):
        assert units.to_si(number, unit_sign(unit)) == units.to_si(number, unit)


@pytest.mark.parametrize(("us", "metric"), PAIRS)
def test_the_two_of_a_pair_measure_the_same(us: str, metric: str) -> None:
    assert set(units.kinds_of(us)) & set(units.kinds_of(metric))


def test_there_are_two_systems() -> None:
    assert (other_system("us"), other_system("metric")) == ("metric", "us")
