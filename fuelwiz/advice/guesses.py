"""What is not known exactly, in words: a record for each input, and what keeps up while it stays in bounds."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.record import record
from fuelwiz.sizing.vocabulary import ADDED

if TYPE_CHECKING:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.sizing.slow_figures import InputFigures
    from fuelwiz.sizing.vocabulary import Input, Limit


@record
class Guess:
    """One input: what it is called in a sentence and in a narrow table, and the value at which it breaks, from factor
    or sum."""

    input: Input
    name: str
    short: str
    value: Callable[[Subject, float], str]


def _times(what: str) -> Callable[[Subject, float], str]:
    def value(subject: Subject, factor: float) -> str:
        return f"{subject.numbers.figure('percent', factor, 1.0)} of {what}"

    return value


def _fuel_use(subject: Subject, factor: float) -> str:
    return subject.numbers.figure("bsfc", factor * subject.figures.demand.bsfc_kg_J)


def _driveline(subject: Subject, added: float) -> str:
    return subject.numbers.figure("percent", subject.session.goal.driveline_loss + added)


def _ethanol(subject: Subject, added: float) -> str:
    return subject.numbers.figure("percent", subject.session.fuel.ethanol + added)


def _temperature(subject: Subject, added: float) -> str:
    return subject.numbers.figure("temperature", subject.session.fuel.temperature + added)


def _boost(subject: Subject, added: float) -> str:
    return subject.numbers.figure("pressure", subject.session.pressure.boost + added)


def _base(subject: Subject, added: float) -> str:
    return subject.numbers.figure("pressure", subject.session.pressure.base + added)


def _voltage(subject: Subject, added: float) -> str:
    pump, wiring = subject.session.pump, subject.session.wiring
    volts = ASSUMED_VOLTS if pump is None or pump.volts is None else pump.volts
    if wiring is not None and (pump is None or pump.volts is None):
        volts = wiring.supply
    return subject.numbers.figure("volts", volts + added)


def _vapour(subject: Subject, factor: float) -> str:
    reid = subject.session.fuel.reid_pressure
    if reid is None:
        return f"{subject.numbers.figure('percent', factor, 1.0)} of a usual one"
    return subject.numbers.figure("pressure", factor * reid)


def _regulator(subject: Subject, factor: float) -> str:
    line = subject.session.return_line
    assert line is not None
    lost = subject.numbers.figure("pressure", factor * line.regulator.rated_loss)
    return f"{lost} at {subject.numbers.figure('flow', line.regulator.rated_flow)}"


GUESS_RECORDS = (
    Guess("fuel_use", "fuel use", "fuel use", _fuel_use),
    Guess("driveline", "driveline loss", "driveline loss", _driveline),
    Guess("ethanol", "the fuel's ethanol", "fuel's ethanol", _ethanol),
    Guess("temperature", "fuel temperature", "fuel temp.", _temperature),
    Guess("boost", "boost", "boost", _boost),
    Guess("base", "base pressure", "base pressure", _base),
    Guess("pump_flow", "the pump's flow", "pump's flow", _times("its sheet")),
    Guess("voltage", "volts at full load", "volts", _voltage),
    Guess("pump_kind", "the pump at two voltages", "pump's kind", _times("its sheet")),
    Guess("feed_bore", "the bore of the line", "line's bore", _times("what is taken")),
    Guess("fittings", "the loss of the fittings", "fittings' loss", _times("what is taken")),
    Guess("length", "the length of the line", "line's length", _times("what is given")),
    Guess("filters", "the loss of filters and parts", "filters' loss", _times("what is taken")),
    Guess("vapour", "its Reid pressure", "Reid pressure", _vapour),
    Guess("injector_flow", "the injectors' flow", "injector flow", _times("their rating")),
    Guess("return_regulator", "the regulator's loss wide open", "regulator loss", _regulator),
    Guess("return_bore", "the bore of the return", "return's bore", _times("what is taken")),
)
GUESSES: dict[Input, Guess] = {guess.input: guess for guess in GUESS_RECORDS}


def break_value(subject: Subject, guess: InputFigures) -> tuple[str, bool]:
    """Where a guess breaks, with its unit, and whether that lies above today's value."""
    assert guess.breaks is not None
    text = GUESSES[guess.input].value(subject, guess.breaks)
    return text, guess.breaks > (0.0 if guess.input in ADDED else 1.0)


@record
class KeepsUp:
    """What holds, would hold, or fails where a limit is met or not."""

    holds: str
    would_hold: str
    fails: str


_KEEPS_UP: dict[Limit, KeepsUp] = {
    "velocity": KeepsUp(
        "the line is large enough", "the line would be large enough", "the feed line is too small"
    ),
    "delivery": KeepsUp(
        "the line is large enough", "the line would be large enough", "the feed line is too small"
    ),
    "sag": KeepsUp("the rail holds", "the rail would hold", "rail pressure drops too far"),
    "pump": KeepsUp("the pump keeps up", "the pump would keep up", "the pump is too small"),
    "relief": KeepsUp(
        "the relief valve stays shut", "the relief valve would stay shut", "the relief valve opens"
    ),
    "vapour": KeepsUp("the fuel stays liquid", "the fuel would stay liquid", "the fuel boils at the pump"),
    "inlet": KeepsUp(
        "the suction line is large enough",
        "the suction line would be large enough",
        "the suction line starves",
    ),
    "kept run": KeepsUp(
        "the kept run is large enough", "the kept run would be large enough", "the kept run is too small"
    ),
    "injector pressure": KeepsUp(
        "the injectors get pressure", "the injectors would get pressure", "they get none"
    ),
    "injectors": KeepsUp(
        "the injectors keep up", "the injectors would keep up", "the injectors are too small"
    ),
    "return": KeepsUp("the return holds", "the return would hold", "the return does not hold at idle"),
    "lift": KeepsUp("the lift pump keeps up", "the lift pump would keep up", "the lift pump is too small"),
    "rating": KeepsUp("no rating is passed", "no rating would be passed", "a pressure rating is passed"),
    "fuse": KeepsUp("the wire carries its fuse", "the wire would carry its fuse", "the wire is too thin"),
}


def keeps_up(subject: Subject, limit: Limit) -> KeepsUp:
    """The words of a limit; those of several pumps in the plural."""
    words = _KEEPS_UP[limit]
    if limit == "pump" and subject.pump_word == "pumps":
        return KeepsUp("the pumps keep up", "the pumps would keep up", "the pumps are too small")
    return words
