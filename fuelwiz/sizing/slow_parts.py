"""The parts that take hundreds of solutions, a little at a time, so that they can be dropped at any moment."""

from __future__ import annotations

from collections.abc import Generator, Iterator
from dataclasses import replace
from typing import TypeVar

from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.next_goal import next_session
from fuelwiz.sizing.picked import Picked

T = TypeVar("T")


def in_steps(session: Session, figures: Figures) -> Iterator[Figures]:
    """The figures as they fill up: changes and way out first, then those of the next goal, then the spread.

    They come after each little piece of work, some milliseconds, whether or not anything is new in them; the last are
    complete. A worker that is asked for something else stops taking them.

    Args:
        session: what the builder said.
        figures: what came of it so far, the next goal among them.
    """
    yield figures
    if session.feed.run and session.pump is not None:
        yield from _filled_in(session, figures)


def _filled_in(session: Session, figures: Figures) -> Iterator[Figures]:
    # Loaded when they are asked for: a first verdict does without.
    from fuelwiz.sizing.changes import changes_in_steps
    from fuelwiz.sizing.effects import with_effects
    from fuelwiz.sizing.single_changes import Variant
    from fuelwiz.sizing.spread import spread_in_steps

    today = Picked.today(session, figures)
    pick, return_pick, measured_at_k = today.sized.candidate, today.return_pick, session.fuel.temperature
    found = yield from _meanwhile(
        figures, changes_in_steps(Variant(session, pick, return_pick, measured_at_k))
    )
    figures = replace(
        figures,
        changes=found.changes,
        way_out=found.way_out,
        long_way=found.long_way,
        in_place_of_pump=found.in_place_of_pump,
    )
    yield figures
    following = next_session(today.sized.system)
    if figures.next is not None and following is not None:
        found = yield from _meanwhile(
            figures, changes_in_steps(Variant(following, pick, return_pick, measured_at_k))
        )
        then = replace(
            figures.next,
            changes=found.changes,
            way_out=found.way_out,
            long_way=found.long_way,
            in_place_of_pump=found.in_place_of_pump,
        )
        figures = replace(figures, next=then)
        yield figures
    spread = yield from _meanwhile(figures, spread_in_steps(today))
    yield replace(figures, spread=spread, assumed=with_effects(figures.assumed, spread))


def _meanwhile(figures: Figures, steps: Generator[None, None, T]) -> Generator[Figures, None, T]:
    """The same figures after each step of some work; what the work comes to."""
    while True:
        try:
            next(steps)
        except StopIteration as done:
            found: T = done.value
            return found
        yield figures
