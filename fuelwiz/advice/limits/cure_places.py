"""Which answer of the builder's cures a limit, as a path into the session: the one to show first."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fuelwiz.advice.limits.near_boiling import (
    missing_today_pa,
    needs_less_in_the_tank,
    strainer_matters,
    suction_matters,
)
from fuelwiz.advice.limits.returning import regulator_makes_most
from fuelwiz.advice.phrases import kept_run_chokes, kept_run_number
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.vocabulary import LINE_LIMITS

CuredAt = Callable[[Subject], str]


def at(path: str) -> CuredAt:
    """The same answer whatever the build."""
    return lambda subject: path


def kept_run(subject: Subject) -> str:
    """The run that keeps a size or bore of its own."""
    number = kept_run_number(subject)
    own = "size" if subject.session.feed.run[number].bore is None else "bore"
    return f"feed.run.{number}.{own}"


def feed_line(subject: Subject) -> str:
    """The size of the line: of the run that chokes it, on the car, chosen, or those that are tried."""
    if kept_run_chokes(subject, subject.pick) or subject.pick.fixed:
        return kept_run(subject)
    if "line" in subject.session.fitted.has:
        return "feed.fitted"
    return "feed.chosen" if subject.session.feed.chosen is not None else "feed.sizes"


def pump(subject: Subject) -> str:
    """The line, where another one cures it; else the pump, or its volts where those are only taken."""
    row = subject.pick
    loses = kept_run_chokes(subject, row) or set(LINE_LIMITS).intersection(row.limits)
    if subject.figures.recommended is not None or (loses and not subject.at_tank):
        return feed_line(subject)
    return "pump.volts" if subject.volts_assumed else "pump.known"


def pump_inlet(subject: Subject) -> str:
    """The pump's place where another one is enough; what loses before the pump; else how warm the fuel is."""
    missing = missing_today_pa(subject, subject.pick.vapour_margin_Pa)
    if needs_less_in_the_tank(subject, missing):
        return "pump.place"
    if suction_matters(subject, missing):
        return suction_line(subject)
    if strainer_matters(subject, missing):
        return "inlet.strainer.have"
    return "fuel.temperature"


def suction_line(subject: Subject) -> str:
    """The size of the suction line."""
    inlet = subject.session.inlet
    runs = inlet.run if inlet is not None else ()
    if runs and runs[0].bore is not None:
        return "inlet.run.0.bore"
    return "inlet.run.0.size" if len(runs) > 1 else "inlet.size"


def return_line(subject: Subject) -> str:
    """The regulator where that makes most of it; else the size of the return."""
    line, given = subject.figures.return_line, subject.session.return_line
    assert line is not None and given is not None
    if regulator_makes_most(subject):
        return "return_line.regulator.have"
    kept = next(
        (at for at, run in enumerate(given.run) if run.size is not None or run.bore is not None), None
    )
    if line.fixed and kept is not None:
        return f"return_line.run.{kept}.{'size' if given.run[kept].bore is None else 'bore'}"
    if "return_line" in subject.session.fitted.has:
        return "return.fitted"
    return "return_line.chosen" if given.chosen is not None else "return_line.sizes"


def weakest_part(subject: Subject) -> str:
    """The pressure rating that is the lowest of those in the line."""
    return min(_ratings(subject), default=(0.0, "feed.run.0.pressure_rating"))[1]


def _ratings(subject: Subject) -> Iterator[tuple[float, str]]:
    feed = subject.session.feed
    rated = [(run.pressure_rating, f"feed.run.{number}") for number, run in enumerate(feed.run)]
    filters = [(part, f"feed.filter.{number}") for number, part in enumerate(feed.filter)]
    if subject.at_tank:
        rated, filters = [], [(part, path) for part, path in filters if part.place == "pump"]
    rated += [(part.pressure_rating, path) for part, path in filters]
    return ((rating, f"{path}.pressure_rating") for rating, path in rated if rating is not None)
