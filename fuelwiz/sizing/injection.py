"""The injectors at the goal, and the power at which they reach their limit."""

from __future__ import annotations

from fuelwiz.physics.injector import dead_share, duty, smallest_rating_m3_s, wide_open_flow_kg_s
from fuelwiz.physics.roots import root
from fuelwiz.record import record
from fuelwiz.session import Session
from fuelwiz.sizing.part_figures import InjectorFigures
from fuelwiz.sizing.sized_system import SizedSystem, flow_where
from fuelwiz.sizing.thresholds import DUTY_LIMIT, RATED_AT_PA


@record
class _Asked:
    """What is asked of the injectors: those that are given, else one of a usual kind for each cylinder."""

    count: int
    rated_pressure_pa: float
    duty_limit: float
    dead: float


def injector_figures(sized: SizedSystem) -> InjectorFigures | None:
    """Flow, duty and the smallest rating that does; None without a feed, and before a high-pressure pump."""
    system = sized.system
    session = system.session
    if not session.feed.run or system.direct:
        return None
    asked, across = _asked(session), _across_pa(sized)
    smallest = smallest_rating_m3_s(
        mass_flow_kg_s=system.demand.mass_flow_kg_s,
        count=asked.count,
        duty_limit=asked.duty_limit,
        rated_pressure_pa=asked.rated_pressure_pa,
        density_kg_m3=system.fuel.density_kg_m3,
        pressure_pa=across,
        dead=asked.dead,
    )
    if session.injectors is None:
        return InjectorFigures(asked.count, None, None, smallest, None)
    if across <= 0:
        return InjectorFigures(asked.count, 0.0, None, None, False)
    each = _each_kg_s(sized, across)
    found = duty(
        mass_flow_kg_s=system.demand.mass_flow_kg_s,
        count=asked.count,
        wide_open_kg_s=each,
        dead=asked.dead,
    )
    return InjectorFigures(asked.count, each, found, smallest, found <= asked.duty_limit)


def injectors_fail(sized: SizedSystem) -> bool:
    """Whether injectors that are given do not stay within their duty limit at one point of full power."""
    figures = injector_figures(sized)
    return figures is not None and figures.within_limit is False


def injector_ceiling_w(sized: SizedSystem) -> float:
    """Crank power at which the injectors reach their duty limit, the sag growing with the flow; 0 without pressure."""
    system = sized.system
    asked, across = _asked(system.session), system.pressure.injector_Pa
    share = asked.duty_limit - asked.dead
    density = system.fuel.density_kg_m3
    # A feed that falls to the rail adds pressure where little flows.
    at_rest = across - (sized.feed.loss_pa(0.0) if system.at_tank else 0.0)
    if share <= 0 or at_rest <= 0:
        return 0.0
    most = share * asked.count * _each_kg_s(sized, at_rest) / density
    if system.at_tank:

        def short(flow: float) -> float:
            each = _each_kg_s(sized, across - sized.feed.loss_pa(flow))
            return flow * density - share * asked.count * each

        most = root(short, 0.0, min(most, flow_where(sized.feed, across, system.flow_m3_s)))
    return system.demand.crank_power_W * most / system.flow_m3_s


def _asked(session: Session) -> _Asked:
    injectors = session.injectors
    if injectors is None:
        return _Asked(session.engine.cylinders, RATED_AT_PA, DUTY_LIMIT, 0.0)
    dead = dead_share(dead_time_s=injectors.dead_time, rpm=session.engine.rpm)
    return _Asked(injectors.count, injectors.rated_pressure, injectors.duty_limit, dead)


def _across_pa(sized: SizedSystem) -> float:
    return sized.system.pressure.injector_Pa - (sized.sag_pa or 0.0)


def _each_kg_s(sized: SizedSystem, across_pa: float) -> float:
    injectors = sized.system.session.injectors
    assert injectors is not None
    return wide_open_flow_kg_s(
        rated_flow_m3_s=injectors.rated_flow,
        rated_pressure_pa=injectors.rated_pressure,
        density_kg_m3=sized.system.fuel.density_kg_m3,
        pressure_pa=across_pa,
    )
