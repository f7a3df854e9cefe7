"""The sections of one page: what a builder would write on a single sheet; the whole has more of each."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.assumed import by_effect, count_in_words
from fuelwiz.advice.blocks import Block, Heading, Item, Listing, Pairs, Paragraph, Table
from fuelwiz.advice.case_sentences import fails_by_itself
from fuelwiz.advice.cautions import alcohol_may_be_in, rubber_with_alcohol
from fuelwiz.advice.findings import remarks_on
from fuelwiz.advice.limits import short_why
from fuelwiz.advice.pure_fuels import PURE_FUELS
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections import ceilings, closing, gauge, opening, sizes
from fuelwiz.advice.sections.headings import BAD_DAYS, CEILINGS, SIZES
from fuelwiz.advice.sections.rests_on import SEEN
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.sizing.vocabulary import Limit
from fuelwiz.terms import key_in_words


def ceilings_in_brief(subject: Subject, words: Words) -> Iterator[Block]:
    """The power that each part alone is good for, a line for those that are solved and one for rules of thumb."""
    yield Heading(CEILINGS)
    groups = ceilings.ceiling_groups(subject)
    if words.first_limit is None or not groups:
        yield Paragraph(ceilings.ceilings_unknown(subject))
        return
    unit = subject.numbers.unit("power")
    rows = []
    for group in groups:
        parts = [
            f"{ceilings.ceiling_name(subject, item)} {ceilings.ceiling_figure(subject, item)}"
            for item in group.ceilings
        ]
        rows.append((f"{group.title.lower()}, {unit}", ", ".join(parts)))
    yield Pairs(tuple(rows))


def three_sizes(subject: Subject, _words: Words) -> Iterator[Block]:
    """The line to fit and its neighbors, and the chosen one."""
    yield Heading(SIZES)
    table = sizes.size_table(subject)
    figures = subject.figures
    middle = subject.line or subject.pick
    beside = {row.size for step in (-1, 1) if (row := subject.neighbor(middle, step)) is not None}
    wanted = {middle.size, *beside, figures.chosen, figures.verdict.size}
    shown = [at for at, row in enumerate(figures.sizes) if row.size in wanted]
    own = None if table.own is None else shown.index(table.own)
    yield Table(table.columns, tuple(table.rows[at] for at in shown), own)
    for note in sizes.size_alone(subject, [figures.sizes[at] for at in shown]):
        yield Paragraph(note)


WARNINGS = "Warnings"
NOTES_SHOWN = 240
"""Characters of notes on a page of its own length: longer ones are cut, the whole report has them all."""


def opening_in_brief(subject: Subject, words: Words) -> Iterator[Block]:
    """The build in a line, its notes where there are some, and the answer."""
    yield Paragraph(opening.build_in_a_line(subject))
    yield from opening.notes(subject, NOTES_SHOWN)
    yield from opening.answer(words)


def gauges_in_brief(subject: Subject, words: Words) -> Iterator[Block]:
    """What gauges show, and what comes out of the return; the caution stands at the foot of the page."""
    for block in gauge.gauge_pressures(subject, words):
        if not (isinstance(block, Paragraph) and block.quiet):
            yield block


def days_in_brief(subject: Subject, words: Words) -> Iterator[Block]:
    """The bad days that pass in one line, those that fail in a row each."""
    yield Heading(BAD_DAYS)
    cases = subject.figures.stress
    if not cases:
        yield Paragraph(not_known_sentence(subject, "line", "pump"))
        return
    passing: list[str] = []
    as_today: list[str] = []
    still: set[Limit] = set()
    items: list[Item] = []
    for case, name, what in zip(cases, words.case_names, words.stress, strict=True):
        if fails_by_itself(subject, case):
            happens = what.partition(" What helps")[0].partition(": ")[2]
            items.append(Item(happens, "no", capitalized(name)))
            continue
        days = as_today if case.works is False else passing
        days.append(_with_its_spare(subject, name, case.margin, first=not days))
        still.update(case.limits)
    if as_today:
        items.insert(0, Item(f"{', '.join(as_today)}.", "no", _only_as_today(subject, still, len(as_today))))
    if passing:
        items.insert(0, Item(f"{', '.join(passing)}.", "yes", "Passes" if len(passing) == 1 else "Pass"))
    yield Listing(tuple(items))


def _with_its_spare(subject: Subject, day: str, margin: float | None, *, first: bool) -> str:
    """A day and what is left on it; the first of a list says what its figure is."""
    if margin is None:
        return day
    spare = subject.numbers.figure("percent", margin, 0.0)
    return f"{day} with {spare} to spare" if first else f"{day} {spare}"


_NAMED = 2


def _only_as_today(subject: Subject, still: set[Limit], days: int) -> str:
    """Days on which nothing fails but what is wrong today and still so then."""
    if "velocity" in still:
        still = still - {"delivery"}
    reasons = [short_why(subject, limit) for limit in subject.figures.verdict.limits if limit in still]
    unnamed = len(reasons) - _NAMED
    named = reasons[:_NAMED] + ([f"{unnamed} other limit{'s' if unnamed > 1 else ''}"] if unnamed > 0 else [])
    verb = "Fails" if days == 1 else "Fail"
    return f"{verb} only for what is wrong today ({'; '.join(named)})"


def warnings_in_brief(subject: Subject, _words: Words) -> Iterator[Block]:
    """What the answer has to be read with, a line each: those warnings that no other section of the page says."""
    remarks = [one for one in remarks_on(subject) if one.severity == "warning" and not one.elsewhere]
    if remarks:
        yield Heading(WARNINGS)
        yield Listing(tuple(Item(one.what, "warning") for one in remarks))


def assumed_in_brief(subject: Subject, _words: Words) -> Iterator[Block]:
    """What was left out, by what each moves."""
    yield Heading(closing.ASSUMED)
    taken = subject.figures.assumed
    if not taken:
        yield Paragraph("Nothing: you answered everything that matters.")
        return
    moving, others = [], []
    for item in by_effect(taken):
        name = key_in_words(item.key)
        if item.effect is None or item.effect < SEEN:
            others.append(name)
        else:
            points = subject.numbers.number("percent", item.effect)
            moving.append(f"{name} {closing.taken_value(subject, item)} ({points})")
    points = f" Points of spare that each can move: {', '.join(moving)}." if moving else ""
    behind = f" {'Others' if moving else 'They are'}: {', '.join(dict.fromkeys(others))}." if others else ""
    yield Paragraph(f"{capitalized(count_in_words(taken))}.{points}{behind}")


def cautions_in_brief(subject: Subject, _words: Words) -> Iterator[Block]:
    """The gravest cautions in few lines."""
    yield Heading(closing.CAUTIONS)
    yield Listing(tuple(Item(text) for text in page_cautions(subject)))


RUBBER = "Your rubber hose: use it with alcohol fuel only if its maker rates it for that."


def page_cautions(subject: Subject) -> tuple[str, ...]:
    """The gravest of them, in a few lines of a page; the whole list says more."""
    return (
        "Relieve the pressure before you open a line or fit a gauge; never block one.",
        "Cold engine, open air, no flame or phone, fuel extinguisher; ground tank, can.",
        _fuel_on_the_page(subject),
        *([RUBBER] if rubber_with_alcohol(subject) else []),
        "An aid to design, not an approval: makers' ratings, local codes, the sanctioning body and licensed practice"
        " come first.",
    )


def _fuel_on_the_page(subject: Subject) -> str:
    kind = subject.session.fuel.kind
    if kind == "blend":
        what = "alcohol, " if alcohol_may_be_in(subject) else ""
        return f"Hose, ends, seals and filter must be rated for {what}pressure and heat."
    if kind == "own":
        return f"If it holds methanol: {PURE_FUELS['methanol'].in_brief}"
    return f"{capitalized(kind)}: {PURE_FUELS[kind].in_brief}"
