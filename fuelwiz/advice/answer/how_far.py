"""Whether a build does, and how far it goes: the first line of the answer."""

from __future__ import annotations

from fuelwiz.advice.answer.lines import Forms, line
from fuelwiz.advice.answer.other_stops import with_other_stops
from fuelwiz.advice.first_limit import is_plural, line_to_blame, part_name
from fuelwiz.advice.limits import limit_phrase, return_fault, short_why
from fuelwiz.advice.phrases import GUESSED, kept_run_chokes, kept_run_name, least_spare, point_name
from fuelwiz.advice.subject import Subject, size_label
from fuelwiz.sizing.figures import Ceiling, SizeFigures
from fuelwiz.sizing.vocabulary import LINE_LIMITS, SIZE_LIMITS, Limit

A_GUESS = ", a guess"


def how_far(subject: Subject) -> Forms:
    """The line; what it says goes by the verdict, and by the lowest ceiling that is solved."""
    if not subject.has_runs:
        return _without_a_line(subject)
    first = lowest_solved(subject)
    if not subject.has_pump or first is None:
        return _without_a_pump(subject)
    limits = subject.figures.verdict.limits
    if not limits:
        return line(*_good_for(subject, first))
    short = _short_at_a_point(subject) or _short(subject, first) or _short_of_the_reserve(subject, first)
    if short is not None:
        return with_other_stops(subject, short)
    return with_other_stops(subject, _but(subject, first), _beside_power(subject))


def lowest_solved(subject: Subject) -> Ceiling | None:
    """The part that limits first of those whose ceiling is solved, without rules of thumb."""
    return next((item for item in subject.figures.ceilings if item.basis == "solved"), None)


def limit_named_first(subject: Subject) -> Limit:
    """The limit that the first line speaks of, of a build that has one."""
    limits = subject.figures.verdict.limits
    others = [limit for limit in limits if limit != "pump"]
    return next(limit for limit in (*_may_be_named(subject), *others, *limits) if limit in limits)


def _may_be_named(subject: Subject) -> tuple[Limit, ...]:
    """The limits that stand behind a line that names a shortfall, the first that is there; none for other lines."""
    first = lowest_solved(subject)
    if first is None:
        return ()
    found = least_spare(subject.pick)
    if _short_at_a_point(subject) is not None:
        return ("pump",) if found is not None and found[0] < 0.0 else ("injectors",)
    if _short(subject, first) is not None:
        return ("injectors",) if first.part == "injectors" else ("relief", "kept run", "sag", "pump")
    return ("pump",) if _short_of_the_reserve(subject, first) is not None else ()


def goal_needs(subject: Subject) -> str:
    """The goal by name and what it burns: "750 hp on E10 (assumed) needs 78 gal/h"."""
    goal = subject.numbers.figure("power", subject.figures.demand.crank_power_W)
    wheels = " at the wheels" if subject.session.goal.power_at == "wheels" else ""
    assumed = " (assumed)" if "fuel.ethanol" in subject.assumed else ""
    burns = subject.numbers.figure("flow", subject.figures.demand.volume_flow_m3_s)
    return f"{goal}{wheels} on {subject.fuel}{assumed} needs {burns}"


def refused_word(subject: Subject, row: SizeFigures) -> str:
    """What is wrong with a refused size in a word: too small, where a larger one would do."""
    return "is too small" if subject.is_too_small(row) else "does not work"


def _without_a_line(subject: Subject) -> Forms:
    needs, burns = goal_needs(subject), _burns(subject)
    row = subject.figures.row(subject.figures.chosen)
    if row is not None and row.limits:
        why = limit_phrase(subject, row, row.limits[0])
        refused = f"your {row.size} {refused_word(subject, row)} for it: {why}"
        return line(f"{needs}; {refused}.", f"Your {row.size} {refused_word(subject, row)} for {burns}.")
    return line(f"{needs}. No feed line is given yet.", f"{needs}.", f"The goal needs {burns}.")


def _burns(subject: Subject) -> str:
    return subject.numbers.figure("flow", subject.figures.demand.volume_flow_m3_s)


def _without_a_pump(subject: Subject) -> Forms:
    target = subject.figures.pump_target
    assert target is not None
    flow = subject.numbers.figure("flow", target.flow_m3_s)
    look_for = f"No pump yet: look for {flow} at {subject.numbers.about('pressure', target.rise_Pa)}"
    limits = subject.figures.verdict.limits
    if not limits:
        return line(f"{look_for}.")
    limit, pick = limits[0], subject.pick
    why = short_why(subject, limit)
    if limit in SIZE_LIMITS and limit in pick.limits:
        why = f"{size_label(pick.size)} {refused_word(subject, pick)}: {limit_phrase(subject, pick, pick.limits[0])}"
    return line(f"{look_for}; {why}.", f"{look_for}; not all works.", f"{look_for}.")


def _wanted(subject: Subject, first: Ceiling) -> tuple[str, str]:
    """What the lowest ceiling is good for, with its unit, and the goal without."""
    numbers, goal = subject.numbers, subject.figures.demand.crank_power_W
    good = numbers.figure("power", first.max_power_W, goal)
    return good, numbers.number("power", goal, first.max_power_W)


def _is_the_limit(subject: Subject, first: Ceiling) -> str:
    return f"{culprit(subject, first)} {'are' if is_plural(subject, first) else 'is'} the limit"


def culprit(subject: Subject, first: Ceiling) -> str:
    """What stands behind the lowest ceiling: the part, or what keeps it from more."""
    limits = subject.figures.verdict.limits
    if first.by_line:
        return line_to_blame(subject)
    if first.part != "pump":
        return part_name(subject, first)
    if "relief" in limits:
        return "the relief valve"
    if not subject.at_tank and ("kept run" in limits or kept_run_chokes(subject, subject.pick)):
        return kept_run_name(subject).rstrip(",")
    return part_name(subject, first)


def _guess(subject: Subject, first: Ceiling, said: str = GUESSED) -> str:
    return said if subject.one_point and first.part == "pump" and not first.by_line else ""


def _good_for(subject: Subject, first: Ceiling) -> tuple[str, ...]:
    good, goal = _wanted(subject, first)
    limit = _is_the_limit(subject, first)
    boost = " without boost" if _boost_takes_it_away(subject, first) else ""
    whole = f"Good for {good} of the {goal} wanted{f',{boost}' if boost else ''}: {limit}"
    guess = _guess(subject, first, A_GUESS)
    shorter = f"Good for {good}{boost}: {limit}{guess}."
    return f"{whole}{_guess(subject, first)}.", f"{whole}{guess}.", shorter, f"Good for {good}{boost}{guess}."


def _boost_takes_it_away(subject: Subject, first: Ceiling) -> bool:
    """Whether an engine without boost is good for more than the next goal, which boost makes fail all the same."""
    following = subject.next
    if following is None or not following.limits or following.crank_power_W > first.max_power_W:
        return False
    return subject.session.pressure.boost <= 0.0 < following.boost_Pa


def _short(subject: Subject, first: Ceiling) -> Forms | None:
    """The goal itself is not reached."""
    goal_w = subject.figures.demand.crank_power_W
    if first.max_power_W >= goal_w:
        return None
    numbers, limit = subject.numbers, _is_the_limit(subject, first)
    good, goal = (
        numbers.number("power", first.max_power_W, goal_w),
        numbers.figure("power", goal_w, first.max_power_W),
    )
    whole, guess = f"Short: {good} of the {goal} wanted; {limit}", _guess(subject, first, A_GUESS)
    return line(
        f"{whole}{_guess(subject, first)}.",
        f"{whole}{guess}.",
        f"Short: {good} of {goal}; {limit}{guess}.",
        f"Short: {good} of {goal}{guess}.",
    )


def _short_at_a_point(subject: Subject) -> Forms | None:
    """A further point of full power is short, of fuel or of injectors."""
    found = least_spare(subject.pick)
    if found is not None and found[1] is not None and found[0] < 0.0:
        return _short_of_fuel_there(subject, found[0], found[1])
    worst = [
        (point.duty or 0.0, at)
        for at, point in enumerate(subject.figures.pull)
        if "injectors" in point.limits
    ]
    injectors, given = subject.figures.injectors, subject.session.injectors
    if not worst or given is None or injectors is None or injectors.within_limit is False:
        return None
    duty, at = max(worst)
    shown, most = subject.numbers.pair("percent", duty, given.duty_limit)
    there = point_name(subject, at)
    return line(
        f"Short {there}: the injectors are {shown} open there, {most} is the limit.",
        f"Short {there}: injectors {shown} open, of {most}.",
    )


def _short_of_fuel_there(subject: Subject, margin: float, at: int) -> Forms:
    numbers, power = subject.numbers, subject.figures.pull[at].crank_power_W
    reached = (1.0 + margin) * power
    good, wanted = numbers.number("power", reached, power), numbers.figure("power", power, reached)
    there = point_name(subject, at)
    word = subject.pump_word
    limit = f"the {word} {'are' if word == 'pumps' else 'is'} the limit"
    return line(
        f"Short {there}: {good} of the {wanted} there; {limit}.", f"Short {there}: {good} of {wanted}."
    )


def _short_of_the_reserve(subject: Subject, first: Ceiling) -> Forms | None:
    found, row = least_spare(subject.pick), subject.pick
    others = {*LINE_LIMITS, "kept run"}
    if "pump" not in row.limits or found is None or others.intersection(subject.figures.verdict.limits):
        return None
    margin, at = found
    spare, wanted = subject.numbers.pair("percent", margin, subject.session.goal.reserve)
    if at is not None:
        there = point_name(subject, at)
        return line(
            f"Short of your reserve {there}: {spare} to spare there, you want {wanted}.",
            f"Short of reserve {there}: {spare}, you want {wanted}.",
        )
    numbers, goal = subject.numbers, subject.figures.demand.crank_power_W
    good = numbers.number("power", first.max_power_W, goal)
    of = numbers.figure("power", goal, first.max_power_W)
    return line(
        f"Short of your reserve: good for {good} of {of}, {spare} to spare, you want {wanted}.",
        f"Short of your reserve: {spare} to spare, you want {wanted}.",
    )


def _but(subject: Subject, first: Ceiling) -> Forms:
    """Power is there; something that is no ceiling in power is wrong."""
    limit, row = _beside_power(subject), subject.pick
    if limit == "return":
        fine = "Full power is fine, idle is not"
        fault = return_fault(subject)
        return line(f"{fine}: {fault}.", f"{fine}: {fault.partition(' for ')[0]}.", f"{fine}.")
    good, goal = _wanted(subject, first)
    why = "the kept run is too small" if limit == "kept run" else short_why(subject, limit)
    if limit in LINE_LIMITS:
        which = kept_run_name(subject).rstrip(",") if kept_run_chokes(subject, row) else _your(subject, row)
        why = f"{which} is too small"
        whole = f"{why}: {limit_phrase(subject, row, row.limits[0])}"
        return line(
            f"Good for {good} of the {goal} wanted, but {whole}.",
            f"Good for {good}, but {why}.",
            f"No: {short_why(subject, limit)}.",
        )
    if limit == "kept run":
        why = f"{kept_run_name(subject).rstrip(',')} is too small"
    return line(
        f"Good for {good} of the {goal} wanted, but {why}.",
        f"Good for {good}, but {why}.",
        f"No: {short_why(subject, limit)}.",
    )


def _beside_power(subject: Subject) -> Limit:
    """The first limit that is no lack of the pump's flow."""
    return next(limit for limit in subject.figures.verdict.limits if limit != "pump")


def _your(subject: Subject, row: SizeFigures) -> str:
    if row.fixed:
        return "the line you have"
    return f"your {row.size}" if subject.figures.chosen is not None else f"even {row.size}"


def good_for_w(subject: Subject) -> float | None:
    """Crank power that the first line speaks of."""
    first = lowest_solved(subject)
    return None if first is None else first.max_power_W
