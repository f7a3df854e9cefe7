"""What to do first: the third line of the answer."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import TYPE_CHECKING

from fuelwiz.advice.answer.how_far import good_for_w, limit_named_first
from fuelwiz.advice.answer.lines import Forms, line
from fuelwiz.advice.changes import change_noun, in_place_of_pump_noun, step_noun
from fuelwiz.advice.limits import cure, what_and_do
from fuelwiz.advice.next_words import next_name, point_then
from fuelwiz.advice.part_words import rated_below
from fuelwiz.advice.subject import Subject, listed
from fuelwiz.advice.ways import steps_out, way_out
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.sizing.thresholds import WORTH_MARGIN

if TYPE_CHECKING:
    from fuelwiz.sizing.figures import NextFigures
    from fuelwiz.sizing.slow_figures import ChangeFigures
    from fuelwiz.sizing.vocabulary import Change, Limit

NO_PURCHASE: frozenset[Change] = frozenset(("lower base", "higher base", "clean", "cooler"))
SEEN = 0.005
"""A change of power under this share is not worth a figure."""
WORTH_POWER = 0.02
MAY_BE_NEEDLESS: tuple[Change, ...] = ("pump", "feed")


def what_first(subject: Subject) -> Forms | None:
    """The way out where something is wrong, else what the next goal takes, and what would be money for nothing."""
    if not subject.has_runs:
        return None
    if not subject.has_pump:
        return _without_a_pump(subject)
    if subject.figures.verdict.limits:
        return _way_out(subject)
    return _for_the_next_goal(subject)


def _without_a_pump(subject: Subject) -> Forms | None:
    """Injectors to look for, and next year's pump: what one takes to the shop beside the first line."""
    asked = []
    injectors = subject.figures.injectors
    if (
        subject.session.injectors is None
        and injectors is not None
        and injectors.smallest_rating_m3_s is not None
    ):
        each = subject.numbers.figure("injector", injectors.smallest_rating_m3_s)
        asked.append(f"Injectors: {injectors.count} of {each} or more.")
    following = subject.next
    if following is not None:
        asked.append(f"{_goal(subject, following)}: {_pump_wanted(subject, following)}.")
    if not asked:
        return None
    shorter = asked[0]
    if following is not None and len(asked) == 1:
        shorter = f"{_goal_in_short(subject, following)}: {_pump_wanted(subject, following)}."
    return line(" ".join(asked), asked[-1], shorter)


def _goal(subject: Subject, following: NextFigures) -> str:
    return f"For {next_name(subject, following)}"


def _goal_in_short(subject: Subject, following: NextFigures) -> str:
    return f"For {subject.numbers.figure('power', following.crank_power_W)}"


def _pump_wanted(subject: Subject, following: NextFigures) -> str:
    return f"a pump of {point_then(subject, following)}"


def _way_out(subject: Subject) -> Forms:
    figures = subject.figures
    if not figures.changes:
        return _needed(subject, limit_named_first(subject))
    steps = _in_order(subject, steps_out(figures))
    return _steps(subject, steps, not_needed(subject)) if steps else _no_way_out(subject)


def _in_order(subject: Subject, steps: Sequence[ChangeFigures]) -> list[ChangeFigures]:
    """What helps the limit that the first line names comes first; of low volts at the pump, thicker wire."""
    limit = limit_named_first(subject)
    first = most_helps(subject, limit, steps)
    volts = subject.pick.pump_volts_V
    if limit == "pump" and volts is not None and volts < ASSUMED_VOLTS:
        first = next((step for step in steps if step.change == "wire"), first)
    return sorted(steps, key=lambda step: step is not first)


def _no_way_out(subject: Subject) -> Forms:
    """What most helps the part that the first line names; where no change does, what that part needs."""
    limit = limit_named_first(subject)
    best = most_helps(subject, limit, subject.figures.changes)
    if best is None:
        return _needed(subject, limit)
    helps = f"most helps: {step_noun(subject, best)}{_power(subject, best)}"
    return line(f"No change cures it, nor several together; {helps}.", f"No change is enough; {helps}.")


def _needed(subject: Subject, limit: Limit) -> Forms:
    what, do = what_and_do(subject, limit)
    sentence = do or what
    shorter = sentence.partition(". ")[0].rstrip(".")
    return line(sentence, f"{shorter}.", f"Needed: {cure(limit)}.")


def most_helps(subject: Subject, limit: Limit, changes: Sequence[ChangeFigures]) -> ChangeFigures | None:
    """The change that cures a limit, else, of the pump, the one that leaves most to spare; None where none does."""
    least = subject.pick.least
    cured = next((change for change in changes if limit in change.cures), None)
    if cured is not None or limit != "pump" or least is None:
        return cured
    best = max(changes, key=lambda change: change.margin, default=None)
    return best if best is not None and best.margin >= least.margin + WORTH_MARGIN else None


def _steps(
    subject: Subject,
    chosen: Sequence[ChangeFigures],
    needless: Sequence[str],
    following: NextFigures | None = None,
) -> Forms:
    """The first change with what it buys, the others behind it, and what is not needed."""
    first, *others = chosen
    verb = "Do" if first.change in NO_PURCHASE else "Buy"
    if following is None:
        goal = shorter_goal = ""
    else:
        goal = f" for {next_name(subject, following)}"
        shorter_goal = f" for {next_name(subject, following, whole=False)}"
    noun = step_noun(subject, first)
    lead = f"{verb} first{goal}: {noun}"
    short = "" if following is None else _short_then(subject, following)
    buys = "" if following else _power(subject, first)
    more = "" if following else _besides(subject, chosen)
    both = [_or_else(subject, change, following) for change in chosen]
    once = f", {both[0]}" if both[0] else ""
    nouns = [
        f"{step_noun(subject, change)}{f' ({or_larger})' if or_larger else ''}"
        for change, or_larger in zip(others, both[1:], strict=True)
    ]
    then = f" Then {listed(nouns)}." if others else ""
    carries = _larger_filter(subject, chosen)
    rest = f" Not needed: {', '.join(needless)}." if needless else ""
    return line(
        f"{lead}{short}{buys}{once}.{then}{carries}{more}{rest}",
        f"{lead}{short}{buys}{once}.{then}{more}{rest}",
        f"{lead}{short}{buys}{once}.{then}{more}",
        f"{lead}{once}.{then}{more}",
        f"{lead}{buys}{once}.{then}",
        f"{lead}{once}.{then}",
        *_whole_in_short(subject, f"{verb} first{goal}", chosen, once),
        f"{lead}{buys}{once}.",
        f"{lead}{once}.",
        f"{lead}.",
        f"{verb} first{shorter_goal}: {noun}.",
    )


def _larger_filter(subject: Subject, chosen: Sequence[ChangeFigures]) -> str:
    """What is no limit in power, but is bought all the same: a filter that is rated for less than flows through it."""
    flow_m3_s = subject.figures.demand.volume_flow_m3_s
    bought = any(change.change == "filters" for change in chosen)
    if bought or not rated_below(subject, "filter", flow_m3_s):
        return ""
    return f" And a filter for {subject.numbers.figure('flow', flow_m3_s)} or more."


def _whole_in_short(
    subject: Subject, lead: str, chosen: Sequence[ChangeFigures], once: str
) -> tuple[str, ...]:
    """Several parts in the fewest words: all of them before what the first of them buys."""
    first, *others = (change_noun(subject, change) for change in chosen)
    if not others:
        return ()
    then = f"Then {listed(others)}."
    cheaper = [_or_a_wire(subject, change) for change in chosen[1:]]
    either = f"Then {listed([f'{noun}{other}' for noun, other in zip(others, cheaper, strict=True)])}."
    return (
        *([f"{lead}: {first}{once}. {either}", f"{lead}: {first}. {either}"] if any(cheaper) else ()),
        f"{lead}: {first}{once}. {then}",
        f"{lead}: {first}. {then}",
    )


def _or_a_wire(subject: Subject, change: ChangeFigures) -> str:
    """What does as much as the pump today, in the fewest words: " or a wire for each"."""
    other = subject.figures.in_place_of_pump
    if change.change != "pump" or other is None:
        return ""
    return f" or {'a wire for each' if other.change == 'circuits' else change_noun(subject, other)}"


def _short_then(subject: Subject, following: NextFigures) -> str:
    """How much the pump lacks at the next goal: " (8 % to spare there, you want 15 %)"."""
    if "pump" not in following.limits or following.margin is None:
        return ""
    if following.margin < 0.0:
        return f" ({subject.numbers.figure('percent', -following.margin, 0.0)} short there)"
    spare, wanted = subject.numbers.pair("percent", following.margin, subject.session.goal.reserve)
    return f" ({spare} to spare there, you want {wanted})"


def _besides(subject: Subject, chosen: Sequence[ChangeFigures]) -> str:
    """What the next goal needs besides what is bought for this one: " For 350 hp: a second pump."."""
    following = subject.next
    if following is None or not following.limits:
        return ""
    others = _others_then(subject, following, {change.change for change in chosen})
    return f" {_goal_in_short(subject, following)}: {listed(others)}." if others else ""


def _or_else(subject: Subject, change: ChangeFigures, following: NextFigures | None) -> str:
    """What may be bought in place of a step: of a pump the wire or line that does as much, where one does."""
    if change.change == "pump":
        other = in_place_of_pump_noun(subject, subject.figures if following is None else following)
        if not other:
            return ""
        also_then = following is None and "pump" in way_out(subject.next)
        return f"or, {'for this goal alone' if also_then else 'in its place'}, {other}"
    return "" if following else _once_for_both(subject, change)


def _once_for_both(subject: Subject, change: ChangeFigures) -> str:
    """Injectors that do the next goal too, so that they are bought once: "or 1150 for 350 hp too"."""
    following = subject.next
    rating = None if following is None or not following.limits else _rating_then(following, change)
    if following is None or rating is None:
        return ""
    power = subject.numbers.figure("power", following.crank_power_W)
    return f"or {subject.numbers.number('injector', rating)} for {power} too"


def _rating_then(following: NextFigures, bought: ChangeFigures) -> float | None:
    """What injectors that are bought today have to be rated at for the next goal, where that is more."""
    today = bought.rated_flow_m3_s
    sold = next((each.rated_flow_m3_s for each in following.changes if each.change == "injectors"), None)
    wanted = sold or following.injector_rating_m3_s
    return wanted if today is not None and wanted is not None and wanted > today else None


def _others_then(subject: Subject, following: NextFigures, bought: Collection[Change]) -> list[str]:
    """What else the next goal needs, by its way out, else by what is wrong then and not today."""
    steps = steps_out(following)
    if steps:
        return [step_noun(subject, change) for change in steps if change.change not in bought]
    fresh = [limit for limit in following.limits if limit not in subject.figures.verdict.limits]
    return list(
        dict.fromkeys(_pump_wanted(subject, following) if limit == "pump" else cure(limit) for limit in fresh)
    )


def _power(subject: Subject, change: ChangeFigures) -> str:
    """How far the change takes the power, where it does: "(261 to 368 hp)"; not where it is there against boiling."""
    today = good_for_w(subject)
    if today is None or "vapour" in change.cures or change.max_power_W <= today * (1.0 + SEEN):
        return ""
    goal = subject.figures.demand.crank_power_W
    before = subject.numbers.number("power", today, goal)
    return f" ({before} to {subject.numbers.figure('power', change.max_power_W, goal)})"


def _for_the_next_goal(subject: Subject) -> Forms | None:
    following, needless = subject.next, not_needed(subject)
    rest = f" Not needed: {', '.join(needless)}." if needless else ""
    if following is None:
        nothing = "Nothing to buy for this goal."
        return line(f"{nothing}{rest}", nothing)
    if following.works:
        nothing = f"Nothing to buy, not for the next {next_name(subject, following)} either."
        power = subject.numbers.figure("power", following.crank_power_W)
        return line(f"{nothing}{rest}", nothing, f"Nothing to buy, not for the next {power} either.")
    steps = steps_out(following)
    if steps:
        return _steps(subject, steps, needless, following)
    wanted = [_pump_wanted(subject, following)] if "pump" in following.limits else []
    wanted += [cure(limit) for limit in following.limits if limit != "pump"]
    needs = f"{_goal(subject, following)}: {listed(list(dict.fromkeys(wanted)))}."
    return line(f"{needs}{rest}", needs, f"{_goal_in_short(subject, following)}: {wanted[0]}.")


def not_needed(subject: Subject) -> list[str]:
    """A second pump and a larger line, where they cure nothing today nor at the next goal and bring no power."""
    today = good_for_w(subject)
    if today is None:
        return []
    following = subject.next
    then = {} if following is None else {change.change: change for change in following.changes}
    needed = {*way_out(following), *way_out(subject.figures)}
    found = {change.change: change for change in subject.figures.changes}
    return [
        change_noun(subject, found[name])
        for name in MAY_BE_NEEDLESS
        if name in found
        and name not in needed
        and not found[name].cures
        and not (name in then and then[name].cures)
        and found[name].max_power_W < today * (1.0 + WORTH_POWER)
        and not (name == "feed" and _a_larger_feed_cures(subject))
    ]


def _a_larger_feed_cures(subject: Subject) -> bool:
    """Whether a feed above the next size cures what is wrong at the pick, so that no larger one is needless."""
    pick = subject.pick
    larger = (row for row in subject.figures.sizes if row.bore_m > pick.bore_m)
    return any(set(pick.limits) - set(row.limits) for row in larger)
