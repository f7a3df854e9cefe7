"""What the builder did not say: the keys that were left out and the values taken for them, as the file would say it."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.session import USUAL_VOLTS, Run, Session, fallback_text, given
from fuelwiz.sizing.figures import NOT_GIVEN, Assumption
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.units import from_si

NOT_COUNTED = "not counted"
OF_RUN = ("hose", "length", "fittings")
FILTER_ASSUMED = "1.5 psi at 120 gal/h"
STRAINER_ASSUMED = "0.5 psi at 120 gal/h"
REGULATOR_ASSUMED = "6 psi at 100 gal/h"


def assumed(system: FuelSystem) -> tuple[Assumption, ...]:
    """The keys that a figure rests on and that were left out, in the order of the file."""
    return tuple(Assumption(key, value) for key, value in _left_out(system))


def _left_out(system: FuelSystem) -> Iterator[tuple[str, str]]:
    session = system.session
    yield from _of_goal_and_fuel(system)
    yield from _of_pressure(session)
    yield from _of_pump(session)
    yield from _of_feed(session)
    yield from _of_inlet(session)
    yield from _of_wiring(session)
    yield from _of_return_and_injectors(session)


def _fallbacks(session: Session, keys: dict[str, bool]) -> Iterator[tuple[str, str]]:
    """Of some keys those that were left out, each where it matters, with their fallbacks."""
    for key, matters in keys.items():
        if matters and not given(session, key):
            text = fallback_text(session, key)
            assert text is not None
            yield key, text


def _of_goal_and_fuel(system: FuelSystem) -> Iterator[tuple[str, str]]:
    session = system.session
    yield from _fallbacks(
        session,
        {
            "goal.power_at": True,
            "goal.driveline_loss": session.goal.power_at == "wheels",
            "goal.reserve": True,
            "engine.induction": True,
        },
    )
    if session.engine.bsfc is None:
        yield "engine.bsfc", bsfc_text(system.demand.bsfc_kg_J)
    yield from _fallbacks(session, {"fuel.ethanol": session.fuel.kind == "blend", "fuel.temperature": True})
    if session.inlet is not None and session.fuel.reid_pressure is None and system.fuel.reid_pa is not None:
        yield "fuel.reid_pressure", f"{from_si(system.fuel.reid_pa, 'psi'):.2f} psi"


def _of_pressure(session: Session) -> Iterator[tuple[str, str]]:
    yield from _fallbacks(
        session,
        {
            "pressure.base": True,
            "pressure.boost": session.engine.induction != "none",
            "pressure.idle_vacuum": session.pressure.reference == "manifold",
            "pressure.regulator": True,
            "pressure.reference": True,
        },
    )


def _of_pump(session: Session) -> Iterator[tuple[str, str]]:
    pump = session.pump
    if pump is None:
        yield "pump", NOT_GIVEN
        return
    if pump.kind is None:
        yield "pump.kind", "the lower of both"
    if pump.volts is None and session.wiring is None:
        yield "pump.volts", USUAL_VOLTS
    yield from _fallbacks(session, {f"pump.curve.{i}.voltage": True for i in range(len(pump.curve))})


def _of_feed(session: Session) -> Iterator[tuple[str, str]]:
    feed = session.feed
    if not feed.run:
        yield "feed.run", NOT_GIVEN
    for i, run in enumerate(feed.run):
        yield from _of_run(session, f"feed.run.{i}", run)
    if not given(session, "feed.filter"):
        yield "feed.filter", FILTER_ASSUMED if feed.run else NOT_GIVEN
        return
    for i in range(len(feed.filter)):
        yield from _fallbacks(
            session, {f"feed.filter.{i}.rated_flow": True, f"feed.filter.{i}.rated_loss": True}
        )


def _of_run(session: Session, path: str, run: Run) -> Iterator[tuple[str, str]]:
    for key in OF_RUN:
        if key not in run.model_fields_set:
            yield f"{path}.{key}", fallback_text(session, f"{path}.{key}") or ""


def _of_inlet(session: Session) -> Iterator[tuple[str, str]]:
    inlet = session.inlet
    if inlet is None:
        yield "inlet", NOT_GIVEN
        return
    several = session.pump is not None and session.pump.count > 1
    if not given(session, "inlet.strainer"):
        yield "inlet.strainer", STRAINER_ASSUMED
    elif inlet.strainer is not None:
        yield from _fallbacks(session, {"inlet.strainer.rated_flow": True, "inlet.strainer.rated_loss": True})
    yield from _fallbacks(session, {"inlet.strainer.carries": several and inlet.strainer is not None})
    yield from _fallbacks(session, {f"inlet.run.{i}.carries": several for i in range(len(inlet.run))})


def _of_wiring(session: Session) -> Iterator[tuple[str, str]]:
    wiring = session.wiring
    if wiring is None:
        return
    yield from _fallbacks(session, {"wiring.connections": True})
    for key in ("wire", "length"):
        if getattr(wiring, key) is None:
            yield f"wiring.{key}", NOT_COUNTED


def _of_return_and_injectors(session: Session) -> Iterator[tuple[str, str]]:
    yield from _fallbacks(
        session, {"engine.cylinders": session.injectors is not None and not given(session, "injectors.count")}
    )
    if session.return_line is None:
        if session.pressure.regulator == "rail":
            yield "return_line", NOT_GIVEN
    elif not given(session, "return_line.regulator"):
        yield "return_line.regulator", REGULATOR_ASSUMED
    if session.engine.injection == "port" and session.injectors is None:
        yield "injectors", NOT_GIVEN
    yield from _fallbacks(session, {"injectors.rated_pressure": session.injectors is not None})


def bsfc_text(bsfc_kg_J: float) -> str:
    """A fuel consumption to three significant figures, zeros kept, as the file would say it."""
    return f"{from_si(bsfc_kg_J, 'lb/(hp*h)'):#.3g} lb/(hp*h)"
