"""What people call the words of a file: every word has its name, and a fuel one name wherever it comes from."""

from __future__ import annotations

from typing import Any, get_args

import pytest

from fuelwiz import facts, terms
from fuelwiz.advice.pure_fuels import PURE_FUELS
from fuelwiz.physics.fittings import KINDS
from fuelwiz.physics.line import ROUGHNESS_M
from fuelwiz.terms import fuel_name, fuel_name_as_typed


def test_every_word_of_a_list_has_its_name() -> None:
    assert set(terms.INDUCTIONS) == set(get_args(terms.Induction))
    assert tuple(terms.HOSES) == get_args(terms.Hose) == ("nominal", *facts.table("bores"))
    assert set(ROUGHNESS_M) == set(terms.HOSES)
    assert set(terms.FILTER_PLACES) == set(get_args(terms.FilterPlace))
    assert tuple(terms.FITTINGS) == KINDS
    assert len({tuple(bores) for bores in facts.table("bores").values()}) == 1, "each hose has every size"
    assert set(PURE_FUELS) == set(get_args(terms.PureFuel))


@pytest.mark.parametrize(
    ("kind", "ethanol", "name"),
    [
        (None, None, "E10"),
        ("blend", "85 %", "E85"),
        ("blend", "12.5%", "E12.5"),
        (None, "0 %", "gasoline"),
        ("methanol", None, "methanol"),
        ("own", "85 %", "own fuel"),
        ("blend", "a lot", None),
        ("blend", 0.85, None),
        ("kerosene", None, None),
        (["own"], None, None),
    ],
)
def test_a_fuel_by_the_name_that_people_use(kind: Any, ethanol: Any, name: str | None) -> None:
    assert fuel_name_as_typed(kind, ethanol) == name


@pytest.mark.parametrize("kind", get_args(terms.FuelKind))
@pytest.mark.parametrize("percent", [0, 10, 30, 85, 100])
def test_the_name_as_typed_is_the_name_as_read(kind: terms.FuelKind, percent: int) -> None:
    assert fuel_name_as_typed(kind, f"{percent} %") == fuel_name(kind, percent / 100)
