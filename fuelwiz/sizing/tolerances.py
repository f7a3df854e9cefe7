"""How far each input of a build may be off: by what was typed, what was left out, and what the builder says."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.record import record
from fuelwiz.session import Run, Session, given
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.vocabulary import ADDED, INPUTS, Input

# Each is the half width that 95 in 100 stay within: common practice, no source. Where there are two, the first is
# that of a value that was typed.
FUEL_USE = 0.06, 0.12
DRIVELINE = 0.02, 0.04
ETHANOL = 0.03, 0.05
TEMPERATURE_K = 8.0, 12.0
BOOST_PA = PSI_PA, 3 * PSI_PA
BASE_PA = PSI_PA, 2 * PSI_PA
PUMP_SHEET, PUMP_ONE_POINT = 0.05, 0.12
PUMP_VOLTS, SUPPLY_VOLTS, ASSUMED_VOLTS = 0.2, 0.4, 0.7
HOSE_BORE, KNOWN_BORE = 0.03, 0.01
FITTINGS = 0.30
LENGTH = 0.05, 0.25
FILTER_LOSS = 0.40, 0.80
VAPOUR = 0.08, 0.20
INJECTOR_FLOW = 0.04
REGULATOR_LOSS = 0.30, 1.00


@record
class Tolerance:
    """An input that is not known exactly; `widths` are those of its curves, runs or filters, else a single one.

    Filters come first, then the strainer, then the parts. The kind of the pump has none: it is one law or the other.
    """

    input: Input
    widths: tuple[float, ...]

    @property
    def widest(self) -> float | None:
        """The largest, which stands for all of them."""
        return max(self.widths, default=None)

    def moved(self, z: float) -> float:
        """The factor, or the sum in SI, that `z` comes to at the widest tolerance."""
        width = max(self.widths)
        return width * z / 2 if self.input in ADDED else factor(width, z)


def factor(width: float, z: float) -> float:
    """What a relative tolerance multiplies by, `z` standard deviations from the middle."""
    return float((1 + width) ** (z / 2))


def tolerances(sized: SizedSystem) -> tuple[Tolerance, ...]:
    """Every input that a build with a pump and a feed has, in the order of the list."""
    usual = dict(_usual(sized))
    said = sized.system.session.tolerance
    found = []
    for name in INPUTS:
        if name not in usual:
            continue
        own = None if name == "pump_kind" else getattr(said, name)
        widths = usual[name] if own is None else tuple(own for _ in usual[name])
        found.append(Tolerance(name, widths))
    return tuple(found)


def _usual(sized: SizedSystem) -> Iterator[tuple[Input, tuple[float, ...]]]:
    session = sized.system.session
    yield from _of_engine(session)
    yield from _of_pressure_and_pump(session)
    yield from _of_feed(session)
    if session.inlet is not None and sized.system.fuel.vapour_pressure_pa is not None:
        yield "vapour", (_by(VAPOUR, session.fuel.reid_pressure is not None),)
    if session.injectors is not None and not sized.system.direct:
        yield "injector_flow", (INJECTOR_FLOW,)
    if Return(sized).applies and session.return_line is not None:
        yield "return_regulator", (_by(REGULATOR_LOSS, given(session, "return_line.regulator")),)
        yield "return_bore", tuple(_bore(run) for run in session.return_line.run)


def _of_engine(session: Session) -> Iterator[tuple[Input, tuple[float, ...]]]:
    yield "fuel_use", (_by(FUEL_USE, session.engine.bsfc is not None),)
    if session.goal.power_at == "wheels":
        yield "driveline", (_by(DRIVELINE, given(session, "goal.driveline_loss")),)
    if session.fuel.kind == "blend":
        yield "ethanol", (_by(ETHANOL, given(session, "fuel.ethanol")),)
    yield "temperature", (_by(TEMPERATURE_K, given(session, "fuel.temperature")),)


def _of_pressure_and_pump(session: Session) -> Iterator[tuple[Input, tuple[float, ...]]]:
    if session.pressure.boost > 0:
        yield "boost", (_by(BOOST_PA, given(session, "pressure.boost")),)
    yield "base", (_by(BASE_PA, given(session, "pressure.base")),)
    pump = session.pump
    assert pump is not None
    yield "pump_flow", tuple(PUMP_SHEET if len(curve.points) > 1 else PUMP_ONE_POINT for curve in pump.curve)
    if pump.volts is not None:
        yield "voltage", (PUMP_VOLTS,)
    else:
        yield "voltage", (ASSUMED_VOLTS if session.wiring is None else SUPPLY_VOLTS,)
    if pump.kind is None:
        yield "pump_kind", ()


def _of_feed(session: Session) -> Iterator[tuple[Input, tuple[float, ...]]]:
    feed = session.feed
    yield "feed_bore", tuple(_bore(run) for run in feed.run)
    yield "fittings", (FITTINGS,)
    yield "length", tuple(_by(LENGTH, "length" in run.model_fields_set) for run in feed.run)
    strainer = None if session.inlet is None else session.inlet.strainer
    losses = [
        *(_by(FILTER_LOSS, "rated_loss" in part.model_fields_set) for part in feed.filter),
        *(
            _by(FILTER_LOSS, "rated_loss" in part.model_fields_set)
            for part in (strainer,)
            if part is not None
        ),
        *(FILTER_LOSS[0] for _ in feed.part),
    ]
    if losses:
        yield "filters", tuple(losses)


def _bore(run: Run) -> float:
    return KNOWN_BORE if run.hose == "tube" or run.bore is not None else HOSE_BORE


def _by(widths: tuple[float, float], typed: bool) -> float:
    """The tolerance of a value that was typed, or of one that was not."""
    return widths[0] if typed else widths[1]
