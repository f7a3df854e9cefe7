"""What was measured, held against the figures, named as the keys of the result; SI, None where nothing is known."""

from __future__ import annotations

from typing import Any, Literal

from fuelwiz.record import record

GaugeItem = Literal["hose off", "idle", "full power", "volts", "current"]
"""What is read on the finished car, in the order of the file."""

GaugeCause = Literal[
    "as expected",
    "set low",
    "set high",
    "return too small",
    "does not follow",
    "other vacuum",
    "volts low",
    "pump short",
    "line or pump short",
    "other boost",
    "wires lose more",
    "wires lose less",
    "draws more",
    "draws less",
]
"""The likely cause of a difference between a gauge and the figures."""

Signature = Literal[
    "falls with flow", "falls with its square", "high at idle", "falls later", "set low", "slope"
]
"""What a log shows of a fuel system that is not as it should be."""

Known = Literal["factor", "at least", "nothing"]
"""What a log tells of the pumps: how good they are, how good at least, or nothing."""

Reason = Literal[
    "bench tests",
    "gauge with the hose off",
    "gauge at the pump",
    "pressure sagged in the log",
    "rail in the log",
    "flow and dyno power in the log",
    "volts in the log",
    "bins of the log",
]
"""Where a proposal comes from."""


@record
class BenchTest:
    """One bench test; the factor is None where the sheet gives nothing to compare with."""

    flow_m3_s: float
    model_m3_s: float | None
    factor: float | None
    tolerance: float | None
    odd: bool


@record
class BenchFigures:
    """All bench tests: what the pumps send over what the model says, and how far off that may be."""

    factor: float | None
    tolerance: float | None
    tests: tuple[BenchTest, ...]


@record
class Expected:
    """What a bench test should show: so much fuel in so many seconds."""

    pumps: int
    rail_Pa: float
    volts_V: float
    volume_m3: float
    time_s: float


@record
class GaugeDifference:
    """One reading beside what was predicted, and the likely cause where they differ."""

    reading: int
    item: GaugeItem
    read: float
    predicted: float | None
    cause: GaugeCause | None


@record
class Proposal:
    """A value for a key of the session file, as the file would say it, and for the key of its tolerance."""

    key: str
    value: Any
    tolerance_key: str | None
    tolerance: str | None
    reason: Reason
    date: str = ""


@record
class Span:
    """A stretch of a log."""

    start_s: float
    end_s: float


@record
class Zero:
    """What was taken off the sensors' readings; 0 where nothing could be."""

    rail_Pa: float
    manifold_Pa: float


@record
class Bin:
    """The full-load samples of a stretch of engine speed, or of one pull; pressures across the injectors."""

    rpm_low: float | None
    rpm_high: float | None
    boost_Pa: float
    target_Pa: float
    injector_Pa: float
    flow_m3_s: float
    capacity_m3_s: float | None
    sags: bool


@record
class PumpKnown:
    """What a log tells of the pumps."""

    known: Known
    factor: float | None
    tolerance: float | None


@record
class Shown:
    """A signature, and the time in s of the first sample that shows it."""

    name: Signature
    first_s: float


@record
class ColumnTaken:
    """A column of the log as it was read; `guessed` where the session does not name it."""

    key: str
    head: str
    unit: str
    guessed: bool


@record
class LogFigures:
    """What a log of a run shows; `samples` are those at full load, of `rows` that could be read."""

    samples: int
    rows: int
    skipped: int
    pulls: tuple[Span, ...]
    zero: Zero
    bins: tuple[Bin, ...]
    regulator_slope: float | None
    bsfc_kg_J: float | None
    wiring_ohm: float | None
    pump: PumpKnown
    signatures: tuple[Shown, ...]
    proposals: tuple[Proposal, ...]
    columns: tuple[ColumnTaken, ...]
    metered: bool
    """Whether the flow is that of a column of its own, not calculated from the injectors."""
    lowest: int | None
    """The bin whose pressure lies furthest below what is wanted; None without bins."""
    tightest: int | None
    """The bin at which the pumps have least to spare; None where their flow is not known."""


@record
class LoggedRun:
    """The log that a build names: its file, the day it was last changed, and what it shows, or why it shows nothing."""

    file: str
    day: str
    figures: LogFigures | None
    refused: str = ""


@record
class Taken:
    """A value of the build that was measured: its key, and what the comment beside it says of that."""

    key: str
    reason: Reason
    when: str


@record
class Measured:
    """What was measured of a build and what can be measured yet; its log where that was read."""

    bench: BenchFigures | None
    expected: tuple[Expected, ...]
    gauge: tuple[GaugeDifference, ...]
    proposals: tuple[Proposal, ...]
    log: LoggedRun | None = None
    taken: tuple[Taken, ...] = ()
