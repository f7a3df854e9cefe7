"""The figures that an assessment gives, named as the keys of the result; SI, None where nothing is known."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.record import record
from fuelwiz.sizing.part_figures import (
    AtASize,
    GaugeReading,
    HeatFigures,
    InjectorChoice,
    InjectorFigures,
    InletFigures,
    OneVolt,
    PathPart,
    PumpFigures,
    PumpTarget,
    ReturnCheck,
    ReturnFigures,
    SurgeFigures,
    WireChoice,
    WiringFigures,
)
from fuelwiz.sizing.slow_figures import ChangeFigures, SpreadFigures
from fuelwiz.sizing.vocabulary import (
    Band,
    CeilingBasis,
    CeilingPart,
    Change,
    FlowRegime,
    Limit,
    SizeLimit,
    regime_at,
)

NOT_GIVEN = "not given"
"""What is taken for a section that is left out."""


@record
class FuelFigures:
    """The fuel at the session's temperature."""

    density_kg_m3: float
    viscosity_m2_s: float
    lhv_J_kg: float
    stoich: float | None
    vapour_pressure_Pa: float | None


@record
class DemandFigures:
    """What the goal burns."""

    crank_power_W: float
    bsfc_kg_J: float
    thermal_efficiency: float
    mass_flow_kg_s: float
    volume_flow_m3_s: float
    target_flow_m3_s: float
    air_flow_kg_s: float | None


@record
class PressureFigures:
    """Pressures at the rail, gauge, and the atmosphere, absolute."""

    rail_Pa: float
    injector_Pa: float
    idle_rail_Pa: float
    atmosphere_Pa: float


@record
class Ladder:
    """What makes up the pressure rise across the pumps at the demand flow, and what they could make there."""

    base_Pa: float
    boost_Pa: float
    filters_Pa: float
    friction_Pa: float
    fittings_Pa: float
    parts_Pa: float
    rise_Pa: float
    inlet_Pa: float
    could_make_Pa: float | None


@record
class Least:
    """The least margin of the goal and all points of full power; `at` is the point's number, None for the goal."""

    at: int | None
    margin: float


@record
class SizeFigures(AtASize):
    """One candidate size of the feed."""

    size: str
    bore_m: float
    nominal_velocity_m_s: float | None
    velocity_m_s: float
    reynolds: float
    friction_factor: float
    band: Band
    feed_loss_Pa: float | None
    line_loss_Pa: float | None
    pump_rise_Pa: float | None
    target_rise_Pa: float | None
    capacity_m3_s: float | None
    margin: float | None
    max_power_W: float | None
    pump_volts_V: float | None
    pump_current_A: float | None
    full_delivery_velocity_m_s: float | None
    full_delivery_band: Band | None
    full_delivery_loss_Pa: float | None
    rail_at_goal_Pa: float | None
    rail_sag_Pa: float | None
    vapour_margin_Pa: float | None
    extrapolated: bool
    least: Least | None
    line_works: bool
    works: bool | None
    limits: tuple[SizeLimit, ...]
    ladder: Ladder | None

    @property
    def regime(self) -> FlowRegime:
        """How the flow runs at the demand, by the same edges as its friction."""
        return regime_at(self.reynolds)


@record
class VerdictFigures:
    """Whether the build works at the pick, and what is wrong where it does not."""

    size: str
    works: bool | None
    limits: tuple[Limit, ...]


@record
class Ceiling:
    """The crank power at which one part alone is at its limit.

    `run` is the number of a kept run that is the feed's, `by_line` whether it is the drop through the feed line that
    ends the pump's power: with the regulator at the tank nothing makes up for it.
    """

    part: CeilingPart
    max_power_W: float
    basis: CeilingBasis
    run: int | None = None
    by_line: bool = False


@record
class NextFigures:
    """The next goal with today's parts.

    The last six are what wiring and injectors come to, the duty at the pick, the ceilings there at its boost, the
    way out in larger steps, and what does as much as a pump of the way out.
    """

    crank_power_W: float
    boost_Pa: float
    recommended: str | None
    margin: float | None
    works: bool | None
    limits: tuple[Limit, ...]
    target_flow_m3_s: float
    target_rise_Pa: float
    changes: tuple[ChangeFigures, ...] = ()
    way_out: tuple[Change, ...] | None = None
    injector_rating_m3_s: float | None = None
    wiring: WiringFigures | None = None
    duty: float | None = None
    ceilings: tuple[Ceiling, ...] = ()
    long_way: tuple[ChangeFigures, ...] = ()
    in_place_of_pump: ChangeFigures | None = None


@record
class PullFigures:
    """One more point of full power, at the pick."""

    rpm: int | None
    crank_power_W: float
    boost_Pa: float
    rail_Pa: float
    flow_m3_s: float
    capacity_m3_s: float | None
    margin: float | None
    duty: float | None
    limits: tuple[Limit, ...]


@record
class StressFigures:
    """One bad day; the last is that of the injectors at the goal."""

    case: str
    margin: float | None
    vapour_margin_Pa: float | None
    works: bool | None
    limits: tuple[Limit, ...]
    duty: float | None = None


@record
class Assumption:
    """A key that was left out, and the value taken for it, as the file would say it.

    `effect` is how far the least margin moves between the ends of its tolerance, None where none is known.
    """

    key: str
    value: str
    effect: float | None = None

    @property
    def is_section(self) -> bool:
        """Whether a whole section is left out, for which nothing is taken."""
        return self.value == NOT_GIVEN


@record
class Figures:
    """Everything that is computed from one session."""

    fuel: FuelFigures
    demand: DemandFigures
    pressure: PressureFigures
    sizes: tuple[SizeFigures, ...]
    recommended: str | None
    line_to_fit: str | None
    comfortable: str | None
    chosen: str | None
    verdict: VerdictFigures
    pump_target: PumpTarget | None
    pump: PumpFigures | None
    return_line: ReturnFigures | None
    inlet: InletFigures | None
    wiring: WiringFigures | None
    injectors: InjectorFigures | None
    heat: HeatFigures | None
    surge: SurgeFigures | None
    ceilings: tuple[Ceiling, ...]
    next: NextFigures | None
    pull: tuple[PullFigures, ...]
    stress: tuple[StressFigures, ...]
    spread: SpreadFigures | None
    changes: tuple[ChangeFigures, ...]
    way_out: tuple[Change, ...] | None
    assumed: tuple[Assumption, ...]
    gauge: tuple[GaugeReading, ...]
    wire_choices: tuple[WireChoice, ...]
    injector_choices: tuple[InjectorChoice, ...]
    one_volt: OneVolt | None = None
    path: tuple[PathPart, ...] = ()
    return_check: ReturnCheck | None = None
    metric_wire_choices: tuple[WireChoice, ...] = ()
    long_way: tuple[ChangeFigures, ...] = ()
    in_place_of_pump: ChangeFigures | None = None

    def row(self, size: str | None) -> SizeFigures | None:
        """The figures of one candidate, None where no row has that size."""
        return next((row for row in self.sizes if row.size == size), None)

    @property
    def pick(self) -> SizeFigures:
        """The row of the size that the build is judged at."""
        return next(row for row in self.sizes if row.size == self.verdict.size)


@record
class Plot:
    """Pump against system, made when a picture asks and no part of the result.

    Rising flows in m3/s, and pascals across the pumps at each; below 0 where they send no such flow;
    `crossing` is the flow and the pressure where the pumps meet the highlighted size, `pull` what each further point of
    full power asks for through it. By either law of volts alone where the kind of pump is not known.
    """

    flows: tuple[float, ...]
    pump_pressures: tuple[float, ...]
    systems: dict[str, tuple[float, ...]]
    goal_flow: float
    crossing: tuple[float, float] | None
    pull: tuple[tuple[float, float], ...] = ()
    by_turbine: tuple[float, ...] | None = None
    by_displacement: tuple[float, ...] | None = None


PlotOf = Callable[[str], Plot | None]
"""Gives pump against system around a size, when a picture asks."""
