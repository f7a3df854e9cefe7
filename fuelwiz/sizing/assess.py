"""A session in, all its figures out."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.session import Session
from fuelwiz.sizing.assumed import assumed
from fuelwiz.sizing.candidates import spelled
from fuelwiz.sizing.ceilings import ceilings
from fuelwiz.sizing.choices import injector_choices
from fuelwiz.sizing.choose import comfortable, line_to_fit, recommended
from fuelwiz.sizing.electrics import heat_figures
from fuelwiz.sizing.figures import Figures, SizeFigures, VerdictFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.gauge import gauge_readings
from fuelwiz.sizing.next_goal import next_figures
from fuelwiz.sizing.one_volt import one_volt
from fuelwiz.sizing.part_figures import HardestPoint, PumpTarget
from fuelwiz.sizing.path import path_parts, return_check
from fuelwiz.sizing.picked import Picked
from fuelwiz.sizing.pulls import pull_figures
from fuelwiz.sizing.size_rows import least, size_row, sized_systems
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.slow_parts import in_steps
from fuelwiz.sizing.stress import stress
from fuelwiz.sizing.verdict import BuildVerdict


def assess(session: Session) -> Figures:
    """Everything that can be computed from a session."""
    *_, figures = in_steps(session, quick_figures(session))
    return figures


def quick_figures(session: Session) -> Figures:
    """All but what takes hundreds of solutions: the spread and the changes."""
    return with_slower_parts(session, first_figures(session))


def first_figures(session: Session) -> Figures:
    """What a screen shows first: all but the stress cases, the next goal and the gauge, which are solved anew."""
    system = FuelSystem(session)
    sized_by_name = sized_systems(system)
    rows = tuple(size_row(sized) for sized in sized_by_name.values())
    feed, fit = session.feed, line_to_fit(rows)
    chosen = feed.chosen.text if feed.chosen is not None and not rows[0].fixed else None
    pick = chosen or fit or rows[-1].size
    row = next(row for row in rows if row.size == pick)
    sized = sized_by_name[pick]
    verdict = BuildVerdict(sized)
    return Figures(
        fuel=system.fuel_figures,
        demand=system.demand,
        pressure=system.pressure,
        sizes=rows,
        recommended=recommended(rows),
        line_to_fit=fit,
        comfortable=comfortable(rows),
        chosen=chosen,
        verdict=_judged(row, verdict),
        pump_target=pump_target(sized_by_name[fit or pick]),
        pump=verdict.pump,
        return_line=verdict.return_line,
        inlet=verdict.inlet,
        wiring=verdict.wiring,
        injectors=verdict.injectors,
        heat=heat_figures(sized),
        surge=verdict.surge,
        ceilings=ceilings(sized),
        next=None,
        pull=pull_figures(sized),
        stress=(),
        spread=None,
        changes=(),
        way_out=None,
        assumed=assumed(system),
        gauge=(),
        wire_choices=verdict.wire_choices,
        injector_choices=injector_choices(session, verdict.injectors),
        path=path_parts(sized),
        metric_wire_choices=verdict.metric_wire_choices,
    )


def _judged(row: SizeFigures, verdict: BuildVerdict) -> VerdictFigures:
    """Whether the build works at a row; what is wrong with the size comes before what is wrong with the build."""
    limits = (*row.limits, *verdict.limits(None))
    works = False if limits else (True if verdict.sized.system.solvable else None)
    return VerdictFigures(row.size, works, limits)


def with_slower_parts(session: Session, first: Figures) -> Figures:
    """The same figures with the stress cases, the next goal and the gauge."""
    first = replace(first, gauge=gauge_readings(session, first))
    if not session.feed.run:
        return first
    today = Picked.today(session, first)
    system, pick, return_pick = today.sized.system, today.sized.candidate, today.return_pick
    return replace(
        first,
        next=next_figures(system, pick, return_pick),
        stress=() if system.pumps is None else stress(system, pick, return_pick),
        one_volt=None if system.pumps is None else one_volt(system, pick),
        return_check=return_check(today.sized),
    )


def pump_target(sized: SizedSystem) -> PumpTarget | None:
    """What a pump has to give at a size, with or without one; None without a feed."""
    if not sized.system.session.feed.run:
        return None
    flow = sized.system.demand.target_flow_m3_s
    return PumpTarget(spelled(sized.candidate), flow, sized.rise_pa(flow), _hardest(sized))


def _hardest(sized: SizedSystem) -> HardestPoint | None:
    """The same at the point that asks most; None without a pump or further points."""
    found = least(sized)
    if found is None or not sized.points:
        return None
    point = sized if found.at is None else sized.points[found.at]
    flow = point.system.demand.target_flow_m3_s
    return HardestPoint(found.at, flow, point.rise_pa(flow))
