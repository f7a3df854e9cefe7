"""Bad days in sentences: what changes, what fails first, and what would cure it."""

from __future__ import annotations

from typing import Any

from fuelwiz.advice.cases import BY_CASE
from fuelwiz.advice.limits import cooler_inlet, cure, short_why
from fuelwiz.advice.numbers import Numbers
from fuelwiz.advice.phrases import least_spare, vapour_need, vapour_phrase
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import StressFigures
from fuelwiz.sizing.vocabulary import Case, Limit
from fuelwiz.terms import key_in_plain_words

_CASES: dict[str, Case] = {case: case for case in BY_CASE}


def case_names(subject: Subject) -> tuple[str, ...]:
    """What each case is called, in the order in which they are solved."""
    standard = subject.standard_cases
    own = subject.figures.stress[len(standard) :]
    return (*(BY_CASE[_CASES[case.case]].name for case in standard), *(case.case for case in own))


def boils_today(subject: Subject) -> bool:
    """Whether the fuel boils at the pump's inlet as the build is; less than the pump's place needs is not that yet.

    At a point of the pull alone no figure tells it; a pump whose place needs nothing fails there where it boils.
    """
    margin = subject.pick.vapour_margin_Pa
    if margin is None:
        return False
    return margin < 0.0 or (vapour_need(subject) == 0.0 and "vapour" in subject.figures.verdict.limits)


def changes_in_few(subject: Subject, case: StressFigures) -> str:
    """What changes on a bad day, in the few words that stand beside its name; empty where it has no others."""
    standard = _CASES.get(case.case)
    in_few = None if standard is None else BY_CASE[standard].in_few
    return "" if in_few is None else in_few(subject)


def new_limits(subject: Subject, case: StressFigures) -> set[Limit]:
    """The limits of a bad day that today has not.

    What lacks only what is kept for such days today, a pump its reserve, an inlet its distance from boiling, does not
    fail yet.
    """
    today: set[Limit] = set(subject.figures.verdict.limits)
    found, surge = least_spare(subject.pick), subject.figures.surge
    if found is not None and found[0] >= 0.0:
        today.discard("pump")
    if not boils_today(subject):
        today.discard("vapour")
    if surge is not None and surge.lift_margin is not None and surge.lift_margin >= 0.0:
        today.discard("lift")
    return set(case.limits) - today


def fails_by_itself(subject: Subject, case: StressFigures) -> bool:
    """Whether a bad day fails for itself: it brings a limit, or the fuel does not reach, be it short today too."""
    return bool(new_limits(subject, case)) or (case.margin is not None and case.margin < 0.0)


def case_sentences(subject: Subject) -> tuple[str, ...]:
    """One text a case, the builder's own last, as they are solved."""
    if not subject.figures.stress:
        return ()
    standard = subject.standard_cases
    own = zip(subject.figures.stress[len(standard) :], subject.session.stress.case, strict=True)
    return (
        *(_standard(subject, case, _CASES[case.case]) for case in standard),
        *(
            _sentence(subject, case, f"With {own_changes(subject, given.change)}", "a bigger pump")
            for case, given in own
        ),
    )


def _standard(subject: Subject, case: StressFigures, name: Case) -> str:
    words = BY_CASE[name]
    return _sentence(subject, case, words.changes(subject), words.pump_cure)


def _sentence(subject: Subject, case: StressFigures, changes: str, pump_cure: str) -> str:
    happens, cures = [], []
    fresh = [limit for limit in case.limits if limit in new_limits(subject, case)]
    first = fresh[0] if fresh else None
    if first is None:
        happens.append(_nothing_new(subject, case))
    elif first == "pump":
        happens.append(_pump_short(subject, case))
        cures.append(pump_cure)
    elif first != "vapour":
        happens.append(f"{short_why(subject, first)}; {_spare(subject, case)}")
        cures.append(cure(first))
    if _is_nearer_to_boiling(subject, case):
        assert case.vapour_margin_Pa is not None
        happens.append(vapour_phrase(subject, case.vapour_margin_Pa))
        cures.append(_cooler(subject, vapour_need(subject) - case.vapour_margin_Pa))
    elif "vapour" in fresh:
        happens.append("at a point of the pull the fuel boils at the pump inlet")
        cures.append(_cooler(subject, None))
    if first == "vapour":
        happens.append(f"the {subject.pump_word} alone would have {_spare(subject, case)}")
    helping = f" What helps: {'; '.join(cures)}." if cures else ""
    return f"{changes}: {'; '.join(happens)}.{helping}"


def _cooler(subject: Subject, missing_pa: float | None) -> str:
    helps = cooler_inlet(subject, missing_pa, today=False).rstrip(".")
    return f"{helps[:1].lower()}{helps[1:]}"


def _is_nearer_to_boiling(subject: Subject, case: StressFigures) -> bool:
    """Whether the fuel boils on that day and not today, or comes closer than it may where today it does not."""
    margin = case.vapour_margin_Pa
    if margin is None or boils_today(subject):
        return False
    too_close_today = "vapour" in subject.figures.verdict.limits
    return margin < (0.0 if too_close_today else vapour_need(subject))


def _nothing_new(subject: Subject, case: StressFigures) -> str:
    """A day that works, or that fails for nothing else than today; short of fuel, that says it all."""
    if (case.margin or 0.0) < 0.0:
        return short_why(subject, "relief") if "relief" in case.limits else _pump_short(subject, case)
    still = "fails only for what is wrong today" if case.limits else "still works"
    return f"{still}, {_spare(subject, case)}"


def _pump_short(subject: Subject, case: StressFigures) -> str:
    verb = "are" if subject.pump_word == "pumps" else "is"
    return f"the {subject.pump_word} {verb} {subject.numbers.figure('percent', -(case.margin or 0.0), 0.0)} short"


def _spare(subject: Subject, case: StressFigures) -> str:
    margin = case.margin or 0.0
    return (
        f"{subject.numbers.figure('percent', margin, 0.0)} to spare"
        if margin >= 0.0
        else _pump_short(subject, case)
    )


def own_changes(subject: Subject, change: dict[str, Any]) -> str:
    """What is otherwise on a bad day of the builder's own."""
    changes = [
        f"{key_in_plain_words(key)} {_as_shown(subject.numbers, value)}" for key, value in change.items()
    ]
    return ", ".join(changes)


def _as_shown(numbers: Numbers, value: Any) -> str:
    """A changed value, or the values of a list, in the units shown."""
    if isinstance(value, list):
        return "/".join(_as_shown(numbers, item) for item in value)
    return numbers.typed(value) if isinstance(value, str) else str(value)
