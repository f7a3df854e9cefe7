"""What is worth a look in the feed line: size, loss, filter, and how its bore was taken."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from fuelwiz.advice.cautions import rubber_with_alcohol
from fuelwiz.advice.phrases import kept_run_chokes, kept_run_name, speed
from fuelwiz.advice.result import Remark
from fuelwiz.advice.row import LOSS
from fuelwiz.advice.subject import Subject, listed
from fuelwiz.facts import bore_m
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.terms import HOSES

COSTLY_SHARE = 0.05
IMPOSSIBLE_LOSS_PA = 500 * PSI_PA  # common practice: no electric pump for cars comes near it
USUAL_DASHES = (4, 6, 8, 10, 12, 16)
CHEAP_SHARE = 0.02


def line_remarks(subject: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know."""
    if not subject.has_runs:
        return
    yield from _rubber_and_alcohol(subject)
    yield from _beyond_the_possible(subject)
    yield from _filters(subject)
    yield from _velocity_and_loss(subject)
    yield from _other_size(subject)
    yield from _dash_bores(subject)


def _rubber_and_alcohol(subject: Subject) -> Iterator[Remark]:
    """Ordinary fuel hose goes soft, hard or leaks with alcohol, and sheds into the filter."""
    found = rubber_with_alcohol(subject)
    if not found:
        return
    yield Remark(
        "warning",
        "feed.run.hose",
        f"Rubber hose in the {listed(found)} line with {fuel_in_words(subject)}: most fuel hose is not made for that.",
        "Use PTFE, or rubber whose maker rates it for that alcohol content, and replace it on time.",
        elsewhere=True,
    )


def _beyond_the_possible(subject: Subject) -> Iterator[Remark]:
    """Figures that a file may hold and no car can: said rather than calculated with in silence."""
    row, inlet = subject.pick, subject.figures.inlet
    if row.feed_loss_Pa is not None and row.feed_loss_Pa > IMPOSSIBLE_LOSS_PA:
        yield Remark(
            "warning",
            "feed.run",
            f"By these figures the feed line loses {subject.numbers.figure('pressure', row.feed_loss_Pa)}:"
            " no pump makes that.",
            "Check its lengths, bores and rated losses; what rests on them means little until then.",
        )
    if inlet is not None and inlet.pressure_abs_Pa <= 0.0:
        yield Remark(
            "warning",
            "inlet",
            "By these figures the pressure at the pump inlet is below a perfect vacuum, which cannot be.",
            "Check the suction line, the strainer and the fuel head; fuel boils long before that.",
        )


def _filters(subject: Subject) -> Iterator[Remark]:
    demand, capacity = subject.figures.demand.volume_flow_m3_s, subject.pick.capacity_m3_s
    for item in subject.session.feed.filter:
        name = f"filter ({item.what})" if item.what else "filter"
        rated = subject.numbers.figure("flow", item.rated_flow)
        if demand > item.rated_flow:
            flow = subject.numbers.figure("flow", demand, item.rated_flow)
            yield Remark(
                "warning",
                "feed.filter",
                f"At the goal {flow} flows through the {name}, rated for {rated}.",
                "Fit a larger one, or two side by side.",
            )
        elif subject.at_rail and capacity is not None and capacity > item.rated_flow:
            flow = subject.numbers.figure("flow", capacity, item.rated_flow)
            yield Remark(
                "note",
                "feed.filter",
                f"With all the pump delivers, {flow} flows through the {name}, rated for {rated}.",
                "The goal itself is within its rating. A larger one clogs more slowly.",
            )


def _velocity_and_loss(subject: Subject) -> Iterator[Remark]:
    row, pump = subject.pick, subject.figures.pump
    if (
        pump is None
        or row.capacity_m3_s is None
        or subject.at_tank
        or pump.capacity_without_feed_loss_m3_s <= 0.0
    ):
        return
    share = 1.0 - row.capacity_m3_s / pump.capacity_without_feed_loss_m3_s
    loss = LOSS.figure(subject, row)
    if row.band in {"easy", "good"} and share > COSTLY_SHARE:
        part = subject.numbers.figure("percent", share, COSTLY_SHARE)
        yield Remark(
            "warning",
            "feed.run",
            f"Velocity is {row.band}, but {loss} of loss costs {part} of the flow.",
            _win_back(subject, row),
        )
    elif row.band in {"brisk", "fast", "too fast"} and share < CHEAP_SHARE:
        part = subject.numbers.figure("percent", share, CHEAP_SHARE)
        yield Remark(
            "note",
            "feed.run",
            f"{speed(subject, row)} is {row.band}, yet only {loss} is lost, {part} of the flow.",
            "The line is so short that the velocity sounds worse than it is.",
        )


def _win_back(subject: Subject, row: SizeFigures) -> str:
    """Where most of the loss sits, and what would save it."""
    if kept_run_chokes(subject, row):
        return f"Most of it sits in {kept_run_name(subject).rstrip(',')}: change that one."
    place, larger = _where_lost(row), subject.neighbor(row, 1)
    if place == "other parts":
        return (
            f"Most of it sits in {_worst_part(subject)}: look for a larger one before you buy a larger line."
        )
    if place not in {"hose", "fittings"}:
        return f"Most of it sits in the {place}: check that before you buy a larger line."
    if larger is None or larger.feed_loss_Pa is None or row.feed_loss_Pa is None:
        return f"Most of it sits in the {place}: a shorter route or fewer sharp ends would save some."
    saved = subject.numbers.figure("pressure", row.feed_loss_Pa - larger.feed_loss_Pa)
    return f"Most of it sits in the {place}: {larger.size} would save {saved}."


def fuel_in_words(subject: Subject) -> str:
    """The fuel where alcohol matters."""
    return "your own fuel, if it holds alcohol" if subject.session.fuel.kind == "own" else subject.fuel


def _worst_part(subject: Subject) -> str:
    """The part in line that loses most at a flow, by its name."""
    parts = subject.session.feed.part
    worst = max(parts, key=lambda part: part.rated_loss / part.rated_flow**2, default=None)
    return f"the {worst.what}" if worst is not None and worst.what else "the other parts"


def _where_lost(row: SizeFigures) -> str:
    ladder = row.ladder
    if ladder is None:
        return "hose"
    places = {
        "filter": ladder.filters_Pa,
        "hose": ladder.friction_Pa,
        "fittings": ladder.fittings_Pa,
        "other parts": ladder.parts_Pa,
        "climb to the rail": ladder.rise_Pa,
    }
    return max(places, key=lambda place: places[place])


def _other_size(subject: Subject) -> Iterator[Remark]:
    chosen, line = subject.figures.row(subject.figures.chosen), subject.line
    if chosen is None or line is None or chosen is line or chosen.limits:
        return
    if chosen.bore_m > line.bore_m:
        extra = subject.numbers.figure("pressure", (line.feed_loss_Pa or 0.0) - (chosen.feed_loss_Pa or 0.0))
        yield Remark(
            "note",
            "feed.chosen",
            f"You chose {chosen.size}; {line.size} is enough ({extra} more loss).",
            "A bigger line adds cost and weight. If it is on the car already, leave it.",
        )
        return
    yield Remark(
        "warning",
        "feed.chosen",
        f"You chose {chosen.size}; its velocity is {chosen.band}: {speed(subject, chosen)} at the goal.",
        f"Fit {line.size} next time the line is off.",
    )


def _dash_bores(subject: Subject) -> Iterator[Remark]:
    runs = subject.session.feed.run
    nominal = [run for run in runs if run.hose == "nominal" and run.bore is None]
    if not nominal:
        return
    if len(nominal) < len(runs):
        take = "takes its" if len(nominal) == 1 else "take their"
        what = f"{len(nominal)} of {len(runs)} runs {take} bore from the dash size, the rest do not."
    else:
        what = "The bore is taken from the dash size, a sixteenth of an inch each."
    yield Remark(
        "warning",
        "feed.run.hose",
        what,
        f"{_real_hoses(subject)}: enter which kind of hose it is.",
    )


@cache
def _real_bores() -> tuple[float, float]:
    """The narrowest and the widest real bore of the usual sizes, as shares of a sixteenth of an inch for each dash."""
    shares = [
        bore_m(hose, dash) / bore_m("nominal", dash)
        for hose in HOSES
        if hose != "nominal"
        for dash in USUAL_DASHES
    ]
    return min(shares), max(shares)


def _real_hoses(subject: Subject) -> str:
    narrowest, widest = _real_bores()
    number, figure = subject.numbers.number, subject.numbers.figure
    narrower = f"{number('percent', 1.0 - widest)} to {figure('percent', 1.0 - narrowest)}"
    faster = f"{number('percent', widest**-2 - 1.0)} to {figure('percent', narrowest**-2 - 1.0)}"
    return f"A real line is {narrower} narrower, so velocity is {faster} higher"
