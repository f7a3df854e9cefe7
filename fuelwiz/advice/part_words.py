"""Parts as they are entered, in a few words: what the path has on its line, and what a shop is asked for."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject
from fuelwiz.session import Filter, Injectors, Pump, Regulator, Strainer


def first_words(name: str) -> str:
    """A name without what follows a comma or a bracket: a part of the way has one line."""
    return name.partition(",")[0].partition(" (")[0].strip()


def pump_told(pump: Pump) -> str:
    """A pump by its name, and how many of it: "2 × sample pump T"."""
    named = first_words(pump.name) or "pump"
    return named if pump.count == 1 else f"{pump.count} × {named}"


def strainer_told(subject: Subject, strainer: Strainer) -> str:
    """A strainer by its flow: "for 120 gal/h"."""
    return f"for {subject.numbers.figure('flow', strainer.rated_flow)}"


def filter_told(subject: Subject, item: Filter) -> str:
    """A filter by its name and its flow: "10 micron, for 120 gal/h"."""
    flow = subject.numbers.figure("flow", item.rated_flow)
    return ", ".join(filter(None, (first_words(item.what), f"for {flow}")))


def regulator_told(subject: Subject, regulator: Regulator) -> str:
    """A regulator by what it loses wide open: "6 psi at 100 gal/h"."""
    lost = subject.numbers.limit("pressure", regulator.rated_loss)
    return f"{lost} at {subject.numbers.figure('flow', regulator.rated_flow)}"


def injectors_told(subject: Subject, injectors: Injectors, count: int) -> str:
    """Injectors by their rating: "4 × 1300 cc/min"."""
    return f"{count} × {subject.numbers.figure('injector', injectors.rated_flow)}"
