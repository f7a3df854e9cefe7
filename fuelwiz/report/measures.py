"""What builds are measured by when they stand side by side."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal

from fuelwiz.advice.numbers import Numbers, Role
from fuelwiz.advice.result import Result
from fuelwiz.advice.row import FEEDS, LOSS, SPARE, VELOCITY, RowFigure
from fuelwiz.advice.sections.ceilings import part_label
from fuelwiz.advice.subject import Subject
from fuelwiz.record import record
from fuelwiz.sizing.figures import NextFigures

_YES_OR_NO = {True: "yes", False: "no", None: "not known"}


@record
class Side:
    """One build, and how all of them are shown: in one unit system, and powers at one place."""

    build: Subject
    numbers: Numbers


def sides_of(results: Sequence[Result]) -> tuple[Side, ...]:
    """The builds in the units of the first; powers at the crank where not all goals are at the wheels."""
    at_wheels = all(result.session.goal.power_at == "wheels" for result in results)
    system = Numbers.of(results[0].session).system
    shares = [Numbers.of(result.session).power_share if at_wheels else 1.0 for result in results]
    return tuple(
        Side(Subject(result.session, result.figures), Numbers(system, share))
        for result, share in zip(results, shares, strict=True)
    )


@record
class Measure:
    """A line of the comparison: a figure or a word, and whether more or less of it is better."""

    name: str
    shown: Callable[[Side], str | None]
    value: Callable[[Side], float | None] = lambda _side: None
    better: Literal["more", "less"] | None = None


def _figure(
    name: str,
    role: Role,
    value: Callable[[Subject], float | None],
    better: Literal["more", "less"] | None = None,
    limits: Callable[[Subject], tuple[float, ...]] = lambda _build: (),
) -> Measure:
    """A measure that is a figure, kept on its own side of the limits that judge it."""

    def shown(side: Side) -> str | None:
        found = value(side.build)
        return None if found is None else side.numbers.figure(role, found, *limits(side.build))

    return Measure(name, shown, lambda side: value(side.build), better)


def _of_pick(name: str, of: RowFigure, better: Literal["more", "less"] | None = None) -> Measure:
    """A measure that is a figure of the size that the build is judged at."""
    return Measure(
        name,
        lambda side: of.figure(side.build, side.build.pick, side.numbers),
        lambda side: of.value(side.build.pick),
        better,
    )


def _works(side: Side) -> str:
    return _YES_OR_NO[side.build.figures.verdict.works]


def _works_value(side: Side) -> float | None:
    works = side.build.figures.verdict.works
    return None if works is None else float(works)


def _first_limit(side: Side) -> str | None:
    if not side.build.figures.ceilings:
        return None
    first = side.build.figures.ceilings[0]
    rule = ", by rule of thumb" if first.basis == "rule" else ""
    power = side.numbers.figure("power", first.max_power_W, side.build.figures.demand.crank_power_W)
    return f"{part_label(first)} at {power}{rule}"


def _first_ceiling(side: Side) -> float | None:
    return side.build.figures.ceilings[0].max_power_W if side.build.figures.ceilings else None


def _volts(side: Side) -> str | None:
    volts = side.build.pick.pump_volts_V
    if volts is None:
        return None
    text = side.numbers.figure("volts", volts)
    return text if _known_volts(side) is not None else f"{text}, no current given"


def _known_volts(side: Side) -> float | None:
    """Volts that are measured, or less what the wire takes: what nobody knows is better in nothing."""
    pump = side.build.session.pump
    known = pump is not None and (pump.volts is not None or bool(pump.current))
    return side.build.pick.pump_volts_V if known else None


def _bad_day(build: Subject) -> float | None:
    return next((case.margin for case in build.figures.stress if case.case == "bad day"), None)


def _duty_limit(build: Subject) -> tuple[float, ...]:
    given = build.session.injectors
    return () if given is None else (given.duty_limit,)


def _next_name(side: Side) -> str | None:
    following = side.build.figures.next
    if following is None:
        return None
    power = side.numbers.figure("power", following.crank_power_W)
    boost = side.numbers.figure("pressure", following.boost_Pa)
    return f"{power} at {boost}" if following.boost_Pa > 0.0 else power


def _next_works(side: Side) -> str | None:
    following = side.build.figures.next
    return None if following is None else _YES_OR_NO[following.works]


def _next_works_value(side: Side) -> float | None:
    following = side.build.figures.next
    return None if following is None or following.works is None else float(following.works)


def _next_wrong(side: Side) -> str | None:
    following = side.build.figures.next
    return None if following is None else ", ".join(following.limits) or "nothing"


def _of_next(of: Callable[[NextFigures], float | None]) -> Callable[[Subject], float | None]:
    """A figure of the next goal; None without one."""
    return lambda build: None if build.figures.next is None else of(build.figures.next)


def _reserve(build: Subject) -> tuple[float, ...]:
    return (0.0, build.session.goal.reserve)


def _creep(build: Subject) -> float | None:
    return None if build.figures.return_line is None else build.figures.return_line.creep_Pa


OF_NEXT_GOAL: tuple[Measure, ...] = (
    Measure("next goal", _next_name),
    Measure("works then", _next_works, _next_works_value, "more"),
    Measure("what is wrong then", _next_wrong),
    _figure("spare then", "percent", _of_next(lambda following: following.margin), "more", _reserve),
    _figure("injector duty then", "percent", _of_next(lambda following: following.duty), "less", _duty_limit),
)
MEASURES: tuple[Measure, ...] = (
    Measure("works", _works, _works_value, "more"),
    Measure("what is wrong", lambda side: ", ".join(side.build.figures.verdict.limits) or "nothing"),
    _figure("power at the goal", "power", lambda build: build.figures.demand.crank_power_W),
    _figure("fuel needed", "flow", lambda build: build.figures.demand.volume_flow_m3_s),
    Measure("line to fit", lambda side: side.build.figures.line_to_fit),
    Measure("size judged", lambda side: side.build.figures.verdict.size),
    _of_pick("velocity", VELOCITY),
    _of_pick("line loss", LOSS, "less"),
    _figure("pump must make", "pressure", lambda build: build.pick.pump_rise_Pa),
    _of_pick("spare", SPARE, "more"),
    _of_pick("feeds", FEEDS, "more"),
    Measure("first limit", _first_limit, _first_ceiling, "more"),
    *OF_NEXT_GOAL,
    _figure("spare, bad day", "percent", _bad_day, "more", lambda _build: (0.0,)),
    Measure("volts at the pump", _volts, _known_volts, "more"),
    _figure("rail pressure", "pressure", lambda build: build.pick.rail_at_goal_Pa),
    _figure("from boiling", "pressure", lambda build: build.pick.vapour_margin_Pa, "more"),
    _figure("creep at idle", "pressure", _creep, "less", lambda _build: (0.0,)),
    _figure(
        "injector duty",
        "percent",
        lambda build: build.figures.injectors.duty if build.figures.injectors else None,
        "less",
        _duty_limit,
    ),
    _figure(
        "warming an hour",
        "warming",
        lambda build: build.figures.heat.rise_K_per_h if build.figures.heat else None,
        "less",
    ),
)
