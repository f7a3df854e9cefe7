"""Sets of parts that do the job, in words: what to buy, what each comes to, and why the others fail."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fuelwiz.advice.blocks import (
    Block,
    Cell,
    Column,
    Heading,
    Item,
    Listing,
    Pairs,
    Paragraph,
    Sheet,
    Table,
    row,
)
from fuelwiz.advice.cases import BY_CASE
from fuelwiz.advice.limits import WORDS
from fuelwiz.advice.sections.shopping_prices import price_text
from fuelwiz.advice.subject import Subject, capitalized, listed, size_label, with_article
from fuelwiz.options.figures import (
    Failed,
    Missing,
    OptionRow,
    OptionsFigures,
    Tightest,
    ToBuy,
    WhyFailed,
)
from fuelwiz.printable import clean
from fuelwiz.terms import fuel_name

NAME = "Parts that do the job"
SETS = "The sets"
WITHOUT_A_PRICE = "Not priced in full"
NOTHING = "nothing: all of it is on the car or the shelf"
SAME_BASE_PA = 1.0


def options_sheet(subject: Subject, figures: OptionsFigures, asked: Sequence[str], currency: str) -> Sheet:
    """The sheet of a search.

    Args:
        subject: the build.
        figures: what the search came to.
        asked: what the sets had to pass besides today, in words.
        currency: the parts file's own word for its prices.
    """
    name = subject.session.name or "build"
    return Sheet(f"{NAME}: {name}", tuple(_blocks(subject, figures, asked, currency)))


def _blocks(
    subject: Subject, figures: OptionsFigures, asked: Sequence[str], currency: str
) -> Iterator[Block]:
    yield Paragraph(how_many(figures, asked), strong=True)
    numbered = list(enumerate(figures.rows, 1))
    priced = [each for each in numbered if each[1].price is not None]
    others = [each for each in numbered if each[1].price is None]
    for head, rows in ((SETS, priced), (WITHOUT_A_PRICE, others)):
        if rows:
            yield Heading(head)
            yield options_table(subject, rows, currency)
            for number, each in rows:
                yield Pairs(explained(subject, each, currency), row_title(number, each))
    if figures.failed:
        yield Heading("Why the others fail")
        yield Listing(tuple(_why(subject, failed, figures.tried) for failed in figures.failed))
    if not figures.works:
        yield Heading("What would let a set in")
        yield Paragraph(missing_sentence(subject, figures.missing))
    yield Paragraph(CARE, quiet=True)


CARE = (
    "Figures are those of the sheets that were typed in. Ask the maker whether a part may carry your fuel, and keep to"
    " its ratings; another base pressure or other injectors want the engine computer's figures changed first."
)


def passed(*, next_goal: bool, bad_days: bool) -> list[str]:
    """What sets had to pass besides today, in words."""
    asked = ((next_goal, "at the next goal"), (bad_days, "on every bad day"))
    return [words for wanted, words in asked if wanted]


def sets_on_screen(
    subject: Subject, figures: OptionsFigures, at: int, currency: str, *, ended: bool
) -> Iterator[Block]:
    """The sets with one of them highlighted and explained, then why the others fail.

    Args:
        subject: the build.
        figures: what the search came to so far.
        at: which row is highlighted.
        currency: the parts file's own word for its prices.
        ended: whether there is nothing more to come.
    """
    rows = list(enumerate(figures.rows, 1))
    if rows:
        yield options_table(subject, rows, currency)._replace(own=at)
        number, each = rows[at]
        whole = [("pump", pump_name(each))]
        if each.tightest is not None:
            whole.append(("tightest", tightest_text(subject, each.tightest)))
        yield Pairs((*whole, *explained(subject, each, currency)), row_title(number, each))
    elif ended:
        yield Paragraph(missing_sentence(subject, figures.missing), strong=True)
    if figures.failed:
        yield Heading("Why the others fail")
        yield Listing(tuple(_why(subject, failed, figures.tried) for failed in figures.failed))


def how_many(figures: OptionsFigures, asked: Sequence[str]) -> str:
    """How many sets do the job, and what they had to pass."""
    passes = listed(["today", *asked])
    if not figures.tried:
        return "No set to try: the file has no size of feed hose that the build lists, or no pump."
    works = f"{figures.works} of {figures.tried} sets do the job {passes}"
    return f"{works}." if figures.works else f"None of {figures.tried} sets does the job {passes}."


def options_table(subject: Subject, rows: Sequence[tuple[int, OptionRow]], currency: str) -> Table:
    """The sets, one to a row."""
    unit = subject.numbers.unit
    columns = (
        Column("Set", whole=True),
        Column("Pump"),
        Column("Base", unit("pressure"), figures=True),
        Column("Feed", whole=True),
        Column("Costs", currency, figures=True),
        Column("Spare", unit("percent"), figures=True),
        Column("Tightest day"),
        Column("Amps", figures=True, rank=1),
        Column("Weight", unit("weight"), figures=True, rank=2),
    )
    return Table(columns, tuple(_table_row(subject, number, each) for number, each in rows))


def _table_row(subject: Subject, number: int, each: OptionRow) -> tuple[Cell, ...]:
    numbers = subject.numbers
    return row(
        str(number),
        pump_name(each),
        numbers.number("pressure", each.base_Pa),
        size_label(each.size) if each.size == "fixed" else each.size,
        None if each.price is None else price_text(each.price),
        None if each.margin is None else numbers.number("percent", each.margin, subject.session.goal.reserve),
        None if each.tightest is None else _tightest_cell(subject, each.tightest),
        None if each.current_A is None else numbers.number("amps", each.current_A),
        None if each.weight_kg is None else numbers.number("weight", each.weight_kg),
    )


def pump_name(each: OptionRow) -> str:
    """The pump, and how many of it."""
    name = clean(each.pump)
    return name if each.count == 1 else f"{each.count} × {name}"


def tightest_text(subject: Subject, tightest: Tightest) -> str:
    """How much there is to spare on the bad day with the least, and then which: the figure stays where room is short."""
    words = next((words for case, words in BY_CASE.items() if case == tightest.case), None)
    name = clean(tightest.case) if words is None else words.name
    return f"{_to_spare(subject, tightest)}, {name}"


def _to_spare(subject: Subject, tightest: Tightest) -> str:
    return subject.numbers.figure("percent", tightest.margin, 0.0)


def _tightest_cell(subject: Subject, tightest: Tightest) -> Cell:
    """The same in a row, where the set under the pointer says which day it is."""
    text = tightest_text(subject, tightest)
    return Cell(text, in_one_line=(text, _to_spare(subject, tightest)))


def row_title(number: int, each: OptionRow) -> str:
    """The number of a set and why it is shown."""
    return f"{number}: {', '.join(each.labels)}" if each.labels else f"{number}: no other set beats it in all"


def explained(subject: Subject, each: OptionRow, currency: str) -> tuple[tuple[str, str], ...]:
    """A set line by line: what to buy, what goes with it, and what is to be known about it."""
    lines = [("buy", "; ".join(buy_text(subject, one, currency) for one in each.buy) or NOTHING)]
    lines.append(("costs", _sum(each, currency)))
    goes_with = list(_goes_with(subject, each))
    if goes_with:
        lines.append(("with", ", ".join(goes_with)))
    if each.next_works is not None:
        lines.append(("next goal", "carried too" if each.next_works else "not carried"))
    if abs(each.base_Pa - subject.session.pressure.base) > SAME_BASE_PA:
        today = subject.numbers.figure("pressure", subject.session.pressure.base)
        then = subject.numbers.figure("pressure", each.base_Pa)
        lines.append(
            ("base", f"{then} in place of {today}: tell the engine computer first, or it runs wrong")
        )
    if each.alcohol_unknown:
        fuel = fuel_name(subject.session.fuel.kind, subject.session.fuel.ethanol)
        lines.append(("fuel", f"the file does not say that this pump may carry {fuel}: ask its maker"))
    return tuple(lines)


def _sum(each: OptionRow, currency: str) -> str:
    if each.price is not None:
        return f"{price_text(each.price)} {clean(currency)}".strip()
    return f"not known: no price for {listed([clean(what) for what in each.unpriced])}"


def _goes_with(subject: Subject, each: OptionRow) -> Iterator[str]:
    if each.return_size is not None:
        yield "the return you have" if each.return_size == "fixed" else f"{each.return_size} return"
    if each.wire is not None:
        yield f"{each.wire} wire"
    if each.injectors_rated_m3_s is not None:
        yield f"{subject.numbers.figure('injector', each.injectors_rated_m3_s)} injectors"


def buy_text(subject: Subject, one: ToBuy, currency: str) -> str:
    """One line of what to buy."""
    what = clean(one.what)
    if one.unit == "m":
        what = f"{subject.numbers.figure('length', one.quantity)} {what}"
    elif one.quantity > 1:
        what = f"{one.quantity:g} × {what}"
    price = "" if one.price is None else f", {price_text(one.price)} {clean(currency)}".rstrip()
    return f"{what}{price}"


def _why(subject: Subject, failed: Failed, tried: int) -> Item:
    return Item(f"{failed.sets} of {tried}: {why_text(subject, failed.limit)}", "no")


def why_text(subject: Subject, limit: WhyFailed) -> str:
    """Why a set fails, in a few words."""
    if limit == "alcohol":
        fuel = fuel_name(subject.session.fuel.kind, subject.session.fuel.ethanol)
        return f"the pump may not carry {fuel}"
    return WORDS[limit].short.format(pump_is="the pump is")


def missing_sentence(subject: Subject, missing: Missing | None) -> str:
    """The one part that would let a set in."""
    if missing is None:
        return "No single part would: more than one thing is short."
    return f"{capitalized(_missing_part(subject, missing))} in the file would let a set in."


def _missing_part(subject: Subject, missing: Missing) -> str:
    numbers = subject.numbers
    flow = "" if missing.flow_m3_s is None else numbers.figure("flow", missing.flow_m3_s)
    pressure = "" if missing.pressure_Pa is None else numbers.figure("pressure", missing.pressure_Pa)
    match missing.part:
        case "feed" | "return":
            assert missing.size is not None
            return f"{with_article(missing.size)} hose for the {missing.part}"
        case "wire":
            return f"{missing.wire} wire"
        case "injectors":
            assert missing.rated_m3_s is not None
            return f"injectors of {numbers.figure('injector', missing.rated_m3_s)}"
        case "regulator":
            return f"a regulator that loses no more than {pressure} at {flow}"
        case "pump":
            many = "a pump" if missing.count == 1 else f"{missing.count} pumps, each of one"
            like = f", its curve shaped like that of {clean(missing.like or '')}"
            return f"{many} that gives {flow} at {pressure}{like},"
