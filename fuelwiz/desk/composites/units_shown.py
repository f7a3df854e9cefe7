"""Which units are shown: one answer for the system and for the unit of power."""

from __future__ import annotations

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.field_questions import answers_to
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.state import State
from fuelwiz.shown_units import base_system, shown_system
from fuelwiz.units import BaseSystem, UnitSystem

KEY = "units"


def system_of(plain: Plain) -> UnitSystem:
    """The units that a build is shown in; US units where it says nothing that is known."""
    units: BaseSystem = "metric" if plain.get("show_units") == "metric" else "us"
    power = plain.get("show_power")
    return shown_system(units, power if power in ("hp", "kW") else None)


def _read(state: State) -> str | None:
    if "show_units" not in state.plain and "show_power" not in state.plain:
        return None
    system = system_of(state.plain)
    return system if system in answers_to(KEY) else base_system(system)


def _put(state: State, answer: str) -> State:
    base = "us" if answer == "us" else "metric"
    state = state.with_value("show_units", base)
    return state.with_value("show_power", "hp") if answer == "metric_hp" else state.without("show_power")


def _clear(state: State) -> State:
    return state.without("show_units").without("show_power")


UNITS = ChoiceQuestion(KEY, _read, _put, "us", _clear)
