"""What carries the fuel, section by section: pump, wiring, feed, inlet, return.

Values are SI floats. `model_fields_set` keeps what the file gave; all else is filled in.
"""

from typing import Annotated, Literal

from fuelwiz.session.compounds import Size
from fuelwiz.session.fields import (
    CURRENT,
    FITTING_COUNTS,
    FLOW,
    LOSS,
    RELIEF,
    SIZE,
    WIRE,
    OrFalse,
    Section,
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
)
from fuelwiz.terms import FilterPlace, Hose, PumpKind, PumpPlace

Arrangement = Literal["parallel", "series"]
ReturnPath = Literal["wire", "chassis"]
Carries = Literal["each", "all"]

RATING = quantity("pressure_change", "1 psi", "10000 psi", example="500 psi")
CLOGGING = ratio(0.1, 20, 1.0)
CARRIES = choice(Carries, example="each")
OPEN_REGULATOR = {"rated_flow": "100 gal/h", "rated_loss": "6 psi"}
"""What a return has that gives no regulator."""


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
    kind: Annotated[PumpKind | None, choice(PumpKind, example="turbine")]
    health: Annotated[float, quantity("fraction", "20 %", "150 %", "100 %")]
    count: Annotated[int, count(1, 6, 1)]
    arrangement: Annotated[Arrangement, choice(Arrangement, "parallel")]
    running_at_idle: Annotated[int, count(1, 6, example=1)]
    volts: Annotated[float | None, quantity("voltage", "5 V", "24 V", example="13.1 V")]
    relief: Annotated[float | None, RELIEF]
    current: Annotated[tuple[tuple[float, float], ...], CURRENT]
    curve: Annotated[tuple[PumpCurve, ...], Tables(1, 8)]


class Wiring(Section):
    """From the alternator to the pump and back."""

    supply: Annotated[float, quantity("voltage", "5 V", "24 V", required=True, example="13.8 V")]
    wire: Annotated[float | None, WIRE]
    length: Annotated[float | None, quantity("length", "0 ft", "100 ft", example="14 ft")]
    return_path: Annotated[ReturnPath, choice(ReturnPath, "wire")]
    connections: Annotated[float, quantity("voltage", "0 V", "5 V", example="0.2 V")]
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
    wall: Annotated[
        float | None, quantity("length", "0.2 mm", "5 mm", example="0.035 in", shown=("in", "mm"))
    ]
    size: Annotated[Size | None, SIZE]
    bore: Annotated[float | None, bore(example="8.1 mm")]


class InletRun(Run):
    """A run of suction line; it gives its size or bore."""

    length: Annotated[float, quantity("length", "0 ft", "300 ft", "2 ft")]
    carries: Annotated[Carries | None, CARRIES]


class Filter(Section):
    """A filter in the feed."""

    what: Annotated[str, text()]
    rated_flow: Annotated[float, quantity("flow", "1 gal/h", "5000 gal/h", "120 gal/h")]
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
    filter: Annotated[tuple[Filter, ...], Tables(0, 40, fallback=1)]
    part: Annotated[tuple[Part, ...], Tables(0, 40)]


class Strainer(Section):
    """The sock or strainer before the pump."""

    rated_flow: Annotated[float, quantity("flow", "1 gal/h", "5000 gal/h", "120 gal/h")]
    rated_loss: Annotated[float, quantity("pressure_change", "0 psi", "100 psi", "0.5 psi")]
    clogging: Annotated[float, CLOGGING]
    carries: Annotated[Carries | None, CARRIES]


class Inlet(Section):
    """What lies between the fuel in the tank and the pump."""

    fuel_head: Annotated[float, quantity("length", "-5 m", "5 m", "0 m")]
    strainer: Annotated[Strainer | None, OrFalse()]
    run: Annotated[tuple[InletRun, ...], Tables(0, 40)]


class Regulator(Section):
    """The regulator, wide open."""

    rated_flow: Annotated[float, FLOW]
    rated_loss: Annotated[float, LOSS]


class ReturnLine(Section):
    """The line from the regulator home to the tank."""

    sizes: Annotated[tuple[Size, ...], sizes(["-4", "-6", "-8", "-10", "-12"])]
    chosen: Annotated[Size | None, SIZE]
    run: Annotated[tuple[Run, ...], Tables(0, 40)]
    part: Annotated[tuple[Part, ...], Tables(0, 40)]
    regulator: Regulator = table(OPEN_REGULATOR)
