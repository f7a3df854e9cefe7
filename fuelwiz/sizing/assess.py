"""A session in, all its figures out."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.session import Session, Size
from fuelwiz.sizing.assumed import assumed
from fuelwiz.sizing.build import Build
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.sizing.ceilings import ceilings
from fuelwiz.sizing.choose import comfortable, line_to_fit, recommended
from fuelwiz.sizing.figures import Figures, NextFigures, SizeFigures, VerdictFigures
from fuelwiz.sizing.judge import ReturnPick, judge
from fuelwiz.sizing.next_goal import next_session
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.rows import size_row
from fuelwiz.sizing.stress import stress
from fuelwiz.sizing.system import System
from fuelwiz.sizing.whole import Whole


def assess(session: Session) -> Figures:
    """Everything that can be computed from a session."""
    return with_slower_parts(session, first_figures(session))


def first_figures(session: Session) -> Figures:
    """What a screen shows first: all but the stress cases and the next goal, which are solved again and again."""
    build, systems, rows = _solved_rows(session)
    feed = session.feed
    fit, best = line_to_fit(rows), recommended(rows)
    chosen = feed.chosen.text if feed.chosen is not None and systems[0].candidate is not None else None
    pick = chosen or fit or rows[-1].size
    row = next(row for row in rows if row.size == pick)
    whole = Whole(next(system for system in systems if spelled(system.candidate) == pick))
    limits = (*row.limits, *whole.limits(whole.return_line))
    return Figures(
        fuel=build.fuel_figures,
        demand=build.demand,
        pressure=build.pressure,
        sizes=rows,
        recommended=best,
        line_to_fit=fit,
        comfortable=comfortable(rows),
        chosen=chosen,
        verdict=VerdictFigures(pick, False if limits else (True if whole.solved else None), limits),
        pump_target=whole.pump_target,
        pump=whole.pump,
        return_line=whole.return_line,
        inlet=whole.inlet,
        wiring=whole.wiring,
        injectors=whole.injectors,
        heat=whole.heat,
        surge=whole.surge,
        ceilings=ceilings(whole),
        next=None,
        stress=(),
        assumed=assumed(build),
    )


def with_slower_parts(session: Session, first: Figures) -> Figures:
    """The same figures with the stress cases and the next goal."""
    build = Build(session)
    if build.pumps is None or not session.feed.run:
        return first
    pick = next(row for row in feed_candidates(session.feed) if spelled(row) == first.verdict.size)
    return_pick = None
    if first.return_line is not None:
        return_pick = ReturnPick(Return(System(build, pick)).candidate(first.return_line.size))
    following = next_session(build)
    return replace(
        first,
        next=None if following is None else _next_figures(following, pick, return_pick),
        stress=stress(build, pick, return_pick),
    )


def _next_figures(session: Session, pick: Size | None, return_pick: ReturnPick | None) -> NextFigures:
    build, _, rows = _solved_rows(session)
    found = judge(build, pick, return_pick)
    return NextFigures(
        crank_power_W=build.demand.crank_power_W,
        boost_Pa=session.pressure.boost,
        recommended=recommended(rows),
        margin=found.margin,
        works=not found.limits,
        limits=found.limits,
    )


def _solved_rows(session: Session) -> tuple[Build, tuple[System, ...], tuple[SizeFigures, ...]]:
    build = Build(session)
    systems = tuple(System(build, row) for row in feed_candidates(session.feed))
    return build, systems, tuple(size_row(system) for system in systems)
