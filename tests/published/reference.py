"""The table of published values, and how near its printed digits let a check come."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

VALUES: dict[str, Any] = tomllib.loads(Path(__file__).with_name("reference_values.toml").read_text("utf-8"))

INCH_M = 25.4e-3
FOOT_M = 0.3048
PSI_PA = VALUES["conversion"]["psi_Pa"]
GALLON_M3 = VALUES["conversion"]["US_gal_L"] / 1000
POUND_KG = VALUES["conversion"]["lb_kg"]
HORSEPOWER_W = VALUES["conversion"]["hp_W"]
KELVIN = 273.15


def row(rows: list[dict[str, Any]], **wanted: object) -> dict[str, Any]:
    """The one row that holds the wanted values."""
    (found,) = [row for row in rows if all(row.get(key) == value for key, value in wanted.items())]
    return found


def printed(value: float, decimals: int) -> Any:
    """Equal to a value that its source prints with that many decimals: half of the last one either way."""
    return pytest.approx(value, rel=1e-12, abs=0.5 * 10**-decimals)


def near(value: float, rel: float) -> Any:
    """Equal to a value within a part of it, and to nothing else."""
    return pytest.approx(value, rel=rel, abs=0)


def kelvin(celsius: float) -> float:
    """Temperature in kelvin."""
    return celsius + KELVIN


def kelvin_from_f(fahrenheit: float) -> float:
    """Temperature in kelvin from degrees Fahrenheit."""
    return (fahrenheit + 459.67) / 1.8


def celsius_of(key: str) -> float:
    """The temperature that a key of the table names: "m10C" is -10."""
    return float(key.removesuffix("C").replace("m", "-"))
