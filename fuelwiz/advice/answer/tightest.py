"""Where a build is tightest: the second line of the answer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from fuelwiz.advice.answer.follows import BAD_DAYS_FOLLOW
from fuelwiz.advice.answer.lines import Forms, line
from fuelwiz.advice.case_sentences import case_names, fails_by_itself
from fuelwiz.advice.cases import BY_CASE, combined, when_in_own_case
from fuelwiz.advice.phrases import least_spare, point_name, wire_loss_not_counted
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import StressFigures


class _Place(NamedTuple):
    margin: float
    when: str
    name: str


def tightest(subject: Subject) -> Forms | None:
    """Least to spare over today, the pull and the single bad days, then the days that fail; None without a pump."""
    today = least_spare(subject.pick)
    if today is None:
        return None
    now = _Place(today[0], "today" if today[1] is None else point_name(subject, today[1]), "")
    least = min((now, *_bad_days(subject)), key=lambda place: place.margin)
    whole, short = _least(subject, least, now)
    if not subject.figures.stress:
        return line(f"{whole}; {BAD_DAYS_FOLLOW}.", f"{short}; {BAD_DAYS_FOLLOW}.", f"{short}.")
    ends = _which_fail(subject, least)
    wire = ", wire loss not counted" if wire_loss_not_counted(subject) else ""
    return line(
        *(f"{whole}{wire}{end}" for end in ends),
        *(f"{short}{wire}{end}" for end in ends),
        f"{short}{ends[-1]}",
        f"{short}.",
    )


def _which_fail(subject: Subject, least: _Place) -> list[str]:
    """How the line ends, ever shorter: the days that fail by name, those that fail only as today does behind them."""
    by_itself, as_today = failing_days(subject), days_as_today(subject)
    if not by_itself and not as_today:
        if _boiling_not_judged(subject):
            return ["; no bad day fails, boiling at the pump not judged.", "; boiling not judged."]
        return ["; no bad day fails."]
    said = least.margin < 0.0 and least.name in by_itself
    others = [name for name in by_itself if not said or name != least.name]
    if not others and not as_today:
        return ["; the other bad days pass.", "."]
    fails = "Fails too" if said else "Fails"
    count = f". {fails}: {_counted([*others, *as_today])}."
    named = [f"{', '.join(others)}{_made_of(subject, others)}", ", ".join(others)]
    if len(by_itself) + len(as_today) == len(subject.figures.stress):
        every = f". Every {'other ' if said and as_today else ''}bad day fails"
        if others and as_today:
            return [*(f". {fails}: {names}. The others fail as today does." for names in named), f"{every}."]
        return [f"{every}, as today does.", f"{every}."] if as_today else [f"{every}."]
    if not others:
        return [f". {fails} as today does: {', '.join(as_today)}.", count]
    if as_today:
        named = [f"{names}; as today does: {', '.join(as_today)}" for names in named]
    return [*(f". {fails}: {names}." for names in named), count]


def _boiling_not_judged(subject: Subject) -> bool:
    """Whether the pump is outside the tank, where fuel boils first, and nothing is known of what is before it."""
    pump = subject.session.pump
    return pump is not None and pump.place == "outside" and subject.session.inlet is None


def _made_of(subject: Subject, names: list[str]) -> str:
    """What the combined bad day is, which stands last where it fails."""
    return f" ({', '.join(combined(subject))})" if BY_CASE["bad day"].name in names else ""


def _counted(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{len(names)} bad days"


def _least(subject: Subject, least: _Place, now: _Place) -> tuple[str, str]:
    numbers, reserve = subject.numbers, subject.session.goal.reserve
    edges = (0.0, reserve) if least is now else (0.0,)
    today = _share(subject, now.margin, (0.0, reserve))
    if least is now:
        if now.when != "today" and subject.pick.margin is not None:
            whole = f"{now.when} ({_share(subject, subject.pick.margin, (0.0, reserve))} at the goal)"
        else:
            whole = now.when
    else:
        whole = f"{least.when} ({today} {now.when})"
    if least.margin < 0.0:
        missing = numbers.figure("percent", -least.margin, 0.0)
        return f"Tightest: {missing} short {whole}", f"{missing} short {least.when}"
    figure = numbers.figure("percent", least.margin, *edges)
    return f"Least to spare: {figure} {whole}", f"Least to spare: {figure} {least.when}"


def _share(subject: Subject, margin: float, edges: tuple[float, ...]) -> str:
    """What is to spare beside the day that is tightest; a lack in words, as on that day."""
    if margin < 0.0:
        return f"{subject.numbers.figure('percent', -margin, 0.0)} short"
    return subject.numbers.figure("percent", margin, *edges)


def _bad_days(subject: Subject) -> list[_Place]:
    """The single bad days: the combined one stays out, it is no single day."""
    together = subject.case("bad day")
    return [
        _Place(case.margin, case_when(subject, case), name)
        for case, name in zip(subject.figures.stress, case_names(subject), strict=True)
        if case is not together and case.margin is not None
    ]


def case_when(subject: Subject, case: StressFigures) -> str:
    """A bad day as a time: "on low volts"; a case of the builder's own by its name."""
    for standard in subject.standard_cases:
        if standard is case:
            return next(words.when for words in BY_CASE.values() if words.case == case.case)
    return when_in_own_case(case.case)


def failing_days(subject: Subject) -> list[str]:
    """The names of the bad days that fail for themselves, the combined one last."""
    return [name for name, case in _named_days(subject) if fails_by_itself(subject, case)]


def days_as_today(subject: Subject) -> list[str]:
    """The names of those that fail for nothing but what is wrong today."""
    return [
        name
        for name, case in _named_days(subject)
        if case.works is False and not fails_by_itself(subject, case)
    ]


def _named_days(subject: Subject) -> Iterator[tuple[str, StressFigures]]:
    return zip(case_names(subject), subject.figures.stress, strict=True)
