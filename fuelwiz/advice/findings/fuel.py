"""What is worth a look in fuel and inlet: vapor, ethanol content, consumption, heat, the surge pot."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.case_sentences import case_names, new_limits
from fuelwiz.advice.cautions import RATED
from fuelwiz.advice.limits import cooler_inlet
from fuelwiz.advice.phrases import vapour_need
from fuelwiz.advice.pure_fuels import PURE_FUELS
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject, capitalized, listed
from fuelwiz.physics.demand import CREDIBLE_EFFICIENCY
from fuelwiz.physics.heat import LONG_ENOUGH_S, MOST_RISE_K_PER_H
from fuelwiz.physics.inlet import LOW_VAPOUR_MARGIN_PA

E85_SOLD = (0.51, 0.83)  # ASTM D5798
E85_MOST = 0.90
ALCOHOL_FROM = 0.20


def fuel_remarks(subject: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know."""
    yield from _consumption(subject)
    yield from _vapour(subject)
    yield from _vapour_on_bad_days(subject)
    yield from _heat(subject)
    yield from _alcohol(subject)
    yield from _surge(subject)


def _range(subject: Subject, low: float, high: float) -> str:
    """Two shares as a range: 15 to 42 %."""
    return f"{subject.numbers.number('percent', low)} to {subject.numbers.figure('percent', high)}"


def _consumption(subject: Subject) -> Iterator[Remark]:
    demand = subject.figures.demand
    low, high = CREDIBLE_EFFICIENCY
    if low <= demand.thermal_efficiency <= high:
        return
    bsfc = subject.numbers.figure("bsfc", demand.bsfc_kg_J)
    share = subject.numbers.figure("percent", demand.thermal_efficiency, *CREDIBLE_EFFICIENCY)
    yield Remark(
        "warning",
        "engine.bsfc",
        f"A fuel use of {bsfc} is not credible: it would turn {share} of the fuel's heat into power.",
        f"Engines reach {_range(subject, low, high)}: check the figure and its unit, or leave it out.",
    )


def _vapour(subject: Subject) -> Iterator[Remark]:
    margin = subject.pick.vapour_margin_Pa
    pump = subject.session.pump
    safe = LOW_VAPOUR_MARGIN_PA["tank" if pump is None else pump.place]
    if margin is None or margin >= safe or margin < vapour_need(subject):
        return
    near = subject.numbers.figure("pressure", margin, safe, 0.0)
    wanted = subject.numbers.figure("pressure", safe, margin)
    yield Remark(
        "warning",
        "inlet",
        f"At the pump inlet the fuel is only {near} above boiling; keep {wanted} or more.",
        cooler_inlet(subject, safe - margin),
    )


def _vapour_on_bad_days(subject: Subject) -> Iterator[Remark]:
    if subject.pick.vapour_margin_Pa is None or subject.pick.vapour_margin_Pa < vapour_need(subject):
        return
    need = vapour_need(subject)
    boiling = [
        (case.vapour_margin_Pa, name)
        for case, name in zip(subject.figures.stress, case_names(subject), strict=True)
        if case.vapour_margin_Pa is not None
        and (case.vapour_margin_Pa < need or "vapour" in new_limits(subject, case))
    ]
    if not boiling:
        return
    worst, _ = min(boiling)
    missing = need - worst if worst < need else None
    names = listed([name for _, name in boiling])
    yield Remark(
        "warning",
        "fuel.temperature",
        f"The fuel can boil at the pump inlet on a bad day: {names}.",
        f"{cooler_inlet(subject, missing, today=False)} A bigger pump does not help there.",
        elsewhere=True,
    )


def _heat(subject: Subject) -> Iterator[Remark]:
    heat = subject.figures.heat
    if heat is None or heat.rise_K_per_h is None or heat.rise_K_per_h <= MOST_RISE_K_PER_H:
        return
    if heat.lasts_s <= LONG_ENOUGH_S:
        return
    rise = subject.numbers.figure("warming", heat.rise_K_per_h, MOST_RISE_K_PER_H)
    most = subject.numbers.figure("warming", MOST_RISE_K_PER_H)
    yield Remark(
        "warning",
        "tank.volume",
        f"Fuel that goes round can heat up by {rise} an hour at cruise; above {most} is high.",
        "Keep more fuel in the tank, fit a cooler in the return line, or slow the pump at idle.",
    )


def _alcohol(subject: Subject) -> Iterator[Remark]:
    fuel = subject.session.fuel
    if fuel.kind == "blend":
        yield from _ethanol(subject, fuel.ethanol)
    elif fuel.kind == "own":
        yield Remark(
            "note",
            "fuel.kind",
            f"If your fuel holds alcohol: {RATED}",
            f"If it holds methanol, {PURE_FUELS['methanol'].in_brief}",
        )
    else:
        words = PURE_FUELS[fuel.kind]
        yield Remark("note", "fuel.kind", words.harms, f"{capitalized(RATED)} {capitalized(words.in_brief)}")


def _ethanol(subject: Subject, share: float) -> Iterator[Remark]:
    least, most = E85_SOLD
    percent, rated = subject.numbers.limit("percent", share), capitalized(RATED)
    if least <= share <= E85_MOST:
        yield Remark(
            "note",
            "fuel.ethanol",
            f"Calculated for {percent} ethanol; E85 from a pump may hold {_range(subject, least, most)} (ASTM D5798).",
            f"Measure it, or fit a sensor; the bad days show what more and less of it does. {rated}",
        )
    elif share >= ALCOHOL_FROM:
        yield Remark("note", "fuel.ethanol", f"The fuel holds {percent} ethanol.", rated)


def _surge(subject: Subject) -> Iterator[Remark]:
    surge = subject.figures.surge
    if surge is None or surge.holds_s is None:
        return
    holds = subject.numbers.figure("seconds", surge.holds_s)
    yield Remark(
        "note",
        "surge.volume",
        f"A full surge pot lasts {holds} with the pick-up dry.",
        "Compare that with your longest corner with little fuel in the tank.",
    )
