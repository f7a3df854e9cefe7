"""The fuel's way at the goal, part by part: how fast it flows in each, and what each loses."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.physics.fittings import filter_loss_pa, part_loss_pa
from fuelwiz.physics.line import run_loss, velocity_m_s
from fuelwiz.session import Filter, Session, Strainer
from fuelwiz.sizing.candidates import candidate_called
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.part_figures import PathPart, ReturnCheck
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.sized_system import SizedSystem


def path_at(session: Session, size: str) -> tuple[PathPart, ...]:
    """The way at one size of feed; a picture of another size asks for its own."""
    return path_parts(SizedSystem(FuelSystem(session), candidate_called(session.feed, size)))


def path_parts(sized: SizedSystem) -> tuple[PathPart, ...]:
    """From the strainer to the rail, in the order of the file; empty without a feed."""
    if not sized.system.has_runs:
        return ()
    return (*_inlet(sized), *_filters(sized, "pump"), *_filters(sized, "line"), *_runs(sized), *_parts(sized))


def _inlet(sized: SizedSystem) -> Iterator[PathPart]:
    system, inlet = sized.system, sized.system.session.inlet
    if inlet is None:
        return
    flow = system.flow_m3_s
    each = flow / (1 if system.pumps is None else system.pumps.flow_ways)
    if inlet.strainer is not None:
        carried = flow if inlet.strainer.carries == "all" else each
        yield PathPart("strainer", 0, None, _filter_loss_pa(inlet.strainer, carried))
    for number, run in enumerate(system.suction.runs):
        carried = flow if run.shared else each
        lost = run_loss(
            run.line,
            flow_m3_s=carried,
            density_kg_m3=system.fuel.density_kg_m3,
            viscosity_m2_s=system.fuel.viscosity_m2_s,
        )
        speed = velocity_m_s(flow_m3_s=carried, bore_m=run.line.bore_m, side_by_side=run.line.side_by_side)
        yield PathPart("suction", number, speed, lost.total_pa)


def _filter_loss_pa(part: Filter | Strainer, flow_m3_s: float) -> float:
    return filter_loss_pa(
        flow_m3_s=flow_m3_s,
        rated_flow_m3_s=part.rated_flow,
        rated_loss_pa=part.rated_loss,
        clogging=part.clogging,
    )


def _filters(sized: SizedSystem, place: str) -> Iterator[PathPart]:
    for number, part in enumerate(sized.system.session.feed.filter):
        if part.place == place:
            yield PathPart("filter", number, None, _filter_loss_pa(part, sized.system.flow_m3_s))


def _runs(sized: SizedSystem) -> Iterator[PathPart]:
    system, flow = sized.system, sized.system.flow_m3_s
    for run in sized.feed.runs:
        lost = run_loss(
            run.line,
            flow_m3_s=flow,
            density_kg_m3=system.fuel.density_kg_m3,
            viscosity_m2_s=system.fuel.viscosity_m2_s,
        )
        yield PathPart("run", run.number, run.velocity_m_s(flow), lost.total_pa)


def _parts(sized: SizedSystem) -> Iterator[PathPart]:
    for number, part in enumerate(sized.system.session.feed.part):
        loss = part_loss_pa(
            flow_m3_s=sized.system.flow_m3_s, rated_flow_m3_s=part.rated_flow, rated_loss_pa=part.rated_loss
        )
        yield PathPart("part", number, None, loss)


def return_check(sized: SizedSystem) -> ReturnCheck | None:
    """What comes back with the engine off, the pumps of idle on and the base pressure held; None without a return."""
    system = sized.system
    pumps = system.idle_pumps
    if pumps is None or not Return(sized).applies:
        return None
    base = system.session.pressure.base
    flow = sized.capacity_m3_s(pumps=pumps, rail_pa=base)
    if flow <= 0:
        return None
    volts = pumps.volts(sized.pressure_across_pa(pumps, flow, base))
    return ReturnCheck(base, volts, pumps.running, flow)
