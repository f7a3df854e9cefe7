"""What would have to change for the next goal, part by part."""

from __future__ import annotations

from fuelwiz.advice.first_limit import PARTS
from fuelwiz.advice.limits import cure, short_why
from fuelwiz.advice.next_words import ASSUMED, boost_is_assumed, left_across_then, point_then
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.sizing.figures import NextFigures


def next_goal(subject: Subject) -> tuple[str, ...]:
    """Sentences, what today's parts come to first; none where no next goal is given."""
    goal = subject.next
    if goal is None:
        return ()
    sentences = [
        _today(subject, goal),
        _pump(subject, goal),
        _injectors(subject, goal),
        _across_the_injectors(subject),
        *_others(subject, goal),
        _line(subject, goal),
    ]
    return tuple(sentence for sentence in (*sentences, *_rules_of_thumb(subject, goal)) if sentence)


def _others(subject: Subject, goal: NextFigures) -> list[str]:
    """What fails beside pump and injectors, and the cure; of two with one cure the first is said."""
    by_cure: dict[str, str] = {}
    for limit in goal.limits:
        if limit not in {"pump", "injectors"}:
            by_cure.setdefault(cure(limit), short_why(subject, limit))
    return [f"{capitalized(why)}: it needs {cured_by}." for cured_by, why in by_cure.items()]


def _name(subject: Subject, goal: NextFigures) -> str:
    power = subject.numbers.figure("power", goal.crank_power_W)
    boost = f" at {subject.numbers.figure('pressure', goal.boost_Pa)} of boost" if goal.boost_Pa > 0.0 else ""
    return f"{power}{boost}{ASSUMED if boost_is_assumed(subject) else ''}"


def _flow_ratio(subject: Subject, goal: NextFigures) -> float:
    """Fuel of the next goal over that of today's; another induction takes another amount for each horsepower."""
    return goal.target_flow_m3_s / subject.figures.demand.target_flow_m3_s


def _today(subject: Subject, goal: NextFigures) -> str:
    burns = subject.numbers.figure(
        "flow", subject.figures.demand.volume_flow_m3_s * _flow_ratio(subject, goal)
    )
    name = _name(subject, goal)
    if goal.margin is None:
        return f"{name} needs {burns}; look for a pump that flows {point_then(subject, goal)}."
    if goal.limits:
        return f"{name} needs {burns}: today's parts are not enough."
    spare = subject.numbers.figure("percent", goal.margin, subject.session.goal.reserve)
    return f"{name} needs {burns}: today's parts are enough, {spare} to spare."


def _pump(subject: Subject, goal: NextFigures) -> str:
    if "pump" not in goal.limits or goal.margin is None:
        return ""
    word = subject.pump_word
    verb = "are" if word == "pumps" else "is"
    if goal.margin < 0.0:
        short = f"{subject.numbers.figure('percent', -goal.margin, 0.0)} short"
    else:
        figure, most = subject.numbers.pair("percent", goal.margin, subject.session.goal.reserve)
        short = f"{figure} to spare, you want {most}\u00a0%"
    return f"The {word} {verb} too small ({short}): look for a pump that flows {point_then(subject, goal)}."


def _injectors(subject: Subject, goal: NextFigures) -> str:
    figures, given = subject.figures.injectors, subject.session.injectors
    if figures is None or given is None or "injectors" not in goal.limits:
        return ""
    if goal.injector_rating_m3_s is None:
        return "The injectors are too small for it."
    each = subject.numbers.figure("injector", goal.injector_rating_m3_s, given.rated_flow)
    at = subject.numbers.figure("pressure", given.rated_pressure)
    return f"The injectors are too small for it: you need {figures.count} of {each} each, rated at {at}."


def _across_the_injectors(subject: Subject) -> str:
    """What boost leaves of the pressure where the regulator does not feel it."""
    left, base = left_across_then(subject), subject.session.pressure.base
    if left is None:
        return ""
    pressure, whole = (
        subject.numbers.figure("pressure", left, base, 0.0),
        subject.numbers.number("pressure", base),
    )
    return f"Without a hose from regulator to manifold {pressure} of {whole} is left across the injectors."


def _line(subject: Subject, goal: NextFigures) -> str:
    size = subject.figures.verdict.size
    if goal.recommended is None:
        return "" if subject.pick.fixed else "No size of feed line is enough by itself."
    if goal.recommended == size:
        return "" if subject.pick.fixed else f"{size} is still the line to fit."
    return f"{capitalized(goal.recommended)} is then the line to fit."


def _rules_of_thumb(subject: Subject, goal: NextFigures) -> list[str]:
    """Filter, feed and suction line whose rule of thumb lies below the next goal."""
    low = [item for item in goal.ceilings if item.basis == "rule" and item.max_power_W < goal.crank_power_W]
    return [
        f"{capitalized(PARTS[item.part])} is good for"
        f" {subject.numbers.figure('power', item.max_power_W, goal.crank_power_W)} by rule of thumb:"
        " look for a larger one."
        for item in low
    ]
