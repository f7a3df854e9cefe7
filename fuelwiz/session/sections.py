"""What the builder said, section by section: every key once, with its type, range and fallback.

Values are SI floats. `model_fields_set` keeps what the file gave; all else is filled in.
"""

from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, ConfigDict, Field, PrivateAttr

from fuelwiz.session.fields import (
    CHANGE,
    FLAG,
    FORMAT,
    INJECTOR_FLOW,
    KEPT,
    Leaf,
    Section,
    Tables,
    choice,
    count,
    quantity,
    ratio,
    table,
    text,
    velocities,
    words,
)
from fuelwiz.session.hardware import Feed, Inlet, Pump, ReturnLine, Wiring
from fuelwiz.session.measurements import Bench, Gauge, Log
from fuelwiz.terms import USUAL_ETHANOL, FuelKind, Induction
from fuelwiz.units import BaseSystem, PowerUnit

PowerAt = Literal["crank", "wheels"]
Injection = Literal["port", "direct"]
Reference = Literal["manifold", "atmosphere"]
Regulation = Literal["rail", "tank", "none"]
SurgeReturn = Literal["surge", "tank"]
OnTheCar = Literal["line", "return_line", "pump", "regulator", "injectors", "filter", "strainer", "wire"]


class Goal(Section):
    """What the engine is to make, and where the build goes next."""

    power: Annotated[float, quantity("power", "10 hp", "5000 hp", required=True, example="410 hp")]
    power_at: Annotated[PowerAt, choice(PowerAt, "crank")]
    driveline_loss: Annotated[float, quantity("fraction", "0 %", "50 %", "15 %")]
    reserve: Annotated[float, quantity("fraction", "0 %", "200 %", "15 %")]
    next_power: Annotated[float | None, quantity("power", "10 hp", "5000 hp", example="500 hp")]
    next_boost: Annotated[float | None, quantity("gauge_pressure", "0 psi", "100 psi", example="27 psi")]
    next_induction: Annotated[Induction | None, choice(Induction, example="turbo")]


class Engine(Section):
    """The engine as the fuel system sees it."""

    cylinders: Annotated[int, count(1, 24, 4)]
    induction: Annotated[Induction, choice(Induction, "turbo")]
    injection: Annotated[Injection, choice(Injection, "port")]
    rpm: Annotated[int | None, count(500, 20000, example=7200)]
    bsfc: Annotated[float | None, quantity("bsfc", "0.05 lb/(hp*h)", "5 lb/(hp*h)", example="0.63 lb/(hp*h)")]
    lambda_: Annotated[float | None, ratio(0.4, 2, example=0.8)] = Field(alias="lambda")
    idle_fuel: Annotated[float | None, quantity("flow", "0 gal/h", "2000 gal/h", example="0.8 gal/h")]


class Fuel(Section):
    """What is burnt, and how warm it is."""

    kind: Annotated[FuelKind, choice(FuelKind, "blend")]
    ethanol: Annotated[float, quantity("fraction", "0 %", "100 %", USUAL_ETHANOL)]
    temperature: Annotated[float, quantity("temperature", "-40 degC", "90 degC", "40 degC")]
    reid_pressure: Annotated[
        float | None, quantity("absolute_pressure", "0.1 psi", "20 psi", example="7 psi")
    ]
    density: Annotated[float | None, quantity("density", "500 kg/m^3", "1500 kg/m^3", example="745 kg/m^3")]
    viscosity: Annotated[
        float | None, quantity("viscosity", "0.05 mm^2/s", "20 mm^2/s", example="0.6 mm^2/s")
    ]
    lhv: Annotated[float | None, quantity("heating_value", "5 MJ/kg", "60 MJ/kg", example="43.4 MJ/kg")]
    stoich: Annotated[float | None, ratio(1, 40, example=14.7)]


class Pressure(Section):
    """The regulator, and what it follows."""

    base: Annotated[float, quantity("pressure_change", "5 psi", "150 psi", "3 bar")]
    boost: Annotated[float, quantity("gauge_pressure", "0 psi", "100 psi", example="21 psi")]
    idle_vacuum: Annotated[
        float, quantity("pressure_change", "0 psi", "14.5 psi", example="9 psi", shown=("inHg", "kPa"))
    ]
    reference: Annotated[Reference, choice(Reference, example="manifold")]
    regulator: Annotated[Regulation, choice(Regulation, "rail")]
    altitude: Annotated[float, quantity("length", "-500 m", "6000 m", "0 m")]


class Pull(Section):
    """One more point of full power, off a dyno sheet or a log."""

    rpm: Annotated[int | None, count(500, 20000, example=4500)]
    power: Annotated[float, quantity("power", "10 hp", "5000 hp", required=True, example="330 hp")]
    boost: Annotated[float, quantity("gauge_pressure", "0 psi", "100 psi", required=True, example="24 psi")]


class Tank(Section):
    """The tank that warms up and empties."""

    volume: Annotated[float | None, quantity("volume", "0.5 l", "2000 l", example="55 l")]
    fill: Annotated[float, quantity("fraction", "1 %", "100 %", "50 %")]
    pressure: Annotated[float, quantity("gauge_pressure", "-5 psi", "15 psi", "0 psi")]


class Surge(Section):
    """A surge pot with a lift pump."""

    volume: Annotated[float | None, quantity("volume", "0.1 l", "50 l", example="2 l")]
    lift_flow: Annotated[float | None, quantity("flow", "0 gal/h", "2000 gal/h", example="60 gal/h")]
    pressure: Annotated[float | None, quantity("gauge_pressure", "-5 psi", "15 psi", example="0 psi")]
    return_to: Annotated[SurgeReturn, choice(SurgeReturn, "surge")]


class Injectors(Section):
    """The injectors, as they are rated on n-heptane."""

    count: Annotated[int, count(1, 48, example=4)]
    rated_flow: Annotated[float, INJECTOR_FLOW]
    rated_pressure: Annotated[float, quantity("pressure_change", "5 psi", "300 psi", "3 bar")]
    duty_limit: Annotated[float, quantity("fraction", "1 %", "100 %", "85 %")]
    dead_time: Annotated[float | None, quantity("time", "0 ms", "5 ms", example="0.7 ms")]


def _share(example: str) -> Leaf:
    return quantity("fraction", "0 %", "200 %", example=example)


def _points(example: str) -> Leaf:
    return quantity("fraction", "0 %", "50 %", example=example)


def _volts(example: str) -> Leaf:
    return quantity("voltage", "0 V", "5 V", example=example)


def _pressure(example: str) -> Leaf:
    return quantity("pressure_change", "0 psi", "50 psi", example=example)


class Tolerance(Section):
    """How far each input may be off, 95 times in 100; what is left out has its usual one."""

    fuel_use: Annotated[float | None, _share("6 %")]
    driveline: Annotated[float | None, _points("2 %")]
    ethanol: Annotated[float | None, _points("3 %")]
    temperature: Annotated[float | None, quantity("temperature_change", "0 K", "60 K", example="8 K")]
    boost: Annotated[float | None, _pressure("1 psi")]
    base: Annotated[float | None, _pressure("1 psi")]
    pump_flow: Annotated[float | None, _share("5 %")]
    voltage: Annotated[float | None, _volts("0.2 V")]
    feed_bore: Annotated[float | None, _share("3 %")]
    fittings: Annotated[float | None, _share("30 %")]
    length: Annotated[float | None, _share("5 %")]
    filters: Annotated[float | None, _share("40 %")]
    vapour: Annotated[float | None, _share("8 %")]
    injector_flow: Annotated[float | None, _share("4 %")]
    return_regulator: Annotated[float | None, _share("30 %")]
    return_bore: Annotated[float | None, _share("3 %")]


class Bands(Section):
    """The velocities at which the words change from easy to too fast."""

    feed: Annotated[tuple[float, ...], velocities(["4 ft/s", "6 ft/s", "8 ft/s", "10 ft/s"])]
    inlet: Annotated[tuple[float, ...], velocities(["2 ft/s", "3 ft/s", "4 ft/s", "5 ft/s"])]


class Fitted(Section):
    """What is on the car, in the builder's own words."""

    line: Annotated[str, text()]
    return_line: Annotated[str, text()]
    pump: Annotated[str, text()]
    regulator: Annotated[str, text()]
    injectors: Annotated[str, text()]
    filter: Annotated[str, text()]
    has: Annotated[tuple[OnTheCar, ...], words(OnTheCar)]


class Record(Section):
    """What the program said at the last save; changes no figure, so whatever stands there is let be."""

    model_config = ConfigDict(extra="ignore")

    inputs: Annotated[str, KEPT]
    saved: Annotated[str, KEPT]
    version: Annotated[str, KEPT]
    works: Annotated[bool | None, FLAG]
    margin: Annotated[str, KEPT]
    answer: Annotated[str, KEPT]


class StressCase(Section):
    """A case of the builder's own: keys by their path, with other values."""

    name: Annotated[str, text(None)]
    change: Annotated[dict[str, Any], CHANGE]
    _changed: "Session | None" = PrivateAttr(default=None)

    def hold(self, changed: "Session") -> None:
        """Keeps the build that the case makes."""
        self._changed = changed

    @property
    def changed(self) -> "Session":
        """The build with the case's values."""
        assert self._changed is not None
        return self._changed


class StressSection(Section):
    """Cases beside the program's own."""

    case: Annotated[tuple[StressCase, ...], Tables(0, 40)]


def _table_or_nothing(value: Any) -> Any:
    return value if isinstance(value, dict) else {}


class Session(Section):
    """One session file."""

    called: ClassVar[str] = "session file"

    format: Annotated[int, FORMAT]
    name: Annotated[str, text(None)]
    notes: Annotated[str, text(most=4000, lines=True)]
    show_units: Annotated[BaseSystem, choice(BaseSystem, "us")]
    show_power: Annotated[PowerUnit, choice(PowerUnit, example="hp")]
    goal: Goal = table()
    engine: Engine = table()
    fuel: Fuel = table()
    pressure: Pressure = table()
    pull: Annotated[tuple[Pull, ...], Tables(0, 40)]
    pump: Pump | None = None
    wiring: Wiring | None = None
    feed: Feed = table()
    inlet: Inlet | None = None
    return_line: ReturnLine | None = None
    tank: Tank = table()
    surge: Surge | None = None
    injectors: Injectors | None = None
    tolerance: Tolerance = table()
    bench: Annotated[tuple[Bench, ...], Tables(0, 40)]
    gauge: Annotated[tuple[Gauge, ...], Tables(0, 40)]
    log: Log = table()
    bands: Bands = table()
    fitted: Fitted = table()
    record: Annotated[Record | None, BeforeValidator(_table_or_nothing)] = None
    stress: StressSection = table()
