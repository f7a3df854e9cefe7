"""What was measured on the car: bench tests, gauge readings, and the columns of a log.

Values are SI floats. `model_fields_set` keeps what the file gave; all else is filled in.
"""

from typing import Annotated, Literal

from fuelwiz.session.columns import Column
from fuelwiz.session.fields import Section, choice, column, count, quantity, table, text

ReadAt = Literal["rail", "pump"]

DATE = text(most=40)
READING = quantity("gauge_pressure", "0 psi", "300 psi", example="43 psi")
VOLTS = quantity("voltage", "5 V", "24 V", example="13.1 V")


class Bench(Section):
    """One bench test: fuel pumped into a can against the clock."""

    date: Annotated[str, DATE]
    at: Annotated[ReadAt, choice(ReadAt, "rail")]
    pressure: Annotated[
        float, quantity("gauge_pressure", "0 psi", "300 psi", required=True, example="43.5 psi")
    ]
    volts: Annotated[float, quantity("voltage", "5 V", "24 V", required=True, example="13.4 V")]
    pumps: Annotated[int, count(1, 6, example=1)]
    volume: Annotated[float | None, quantity("volume", "0.1 l", "200 l", example="4 l")]
    mass: Annotated[float | None, quantity("mass", "0.1 kg", "200 kg", example="2.9 kg")]
    time: Annotated[float, quantity("time", "1 s", "3600 s", required=True, example="52 s", shown=("s", "s"))]


class Gauge(Section):
    """What gauges showed on the finished car."""

    date: Annotated[str, DATE]
    hose_off: Annotated[float | None, READING]
    idle: Annotated[float | None, READING]
    full_power: Annotated[float | None, READING]
    volts: Annotated[float | None, VOLTS]
    current: Annotated[float | None, quantity("current", "0 A", "200 A", example="12 A")]


class LogColumns(Section):
    """What the columns of a log are."""

    time: Annotated[Column | None, column("time", "s")]
    rail: Annotated[Column | None, column("gauge_pressure", "psi")]
    manifold: Annotated[Column | None, column("absolute_pressure", "kPa")]
    boost: Annotated[Column | None, column("gauge_pressure", "psi")]
    rpm: Annotated[Column | None, column(None, "rpm")]
    duty: Annotated[Column | None, column("fraction", "%")]
    pulse_width: Annotated[Column | None, column("time", "ms")]
    flow: Annotated[Column | None, column("flow", "L/h")]
    volts: Annotated[Column | None, column("voltage", "V")]
    battery: Annotated[Column | None, column("voltage", "V")]
    current: Annotated[Column | None, column("current", "A")]
    temperature: Annotated[Column | None, column("temperature", "degC")]
    ethanol: Annotated[Column | None, column("fraction", "%")]
    power: Annotated[Column | None, column("power", "hp")]
    barometer: Annotated[Column | None, column("absolute_pressure", "bar", or_value=True)]


class Log(Section):
    """A log of a run, and what its columns are."""

    file: Annotated[str, text()]
    columns: LogColumns = table()
