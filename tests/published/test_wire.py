"""Copper wire against the tables of the electrical trade."""

from __future__ import annotations

import math
from typing import Any

import pytest

from fuelwiz.facts import table
from fuelwiz.physics.wire import ampacity_A, awg_area_m2, copper_resistivity_ohm_m, loop_resistance_ohm

from .reference import FOOT_M, INCH_M, VALUES, kelvin, near, row

WIRE = VALUES["wire"]
TOL = WIRE["tol"]
DROPS = [example for example in WIRE["examples"] if "R_loop_mohm" in example]
CIRCULAR_MIL_M2 = math.pi / 4 * (INCH_M / 1000) ** 2


def gauge_of(at: dict[str, Any]) -> str:
    return f"{at['awg']} AWG"


def ohms_per_thousand_feet(gauge: int, celsius: float) -> float:
    """Resistance of 1000 ft of wire at a temperature."""
    return loop_resistance_ohm(
        area_m2=awg_area_m2(gauge), length_m=1000 * FOOT_M, by_chassis=True, temperature_k=kelvin(celsius)
    )


@pytest.mark.parametrize("at", WIRE["rows"], ids=gauge_of)
def test_size_of_a_gauge(at: dict[str, Any]) -> None:
    """ASTM B258: diameter, area and circular mils, six figures."""
    area = awg_area_m2(at["awg"])
    assert math.sqrt(4 * area / math.pi) * 1000 == near(at["d_mm"], TOL["d_rel"])
    assert area * 1e6 == near(at["area_mm2"], 2 * TOL["d_rel"])
    assert area / CIRCULAR_MIL_M2 == near(at["cmil"], 2 * TOL["d_rel"])


@pytest.mark.parametrize("at", WIRE["rows"], ids=gauge_of)
def test_resistance_at_20_degrees(at: dict[str, Any]) -> None:
    """NBS Handbook 100, ohm in 1000 ft, four figures (10 to 4 AWG from memory), on copper of IACS 100 %."""
    assert ohms_per_thousand_feet(at["awg"], 20) == near(at["R20_ohm_kft_NBS"], TOL["R20_rel"])


@pytest.mark.parametrize("at", WIRE["rows"], ids=gauge_of)
def test_resistance_at_75_degrees(at: dict[str, Any]) -> None:
    """NEC chapter 9, table 8, three figures: solid wire, and strands that lose up to 3 % more."""
    ohms = ohms_per_thousand_feet(at["awg"], 75)
    if "R75_NEC_solid" in at:
        assert ohms == near(at["R75_NEC_solid"], TOL["R75_solid_rel"])
    assert 1.0 <= at["R75_NEC_strand7"] / ohms <= 1 + TOL["stranded_extra_rel"]


def test_resistivity() -> None:
    """IACS 100 %: 0.017241 ohm mm2/m at 20 degC; ours is printed with four figures."""
    assert copper_resistivity_ohm_m(kelvin(20)) * 1e6 == near(WIRE["rho20_ohm_mm2_m"], 0.0001)
    slope = copper_resistivity_ohm_m(kelvin(21)) / copper_resistivity_ohm_m(kelvin(20)) - 1
    assert slope == near(WIRE["alpha20_per_K"], 1e-9)


@pytest.mark.parametrize("at", WIRE["rows"], ids=gauge_of)
def test_ampacity(at: dict[str, Any]) -> None:
    """33 CFR 183.425 table 5, 105 degC insulation, times its factor inside an engine space (from memory)."""
    factor = WIRE["engine_space_factor"]["f105C"]
    assert ampacity_A(awg_area_m2(at["awg"])) == near(at["amp_105C"] * factor, 1e-9)


def test_every_gauge_that_we_hold_is_checked_here() -> None:
    """So that no gauge joins the table without its source."""
    assert [int(gauge) for gauge in table("wire")["ampacity_105C"]] == [at["awg"] for at in WIRE["rows"]]


def test_ratings_of_fuses() -> None:
    """Blade fuses of 1 to 40 A and large ones to 100 A: the ratings of ISO 8820-3 (from memory)."""
    small = {1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40}
    large = {20, 30, 40, 50, 60, 70, 80, 100}
    assert table("wire")["fuses"] == sorted(small | large)


@pytest.mark.parametrize("example", DROPS, ids=lambda example: example["id"])
def test_volts_lost(example: dict[str, Any]) -> None:
    """Worked from ASTM B258 and IACS copper: a wire out and back."""
    ohms = loop_resistance_ohm(
        area_m2=awg_area_m2(example["awg"]),
        length_m=example["length_one_way_m"],
        by_chassis=False,
        temperature_k=kelvin(example["T_C"]),
    )
    assert ohms * 1000 == near(example["R_loop_mohm"], example["tol_rel"])
    assert ohms * example["I_A"] == near(example["drop_V"], example["tol_rel"])


def test_rule_of_circular_mils() -> None:
    """ABYC E-11 (from memory), CM = K I L/E with K = 10.75: 8 AWG keeps to the volts and 10 AWG does not.

    K is copper warmed to about 30 degC.
    """
    rule = row(WIRE["examples"], id="CM1")
    mils = rule["K"] * rule["I_A"] * rule["length_out_and_back_ft"] / rule["allowed_drop_V"]
    assert mils == near(rule["cmil"], rule["tol_rel"])

    def drop_v(gauge: int) -> float:
        one_way_m = rule["length_out_and_back_ft"] / 2 * FOOT_M
        return rule["I_A"] * loop_resistance_ohm(
            area_m2=awg_area_m2(gauge), length_m=one_way_m, by_chassis=False, temperature_k=kelvin(30)
        )

    assert drop_v(rule["smallest_awg"]) <= rule["allowed_drop_V"] < drop_v(rule["smallest_awg"] + 2)
    assert copper_resistivity_ohm_m(kelvin(30)) / CIRCULAR_MIL_M2 * FOOT_M == near(rule["K"], 0.005)
