"""What is worth a look in fuel and inlet: vapour, ethanol content, consumption, heat, the surge pot."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.phrases import vapour_need
from fuelwiz.advice.remark import Remark
from fuelwiz.advice.subject import Subject
from fuelwiz.physics.demand import CREDIBLE_EFFICIENCY
from fuelwiz.physics.heat import MOST_RISE_K_PER_H
from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA

E85_LEAST = 0.51
E85_MOST = 0.90
ALCOHOL_FROM = 0.20


def fuel_remarks(build: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know."""
    yield from _consumption(build)
    yield from _vapour(build)
    yield from _vapour_on_bad_days(build)
    yield from _heat(build)
    yield from _alcohol(build)
    yield from _surge(build)


def _consumption(build: Subject) -> Iterator[Remark]:
    demand = build.figures.demand
    low, high = CREDIBLE_EFFICIENCY
    if low <= demand.thermal_efficiency <= high:
        return
    bsfc = build.numbers.figure("bsfc", demand.bsfc_kg_J)
    share = build.numbers.figure("percent", demand.thermal_efficiency, *CREDIBLE_EFFICIENCY)
    yield Remark(
        "warning",
        "engine.bsfc",
        f"{bsfc} is not credible: it would turn {share} of the fuel's heat into power.",
        "Engines reach 15 to 42 %: check the figure and its unit, or leave it out.",
    )


def _vapour(build: Subject) -> Iterator[Remark]:
    margin = build.pick.vapour_margin_Pa
    if margin is None or margin >= LEAST_VAPOUR_MARGIN_PA["outside"] or margin < vapour_need(build):
        return
    near = build.numbers.figure("pressure", margin, LEAST_VAPOUR_MARGIN_PA["outside"], 0.0)
    wanted = build.numbers.figure("pressure", LEAST_VAPOUR_MARGIN_PA["outside"], margin)
    yield Remark(
        "warning",
        "inlet",
        f"At the pump's inlet the fuel is {near} from boiling; {wanted} is a safe distance.",
        "Keep the tank full and cool, and the strainer clean.",
    )


def _vapour_on_bad_days(build: Subject) -> Iterator[Remark]:
    if build.pick.vapour_margin_Pa is None or build.pick.vapour_margin_Pa < vapour_need(build):
        return
    boiling = [
        case.case
        for case in build.figures.stress
        if case.vapour_margin_Pa is not None and case.vapour_margin_Pa < vapour_need(build)
    ]
    if not boiling:
        return
    names = ", ".join(boiling)
    yield Remark(
        "warning",
        "fuel.temperature",
        f"The fuel may boil at the pump's inlet in {len(boiling)} of the bad days: {names}.",
        "Cool the fuel or flood the inlet: a bigger pump does not help there.",
    )


def _heat(build: Subject) -> Iterator[Remark]:
    heat = build.figures.heat
    if heat is None or heat.rise_K_per_h is None or heat.rise_K_per_h <= MOST_RISE_K_PER_H:
        return
    rise = build.numbers.figure("warming", heat.rise_K_per_h, MOST_RISE_K_PER_H)
    most = build.numbers.figure("warming", MOST_RISE_K_PER_H)
    yield Remark(
        "warning",
        "tank.volume",
        f"The fuel that goes round warms by up to {rise} an hour; {most} is a lot.",
        "More fuel in the tank, a cooler in the return, or a slower pump at idle helps.",
    )


def _alcohol(build: Subject) -> Iterator[Remark]:
    fuel = build.session.fuel
    rated = "Hoses, seals and filter media must be rated for it, the strainer too."
    if fuel.kind == "methanol":
        yield Remark(
            "note", "fuel.kind", "Methanol eats aluminium, some rubbers and glues, and draws water.", rated
        )
    elif fuel.kind == "blend" and E85_LEAST <= fuel.ethanol <= E85_MOST:
        phi = build.numbers.limit("percent", fuel.ethanol)
        yield Remark(
            "note",
            "fuel.ethanol",
            f"{phi} ethanol is reckoned with; E85 from a pump may hold 51 to 83\u00a0% (ASTM D5798).",
            f"Measure it, or fit a sensor: see stress for what more or less does. {rated}",
        )
    elif fuel.kind == "blend" and fuel.ethanol >= ALCOHOL_FROM:
        phi = build.numbers.limit("percent", fuel.ethanol)
        yield Remark("note", "fuel.ethanol", f"The fuel holds {phi} ethanol.", rated)


def _surge(build: Subject) -> Iterator[Remark]:
    surge = build.figures.surge
    if surge is None or surge.holds_s is None:
        return
    holds = build.numbers.figure("seconds", surge.holds_s)
    yield Remark(
        "note",
        "surge.volume",
        f"A full surge pot lasts {holds} with the pick-up dry.",
        "Weigh that against your longest corner with little fuel in the tank.",
    )
