"""What one change buys, today and for the next goal: those that help first, the best on top."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from fuelwiz.advice.answer.how_far import good_for_w
from fuelwiz.advice.answer.what_first import WORTH_POWER
from fuelwiz.advice.blocks import Block, Column, Heading, Pairs, Paragraph, Table, row
from fuelwiz.advice.changes import change_noun, change_words, step_noun
from fuelwiz.advice.guesses import keeps_up
from fuelwiz.advice.part_words import rated_below
from fuelwiz.advice.sections.headings import CHANGES
from fuelwiz.advice.sections.unknown import slow_part_unknown
from fuelwiz.advice.subject import Subject, listed
from fuelwiz.advice.ways import steps_out
from fuelwiz.sizing.thresholds import WORTH_MARGIN

if TYPE_CHECKING:
    from fuelwiz.advice.result import Words
    from fuelwiz.sizing.figures import Figures, NextFigures
    from fuelwiz.sizing.slow_figures import ChangeFigures
    from fuelwiz.sizing.vocabulary import Change, Limit

HELPS, HARDLY = "One change", "Hardly helps"


class ChangeRow(NamedTuple):
    """One change: what it is, in full and in a few words, and what it comes to; None where it does not apply."""

    change: Change
    what: str
    short: str
    power: str | None
    spare: str | None
    works: bool | None
    works_next: bool | None
    helps: bool


def changes(subject: Subject, _words: Words) -> Iterator[Block]:
    """The way out, and each change with what it comes to."""
    yield Heading(CHANGES)
    rows = change_rows(subject)
    if not rows:
        yield Paragraph(slow_part_unknown(subject))
        return
    for title, group in (
        (HELPS, [one for one in rows if one.helps]),
        (HARDLY, [one for one in rows if not one.helps]),
    ):
        if group:
            columns = (Column(title), *change_columns(subject))
            yield Table(columns, tuple(row(one.what, *change_cells(subject, one)) for one in group))
    yield Pairs(ways_out(subject))


def change_columns(subject: Subject) -> tuple[Column, ...]:
    """The heads of what a change comes to; that of the next goal only where there is one."""
    numbers, following = subject.numbers, subject.next
    columns = (
        Column("Good for", numbers.unit("power"), figures=True, short=numbers.unit("power")),
        Column("Spare", "%", figures=True, short="%"),
        Column("Works", whole=True),
    )
    if following is None:
        return columns
    goal = numbers.figure("power", following.crank_power_W)
    return (*columns, Column(f"For {goal}", whole=True, short=goal))


def change_cells(subject: Subject, one: ChangeRow) -> tuple[str | None, ...]:
    """What a change comes to, a text for each of the columns."""
    cells = (one.power, one.spare, _yes_or_no(one.works))
    return cells if subject.next is None else (*cells, _yes_or_no(one.works_next))


def _yes_or_no(works: bool | None) -> str | None:
    return None if works is None else "yes" if works else "no"


def change_rows(subject: Subject) -> tuple[ChangeRow, ...]:
    """Every change that applies today or at the next goal: those that help first.

    Each group by what is cured on balance today, then at the next goal, then best first as it was found.
    """
    today, then = _today(subject), _then(subject)
    names = [*today, *(name for name in then if name not in today)]
    found = [(today.get(name), then.get(name)) for name in names]
    ranked = sorted(found, key=lambda pair: tuple(-_on_balance(one) for one in pair))
    rows = [_row(subject, *pair) for pair in ranked]
    return tuple(sorted(rows, key=lambda one: not one.helps))


def _today(subject: Subject) -> dict[Change, ChangeFigures]:
    return {one.change: one for one in subject.figures.changes}


def _then(subject: Subject) -> dict[Change, ChangeFigures]:
    following = subject.next
    return {} if following is None else {one.change: one for one in following.changes}


def _row(subject: Subject, today: ChangeFigures | None, then: ChangeFigures | None) -> ChangeRow:
    one = today or then
    assert one is not None
    (what,) = change_words(subject, (one,))
    numbers, goal, reserve = (
        subject.numbers,
        subject.figures.demand.crank_power_W,
        subject.session.goal.reserve,
    )
    return ChangeRow(
        one.change,
        what,
        change_noun(subject, one),
        None if today is None else numbers.number("power", today.max_power_W, goal),
        None if today is None else numbers.number("percent", today.margin, 0.0, reserve),
        None if today is None else today.works,
        None if then is None else then.works,
        (today is not None and _helps(subject, today)) or (then is not None and _on_balance(then) > 0),
    )


def _on_balance(one: ChangeFigures | None) -> int:
    """How many more limits go than come."""
    return 0 if one is None else len(one.cures) - len(one.brings)


def _helps(subject: Subject, one: ChangeFigures) -> bool:
    """Whether a change cures more than it brings, adds power or margin that is worth it, or ends what is overloaded."""
    if _on_balance(one) != 0:
        return _on_balance(one) > 0
    if one.change == "filters" and rated_below(subject, "filter", subject.figures.demand.volume_flow_m3_s):
        return True
    power, margin = good_for_w(subject), subject.pick.least.margin if subject.pick.least else None
    more_power = power is not None and one.max_power_W >= power * (1.0 + WORTH_POWER)
    more_margin = margin is not None and one.margin >= margin + WORTH_MARGIN
    return more_power or more_margin


def change_explained(subject: Subject, change: Change) -> tuple[tuple[str, str], ...]:
    """What a change is and does, in labeled lines."""
    today, then = _today(subject).get(change), _then(subject).get(change)
    one = today or then
    assert one is not None
    lines = [("what", change_words(subject, (one,))[0])]
    if today is not None:
        lines.append(("power", _power(subject, today)))
        lines += _cured(subject, today)
    following = subject.next
    if then is not None and following is not None:
        at = subject.numbers.figure("power", following.crank_power_W)
        lines += [(label, f"at {at}: {text}") for label, text in _cured(subject, then)]
    return tuple(lines)


def _power(subject: Subject, one: ChangeFigures) -> str:
    numbers, goal, before = subject.numbers, subject.figures.demand.crank_power_W, good_for_w(subject)
    after = numbers.figure("power", one.max_power_W, goal)
    if before is None:
        return f"good for {after}"
    if numbers.figure("power", before, goal) == after:
        return f"as today, good for {after}"
    return f"from {numbers.number('power', before, goal)} to {after}"


def _cured(subject: Subject, one: ChangeFigures) -> list[tuple[str, str]]:
    lines = []
    if one.cures:
        lines.append(("cures", _wrongs(subject, one.cures)))
    if one.brings:
        lines.append(("brings", _wrongs(subject, one.brings)))
    return lines


def _wrongs(subject: Subject, limits: tuple[Limit, ...]) -> str:
    return listed([keeps_up(subject, limit).fails for limit in limits])


def ways_out(subject: Subject) -> tuple[tuple[str, str], ...]:
    """The fewest changes that leave nothing wrong, today and at the next goal, where anything is."""
    figures, following = subject.figures, subject.next
    ways = []
    if figures.verdict.limits:
        ways.append(("way out", _together(subject, figures)))
    if following is not None and following.limits:
        at = subject.numbers.figure("power", following.crank_power_W)
        ways.append((f"for {at}", _together(subject, following)))
    return tuple(ways)


def _together(subject: Subject, found: Figures | NextFigures) -> str:
    if not found.changes:
        return slow_part_unknown(subject)
    steps = steps_out(found)
    if not steps:
        return "none of these is enough, nor several together"
    return listed([step_noun(subject, step) for step in steps])
