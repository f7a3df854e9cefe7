"""Before the pump: its inlet, the surge pot, and what warms the fuel."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Heading, Pairs
from fuelwiz.advice.phrases import vapour_need
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject


def before_the_pump(build: Subject, _words: Words) -> Iterator[Block]:
    """How near boiling the fuel is, what the surge pot needs, and how fast the tank warms."""
    yield Heading("Before the pump")
    rows = [*_inlet(build), ("tank warms by", _warming(build))]
    if build.session.surge is not None:
        rows += _surge(build)
    yield Pairs(tuple(rows))


def _inlet(build: Subject) -> Iterator[tuple[str, str]]:
    inlet, numbers = build.figures.inlet, build.numbers
    if inlet is None:
        missing = "[inlet] is not given" if build.session.inlet is None else "it takes pump and line"
        yield "inlet", f"not known: {missing}"
        return
    if inlet.vapour_margin_Pa is None:
        yield "from boiling", "not known: the fuel's Reid pressure is not given"
    else:
        need = vapour_need(build)
        wanted = f", {numbers.limit('pressure', need)} is wanted" if need > 0.0 else ""
        yield "from boiling", f"{numbers.figure('pressure', inlet.vapour_margin_Pa, need)}{wanted}"
    if inlet.velocity_m_s is not None:
        edges = build.session.bands.inlet
        yield "suction line", f"{numbers.figure('velocity', inlet.velocity_m_s, *edges)}, {inlet.band}"


def _warming(build: Subject) -> str:
    heat = build.figures.heat
    if heat is not None and heat.rise_K_per_h is not None:
        return f"{build.numbers.figure('warming', heat.rise_K_per_h)} an hour at most, without any cooling"
    if build.session.pressure.regulator == "none":
        return "nothing worth counting: no fuel goes round"
    if not build.has_pump:
        return "not known: it takes pump and line"
    return f"not known: {'tank.volume' if build.session.tank.volume is None else 'pump.current'} is not given"


def _surge(build: Subject) -> Iterator[tuple[str, str]]:
    surge, numbers = build.figures.surge, build.numbers
    if surge is None or surge.lift_needed_m3_s is None:
        yield "surge pot", "not known: it takes pump and line"
        return
    yield "lift pump must give", numbers.figure("flow", surge.lift_needed_m3_s)
    if surge.lift_margin is not None:
        share = numbers.figure("percent", abs(surge.lift_margin), 0.0)
        yield "it has", f"{share} to spare" if surge.lift_margin >= 0.0 else f"{share} too little"
    if surge.holds_s is not None:
        yield "a full pot lasts", f"{numbers.figure('seconds', surge.holds_s)} with the pick-up dry"
