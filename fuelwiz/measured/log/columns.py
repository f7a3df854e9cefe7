"""Which column is what: as the session names them, else guessed from the words and units of their heads."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from fuelwiz import units
from fuelwiz.errors import LogError
from fuelwiz.measured.log.layout import CLOCK_UNIT, Head
from fuelwiz.printable import quoted
from fuelwiz.record import record
from fuelwiz.session import NO_UNIT_AT_ALL, Column, FieldSpec, LogColumns, field_at, fits

WORDS: Mapping[str, tuple[str, str]] = {
    "time": (r"time(?:stamp| of day)?|clock|elapsed|seconds?|t", r"inj|pulse|dead|spark|dwell|lap"),
    "rail": (
        r"(?:fuel|rail)\b.*\b(?:p|press(?:ure)?)|fuel ?p|f ?p|frp|rail",
        r"low|tank|return|target|temp|pump",
    ),
    "manifold": (r"map|manifold.*|mani abs.*", r"target|temp"),
    "boost": (r"boost(?: p(?:ress(?:ure)?)?)?", r"target|duty|control|solenoid"),
    "rpm": (r"rpm|engine speed|revs|engine rpm", r"wheel|turbo|input|shaft|prop"),
    "duty": (r"inj(?:ector)?s?\b.*\bduty.*|idc|duty", r"boost|pump|fan|waste|idle|secondary"),
    "pulse_width": (r"inj(?:ector)?s?\b.*(?:pw|pulse.*|time)|pw\d?|pulse ?width|ipw", r"dead|secondary"),
    "flow": (r"fuel (?:flow|consumption|rate)", r"target|total"),
    "volts": (r"(?:fuel ?)?pump (?:v|volts?|voltage)", r""),
    "battery": (r"bat(?:t(?:ery)?)?(?: (?:v|volts?|voltage))?|vbat|v ?batt?|ecu volts?", r""),
    "current": (r"(?:fuel ?)?pump (?:a|amps?|current)", r""),
    "temperature": (r"fuel t(?:emp(?:erature)?)?", r""),
    "ethanol": (r"(?:fuel )?ethanol.*|flex ?fuel.*|e ?%|eth", r"temp"),
    "power": (r"(?:engine |wheel |dyno )?power|hp|whp|bhp|kw", r"steering|target"),
    "barometer": (r"baro(?:meter|metric)?(?: p(?:ress(?:ure)?)?)?", r""),
}
"""What a head may say for each key, whole, and what it must not hold: common practice, no source."""

NEEDED = ("time", "rail")


@record
class Taken:
    """A column that is read: its key, where it stands, its head, its unit, and how it comes to SI."""

    key: str
    at: int
    head: str
    unit: str
    times: float
    plus: float
    guessed: bool
    by_mass: bool = False


def columns_of(named: LogColumns, heads: Sequence[Head]) -> tuple[Taken, ...]:
    """The columns to read, in the order of the keys: those that are named, and of the rest what can be guessed.

    Raises:
        LogError: one that is named is not there or has no unit, or one that is needed is neither named nor found.
    """
    found: list[Taken] = []
    guesses = guess_rest({key: getattr(named, key) for key in named.model_fields_set}, heads)
    for key in LogColumns.model_fields:
        column: Column | None = getattr(named, key)
        if column is not None and column.value is None and not column.is_absent:
            found.append(_named(key, column, heads))
        elif key in guesses:
            found.append(
                _taken(key, guesses[key], heads[guesses[key]], heads[guesses[key]].unit, guessed=True)
            )
    _refuse_missing({taken.key for taken in found}, heads)
    return tuple(found)


def guess_rest(given: Mapping[str, Column], heads: Sequence[Head]) -> dict[str, int]:
    """Where the columns of the keys that are not given probably stand; none that is given for another key."""
    taken = {_folded(column.head) for column in given.values() if not column.is_absent}
    free = [
        at
        for at, head in enumerate(heads)
        if not taken.intersection((_folded(head.text), _folded(head.name)))
    ]
    found = {key: free[at] for key, at in guess([heads[at] for at in free]).items() if key not in given}
    for key, other in (("manifold", "boost"), ("boost", "manifold")):
        if other in found and key in given and not given[key].is_absent:
            del found[other]
    if "manifold" in found:
        found.pop("boost", None)
    return found


def _named(key: str, column: Column, heads: Sequence[Head]) -> Taken:
    """The column of that head, in any letter case, with or without its unit in brackets."""
    wanted = _folded(column.head)
    places = [at for at, head in enumerate(heads) if wanted in (_folded(head.text), _folded(head.name))]
    if not places:
        raise LogError(f"has no column {quoted(column.head)} (`log.columns.{key}`); it has {_listed(heads)}")
    head = heads[places[0]]
    return _taken(key, places[0], head, head.unit if column.unit is None else column.unit, guessed=False)


def _folded(text: str) -> str:
    return " ".join(text.casefold().split())


def _taken(key: str, at: int, head: Head, unit: str | None, *, guessed: bool) -> Taken:
    spec = field_at(f"log.columns.{key}")
    if head.is_clock:
        unit = CLOCK_UNIT
    if spec.kind is None:
        return Taken(key, at, head.text, unit or "", 1.0, 0.0, guessed)
    if unit is None:
        raise LogError(
            f"has no known unit for its column {quoted(head.text)}: say it as"
            f' {key} = ["{head.text}", "{spec.us_unit}"] under [log.columns]'
        )
    if not fits(spec, unit):
        wanted = f"wants the unit of {units.describe(spec.kind)}, such as {spec.us_unit}"
        raise LogError(f"column {quoted(head.text)} (`log.columns.{key}`) {wanted}, got {quoted(unit)}")
    zero, one = units.to_si(0.0, unit), units.to_si(1.0, unit)
    by_mass = spec.kind == "flow" and "flow" not in units.kinds_of(unit)
    return Taken(key, at, head.text, unit, one - zero, zero, guessed, by_mass)


def guess(heads: Sequence[Head]) -> dict[str, int]:
    """Where the column of each key probably stands: words and unit both speak for it, and for no other."""
    found: dict[str, int] = {}
    for key, (says, never) in WORDS.items():
        spec = field_at(f"log.columns.{key}")
        places = [at for at, head in enumerate(heads) if _may_be(head, says, never, spec)]
        if len(places) == 1 or (places and heads[places[0]].name != heads[places[-1]].name and key == "time"):
            found[key] = places[0]
    return found


def _may_be(head: Head, says: str, never: str, spec: FieldSpec) -> bool:
    words = " ".join(re.findall(r"[a-z]+|\d+|%", _apart(head.name).casefold()))
    if not re.fullmatch(says, words) or (never and re.search(rf"\b(?:{never})", words)):
        return False
    if spec.kind is None:
        return head.unit is None or head.unit.lower() in NO_UNIT_AT_ALL
    return head.unit is not None and fits(spec, head.unit)


def _apart(name: str) -> str:
    """FuelPress as Fuel Press."""
    return re.sub(r"(?<=[a-z])(?=[A-Z])", " ", name)


def _refuse_missing(keys: set[str], heads: Sequence[Head]) -> None:
    missing = [f"`{key}`" for key in NEEDED if key not in keys]
    if not keys & {"manifold", "boost"}:
        missing.append("`manifold` or `boost`")
    if not keys & {"flow", "duty"} and not {"pulse_width", "rpm"} <= keys:
        missing.append("`flow`, `duty`, or `pulse_width` with `rpm`")
    if missing:
        names = "; ".join(missing)
        raise LogError(
            f"leaves open which column is {names}: name it under [log.columns]; it has {_listed(heads)}"
        )


def _listed(heads: Sequence[Head]) -> str:
    names = [quoted(head.text) for head in heads[:12] if head.text]
    return ", ".join(names) + (" and more" if len(heads) > len(names) else "")
