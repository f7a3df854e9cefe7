"""The end of a sheet: what is assumed, what is on the car, what was said before, and the cautions."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Column, Heading, Item, Listing, Pairs, Paragraph, Table, row
from fuelwiz.advice.numbers import NO_BREAK
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject
from fuelwiz.session import inputs_digest
from fuelwiz.terms import key_in_words

FITTED = {
    "line": "line",
    "return_line": "return line",
    "pump": "pump",
    "regulator": "regulator",
    "injectors": "injectors",
    "filter": "filter",
}


def assumed(build: Subject, _words: Words) -> Iterator[Block]:
    """Every key that was left out, in words, with what is taken for it."""
    yield Heading("What is assumed")
    taken = build.figures.assumed
    if not taken:
        yield Paragraph("Nothing that matters: every answer is the builder's own.")
        return
    columns = (Column("What it is"), Column("Taken as"), Column("Key in the file", whole=True))
    yield Table(columns, tuple(row(key_in_words(item.key), item.value, item.key) for item in taken))


def on_the_car(build: Subject, _words: Words) -> Iterator[Block]:
    """What the builder wrote down as fitted."""
    yield Heading("What is on the car")
    fitted = build.session.fitted
    said = {name: getattr(fitted, key).strip() for key, name in FITTED.items()}
    rows = tuple((name, text) for name, text in said.items() if text)
    if rows:
        yield Pairs(rows)
    else:
        yield Paragraph("Nothing is written down, in [fitted].")


def said_before(build: Subject, words: Words) -> Iterator[Block]:
    """The answer of the last save, where the build or the program has changed since."""
    record = build.session.record
    if record is None or not record.answer:
        return
    when = f" of {record.saved}" if record.saved else ""
    if record.inputs != inputs_digest(build.session):
        yield Heading("What it said before")
        yield Paragraph(f"The build has changed since the save{when}. It then said: {record.answer}")
    elif record.answer.replace(NO_BREAK, " ") != words.answer.replace(NO_BREAK, " "):
        version = f", version {record.version}," if record.version else ""
        yield Heading("What it said before")
        yield Paragraph(
            f"The build is that of the save{when}, the program{version} then said: {record.answer}"
        )


def cautions(_build: Subject, words: Words) -> Iterator[Block]:
    """The standing cautions that apply."""
    yield Heading("Cautions")
    yield Listing(tuple(Item(text) for text in words.cautions))
