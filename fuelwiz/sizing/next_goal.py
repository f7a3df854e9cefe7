"""The next goal with today's parts."""

from __future__ import annotations

from fuelwiz.physics.boost import boost_in_step_pa
from fuelwiz.physics.demand import BRAKE_EFFICIENCY
from fuelwiz.session import USUAL_BOOST, Session, Size
from fuelwiz.sizing.candidates import spelled
from fuelwiz.sizing.ceilings import ceilings
from fuelwiz.sizing.choose import recommended
from fuelwiz.sizing.figures import NextFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.injection import injector_figures
from fuelwiz.sizing.size_rows import size_row, sized_systems
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.verdict import BuildVerdict, ReturnPick, judge_sized
from fuelwiz.terms import Induction
from fuelwiz.units import parse


def next_figures(system: FuelSystem, pick: Size | None, return_pick: ReturnPick | None) -> NextFigures | None:
    """The next goal at today's sizes of feed and return; None without a next power or a feed."""
    session = next_session(system)
    if session is None or not session.feed.run:
        return None
    following = FuelSystem(session)
    today = SizedSystem(following, pick)
    judgment = judge_sized(today, return_pick)
    systems = sized_systems(following)
    best = recommended(tuple(size_row(sized) for sized in systems.values()))
    flow, then = following.demand.target_flow_m3_s, systems[best or spelled(pick)]
    injectors = injector_figures(then)
    return NextFigures(
        crank_power_W=following.demand.crank_power_W,
        boost_Pa=session.pressure.boost,
        recommended=best,
        margin=judgment.margin,
        works=False if judgment.limits else (True if following.pumps is not None else None),
        limits=judgment.limits,
        target_flow_m3_s=flow,
        target_rise_Pa=then.rise_pa(flow),
        injector_rating_m3_s=None if injectors is None else injectors.smallest_rating_m3_s,
        wiring=BuildVerdict(then).wiring,
        duty=judgment.duty,
        ceilings=ceilings(today),
    )


def next_session(system: FuelSystem) -> Session | None:
    """The session at its next power, boost and induction, its points of full power left out; None without a power."""
    session = system.session
    goal, engine = session.goal, session.engine
    if goal.next_power is None:
        return None
    boost = _next_boost_pa(system, goal.next_power)
    induction = _next_induction(session, boost)
    bsfc = engine.bsfc
    if bsfc is not None and induction != engine.induction:
        bsfc *= BRAKE_EFFICIENCY[engine.induction] / BRAKE_EFFICIENCY[induction]
    return session.model_copy(
        update={
            "goal": goal.model_copy(update={"power": goal.next_power}),
            "engine": engine.model_copy(update={"induction": induction, "bsfc": bsfc}),
            "pressure": session.pressure.model_copy(update={"boost": boost}),
            "pull": (),
        }
    )


def _next_boost_pa(system: FuelSystem, power_w: float) -> float:
    """The boost that is given; else none without induction, a usual one where boost is new, else in step with power."""
    goal, engine, boost = system.session.goal, system.session.engine, system.session.pressure.boost
    if goal.next_boost is not None:
        return goal.next_boost
    if goal.next_induction == "none":
        return 0.0
    if boost > 0:
        share = power_w / goal.power
        return boost_in_step_pa(boost_pa=boost, share=share, atmosphere_pa=system.atmosphere_pa)
    if goal.next_induction is None or goal.next_induction == engine.induction:
        return 0.0
    return parse(USUAL_BOOST[goal.next_induction], "gauge_pressure")


def _next_induction(session: Session, boost_pa: float) -> Induction:
    """What is given; else as today, but a supercharger where boost comes to an engine without."""
    if session.goal.next_induction is not None:
        return session.goal.next_induction
    today = session.engine.induction
    return "supercharger" if today == "none" and boost_pa > 0 else today
