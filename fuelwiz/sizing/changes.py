"""What one change buys, and the fewest changes that leave nothing wrong: the way out."""

from __future__ import annotations

from collections.abc import Generator, Sequence
from itertools import combinations

from fuelwiz.record import record
from fuelwiz.sizing.change_trials import change_figures, margin_if_it_works, with_all
from fuelwiz.sizing.larger_steps import larger_steps
from fuelwiz.sizing.single_changes import SingleChange, Variant, larger_feeds, single_changes
from fuelwiz.sizing.slow_figures import ChangeFigures
from fuelwiz.sizing.verdict import judge_sized
from fuelwiz.sizing.vocabulary import CHANGES, Change, Limit

MOST_AT_ONCE = 3
SLICE = 4  # sets between two pauses
AGAINST_EACH_OTHER = {"lower base", "higher base"}
CHEAPER: tuple[Change, ...] = ("circuits", "wire")
"""What is looked at in place of a pump before a larger feed, by its price."""
SAME_MARGIN = 6  # decimals


@record
class ChangesFound:
    """Every change that applies, best first, and the way out; None where there is none or nothing is wrong.

    `long_way` is the way out in larger steps, where three of the changes are not enough; `in_place_of_pump` what does
    as much as the pump of the way out, beside the rest of it.
    """

    changes: tuple[ChangeFigures, ...] = ()
    way_out: tuple[Change, ...] | None = None
    long_way: tuple[ChangeFigures, ...] = ()
    in_place_of_pump: ChangeFigures | None = None


def changes_in_steps(today: Variant) -> Generator[None, None, ChangesFound]:
    """What changes come to, with a pause after each little piece of work; nothing without a pump or a feed."""
    sized = today.sized()
    if not sized.system.solvable:
        return ChangesFound()
    limits = judge_sized(sized, today.return_pick).limits
    singles = single_changes(today, sized, limits)
    figures: list[ChangeFigures] = []
    for single in singles:
        figures.append(change_figures(single, today, limits))
        yield
    way_out: tuple[Change, ...] | None = None
    long_way: tuple[ChangeFigures, ...] = ()
    in_place: ChangeFigures | None = None
    if limits:
        way_out = yield from _way_out(today, singles, figures)
        if way_out is None:
            long_way = yield from larger_steps(today, singles, limits)
        elif "pump" in way_out:
            rest = [single for single in singles if single.change in way_out and single.change != "pump"]
            in_place = yield from _in_place_of_pump(today, singles, rest, limits)
    changes = tuple(sorted(figures, key=_rank))
    return ChangesFound(changes, way_out, tuple(sorted(long_way, key=_rank)), in_place)


def _in_place_of_pump(
    today: Variant, singles: Sequence[SingleChange], rest: Sequence[SingleChange], limits: tuple[Limit, ...]
) -> Generator[None, None, ChangeFigures | None]:
    """The first of wires and feeds that leaves nothing wrong with the rest of a way out; None where none does.

    A pump has more margin, and so is the way out; but a wire costs a tenth of it.
    """
    taken = {single.change for single in rest}
    options = [single for name in CHEAPER for single in singles if single.change == name]
    for single in (*options, *larger_feeds(today)):
        if single.change in taken:
            continue
        yield
        if margin_if_it_works(with_all(today, (*rest, single))) is not None:
            return change_figures(single, today, limits)
    return None


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
