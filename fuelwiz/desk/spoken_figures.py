"""Figures as people say them: E70 where ethanol is asked, 7600 rpm, 480 hp at the wheels."""

from __future__ import annotations

import re

from fuelwiz.desk.composites.fuel_choice import share_of
from fuelwiz.desk.field_questions import changed_on_a_day
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.refusals import Refusal
from fuelwiz.desk.state import State
from fuelwiz.session import PowerAt

POWER, POWER_AT = "goal.power", "goal.power_at"
_POWERS = (POWER, "goal.next_power")
_TURNS = re.compile(r"(.*[0-9.])\s*(?:rpm|r/min|rev/min|1/min)", re.IGNORECASE | re.DOTALL)
_UNIT = r"(?:b?hp|ps|kw)"


def _power_at(letters: str, place: str) -> re.Pattern[str]:
    """A power and where it is measured: by letters before its unit, or by the name of the place."""
    named = rf"({_UNIT})?\s*(?:at\s+the\s+|at\s+)?{place}(?:\s+({_UNIT}))?"
    return re.compile(rf"([0-9.]+)\s*(?:{letters}({_UNIT})|{named})", re.IGNORECASE)


_SAID: tuple[tuple[PowerAt, re.Pattern[str]], ...] = (
    ("wheels", _power_at("[ra]?w", "wheels?")),
    ("crank", _power_at("c", "(?:crank|flywheel)")),
)


def power_said(text: str) -> tuple[str, PowerAt] | None:
    """A power and where it is measured, of a text that says both: "480 whp"; None for any other."""
    for place, pattern in _SAID:
        found = pattern.fullmatch(text.strip())
        if found is not None:
            unit = next((one for one in found.groups()[1:] if one), "")
            return f"{found[1]} {unit}".strip(), place
    return None


def measured_at(state: State) -> PowerAt:
    """Where the powers of a build are measured, by what is told so far."""
    return "wheels" if value_at(state.plain, ("goal", "power_at")) == "wheels" else "crank"


def as_written(state: State, path: str, raw: str) -> tuple[State, str]:
    """A figure in the way that its field reads it, and the build with what else the text says.

    The power of the goal brings along where it is measured; further powers are measured where that one is.

    Raises:
        Refusal: a further power that is said to be measured elsewhere.
    """
    key = changed_on_a_day(path) or path
    if key == "fuel.ethanol":
        return state, share_of(raw) or raw
    if key.endswith(".rpm"):
        turns = _TURNS.fullmatch(raw.strip())
        return state, turns[1] if turns else raw
    said = power_said(raw) if key in _POWERS or (key.startswith("pull.") and key.endswith(".power")) else None
    if said is None:
        return state, raw
    power, place = said
    if place == measured_at(state):
        return state, power
    if path != POWER:
        raise _measured_elsewhere(power, place, measured_at(state))
    return state.with_value(POWER_AT, place), power


def _measured_elsewhere(power: str, said: PowerAt, asked: PowerAt) -> Refusal:
    short = f"power at the {asked} is wanted"
    return Refusal(
        short,
        f"{power} is power at the {said}; here it is wanted at the {asked}, as Measured at in Goal has it. "
        "What you typed stays here.",
    )


def understood(path: str, text: str) -> str:
    """What is said of a power that brought along where it is measured; nothing of any other text."""
    said = power_said(text) if path == POWER else None
    return "" if said is None else f"Understood: {said[0]} at the {said[1]}; Measured at below says so too."
