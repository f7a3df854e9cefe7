"""A session: what the builder said, in SI, with every fallback filled in; and how plain data become one."""

from __future__ import annotations

from typing import Any

from pydantic import ValidationError

from fuelwiz.errors import Fault, SessionError
from fuelwiz.session.cases import apply_change, case_faults, without_cases
from fuelwiz.session.checks import cross_faults
from fuelwiz.session.clean import clean
from fuelwiz.session.fallbacks import fallback_text, fill_in
from fuelwiz.session.faults import faults_of
from fuelwiz.session.paths import field_at, given, leaf_paths, order_of, value_at, way_of
from fuelwiz.session.readers import Size, Wrong, read
from fuelwiz.session.sections import (
    Bands,
    Engine,
    Feed,
    Filter,
    Fitted,
    Fuel,
    Goal,
    Injectors,
    Inlet,
    InletRun,
    Part,
    Pressure,
    Pump,
    PumpCurve,
    Record,
    Regulator,
    ReturnLine,
    Run,
    Session,
    Strainer,
    StressCase,
    StressSection,
    Surge,
    Tank,
    Wiring,
)
from fuelwiz.session.spec import FieldSpec

__all__ = [
    "Bands",
    "Engine",
    "Feed",
    "FieldSpec",
    "Filter",
    "Fitted",
    "Fuel",
    "Goal",
    "Injectors",
    "Inlet",
    "InletRun",
    "Part",
    "Pressure",
    "Pump",
    "PumpCurve",
    "Record",
    "Regulator",
    "ReturnLine",
    "Run",
    "Session",
    "Size",
    "Strainer",
    "StressCase",
    "StressSection",
    "Surge",
    "Tank",
    "Wiring",
    "apply_change",
    "fallback_text",
    "field_at",
    "given",
    "leaf_paths",
    "validate",
]

_LONGEST_NAME = 200


def validate(plain: dict[str, Any], default_name: str = "") -> Session:
    """The session that plain data hold.

    Args:
        plain: what a session file holds, as TOML reads it.
        default_name: the name of a build that gives none: that of its file.

    Raises:
        SessionError: with every fault, in the order of the file's keys.
    """
    faults = newer_format(plain)
    if not faults:
        session, faults = _session(plain)
        faults += _faults_of_cases(plain, faults)
        if session is not None and not faults:
            name = clean(default_name)[:_LONGEST_NAME]
            return _with_cases(fill_in(session, name), plain, name)
    faults.sort(key=lambda fault: order_of(way_of(fault.key)))
    raise SessionError(default_name or "this build", tuple(faults))


def _with_cases(session: Session, plain: dict[str, Any], name: str) -> Session:
    """The session with each of its stress cases turned into the changed session; nobody has seen it yet."""
    base = without_cases(plain)
    for case in session.stress.case:
        changed, _ = _session(apply_change(base, case.change))
        assert changed is not None
        case.hold(fill_in(changed, name))
    return session


def newer_format(plain: dict[str, Any]) -> list[Fault]:
    """The one fault of a file that a newer program wrote: the rest of it cannot be judged."""
    found = plain.get("format")
    if isinstance(found, bool) or not isinstance(found, int) or found <= 1:
        return []
    try:
        read(field_at("format"), found)
    except Wrong as wrong:
        return [Fault("format", words) for _, words in wrong.found]
    return []


def _session(plain: dict[str, Any]) -> tuple[Session | None, list[Fault]]:
    """The session without its stress cases judged, or None; and all faults."""
    try:
        session = Session.model_validate(plain)
    except ValidationError as error:
        return None, [*faults_of(error), *cross_faults(plain)]
    return session, list(cross_faults(plain))


def _faults_of_cases(plain: dict[str, Any], known: list[Fault]) -> list[Fault]:
    """What only a stress case gets wrong: each is applied to a copy, which is then judged as a build."""
    cases = value_at(plain, ("stress", "case"))
    base = without_cases(plain)
    found: list[Fault] = []
    for number, case in enumerate(cases if isinstance(cases, list) else []):
        change = case.get("change") if isinstance(case, dict) else None
        if isinstance(change, dict) and change:
            new = [fault for fault in _changed_faults(base, change) if fault not in known]
            found += case_faults(number, change, new)
    return found


def _changed_faults(base: dict[str, Any], change: dict[str, Any]) -> list[Fault]:
    try:
        changed = apply_change(base, change)
    except SessionError as error:
        return list(error.faults)
    return newer_format(changed) or _session(changed)[1]
