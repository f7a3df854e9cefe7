"""From plain data to a session: every fault is found, every fallback filled in."""

from __future__ import annotations

from typing import Any

from pydantic import ValidationError

from fuelwiz.errors import Fault, SessionError
from fuelwiz.file_limits import LONGEST_NAME
from fuelwiz.printable import clean
from fuelwiz.session.case_changes import apply_change, case_faults, without_cases
from fuelwiz.session.checks import cross_faults
from fuelwiz.session.fallbacks import fill_in
from fuelwiz.session.faults import faults_of
from fuelwiz.session.paths import field_at, key_path_of, order_of, value_at
from fuelwiz.session.readers import read
from fuelwiz.session.scalars import Rejected
from fuelwiz.session.sections import Session


def validate(plain: dict[str, Any], default_name: str = "") -> Session:
    """The session that plain data hold.

    Args:
        plain: what a session file holds, as TOML reads it.
        default_name: the name of a build that gives none: that of its file.

    Raises:
        SessionError: with every fault, in the order of the file's keys.
    """
    session, faults = _judged(plain)
    changed, faults_of_cases = ([], []) if newer_format(plain) else _cases(plain, faults)
    if session is None or faults or faults_of_cases:
        found = sorted([*faults, *faults_of_cases], key=lambda fault: order_of(key_path_of(fault.key)))
        raise SessionError(default_name or "this build", tuple(found))
    name = clean(default_name)[:LONGEST_NAME]
    for case, build in zip(session.stress.case, changed, strict=True):
        case.hold(fill_in(build, name))
    return fill_in(session, name)


def newer_format(plain: dict[str, Any]) -> list[Fault]:
    """The one fault of a file that a newer program wrote: the rest of it cannot be judged."""
    number = plain.get("format")
    if isinstance(number, bool) or not isinstance(number, int) or number <= 1:
        return []
    try:
        read(field_at("format"), number)
    except Rejected as rejected:
        return [Fault("format", words) for _, words in rejected.problems]
    return []


def _judged(plain: dict[str, Any]) -> tuple[Session | None, list[Fault]]:
    """The session, its stress cases not looked into, or None; and every fault."""
    newer = newer_format(plain)
    if newer:
        return None, newer
    try:
        return Session.model_validate(plain), list(cross_faults(plain))
    except ValidationError as error:
        return None, [*faults_of(error), *cross_faults(plain)]


def _cases(plain: dict[str, Any], known: list[Fault]) -> tuple[list[Session], list[Fault]]:
    """The builds that the stress cases make, and what only they get wrong."""
    cases = value_at(plain, ("stress", "case"))
    base = without_cases(plain)
    builds: list[Session] = []
    faults: list[Fault] = []
    for number, case in enumerate(cases if isinstance(cases, list) else []):
        change = case.get("change") if isinstance(case, dict) else None
        if not isinstance(change, dict) or not change:
            continue
        build, new_faults = _changed(base, change)
        faults += case_faults(number, change, [fault for fault in new_faults if fault not in known])
        if build is not None:
            builds.append(build)
    return builds, faults


def _changed(base: dict[str, Any], change: dict[str, Any]) -> tuple[Session | None, list[Fault]]:
    try:
        return _judged(apply_change(base, change))
    except SessionError as error:
        return None, list(error.faults)
