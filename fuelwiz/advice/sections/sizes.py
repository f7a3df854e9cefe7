"""The table of sizes, what the pick and its neighbours mean, and what the pump works against."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Mark, Pairs, Paragraph, Table, row
from fuelwiz.advice.numbers import NO_BREAK
from fuelwiz.advice.result import Explanation, Words
from fuelwiz.advice.row import BORE, FEEDS, LOSS, SPARE, VELOCITY, size_name, works
from fuelwiz.advice.subject import Subject, called, capitalized
from fuelwiz.sizing.figures import Ladder, SizeFigures

BANDS: dict[str, Mark] = {
    "easy": "easy",
    "good": "good",
    "brisk": "brisk",
    "fast": "fast",
    "too fast": "too fast",
}


def sizes(build: Subject, words: Words) -> Iterator[Block]:
    """Every candidate, then the pick and the sizes beside it in words."""
    yield Heading("Sizes of line")
    yield size_table(build)
    yield Paragraph(_legend(build))
    told = dict(zip(build.figures.sizes, words.explanations, strict=True))
    for size, name in _explained(build):
        rows = _labelled(told[size], is_pick=size is build.pick, is_larger=size.bore_m > build.pick.bore_m)
        yield Pairs(rows, name)


def size_table(build: Subject) -> Table:
    """One row a candidate, the dash where a figure rests on what is not known."""
    unit = build.numbers.unit
    columns = (
        Column("Size"),
        Column("Bore", unit("bore"), figures=True),
        Column("Velocity", unit("velocity"), figures=True),
        Column("Verdict"),
        Column("Loss", unit("pressure"), figures=True),
        Column("Spare", unit("percent"), figures=True),
        Column("Feeds", unit("power"), figures=True),
        Column("Works", figures=True),
    )
    return Table(columns, tuple(_size_row(build, size) for size in build.figures.sizes))


def _size_row(build: Subject, size: SizeFigures) -> tuple[Cell, ...]:
    return row(
        size_name(build, size),
        BORE.number(build, size),
        VELOCITY.number(build, size),
        Cell(size.band, BANDS[size.band]),
        LOSS.number(build, size),
        SPARE.number(build, size),
        FEEDS.number(build, size),
        works(size),
    )


def _legend(build: Subject) -> str:
    bands = [build.numbers.limit("velocity", edge) for edge in build.session.bands.feed]
    told = (
        f"Up to {bands[0]} is easy, {bands[1]} good, {bands[2]} brisk, {bands[3]} fast, above that too fast."
    )
    if build.figures.chosen is not None:
        told += " * is the size settled on."
    return told


def _explained(build: Subject) -> list[tuple[SizeFigures, str]]:
    """The pick, the size below it and the size above it, with the name that each goes under."""
    pick = build.pick
    settled = ", settled on" if pick.size == build.figures.chosen else ""
    fit = ", the line to fit" if pick.size == build.figures.line_to_fit and not pick.fixed else ""
    found = [(pick, f"{capitalized(called(pick.size))}{settled}{fit}")]
    for step, name in ((-1, "one size smaller"), (1, "one size larger")):
        beside = build.neighbour(pick, step)
        if beside is not None:
            found.append((beside, f"{beside.size}, {name}"))
    return found


def _labelled(said: Explanation, *, is_pick: bool, is_larger: bool) -> tuple[tuple[str, str], ...]:
    """All that is said of the pick; of a neighbour, what the pick's own lines do not say."""
    lines = [
        ("no", said.no),
        ("means", said.means),
        ("costs", said.costs),
        ("bigger", said.next if is_pick or is_larger else None),
        ("smaller", said.smaller if is_pick else None),
    ]
    return tuple((label, text) for label, text in lines if text)


def what_it_takes(build: Subject, _words: Words) -> Iterator[Block]:
    """What the goal burns, and what makes up the pressure that the pump must make for it."""
    yield Heading("What it takes")
    yield Pairs(tuple(_demand(build)))
    steps, rise = build.pick.ladder, build.pick.pump_rise_Pa
    if steps is None or rise is None:
        yield Paragraph("Not known yet: the pressure that the pump must make. It takes a line, [[feed.run]].")
        return
    unit = build.numbers.unit("pressure")
    columns = (
        Column(f"Across the pump at the goal, through {_through(build)}"),
        Column("", unit, figures=True),
    )
    yield Table(columns, tuple(_steps(build, steps, rise)))


def _through(build: Subject) -> str:
    return "the line as it is" if build.pick.fixed else build.pick.size


def _demand(build: Subject) -> Iterator[tuple[str, str]]:
    demand, numbers, pressure = build.figures.demand, build.numbers, build.figures.pressure
    reserve = build.session.goal.reserve
    burns = numbers.figure("flow", demand.volume_flow_m3_s)
    if reserve > 0.0:
        with_reserve = numbers.figure("flow", demand.target_flow_m3_s)
        burns = f"{burns} at the goal, {with_reserve} with {numbers.limit('percent', reserve)} of reserve"
    yield "fuel", burns
    yield "it takes", _fuel_for_power(build)
    injectors = numbers.figure("pressure", pressure.injector_Pa, 0.0)
    yield "in the rail", f"{numbers.figure('pressure', pressure.rail_Pa)}, {injectors} across the injectors"
    pick = build.pick
    if pick.pump_volts_V is not None:
        draws = (
            "" if pick.pump_current_A is None else f", {numbers.figure('amps', pick.pump_current_A)} a pump"
        )
        assumed = " (assumed)" if build.volts_assumed else ""
        yield "at the pump", f"{numbers.figure('volts', pick.pump_volts_V)}{assumed}{draws}"


def _fuel_for_power(build: Subject) -> str:
    """The fuel for each unit of power, said in words in place of a unit over a unit."""
    numbers = build.numbers
    mass = numbers.unit("bsfc").partition("/")[0]
    taken = "" if build.session.engine.bsfc is not None else " (assumed)"
    figure = numbers.number("bsfc", build.figures.demand.bsfc_kg_J)
    where = " at the crank" if build.session.goal.power_at == "wheels" else ""
    return f"{figure}{NO_BREAK}{mass} for each {numbers.unit('power')} and hour{where}{taken}"


def _steps(build: Subject, steps: Ladder, rise: float) -> Iterator[tuple[Cell, ...]]:
    """The ladder from the rail back to the tank, steps of nothing left out, then what it comes to."""
    named = (
        ("base pressure", steps.base_Pa),
        ("boost", steps.boost_Pa),
        ("filters", steps.filters_Pa),
        ("friction in the line", steps.friction_Pa),
        ("ends and fittings", steps.fittings_Pa),
        ("other parts", steps.parts_Pa),
        ("climb", steps.rise_Pa),
        ("inlet", steps.inlet_Pa),
    )
    number = build.numbers.number
    for name, step in named:
        shown = number("pressure", step)
        if shown.strip("0."):
            yield row(name, shown)
    could = steps.could_make_Pa
    if could is None:
        yield row("must make", number("pressure", rise))
        return
    yield row("must make", number("pressure", rise, could))
    yield row("could make", Cell(number("pressure", could, rise), "yes" if could >= rise else "no"))
