"""What one change buys, and the fewest changes that leave nothing wrong: the way out."""

from __future__ import annotations

from collections.abc import Generator, Sequence
from itertools import combinations

from fuelwiz.record import record
from fuelwiz.sizing.ceilings import solved_ceiling_w
from fuelwiz.sizing.single_changes import SingleChange, Variant, single_changes
from fuelwiz.sizing.size_rows import least, limits_at_any_point
from fuelwiz.sizing.slow_figures import ChangeFigures
from fuelwiz.sizing.verdict import BuildVerdict, judge_sized
from fuelwiz.sizing.vocabulary import CHANGES, LIMITS, Change, Limit

MOST_AT_ONCE = 3
FIRST: tuple[Change, ...] = ("pump",)
LAST: tuple[Change, ...] = ("circuits",)
"""In a set the pump comes before what is picked or counted by it."""
AGAINST_EACH_OTHER = {"lower base", "higher base"}
SLICE = 4  # sets between two pauses
SAME_MARGIN = 6  # decimals


@record
class ChangesFound:
    """Every change that applies, best first, and the way out; None where there is none or nothing is wrong."""

    changes: tuple[ChangeFigures, ...] = ()
    way_out: tuple[Change, ...] | None = None


def changes_in_steps(today: Variant) -> Generator[None, None, ChangesFound]:
    """What changes come to, with a pause after each little piece of work; nothing without a pump or a feed."""
    sized = today.sized()
    if not sized.system.solvable:
        return ChangesFound()
    limits = judge_sized(sized, today.return_pick).limits
    singles = single_changes(today, sized, limits)
    figures: list[ChangeFigures] = []
    for single in singles:
        figures.append(_figures(single, today, limits))
        yield
    way_out = None
    if limits:
        way_out = yield from _way_out(today, singles, figures)
    return ChangesFound(tuple(sorted(figures, key=_rank)), way_out)


def _figures(single: SingleChange, today: Variant, limits: tuple[Limit, ...]) -> ChangeFigures:
    variant = single.made(today)
    sized = variant.sized()
    judgment = judge_sized(sized, variant.return_pick)
    ceiling = solved_ceiling_w(sized)
    assert judgment.margin is not None and ceiling is not None
    return ChangeFigures(
        change=single.change,
        margin=judgment.margin,
        works=not judgment.limits,
        cures=tuple(limit for limit in LIMITS if limit in limits and limit not in judgment.limits),
        brings=tuple(limit for limit in LIMITS if limit in judgment.limits and limit not in limits),
        max_power_W=ceiling,
        rated_flow_m3_s=single.rated_flow_m3_s,
    )


def _rank(figures: ChangeFigures) -> tuple[bool, int, float, float, int]:
    """Best first: what works, what cures more than it brings, more power, more margin, the order of the list."""
    return (
        not figures.works,
        len(figures.brings) - len(figures.cures),
        -round(figures.max_power_W),
        -round(figures.margin, SAME_MARGIN),
        CHANGES.index(figures.change),
    )


def _way_out(
    today: Variant, singles: Sequence[SingleChange], figures: Sequence[ChangeFigures]
) -> Generator[None, None, tuple[Change, ...] | None]:
    """The smallest set that leaves no limit, of equals the one with most margin, of those the first."""
    alone = [found for found in figures if found.works]
    if alone:
        return (max(alone, key=lambda found: round(found.margin, SAME_MARGIN)).change,)
    for count in range(2, MOST_AT_ONCE + 1):
        best: tuple[float, tuple[Change, ...]] | None = None
        for number, together in enumerate(combinations(singles, count)):
            names = tuple(single.change for single in together)
            if not set(names) >= AGAINST_EACH_OTHER:
                margin = margin_if_it_works(with_all(today, together))
                if margin is not None and (best is None or round(margin, SAME_MARGIN) > best[0]):
                    best = round(margin, SAME_MARGIN), names
            if number % SLICE == 0:
                yield
        if best is not None:
            return best[1]
    return None


def with_all(today: Variant, together: Sequence[SingleChange]) -> Variant:
    """A build with several changes made."""
    order = sorted(together, key=lambda single: (single.change not in FIRST, single.change in LAST))
    for single in order:
        today = single.made(today)
    return today


def margin_if_it_works(variant: Variant) -> float | None:
    """The least margin of a build that has no limit; None for one that has, found out as soon as may be."""
    sized = variant.sized()
    verdict = BuildVerdict(sized)
    if next(verdict.each_limit(variant.return_pick), None) is not None or limits_at_any_point(sized):
        return None
    found = least(sized)
    return None if found is None else found.margin
