"""Units that people type against the factors of NIST SP 811."""

from __future__ import annotations

import pytest

from fuelwiz import units
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.physics.line import GRAVITY
from fuelwiz.units import Kind

from .reference import VALUES, near

CONVERSION = VALUES["conversion"]
TOL = CONVERSION["tol_rel"]


@pytest.mark.parametrize(
    ("unit", "key", "scale"),
    [
        ("psi", "psi_Pa", 1),
        ("bar", "bar_Pa", 1),
        ("hp", "hp_W", 1),
        ("PS", "hp_metric_W", 1),
        ("gal", "US_gal_L", 1e-3),
        ("in", "inch_mm", 1e-3),
        ("ft", "ft_m", 1),
        ("cSt", "cSt_m2_s", 1),
        ("gal/h", "US_gal_L", 1e-3 / 3600),
        ("lb/h", "lb_kg", 1 / 3600),
    ],
)
def test_factors(unit: str, key: str, scale: float) -> None:
    """NIST SP 811, exact or derived factors (from memory)."""
    assert units.to_si(1.0, unit) == near(CONVERSION[key] * scale, TOL)


def test_inch_of_mercury() -> None:
    """NIST SP 811: mercury at 0 degC, 3.386 389 kPa, seven figures."""
    assert units.to_si(1.0, "inHg") == near(CONVERSION["inHg_0C_Pa"], 2e-7)


def test_constants_of_physics() -> None:
    """The psi and the standard gravity that the physics keeps for itself."""
    assert near(CONVERSION["psi_Pa"], TOL) == PSI_PA
    assert CONVERSION["g_m_s2"] == GRAVITY


@pytest.mark.parametrize(
    ("text", "kind", "unit", "what"),
    [
        ("250 L/h", "flow", "gal/h", "250 L/h in US gal/h"),
        ("43.5 psi", "gauge_pressure", "kPa", "43.5 psi in kPa"),
        ("58 psi", "gauge_pressure", "bar", "58 psi in bar"),
        ("1 kW", "power", "hp", "1 kW in hp"),
    ],
)
def test_worked_conversions(text: str, kind: Kind, unit: str, what: str) -> None:
    """By arithmetic from the same factors, nine figures."""
    (case,) = [case for case in CONVERSION["cases"] if case["what"] == what]
    assert units.from_si(units.parse(text, kind), unit) == near(case["value"], TOL)


def test_bsfc() -> None:
    """608.277 g/kWh to one lb/(hp h): from memory, and by arithmetic."""
    bsfc = VALUES["bsfc"]
    assert units.from_si(units.parse("1 lb/(hp*h)", "bsfc"), "g/kWh") == near(
        bsfc["lb_hp_h_to_g_kWh"], bsfc["conv_tol_rel"]
    )
    assert units.from_si(units.parse("1 g/kWh", "bsfc"), "lb/(hp*h)") == near(
        bsfc["g_kWh_to_lb_hp_h"], bsfc["conv_tol_rel"]
    )
