"""The units that figures are shown in, for each system; and how a unit is written on a screen or a sheet."""

from __future__ import annotations

from fuelwiz.unit_table import Kind
from fuelwiz.units import BaseSystem, PowerUnit, UnitSystem

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


_POWER_OTHERWISE: dict[UnitSystem, PowerUnit] = {"us_kw": "kW", "metric_hp": "hp"}
"""The unit of power where it is not that of the system."""
_OTHER: dict[UnitSystem, UnitSystem] = {
    "us": "metric",
    "metric": "us",
    "us_kw": "metric_hp",
    "metric_hp": "us_kw",
}


def shown_system(units: BaseSystem, power: PowerUnit | None) -> UnitSystem:
    """How figures are shown that are wanted in a system of units, with power in hp or kW; None: as usual there."""
    if units == "us":
        return "us_kw" if power == "kW" else "us"
    return "metric_hp" if power == "hp" else "metric"


def base_system(system: UnitSystem) -> BaseSystem:
    """The system of units, whatever power is shown in."""
    return "us" if system in ("us", "us_kw") else "metric"


def of_pair(us_unit: str, metric_unit: str, system: UnitSystem) -> str:
    """The one of two units that a figure is shown in."""
    if us_unit != metric_unit and us_unit == SHOWN_UNITS["power"][0] and system in _POWER_OTHERWISE:
        return _POWER_OTHERWISE[system]
    return us_unit if base_system(system) == "us" else metric_unit


def shown_unit(kind: Kind, system: UnitSystem) -> str:
    """The unit that a kind of quantity is shown in, as a session file writes it."""
    return of_pair(*SHOWN_UNITS[kind], system)


def unit_sign(unit: str) -> str:
    """A unit as a screen or a sheet shows it: °F for degF."""
    return _SIGNS.get(unit, unit)


def other_system(system: UnitSystem) -> UnitSystem:
    """The one in which every unit is the other of its pair."""
    return _OTHER[system]
