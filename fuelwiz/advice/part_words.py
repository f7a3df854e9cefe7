"""Parts as they are entered, in a few words: what the path has on its line, and what a shop is asked for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from fuelwiz.advice.subject import Subject
from fuelwiz.session import Filter, Injectors, Pump, Regulator, Strainer, given
from fuelwiz.sizing.thresholds import CC_MIN, STEP_CC_MIN

if TYPE_CHECKING:
    from fuelwiz.sizing.slow_figures import ChangeFigures


def first_words(name: str) -> str:
    """A name without what follows a comma or a bracket: a part of the way has one line."""
    return name.partition(",")[0].partition(" (")[0].strip()


def pump_in_words(pump: Pump) -> str:
    """A pump by its name, and how many of it: "2 × sample pump T"."""
    named = first_words(pump.name) or "pump"
    return named if pump.count == 1 else f"{pump.count} × {named}"


def strainer_in_words(subject: Subject, strainer: Strainer) -> str:
    """A strainer by its flow: "for 120 gal/h"."""
    return f"for {subject.numbers.figure('flow', strainer.rated_flow)}"


def strainer_assumed(subject: Subject) -> bool:
    """Whether what the strainer lets through was not given, so that a usual one is taken."""
    return not {"inlet.strainer", "inlet.strainer.rated_flow"}.isdisjoint(subject.assumed)


def filter_assumed(subject: Subject, number: int) -> bool:
    """The same of a filter, by its number in the file."""
    return not {"feed.filter", f"feed.filter.{number}.rated_flow"}.isdisjoint(subject.assumed)


def filter_in_words(subject: Subject, item: Filter) -> str:
    """A filter by its name and its flow: "10 micron, for 120 gal/h"."""
    flow = subject.numbers.figure("flow", item.rated_flow)
    return ", ".join(filter(None, (first_words(item.what), f"for {flow}")))


def regulator_in_words(subject: Subject, regulator: Regulator) -> str:
    """A regulator by what it loses wide open: "6 psi at 100 gal/h"."""
    lost = subject.numbers.limit("pressure", regulator.rated_loss)
    return f"{lost} at {subject.numbers.figure('flow', regulator.rated_flow)}"


def injectors_in_words(subject: Subject, injectors: Injectors, count: int) -> str:
    """Injectors by their rating: "4 × 1300 cc/min"."""
    return f"{count} × {subject.numbers.figure('injector', injectors.rated_flow)}"


def rating_wanted(subject: Subject, least_m3_s: float, changes: Sequence[ChangeFigures]) -> str:
    """Injectors to ask for: the least that does, and the next size as the way out names it.

    Further points of full power may ask for more than a size above the goal's: what the way out names is then the least.
    """
    least = subject.numbers.figure("injector", least_m3_s)
    sold = next((one.rated_flow_m3_s for one in changes if one.change == "injectors"), None)
    if sold is None or subject.numbers.figure("injector", sold) == least:
        return f"{least} or more"
    if sold - least_m3_s > STEP_CC_MIN * CC_MIN:
        return f"{subject.numbers.figure('injector', sold)} or more"
    return f"{least} or more ({subject.numbers.number('injector', sold)} is the next size)"


def rated_below(subject: Subject, part: str, flow_m3_s: float) -> bool:
    """Whether a filter or strainer is rated, in figures that were given, for less than flows through it."""
    session = subject.session
    if part == "filter":
        return any(
            given(session, f"feed.filter.{at}.rated_flow") and item.rated_flow < flow_m3_s
            for at, item in enumerate(session.feed.filter)
        )
    strainer = None if session.inlet is None else session.inlet.strainer
    if strainer is None or not given(session, "inlet.strainer.rated_flow"):
        return False
    pump = session.pump
    parted = pump is not None and pump.arrangement != "series" and strainer.carries != "all"
    return strainer.rated_flow < flow_m3_s / (pump.count if pump is not None and parted else 1)
