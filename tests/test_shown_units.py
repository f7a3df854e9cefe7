"""Units that figures are shown in: one pair for each kind, each of its kind, and read back as it is written."""

from __future__ import annotations

from typing import get_args

import pytest

from fuelwiz import units
from fuelwiz.shown_units import (
    PAIRS,
    SHOWN_UNITS,
    base_system,
    of_pair,
    other_system,
    shown_system,
    shown_unit,
    unit_sign,
)
from fuelwiz.unit_table import Kind
from fuelwiz.units import BaseSystem, PowerUnit, UnitSystem

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


def test_every_system_has_its_opposite() -> None:
    for system in get_args(UnitSystem):
        assert other_system(other_system(system)) == system
        for us_unit, metric_unit in PAIRS:
            both = {of_pair(us_unit, metric_unit, one) for one in (system, other_system(system))}
            assert both == {us_unit, metric_unit}, system


@pytest.mark.parametrize(
    ("units", "power", "wanted"),
    [
        ("us", None, ("hp", "psi")),
        ("us", "kW", ("kW", "psi")),
        ("metric", None, ("kW", "bar")),
        ("metric", "kW", ("kW", "bar")),
        ("metric", "hp", ("hp", "bar")),
    ],
)
def test_power_may_be_shown_in_its_own_unit(
    units: BaseSystem, power: PowerUnit | None, wanted: tuple[str, str]
) -> None:
    system = shown_system(units, power)
    assert (shown_unit("power", system), shown_unit("gauge_pressure", system)) == wanted
    assert base_system(system) == units
