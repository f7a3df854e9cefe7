"""The figures of the parts around the line: pump, return, inlet, wiring, injectors, heat, surge pot, gauge; SI."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from fuelwiz.record import record
from fuelwiz.sizing.vocabulary import Band, GaugeState, PathKind, is_fixed


class AtASize:
    """Figures at one size of line, a candidate or none."""

    __slots__ = ()
    size: str

    @property
    def fixed(self) -> bool:
        """Whether no candidate changes it: every run keeps a bore of its own."""
        return is_fixed(self.size)


@record
class HardestPoint:
    """What a pump has to give at the point that asks most; `at` is its number, None for the goal."""

    at: int | None
    flow_m3_s: float
    rise_Pa: float


@record
class PumpTarget(AtASize):
    """What a pump has to give at the line to fit; where there is none, at the pick."""

    size: str
    flow_m3_s: float
    rise_Pa: float
    hardest: HardestPoint | None


@record
class Stage:
    """The crank power at which so many pumps are just enough, and the boost there."""

    pumps: int
    power_W: float
    boost_Pa: float


@record
class PumpFigures:
    """The pump apart from any one size; the two capacities by one law alone where its kind is not known."""

    capacity_without_feed_loss_m3_s: float
    capacity_turbine_m3_s: float | None
    capacity_displacement_m3_s: float | None
    dead_head_Pa: float | None
    lowest_rating_Pa: float | None
    stages: tuple[Stage, ...]


@record
class PathPart:
    """A part on the fuel's way at the goal; `number` is its place in the session, the velocity that of a run."""

    kind: PathKind
    number: int
    velocity_m_s: float | None
    loss_Pa: float


@record
class ReturnCheck:
    """What comes out of the return with the engine off: so many pumps, their volts, the pressure that is held."""

    pressure_Pa: float
    volts_V: float
    pumps: int
    flow_m3_s: float


@record
class OneVolt:
    """The share of the flow that one volt less takes away; by either law alone where the kind of pump is not known."""

    share: float
    turbine: float | None
    displacement: float | None


@record
class ReturnSize(AtASize):
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


@record
class ReturnFigures(ReturnSize):
    """The return line at idle: the size that is judged, and all of them."""

    smallest_that_holds: str | None
    smallest_at_ease: str | None
    sizes: tuple[ReturnSize, ...]


@record
class InletFigures:
    """The pump's inlet at the capacity of the pick."""

    velocity_m_s: float | None
    band: Band | None
    pressure_abs_Pa: float
    vapour_margin_Pa: float | None


@record
class Circuit:
    """The fullest circuit of the pump's wiring: what it carries, the fuse for that, and what its wire may carry."""

    pump_volts_V: float
    loss_V: float
    current_A: float | None
    total_A: float | None
    peak_current_A: float | None
    fuse_A: float | None
    ampacity_A: float | None


@record
class WiringFigures(Circuit):
    """That circuit at the capacity of the pick, and the smallest wire that does: by gauge, and of the metric ones."""

    smallest_wire: str | None
    smallest_metric_wire_m2: float | None = None


def values_of(figures: ReturnSize | Circuit) -> dict[str, Any]:
    """Figures by their names: what those are made with that have these and more."""
    return {field.name: getattr(figures, field.name) for field in fields(figures)}


@record
class InjectorFigures:
    """The injectors at the goal; where none are given, the smallest rating for one a cylinder alone."""

    count: int
    wide_open_flow_each_kg_s: float | None
    duty: float | None
    smallest_rating_m3_s: float | None
    within_limit: bool | None


@record
class HeatFigures:
    """Heat that the pumps put into fuel that goes round at cruise, and how long a tank lasts at full power."""

    rise_K_per_h: float | None
    lasts_s: float


@record
class SurgeFigures:
    """The surge pot and its lift pump."""

    lift_needed_m3_s: float | None
    lift_margin: float | None
    holds_s: float | None


@record
class GaugeReading:
    """Gauge pressures in one state of the engine; None where they are not known or the pumps cannot hold them."""

    when: GaugeState
    rail_Pa: float | None
    pump_Pa: float | None


@record
class WireChoice:
    """A wire at the working current: volts lost in it, what it carries, whether it does and whether it is fitted.

    `gauge` is None of one that has none. One that carries its fuse and does not do loses more than a wire should.
    """

    gauge: int | None
    loss_V: float
    ampacity_A: float
    does: bool
    given: bool
    area_m2: float
    carries_fuse: bool


@record
class InjectorChoice:
    """A rating at the rated pressure: the duty that it would run at, whether it does and whether it is fitted."""

    rating_m3_s: float
    duty: float
    does: bool
    given: bool
