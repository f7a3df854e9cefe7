"""What to buy: a list to take to a shop, today's and the next goal's, without what is on the car already."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import TYPE_CHECKING

from fuelwiz.advice.answer.what_first import not_needed
from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Paragraph, Table, row
from fuelwiz.advice.cautions import alcohol_may_be_in
from fuelwiz.advice.changes import ORDINALS, in_place_of_pump_noun
from fuelwiz.advice.next_words import boost_is_assumed, left_across_then, next_name
from fuelwiz.advice.part_words import (
    filter_assumed,
    filter_in_words,
    injectors_in_words,
    pump_in_words,
    rating_wanted,
    regulator_in_words,
    strainer_assumed,
    strainer_in_words,
)
from fuelwiz.advice.phrases import both_units, dead_head_at_most, dead_head_guessed
from fuelwiz.advice.sections.headings import WHAT_TO_BUY
from fuelwiz.advice.sections.on_the_car import (
    by_the_way_out,
    fails_today,
    of_the_way_out,
    on_the_car,
    still_to_buy,
)
from fuelwiz.advice.sections.path_runs import OPEN_ENDS, run_name
from fuelwiz.advice.sections.purchase import BY_CHANGE, ENOUGH, YOURS, Purchase
from fuelwiz.advice.sections.shopping_electrics import electrics
from fuelwiz.advice.sections.shopping_prices import Priced, row_price, sum_sentences
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject, capitalized, listed
from fuelwiz.advice.ways import steps_out, way_out
from fuelwiz.session import Run, given
from fuelwiz.sizing.thresholds import RATED_AT_PA
from fuelwiz.terms import FITTINGS

if TYPE_CHECKING:
    from fuelwiz.advice.result import Words
    from fuelwiz.options.part_prices import PartPrices
    from fuelwiz.sizing.figures import NextFigures
    from fuelwiz.sizing.vocabulary import Change, Limit


def shopping(subject: Subject, _words: Words) -> Iterator[Block]:
    """The list in the order of what to do first, then what is on the car and what is not needed."""
    yield Heading(WHAT_TO_BUY)
    if not subject.has_runs:
        yield Paragraph(not_known_sentence(subject, "line"))
        return
    following = subject.next
    columns, rest = [Column("Part", whole=True), Column("This goal")], []
    if following is not None:
        columns.append(Column(f"Next, {next_name(subject, following, whole=False)}"))
    everything = [by_the_way_out(subject, item) for item in purchases(subject)]
    rows = still_to_buy(subject, _in_order(subject, everything))
    items = rows if subject.prices is None else [_not_there(subject.prices, item) for item in rows]
    shown = tuple(_row(item, with_next=following is not None) for item in items)
    if subject.prices is not None:
        columns.append(Column("Costs", subject.prices.currency, figures=True))
        priced = [_priced(subject, subject.prices, item) for item in rows]
        shown = tuple((*cells, *row(cost.text)) for cells, cost in zip(shown, priced, strict=True))
        rest.append(sum_sentences(priced, subject.prices.currency))
    yield Table(tuple(columns), shown, boxes=True)
    enough = on_the_car(subject) - {item.part for item in everything if fails_today(subject, item)}
    if enough:
        rest.append(f"On the car already: {listed(sorted(enough))}.")
    needless = not_needed(subject)
    if needless:
        rest.append(f"Do not buy{_but_for_bad_days(subject, needless)}: {listed(needless)}.")
    rest += _with_the_next(subject)
    if rest:
        yield Paragraph(" ".join(rest))


def _but_for_bad_days(subject: Subject, needless: Sequence[str]) -> str:
    """That one more pump is needless today alone, where there is a day on which those there are do not bring enough."""
    dead = subject.case("one pump dead")
    days = [case.margin for case in subject.figures.stress if case is not dead]
    short = any(margin is not None and margin < 0.0 for margin in days)
    return ", bad days apart" if short and any("pump" in noun for noun in needless) else ""


def _with_the_next(subject: Subject) -> list[str]:
    """What the list takes for granted: the boost of the next goal, and that one more pump is off at idle."""
    pump, ways = subject.session.pump, (way_out(subject.figures), way_out(subject.next))
    boost = boost_is_assumed(subject)
    if pump is None or not any("pump" in way for way in ways):
        return ["The next goal's boost is assumed, in step with power."] if boost else []
    off = f"a {ORDINALS[min(pump.count + 1, 6)]} pump stays off at idle."
    return [f"Boost then is assumed; {off}" if boost else capitalized(off)]


def _not_there(prices: PartPrices, item: Purchase) -> Purchase:
    """A row of a part that is entered but has to be bought, by its price."""
    return item if prices.has(item.part) else item._replace(today=item.today.removeprefix(YOURS))


def _priced(subject: Subject, prices: PartPrices, item: Purchase) -> Priced:
    """A row with what it costs."""
    sizes = {"feed line": _feed_size(subject), "return line": _return_size(subject)}
    return row_price(subject, prices, item.part, sizes.get(item.part, ""), passes=item.passes)


def _row(item: Purchase, *, with_next: bool) -> tuple[Cell, ...]:
    return row(item.part, item.today, item.then) if with_next else row(item.part, item.today)


def _in_order(subject: Subject, rows: list[Purchase]) -> list[Purchase]:
    """What the way out names first, the rest as one meets it on the fuel's way."""
    first = [BY_CHANGE[change] for change in way_out(subject.figures) if change in BY_CHANGE]
    return sorted(rows, key=lambda item: item.part not in first)


def purchases(subject: Subject) -> Iterator[Purchase]:
    """Every row, from the tank to the rail and back."""
    yield from _pump(subject)
    yield from _strainer_and_filter(subject)
    yield from _feed(subject)
    yield from _regulator_and_return(subject)
    yield from _injectors(subject)
    yield from electrics(subject)
    yield from _safety(subject)


def _pump(subject: Subject) -> Iterator[Purchase]:
    target, following = subject.figures.pump_target, subject.next
    assert target is not None
    hardest = target.hardest
    flow, rise = target.flow_m3_s, target.rise_Pa
    if hardest is not None and hardest.at is not None:
        flow, rise = hardest.flow_m3_s, hardest.rise_Pa
    at = "at the volts it really gets"
    volts = subject.pick.pump_volts_V
    if volts is not None:
        at = f"at {subject.numbers.figure('volts', volts)}"
    then = ""
    if following is not None:
        then = _flow_at(subject, following.target_flow_m3_s, following.target_rise_Pa)
        then = _one_more_or(of_the_way_out(subject, "pump", following), then)
    pump = subject.session.pump
    more = of_the_way_out(subject, "pump", subject.figures)
    wanted = _one_more_or(more, f"{_flow_at(subject, flow, rise)}, {at}")
    other = in_place_of_pump_noun(subject, subject.figures) if more else ""
    wanted += f"; or, in its place, {other}" if other else ""
    mine = pump is not None and subject.has_pump and _pump_does(subject)
    if mine and following is not None and _does(following.limits, way_out(following)):
        then = ENOUGH
    yield Purchase("pump", f"{YOURS}{pump_in_words(pump)}" if pump is not None and mine else wanted, then)
    if pump is not None and pump.count > 1 and pump.arrangement == "parallel":
        yield Purchase("check valves", f"{pump.count}, one a pump")


def _pump_does(subject: Subject) -> bool:
    """Whether the pump is enough for this goal."""
    return _does(subject.figures.verdict.limits, way_out(subject.figures))


def _does(limits: Collection[Limit], way: Collection[Change]) -> bool:
    """Whether the pump is not to blame, or the way out does without another: a larger line may be all it lacks."""
    to_blame = {"pump", "relief", "vapour"}.intersection(limits)
    return not to_blame or (bool(way) and "pump" not in way)


def _one_more_or(more: str, pump: str) -> str:
    """A pump by its flow, behind one more of those that there are where that is the way out."""
    return f"{more}, or one of {pump}" if more else pump


def _flow_at(subject: Subject, flow_m3_s: float, rise_pa: float) -> str:
    return f"{both_units(subject, 'flow', flow_m3_s)} at {both_units(subject, 'pressure', rise_pa)}"


def _through(subject: Subject) -> float:
    """What filter and strainer have to carry: all that the pumps give where the regulator sits at the rail."""
    capacity = subject.pick.capacity_m3_s
    return capacity if subject.at_rail and capacity is not None else subject.figures.demand.target_flow_m3_s


def _through_then(subject: Subject, following: NextFigures) -> float:
    """The same at the next goal; with one more pump, where that is the way out, all that they give together."""
    target = following.target_flow_m3_s
    one_more = next((one for one in steps_out(following) if one.change == "pump"), None)
    if one_more is None or not subject.at_rail:
        return target
    return max(target, target * (1.0 + one_more.margin) / (1.0 + subject.session.goal.reserve))


def _strainer_and_filter(subject: Subject) -> Iterator[Purchase]:
    following = subject.next
    least = max(_through(subject), subject.figures.demand.target_flow_m3_s)
    most = least if following is None else max(least, _through_then(subject, following))
    inlet, pump = subject.session.inlet, subject.session.pump
    each = 1 if pump is None or pump.arrangement == "series" else pump.count
    if inlet is None or inlet.strainer is not None:
        strainer = None if inlet is None else inlet.strainer
        share = least if strainer is not None and strainer.carries == "all" else least / each
        many = " each" if share < least else ""
        entered = None if strainer_assumed(subject) else strainer
        wanted = f"{_at_least(subject, share)}{many}"
        if entered is not None and entered.rated_flow >= share:
            wanted = YOURS + strainer_in_words(subject, entered)
        yield Purchase("strainer", wanted)
    filters = subject.session.feed.filter
    passes = bool(filters) and not any(filter_assumed(subject, at) for at in range(len(filters)))
    passes = passes and all(item.rated_flow >= least for item in filters)
    mine = "; ".join(filter_in_words(subject, item) for item in filters)
    later = "" if following is None else _at_least(subject, most)
    known = following is not None and ("pump" not in following.limits or bool(way_out(following)))
    if known and passes and all(item.rated_flow >= most for item in filters):
        later = ENOUGH
    yield Purchase("filter", f"{YOURS}{mine}" if passes else f"{_at_least(subject, least)}, 10 micron", later)


def _at_least(subject: Subject, flow_m3_s: float) -> str:
    return f"for {subject.numbers.figure('flow', flow_m3_s)} or more"


def _feed(subject: Subject) -> Iterator[Purchase]:
    following, size = subject.next, _feed_size(subject)
    then = "" if following is None or following.recommended is None else following.recommended
    yield Purchase("feed line", "; ".join(_hoses(subject, subject.session.feed.run, size)), then)


def _feed_size(subject: Subject) -> str:
    """The chosen size, unless it is refused and another one fits."""
    figures = subject.figures
    chosen = figures.row(figures.chosen)
    refused = chosen is not None and bool(chosen.limits) and subject.is_too_small(chosen)
    if refused and figures.line_to_fit is not None:
        return figures.line_to_fit
    return figures.chosen or figures.line_to_fit or figures.verdict.size


def _hoses(subject: Subject, runs: Sequence[Run], size: str) -> Iterator[str]:
    """Hose by size and kind: its length in all, and its ends."""
    kinds: dict[str, list[Run]] = {}
    for run in runs:
        kinds.setdefault(run_name(subject, run, size), []).append(run)
    for name, same in kinds.items():
        length = subject.numbers.limit("length", sum(run.length * run.side_by_side for run in same))
        ends: dict[str, int] = {}
        for run in same:
            for kind, count in run.fittings.items():
                if count and kind not in OPEN_ENDS:
                    ends[FITTINGS[kind]] = ends.get(FITTINGS[kind], 0) + count * run.side_by_side
        end_counts = ", ".join(f"{count} {kind}" for kind, count in ends.items())
        yield f"{name} {length}{f', ends: {end_counts}' if end_counts else ''}"


def _regulator_and_return(subject: Subject) -> Iterator[Purchase]:
    session, line, numbers = subject.session, subject.figures.return_line, subject.numbers
    if session.pressure.regulator == "none":
        return
    base = numbers.figure("pressure", session.pressure.base)
    hose = ", manifold hose" if session.pressure.reference == "manifold" else ""
    wanted = f"{base}{hose}"
    if line is not None:
        flow = numbers.figure("flow", line.flow_m3_s)
        least = numbers.figure("pressure", max(0.0, 0.25 * subject.figures.pressure.idle_rail_Pa))
        wanted = f"{wanted}; {least} or less wide open at {flow}"
    entered = session.return_line if given(session, "return_line.regulator") else None
    if entered is not None and line is not None and line.at_ease:
        wanted = f"{YOURS}{base}, {regulator_in_words(subject, entered.regulator)}"
    yield Purchase("regulator", wanted)
    if session.return_line is not None and session.return_line.run:
        runs = _hoses(subject, session.return_line.run, _return_size(subject))
        yield Purchase("return line", "; ".join(runs))


def _return_size(subject: Subject) -> str:
    """Today's size where it is at ease, else the smallest that is."""
    line = subject.figures.return_line
    if line is None:
        return ""
    return line.size if line.at_ease else line.smallest_at_ease or line.size


def _injectors(subject: Subject) -> Iterator[Purchase]:
    figures, following = subject.figures.injectors, subject.next
    injectors = subject.session.injectors
    if figures is None or figures.smallest_rating_m3_s is None:
        return
    at = subject.numbers.figure("pressure", RATED_AT_PA if injectors is None else injectors.rated_pressure)
    each = rating_wanted(subject, figures.smallest_rating_m3_s, subject.figures.changes)
    then = ""
    if following is not None and following.injector_rating_m3_s is not None:
        each_then = rating_wanted(subject, following.injector_rating_m3_s, following.changes)
        then = f"{each_then}{_counting_boost(subject)}"
    wanted = f"{figures.count} of {each}, rated at {at}"
    if injectors is not None and figures.within_limit:
        wanted = YOURS + injectors_in_words(subject, injectors, figures.count)
        if then and following is not None and "injectors" not in following.limits:
            then = ENOUGH
    yield Purchase("injectors", wanted, then)


def _counting_boost(subject: Subject) -> str:
    """That the next goal's injectors are sized for the pressure that its boost leaves across them."""
    left = left_across_then(subject)
    if left is None:
        return ""
    pressure = subject.numbers.figure("pressure", left, subject.session.pressure.base)
    return f"; counts the {pressure} that boost leaves across them"


def _safety(subject: Subject) -> Iterator[Purchase]:
    pump = subject.figures.pump
    alcohol = ", and for alcohol" if alcohol_may_be_in(subject) else ""
    if pump is None or pump.dead_head_Pa is None:
        rise = subject.figures.pump_target
        if rise is None:
            return
        yield Purchase("ratings", f"above what the pump makes with the line blocked{alcohol}")
        return
    guessed = dead_head_guessed(subject)
    most, other = (
        dead_head_at_most(numbers, pump.dead_head_Pa, guessed=guessed)
        for numbers in (subject.numbers, subject.numbers.other)
    )
    yield Purchase("ratings", f"above {'about ' if guessed else ''}{most} ({other}){alcohol}")
