"""The end of a sheet: what is assumed, what is on the car, what was said before, and the cautions."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.assumed import by_effect, count_in_words
from fuelwiz.advice.blocks import Block, Column, Heading, Item, Listing, Pairs, Paragraph, Table, row
from fuelwiz.advice.numbers import Role
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.printable import NO_BREAK
from fuelwiz.session import inputs_digest
from fuelwiz.sizing.figures import Assumption
from fuelwiz.terms import HOSES, INDUCTIONS, key_in_words

VALUES: dict[str, dict[str, str]] = {
    "hose": HOSES,
    "induction": INDUCTIONS,
    "regulator": {"rail": "on the rail", "tank": "in or near the tank", "none": "none"},
}
ROLES: dict[str, Role] = {"pressure.idle_vacuum": "vacuum"}
"""Keys that are shown in a unit of their own, as their row has it."""
ASSUMED = "Assumed"
LAST_SAVE = "Last save"
CAUTIONS = "Cautions"
FITTED = {
    "line": "line",
    "return_line": "return line",
    "pump": "pump",
    "regulator": "regulator",
    "injectors": "injectors",
    "filter": "filter",
}


def assumed(subject: Subject, _words: Words) -> Iterator[Block]:
    """Every key that was left out, in words, with what is taken for it."""
    yield Heading(ASSUMED)
    taken = subject.figures.assumed
    if not taken:
        yield Paragraph("Nothing: you answered everything that matters.")
        return
    yield Paragraph(f"{capitalized(count_in_words(taken))}.")
    columns = (
        Column("Answer"),
        Column("Assumed"),
        Column("Moves spare by", "points", figures=True, rank=1),
        Column("Key in the file", whole=True),
    )
    rows = (
        row(
            key_in_words(item.key),
            taken_value(subject, item),
            None if item.effect is None else subject.numbers.number("percent", item.effect),
            item.key,
        )
        for item in by_effect(taken)
    )
    yield Table(columns, tuple(rows))


def taken_value(subject: Subject, item: Assumption) -> str:
    """What is taken for a key, as people say it."""
    words = VALUES.get(item.key.rpartition(".")[2], {})
    return words.get(item.value) or subject.numbers.typed(item.value, ROLES.get(item.key))


def on_the_car(subject: Subject, _words: Words) -> Iterator[Block]:
    """What the builder wrote down as fitted."""
    yield Heading("On the car")
    fitted = subject.session.fitted
    said = {name: getattr(fitted, key).strip() for key, name in FITTED.items()}
    rows = tuple((name, text) for name, text in said.items() if text)
    if rows:
        yield Pairs(rows)
    else:
        yield Paragraph("Nothing is written down.")


def said_before(subject: Subject, words: Words) -> Iterator[Block]:
    """The answer of the last save, where the build or the program has changed since."""
    record = subject.session.record
    if record is None or not record.answer:
        return
    when = f" on {record.saved}" if record.saved else ""
    if record.inputs != inputs_digest(subject.session):
        yield Heading(LAST_SAVE)
        yield Paragraph(
            f"You have changed the build since it was saved{when}. Result at that time: {record.answer}"
        )
    elif record.answer.replace(NO_BREAK, " ") != words.answer[0].replace(NO_BREAK, " "):
        version = f" {record.version}" if record.version else ""
        yield Heading(LAST_SAVE)
        yield Paragraph(
            f"The build has not changed since it was saved{when}, but fuelwiz{version} gave another result"
            f" at that time: {record.answer}"
        )


def cautions(_subject: Subject, words: Words) -> Iterator[Block]:
    """The standing cautions that apply."""
    yield Heading(CAUTIONS)
    yield Listing(tuple(Item(text) for text in words.cautions))
