"""A session in, all its figures out."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.session import Session, Size
from fuelwiz.sizing.assumed import assumed
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.sizing.ceilings import ceilings
from fuelwiz.sizing.choose import comfortable, line_to_fit, recommended
from fuelwiz.sizing.figures import Figures, NextFigures, SizeFigures, VerdictFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.judge import ReturnPick, judge
from fuelwiz.sizing.next_goal import next_session
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.size_rows import size_row
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.stress import stress
from fuelwiz.sizing.verdict import BuildVerdict


def assess(session: Session) -> Figures:
    """Everything that can be computed from a session."""
    return with_slower_parts(session, first_figures(session))


def first_figures(session: Session) -> Figures:
    """What a screen shows first: all but the stress cases and the next goal, which are solved again and again."""
    system, systems, rows = _solved_rows(session)
    feed = session.feed
    fit, best = line_to_fit(rows), recommended(rows)
    chosen = feed.chosen.text if feed.chosen is not None and systems[0].candidate is not None else None
    pick = chosen or fit or rows[-1].size
    row = next(row for row in rows if row.size == pick)
    verdict = BuildVerdict(next(sized for sized in systems if spelled(sized.candidate) == pick))
    limits = (*row.limits, *verdict.limits(verdict.return_line))
    return Figures(
        fuel=system.fuel_figures,
        demand=system.demand,
        pressure=system.pressure,
        sizes=rows,
        recommended=best,
        line_to_fit=fit,
        comfortable=comfortable(rows),
        chosen=chosen,
        verdict=VerdictFigures(pick, False if limits else (True if verdict.solved else None), limits),
        pump_target=verdict.pump_target,
        pump=verdict.pump,
        return_line=verdict.return_line,
        inlet=verdict.inlet,
        wiring=verdict.wiring,
        injectors=verdict.injectors,
        heat=verdict.heat,
        surge=verdict.surge,
        ceilings=ceilings(verdict),
        next=None,
        stress=(),
        assumed=assumed(system),
    )


def with_slower_parts(session: Session, first: Figures) -> Figures:
    """The same figures with the stress cases and the next goal."""
    system = FuelSystem(session)
    if system.pumps is None or not session.feed.run:
        return first
    pick = next(row for row in feed_candidates(session.feed) if spelled(row) == first.verdict.size)
    return_pick = None
    if first.return_line is not None:
        return_pick = ReturnPick(Return(SizedSystem(system, pick)).candidate(first.return_line.size))
    following = next_session(system)
    return replace(
        first,
        next=None if following is None else _next_figures(following, pick, return_pick),
        stress=stress(system, pick, return_pick),
    )


def _next_figures(session: Session, pick: Size | None, return_pick: ReturnPick | None) -> NextFigures:
    system, _, rows = _solved_rows(session)
    found = judge(system, pick, return_pick)
    return NextFigures(
        crank_power_W=system.demand.crank_power_W,
        boost_Pa=session.pressure.boost,
        recommended=recommended(rows),
        margin=found.margin,
        works=not found.limits,
        limits=found.limits,
    )


def _solved_rows(session: Session) -> tuple[FuelSystem, tuple[SizedSystem, ...], tuple[SizeFigures, ...]]:
    system = FuelSystem(session)
    systems = tuple(SizedSystem(system, row) for row in feed_candidates(session.feed))
    return system, systems, tuple(size_row(sized) for sized in systems)
