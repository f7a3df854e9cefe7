"""What the builder said, section by section: every key once, with its type, range and fallback.

Values are SI floats. `model_fields_set` keeps what the file gave; all else is filled in.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, PrivateAttr

from fuelwiz.session.fields import (
    CHANGE,
    FITTING_COUNTS,
    FLAG,
    FORMAT,
    INJECTOR_FLOW,
    KEPT,
    SIZE,
    WIRE,
    Tables,
    bore,
    choice,
    count,
    points,
    quantity,
    ratio,
    sizes,
    table,
    text,
    velocities,
)
from fuelwiz.session.readers import Size

Units = Literal["us", "metric"]
PowerAt = Literal["crank", "wheels"]
Induction = Literal["none", "supercharger", "turbo"]
FuelKind = Literal["blend", "methanol", "own"]
Reference = Literal["manifold", "atmosphere"]
Regulation = Literal["rail", "tank", "none"]
PumpPlace = Literal["tank", "surge", "outside"]
Arrangement = Literal["parallel", "series"]
ReturnPath = Literal["wire", "chassis"]
Hose = Literal["nominal", "ptfe", "rubber", "tube"]
FilterPlace = Literal["line", "pump"]
SurgeReturn = Literal["surge", "tank"]

LOSS = quantity("pressure_change", "0 psi", "100 psi", required=True, example="0.8 psi")
FLOW = quantity("flow", "1 gal/h", "5000 gal/h", required=True, example="120 gal/h")
RATING = quantity("pressure_change", "1 psi", "10000 psi", example="500 psi")
CLOGGING = ratio(0.1, 20, 1.0)


class Section(BaseModel):
    """A table of the file: no unknown keys, nothing bent into shape, nothing changed afterwards."""

    model_config = ConfigDict(strict=True, extra="forbid", frozen=True, defer_build=True)


class Goal(Section):
    """What the engine is to make, and where the build goes next."""

    power: Annotated[float, quantity("power", "10 hp", "5000 hp", required=True, example="410 hp")]
    power_at: Annotated[PowerAt, choice(PowerAt, "crank")]
    driveline_loss: Annotated[float, quantity("fraction", "0 %", "50 %", "15 %")]
    reserve: Annotated[float, quantity("fraction", "0 %", "200 %", "15 %")]
    next_power: Annotated[float | None, quantity("power", "10 hp", "5000 hp", example="500 hp")]
    next_boost: Annotated[float | None, quantity("gauge_pressure", "0 psi", "100 psi", example="27 psi")]


class Engine(Section):
    """The engine as the fuel system sees it."""

    cylinders: Annotated[int, count(1, 24, 4)]
    induction: Annotated[Induction, choice(Induction, "turbo")]
    bsfc: Annotated[float | None, quantity("bsfc", "0.05 lb/(hp*h)", "5 lb/(hp*h)", example="0.63 lb/(hp*h)")]
    lambda_: Annotated[float | None, ratio(0.4, 2, example=0.8)] = Field(alias="lambda")
    idle_fuel: Annotated[float | None, quantity("flow", "0 gal/h", "2000 gal/h", example="0.8 gal/h")]


class Fuel(Section):
    """What is burnt, and how warm it is."""

    kind: Annotated[FuelKind, choice(FuelKind, "blend")]
    ethanol: Annotated[float, quantity("fraction", "0 %", "100 %", "10 %")]
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
    reference: Annotated[Reference, choice(Reference, "manifold")]
    regulator: Annotated[Regulation, choice(Regulation, "rail")]
    altitude: Annotated[float, quantity("length", "-500 m", "6000 m", "0 m")]


class PumpCurve(Section):
    """What one pump gives at one voltage."""

    voltage: Annotated[float, quantity("voltage", "5 V", "24 V", "13.5 V")]
    points: Annotated[
        tuple[tuple[float, float], ...],
        points(
            quantity("flow", "0 gal/h", "2000 gal/h", example="97 gal/h"),
            falls=True,
            required=True,
            example=[["40 psi", "97 gal/h"], ["60 psi", "84 gal/h"]],
        ),
    ]


class Pump(Section):
    """The pump or pumps."""

    name: Annotated[str, text()]
    place: Annotated[PumpPlace, choice(PumpPlace, "tank")]
    count: Annotated[int, count(1, 6, 1)]
    arrangement: Annotated[Arrangement, choice(Arrangement, "parallel")]
    running_at_idle: Annotated[int, count(1, 6, example=1)]
    volts: Annotated[float | None, quantity("voltage", "5 V", "24 V", example="13.1 V")]
    relief: Annotated[float | None, quantity("pressure_change", "5 psi", "500 psi", example="115 psi")]
    current: Annotated[
        tuple[tuple[float, float], ...],
        points(
            quantity("current", "0 A", "200 A", example="9 A"),
            falls=False,
            required=False,
            example=[["40 psi", "9 A"], ["80 psi", "15 A"]],
        ),
    ]
    curve: Annotated[tuple[PumpCurve, ...], Tables(1, 8)]


class Wiring(Section):
    """From the alternator to the pump and back."""

    supply: Annotated[float, quantity("voltage", "5 V", "24 V", required=True, example="13.8 V")]
    wire: Annotated[float | None, WIRE]
    length: Annotated[float | None, quantity("length", "0 ft", "100 ft", example="14 ft")]
    return_path: Annotated[ReturnPath, choice(ReturnPath, "wire")]
    connections: Annotated[float, quantity("voltage", "0 V", "5 V", "0 V")]
    temperature: Annotated[float, quantity("temperature", "-40 degC", "150 degC", "40 degC")]
    circuits: Annotated[int, count(1, 6, example=1)]


class Run(Section):
    """A run of line with its fittings."""

    what: Annotated[str, text()]
    hose: Annotated[Hose, choice(Hose, "ptfe")]
    length: Annotated[float, quantity("length", "0 ft", "300 ft", "15 ft")]
    fittings: Annotated[dict[str, int], FITTING_COUNTS]
    extra_k: Annotated[float, ratio(0, 1000, 0.0)]
    rise: Annotated[float, quantity("length", "-10 m", "10 m", "0 m")]
    side_by_side: Annotated[int, count(1, 8, 1)]
    pressure_rating: Annotated[float | None, RATING]
    size: Annotated[Size | None, SIZE]
    bore: Annotated[float | None, bore(example="8.1 mm")]


class InletRun(Run):
    """A run of suction line; it gives its size or bore."""

    length: Annotated[float, quantity("length", "0 ft", "300 ft", "2 ft")]


class Filter(Section):
    """A filter in the feed."""

    what: Annotated[str, text()]
    rated_flow: Annotated[float, FLOW]
    rated_loss: Annotated[float, quantity("pressure_change", "0 psi", "100 psi", "1.5 psi")]
    clogging: Annotated[float, CLOGGING]
    place: Annotated[FilterPlace, choice(FilterPlace, "line")]
    pressure_rating: Annotated[float | None, RATING]


class Part(Section):
    """Anything else in line: sensor, check valve, block, cooler."""

    what: Annotated[str, text()]
    rated_flow: Annotated[float, FLOW]
    rated_loss: Annotated[float, LOSS]


class Feed(Section):
    """The line from pump to rail."""

    sizes: Annotated[tuple[Size, ...], sizes(["-4", "-6", "-8", "-10", "-12", "-16"])]
    chosen: Annotated[Size | None, SIZE]
    end_ratio: Annotated[float, ratio(0.3, 1, 0.85)]
    constant_loss: Annotated[float, quantity("pressure_change", "0 psi", "100 psi", "0 psi")]
    run: Annotated[tuple[Run, ...], Tables(0, 40)]
    filter: Annotated[tuple[Filter, ...], Tables(0, 40)]
    part: Annotated[tuple[Part, ...], Tables(0, 40)]


class Strainer(Section):
    """The sock or strainer before the pump."""

    rated_flow: Annotated[float, FLOW]
    rated_loss: Annotated[float, LOSS]
    clogging: Annotated[float, CLOGGING]


class Inlet(Section):
    """What lies between the fuel in the tank and the pump."""

    fuel_head: Annotated[float, quantity("length", "-5 m", "5 m", "0 m")]
    strainer: Strainer | None = None
    run: Annotated[tuple[InletRun, ...], Tables(0, 40)]


class Regulator(Section):
    """The regulator, wide open."""

    rated_flow: Annotated[float, FLOW]
    rated_loss: Annotated[float, LOSS]


OPEN_REGULATOR = {"rated_flow": "100 gal/h", "rated_loss": "6 psi"}


class ReturnLine(Section):
    """The line from the regulator home to the tank."""

    sizes: Annotated[tuple[Size, ...], sizes(["-4", "-6", "-8", "-10", "-12"])]
    chosen: Annotated[Size | None, SIZE]
    run: Annotated[tuple[Run, ...], Tables(0, 40)]
    part: Annotated[tuple[Part, ...], Tables(0, 40)]
    regulator: Regulator = table(OPEN_REGULATOR)


class Tank(Section):
    """The tank that warms up and empties."""

    volume: Annotated[float | None, quantity("volume", "0.5 l", "2000 l", example="55 l")]
    fill: Annotated[float, quantity("fraction", "1 %", "100 %", "50 %")]
    pressure: Annotated[float, quantity("gauge_pressure", "-5 psi", "15 psi", "0 psi")]


class Surge(Section):
    """A surge pot with a lift pump."""

    volume: Annotated[float | None, quantity("volume", "0.1 l", "50 l", example="2 l")]
    lift_flow: Annotated[float | None, quantity("flow", "0 gal/h", "2000 gal/h", example="60 gal/h")]
    return_to: Annotated[SurgeReturn, choice(SurgeReturn, "surge")]


class Injectors(Section):
    """The injectors, as they are rated on n-heptane."""

    count: Annotated[int, count(1, 24, example=4)]
    rated_flow: Annotated[float, INJECTOR_FLOW]
    rated_pressure: Annotated[float, quantity("pressure_change", "5 psi", "300 psi", "3 bar")]
    duty_limit: Annotated[float, quantity("fraction", "1 %", "100 %", "85 %")]


class Bands(Section):
    """The velocities at which the words change from easy to unfit."""

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
    _changed: Any = PrivateAttr(default=None)

    def hold(self, changed: Session) -> None:
        """Keep the session that the case makes."""
        self._changed = changed

    @property
    def changed(self) -> Session:
        """The session with the case's values."""
        assert isinstance(self._changed, Session)
        return self._changed


class StressSection(Section):
    """Cases beside the program's own."""

    case: Annotated[tuple[StressCase, ...], Tables(0, 40)]


def _table_or_nothing(value: Any) -> Any:
    return value if isinstance(value, dict) else {}


class Session(Section):
    """One session file."""

    format: Annotated[int, FORMAT]
    name: Annotated[str, text(None)]
    notes: Annotated[str, text(most=4000, lines=True)]
    show_units: Annotated[Units, choice(Units, "us")]
    goal: Goal = table()
    engine: Engine = table()
    fuel: Fuel = table()
    pressure: Pressure = table()
    pump: Pump | None = None
    wiring: Wiring | None = None
    feed: Feed = table()
    inlet: Inlet | None = None
    return_line: ReturnLine | None = None
    tank: Tank = table()
    surge: Surge | None = None
    injectors: Injectors | None = None
    bands: Bands = table()
    fitted: Fitted = table()
    record: Annotated[Record | None, BeforeValidator(_table_or_nothing)] = None
    stress: StressSection = table()
