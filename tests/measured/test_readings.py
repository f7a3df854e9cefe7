"""Gauge readings: what differs is named with its likely cause (common practice, no source)."""

from __future__ import annotations

import pytest

from fuelwiz.measured import Measured, measured
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .cars import Car, plain

EXPECTED = {"hose_off": "43.5 psi", "idle": "34.5 psi", "full_power": "63.5 psi"}


def read(car: Car, gauge: dict[str, str]) -> Measured:
    session = validate({**plain(car), "gauge": [{"date": "2026-05-20", **gauge}]}, "a build")
    return measured(session, quick_figures(session))


def causes(**gauge: str) -> dict[str, str | None]:
    return {found.item: found.cause for found in read(Car(), gauge).gauge}


def test_what_was_predicted_is_as_expected() -> None:
    assert set(causes(**EXPECTED).values()) == {"as expected"}


@pytest.mark.parametrize(
    ("changed", "item", "cause"),
    [
        ({"hose_off": "40 psi", "idle": "31 psi", "full_power": "60 psi"}, "hose off", "set low"),
        ({"hose_off": "40 psi", "idle": "31 psi", "full_power": "60 psi"}, "idle", "set low"),
        ({"hose_off": "40 psi", "idle": "31 psi", "full_power": "60 psi"}, "full power", "set low"),
        ({"hose_off": "47 psi"}, "hose off", "set high"),
        ({"idle": "40 psi"}, "idle", "return too small"),
        ({"idle": "43.5 psi"}, "idle", "does not follow"),
        ({"idle": "43.5 psi", "full_power": "50 psi"}, "full power", "does not follow"),
        ({"idle": "31 psi"}, "idle", "other vacuum"),
        ({"full_power": "55 psi"}, "full power", "pump short"),
        ({"full_power": "55 psi", "volts": "11.5 V"}, "full power", "volts low"),
        ({"full_power": "67 psi"}, "full power", "other boost"),
        ({"volts": "11.5 V"}, "volts", "wires lose more"),
        ({"volts": "14.2 V"}, "volts", "wires lose less"),
        ({"current": "18 A"}, "current", "draws more"),
        ({"current": "8 A"}, "current", "draws less"),
    ],
)
def test_a_difference_has_its_likely_cause(changed: dict[str, str], item: str, cause: str) -> None:
    assert causes(**{**EXPECTED, **changed})[item] == cause


def test_at_the_tank_a_low_rail_may_be_the_line() -> None:
    found = read(Car(at_tank=True), {"full_power": "50 psi"}).gauge
    assert [one.cause for one in found] == ["line or pump short"]


def test_what_was_not_read_is_not_compared() -> None:
    assert causes() == {}
    assert list(causes(idle="34.5 psi")) == ["idle"]


def test_a_regulator_that_is_off_and_volts_are_proposed() -> None:
    proposals = read(Car(), {**EXPECTED, "hose_off": "40 psi", "volts": "12.9 V"}).proposals
    assert [(one.key, one.value, one.tolerance) for one in proposals] == [
        ("pressure.base", "40.0 psi", "1.0 psi"),
        ("pump.volts", "12.9 V", "0.1 V"),
    ]
    assert {one.date for one in proposals} == {"2026-05-20"}
    assert read(Car(), EXPECTED).proposals == ()
