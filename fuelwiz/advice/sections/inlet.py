"""Before the pump: its inlet, the surge pot, and what warms the fuel."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Heading, Pairs
from fuelwiz.advice.phrases import clock, vapour_need
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known
from fuelwiz.advice.subject import Subject


def before_the_pump(subject: Subject, _words: Words) -> Iterator[Block]:
    """How near boiling the fuel is, what the surge pot needs, and how fast the tank warms."""
    yield Heading("Before the pump")
    rows = [*_inlet(subject), *_lasts(subject), ("tank warms by", _warming(subject))]
    if subject.session.surge is not None:
        rows += _surge(subject)
    yield Pairs(tuple(rows))


def _inlet(subject: Subject) -> Iterator[tuple[str, str]]:
    inlet, numbers = subject.figures.inlet, subject.numbers
    if inlet is None:
        yield "inlet", not_known(subject, "inlet", "line", "pump")
        return
    if inlet.vapour_margin_Pa is None:
        yield "from boiling", "not known yet (needs the fuel's Reid pressure)"
    else:
        need = vapour_need(subject)
        wanted = f" (keep {numbers.limit('pressure', need)} or more)" if need > 0.0 else ""
        yield "from boiling", f"{numbers.figure('pressure', inlet.vapour_margin_Pa, need)}{wanted}"
    if inlet.velocity_m_s is not None:
        edges = subject.session.bands.inlet
        yield (
            "suction line",
            f"{numbers.figure('velocity', inlet.velocity_m_s, *edges)} with all that the pump gives, {inlet.band}",
        )


def _lasts(subject: Subject) -> Iterator[tuple[str, str]]:
    """How long the fuel in the tank lasts at full power."""
    heat = subject.figures.heat
    if heat is not None:
        power = subject.numbers.figure("power", subject.figures.demand.crank_power_W)
        yield "tank lasts", f"{clock(heat.lasts_s)} at {power}"


def _warming(subject: Subject) -> str:
    heat = subject.figures.heat
    if heat is not None and heat.rise_K_per_h is not None:
        return f"{subject.numbers.figure('warming', heat.rise_K_per_h)} an hour at cruise at most, with no cooling"
    if subject.session.pressure.regulator == "none":
        return "next to nothing, as no fuel is recirculated"
    if not subject.has_pump:
        return not_known(subject, "line", "pump")
    if subject.session.tank.volume is None:
        return "not known yet (needs the size of the tank)"
    return not_known(subject, "current")


def _surge(subject: Subject) -> Iterator[tuple[str, str]]:
    surge, numbers = subject.figures.surge, subject.numbers
    if surge is None or surge.lift_needed_m3_s is None:
        yield "surge pot", not_known(subject, "line", "pump")
        return
    yield "lift pump must give", numbers.figure("flow", surge.lift_needed_m3_s)
    if surge.lift_margin is not None:
        share = numbers.figure("percent", abs(surge.lift_margin), 0.0)
        yield "lift pump has", f"{share} to spare" if surge.lift_margin >= 0.0 else f"{share} too little"
    if surge.holds_s is not None:
        yield "a full pot lasts", f"{numbers.figure('seconds', surge.holds_s)} with the pick-up dry"
