"""The way out in larger steps, where three changes are not enough: lines and wire as large as it takes."""

from __future__ import annotations

from collections.abc import Generator, Sequence

from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.wire import gauge_of
from fuelwiz.sizing.change_trials import change_figures, margin_if_it_works, with_all
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.single_changes import (
    SingleChange,
    Variant,
    larger_feeds,
    larger_returns,
    wire_of,
)
from fuelwiz.sizing.slow_figures import ChangeFigures
from fuelwiz.sizing.verdict import BuildVerdict
from fuelwiz.sizing.vocabulary import Change, Limit

DROPPED_FIRST: tuple[Change, ...] = (
    "pump",
    "regulator",
    "circuits",
    "wire",
    "feed",
    "filters",
    "injectors",
    "return",
    "clean",
)
"""What is bought, in the order in which it is looked at whether the rest does without."""

Sizes = dict[Change, list[SingleChange]]
"""The sizes that a change may go to, smallest first; one alone of most."""
Work = Generator[None, None, bool]


def larger_steps(
    today: Variant, singles: Sequence[SingleChange], limits: tuple[Limit, ...]
) -> Generator[None, None, tuple[ChangeFigures, ...]]:
    """What leaves nothing wrong and of which nothing can be left out, with a pause after each trial; () for none.

    All that is bought is changed first, each line and wire to the largest; then what is not needed is dropped, and what
    is left taken no larger than it has to be.
    """
    verdict = BuildVerdict(today.sized())
    sizes = _sizes(today, singles, verdict)
    taken = {name: options[-1] for name, options in sizes.items()}
    if not (yield from _works(today, taken)):
        return ()
    for name in _dropped_first(verdict):
        without = {other: single for other, single in taken.items() if other != name}
        if name in taken and (yield from _works(today, without)):
            taken = without
    for name in taken:
        taken[name] = yield from _smallest(today, taken, name, sizes[name])
    return tuple(change_figures(single, today, limits) for single in taken.values())


def _dropped_first(verdict: BuildVerdict) -> list[Change]:
    """The order; where the pump gets low volts its wire is kept, as a bigger pump on a thin wire is no cure."""
    circuit = verdict.circuit
    low = circuit is not None and circuit.pump_volts_V < ASSUMED_VOLTS
    return sorted(DROPPED_FIRST, key=lambda name: low and name == "wire")


def _smallest(
    today: Variant, taken: dict[Change, SingleChange], name: Change, options: list[SingleChange]
) -> Generator[None, None, SingleChange]:
    """The smallest of the sizes of one change with which the rest leaves nothing wrong: of a return, one at ease."""
    for at_ease in (True, False) if name == "return" else (False,):
        for option in options:
            if (yield from _works(today, {**taken, name: option}, at_ease=at_ease)):
                return option
    return taken[name]


def _works(today: Variant, taken: dict[Change, SingleChange], *, at_ease: bool = False) -> Work:
    """Whether a set leaves nothing wrong, its return not just holding where that is asked."""
    variant = with_all(today, list(taken.values()))
    works = margin_if_it_works(variant) is not None
    if works and at_ease and variant.return_pick is not None:
        works = Return(variant.sized()).at_ease(variant.return_pick.size)
    yield
    return works


def _sizes(today: Variant, singles: Sequence[SingleChange], verdict: BuildVerdict) -> Sizes:
    lines: Sizes = {
        "feed": larger_feeds(today),
        "return": larger_returns(today, Return(verdict.sized)),
        "wire": _thicker_wires(today, verdict),
    }
    found: Sizes = {}
    for single in singles:
        if single.change in DROPPED_FIRST:
            found[single.change] = lines.get(single.change) or [single]
    return found


def _thicker_wires(today: Variant, verdict: BuildVerdict) -> list[SingleChange]:
    """The wires of the builder's kind that are thicker: those that lose no more than they may, where there are any."""
    wiring = today.session.wiring
    if wiring is None or wiring.wire is None:
        return []
    choices = verdict.metric_wire_choices if gauge_of(wiring.wire) is None else verdict.wire_choices
    thicker = [choice for choice in choices if choice.area_m2 > wiring.wire and not choice.given]
    return [wire_of(choice.area_m2) for choice in ([one for one in thicker if one.does] or thicker)]
