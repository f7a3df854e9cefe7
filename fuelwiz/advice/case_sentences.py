"""Bad days in sentences: what changes, what fails first, and what would cure it."""

from __future__ import annotations

import re
from typing import Any

from fuelwiz.advice.cases import BY_CASE
from fuelwiz.advice.limits import cooler_inlet, cure, short_why
from fuelwiz.advice.numbers import NO_BREAK, role_in_other_system
from fuelwiz.advice.phrases import vapour_need, vapour_phrase
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import StressFigures
from fuelwiz.sizing.vocabulary import Case
from fuelwiz.terms import KEYS
from fuelwiz.units import to_si

_PLAIN_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")
_CASES: dict[str, Case] = {case: case for case in BY_CASE}


def case_names(build: Subject) -> tuple[str, ...]:
    """What each case is called, in the order in which they are solved."""
    standard = build.standard_cases
    own = build.figures.stress[len(standard) :]
    return (*(BY_CASE[_CASES[case.case]].name for case in standard), *(case.case for case in own))


def case_sentences(build: Subject) -> tuple[str, ...]:
    """One text a case, the builder's own last, as they are solved."""
    if not build.figures.stress:
        return ()
    standard = build.standard_cases
    own = zip(build.figures.stress[len(standard) :], build.session.stress.case, strict=True)
    return (
        *(_standard(build, case, _CASES[case.case]) for case in standard),
        *(_sentence(build, case, _own_change(build, given.change), "a bigger pump") for case, given in own),
    )


def _standard(build: Subject, case: StressFigures, name: Case) -> str:
    words = BY_CASE[name]
    return _sentence(build, case, words.changes(build), words.pump_cure)


def _sentence(build: Subject, case: StressFigures, changes: str, pump_cure: str) -> str:
    happens, cures = [], []
    if not case.limits:
        happens.append(f"still works, {_spare(build, case)}")
    elif case.limits[0] == "pump":
        happens.append(_pump_short(build, case))
        cures.append(pump_cure)
    else:
        first = case.limits[0]
        known = ", as today" if first in build.figures.verdict.limits else ""
        happens.append(f"{short_why(build, first)}{known}; {_spare(build, case)}")
        cures.append(cure(first))
    if case.vapour_margin_Pa is not None and case.vapour_margin_Pa < vapour_need(build):
        happens.append(vapour_phrase(build, case.vapour_margin_Pa))
        helps = cooler_inlet(build).rstrip(".")
        cures.append(f"{helps[:1].lower()}{helps[1:]}")
    helping = f" What helps: {'; '.join(cures)}." if cures else ""
    return f"{changes}: {'; '.join(happens)}.{helping}"


def _pump_short(build: Subject, case: StressFigures) -> str:
    verb = "are" if build.pump_word == "pumps" else "is"
    return f"the {build.pump_word} {verb} {build.numbers.figure('percent', -(case.margin or 0.0), 0.0)} short"


def _spare(build: Subject, case: StressFigures) -> str:
    margin = case.margin or 0.0
    return (
        f"{build.numbers.figure('percent', margin, 0.0)} to spare"
        if margin >= 0.0
        else _pump_short(build, case)
    )


def _own_change(build: Subject, change: dict[str, Any]) -> str:
    if not change:
        return "Nothing changes"
    changes = [f"{KEYS.get(key, key)} {_as_shown(build, value)}" for key, value in change.items()]
    return f"With {', '.join(changes)}"


def _as_shown(build: Subject, value: Any) -> str:
    """A changed value as it was typed, or in the units shown where it was typed in the other system's."""
    if isinstance(value, list):
        return "/".join(_as_shown(build, item) for item in value)
    if not isinstance(value, str):
        return str(value)
    typed, _, unit = value.rpartition(" ")
    role = role_in_other_system(unit, build.numbers.system)
    if role is None or not _PLAIN_NUMBER.fullmatch(typed):
        return value.replace(" ", NO_BREAK)
    return build.numbers.limit(role, to_si(float(typed), unit))
