"""The figures that an assessment gives, named as the keys of the result; SI, None where nothing is said."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.sizing.vocabulary import Band, CeilingBasis, CeilingPart, GaugeState, Limit, SizeLimit, is_fixed


@dataclass(frozen=True, slots=True)
class FuelFigures:
    """The fuel at the session's temperature."""

    density_kg_m3: float
    viscosity_m2_s: float
    lhv_J_kg: float
    stoich: float | None
    vapour_pressure_Pa: float | None


@dataclass(frozen=True, slots=True)
class DemandFigures:
    """What the goal burns."""

    crank_power_W: float
    bsfc_kg_J: float
    thermal_efficiency: float
    mass_flow_kg_s: float
    volume_flow_m3_s: float
    target_flow_m3_s: float
    air_flow_kg_s: float | None


@dataclass(frozen=True, slots=True)
class PressureFigures:
    """Pressures at the rail, gauge, and the atmosphere, absolute."""

    rail_Pa: float
    injector_Pa: float
    idle_rail_Pa: float
    atmosphere_Pa: float


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class Least:
    """The least margin of the goal and all points of full power; `at` is the point's number, None for the goal."""

    at: int | None
    margin: float


@dataclass(frozen=True, slots=True)
class SizeFigures:
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
    def fixed(self) -> bool:
        """Whether no candidate changes it: every run keeps a bore of its own."""
        return is_fixed(self.size)


@dataclass(frozen=True, slots=True)
class VerdictFigures:
    """Whether the build works at the pick, and what is wrong where it does not."""

    size: str
    works: bool | None
    limits: tuple[Limit, ...]


@dataclass(frozen=True, slots=True)
class HardestPoint:
    """What a pump has to give at the point that asks most; `at` is its number, None for the goal."""

    at: int | None
    flow_m3_s: float
    rise_Pa: float


@dataclass(frozen=True, slots=True)
class PumpTarget:
    """What a pump has to give at the line to fit; where there is none, at the pick."""

    size: str
    flow_m3_s: float
    rise_Pa: float
    hardest: HardestPoint | None

    @property
    def fixed(self) -> bool:
        """Whether no candidate changes it: every run keeps a bore of its own."""
        return is_fixed(self.size)


@dataclass(frozen=True, slots=True)
class Stage:
    """The crank power at which so many pumps are just enough, and the boost there."""

    pumps: int
    power_W: float
    boost_Pa: float


@dataclass(frozen=True, slots=True)
class PumpFigures:
    """The pump apart from any one size; the two capacities by one law alone where its kind is not known."""

    capacity_without_feed_loss_m3_s: float
    capacity_turbine_m3_s: float | None
    capacity_displacement_m3_s: float | None
    dead_head_Pa: float | None
    lowest_rating_Pa: float | None
    stages: tuple[Stage, ...]


@dataclass(frozen=True, slots=True)
class ReturnSize:
    """One candidate size of the return line, at idle."""

    size: str
    flow_m3_s: float
    velocity_m_s: float | None
    back_pressure_Pa: float
    regulator_loss_Pa: float
    holds: bool
    at_ease: bool
    creep_Pa: float
    creep_all_on_Pa: float | None

    @property
    def fixed(self) -> bool:
        """Whether no candidate changes it: every run keeps a bore of its own."""
        return is_fixed(self.size)


@dataclass(frozen=True, slots=True)
class ReturnFigures:
    """The return line at idle, at the size that is judged."""

    size: str
    flow_m3_s: float
    velocity_m_s: float | None
    back_pressure_Pa: float
    regulator_loss_Pa: float
    holds: bool
    at_ease: bool
    creep_Pa: float
    creep_all_on_Pa: float | None
    smallest_that_holds: str | None
    smallest_at_ease: str | None
    sizes: tuple[ReturnSize, ...]

    @property
    def fixed(self) -> bool:
        """Whether no candidate changes it: every run keeps a bore of its own."""
        return is_fixed(self.size)


@dataclass(frozen=True, slots=True)
class InletFigures:
    """The pump's inlet at the capacity of the pick."""

    velocity_m_s: float | None
    band: Band | None
    pressure_abs_Pa: float
    vapour_margin_Pa: float | None


@dataclass(frozen=True, slots=True)
class WiringFigures:
    """One circuit of the pump's wiring at the capacity of the pick."""

    pump_volts_V: float
    loss_V: float
    current_A: float | None
    total_A: float | None
    peak_current_A: float | None
    fuse_A: float | None
    ampacity_A: float | None
    smallest_wire: str | None


@dataclass(frozen=True, slots=True)
class InjectorFigures:
    """The injectors at the goal; where none are given, the smallest rating for one a cylinder alone."""

    count: int
    wide_open_flow_each_kg_s: float | None
    duty: float | None
    smallest_rating_m3_s: float | None
    within_limit: bool | None


@dataclass(frozen=True, slots=True)
class HeatFigures:
    """Heat that the pumps put into fuel that goes round at cruise, and how long a tank lasts at full power."""

    rise_K_per_h: float | None
    lasts_s: float


@dataclass(frozen=True, slots=True)
class SurgeFigures:
    """The surge pot and its lift pump."""

    lift_needed_m3_s: float | None
    lift_margin: float | None
    holds_s: float | None


@dataclass(frozen=True, slots=True)
class Ceiling:
    """The crank power at which one part alone gives out; `run` is the number of a kept run that stands for the feed."""

    part: CeilingPart
    max_power_W: float
    basis: CeilingBasis
    run: int | None = None


@dataclass(frozen=True, slots=True)
class NextFigures:
    """The next goal with today's parts."""

    crank_power_W: float
    boost_Pa: float
    recommended: str | None
    margin: float | None
    works: bool | None
    limits: tuple[Limit, ...]
    target_flow_m3_s: float
    target_rise_Pa: float


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class StressFigures:
    """One bad day."""

    case: str
    margin: float | None
    vapour_margin_Pa: float | None
    works: bool | None
    limits: tuple[Limit, ...]


@dataclass(frozen=True, slots=True)
class Assumption:
    """A key that was left out, and the value taken for it, as the file would say it."""

    key: str
    value: str


@dataclass(frozen=True, slots=True)
class GaugeReading:
    """Gauge pressures in one state of the engine; None where they are not known or the pumps cannot hold them."""

    when: GaugeState
    rail_Pa: float | None
    pump_Pa: float | None


@dataclass(frozen=True, slots=True)
class WireChoice:
    """A gauge at the working current: volts lost in it, what it carries, whether it does and whether it is fitted."""

    gauge: int
    loss_V: float
    ampacity_A: float
    does: bool
    given: bool


@dataclass(frozen=True, slots=True)
class InjectorChoice:
    """A rating at the rated pressure: the duty that it would run at, whether it does and whether it is fitted."""

    rating_m3_s: float
    duty: float
    does: bool
    given: bool


@dataclass(frozen=True, slots=True)
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
    assumed: tuple[Assumption, ...]
    gauge: tuple[GaugeReading, ...]
    wire_choices: tuple[WireChoice, ...]
    injector_choices: tuple[InjectorChoice, ...]

    def row(self, size: str | None) -> SizeFigures | None:
        """The figures of one candidate, None where no row has that size."""
        return next((row for row in self.sizes if row.size == size), None)

    @property
    def pick(self) -> SizeFigures:
        """The row of the size that the build is judged at."""
        return next(row for row in self.sizes if row.size == self.verdict.size)
