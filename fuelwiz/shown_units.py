"""The units that figures are shown in, for each system; and how a unit is written on a screen or a sheet."""

from __future__ import annotations

from fuelwiz.unit_table import Kind
from fuelwiz.units import UnitSystem

SHOWN_UNITS: dict[Kind, tuple[str, str]] = {
    "power": ("hp", "kW"),
    "gauge_pressure": ("psi", "bar"),
    "absolute_pressure": ("psi", "bar"),
    "pressure_change": ("psi", "bar"),
    "flow": ("gal/h", "L/h"),
    "mass_flow": ("lb/h", "kg/h"),
    "length": ("ft", "m"),
    "velocity": ("ft/s", "m/s"),
    "voltage": ("V", "V"),
    "current": ("A", "A"),
    "temperature": ("degF", "degC"),
    "fraction": ("%", "%"),
    "bsfc": ("lb/(hp*h)", "g/kWh"),
    "density": ("kg/m^3", "kg/m^3"),
    "viscosity": ("mm^2/s", "mm^2/s"),
    "heating_value": ("MJ/kg", "MJ/kg"),
    "area": ("mm^2", "mm^2"),
    "volume": ("gal", "l"),
    "time": ("ms", "ms"),
    "mass": ("lb", "kg"),
    "temperature_change": ("K", "K"),
}
"""The US and the metric unit of each kind of quantity, as a session file writes them."""

_SMALLER = (("in", "mm"), ("inHg", "kPa"))
"""Pairs that some rows are shown in besides: bores, and vacuum."""
_SIGNS = {
    "degF": "°F",
    "degC": "°C",
    "mm^2": "mm²",
    "mm^2/s": "mm²/s",
    "kg/m^3": "kg/m³",
    "lb/(hp*h)": "lb/hp·h",
    "l": "L",
}
PAIRS = tuple(dict.fromkeys(pair for pair in (*SHOWN_UNITS.values(), *_SMALLER) if pair[0] != pair[1]))
"""Each US unit with the metric one that goes with it, where the two differ."""


def shown_unit(kind: Kind, system: UnitSystem) -> str:
    """The unit that a kind of quantity is shown in, as a session file writes it."""
    us_unit, metric_unit = SHOWN_UNITS[kind]
    return us_unit if system == "us" else metric_unit


def unit_sign(unit: str) -> str:
    """A unit as a screen or a sheet shows it: °F for degF."""
    return _SIGNS.get(unit, unit)


def other_system(system: UnitSystem) -> UnitSystem:
    """The other of the two."""
    return "metric" if system == "us" else "us"
