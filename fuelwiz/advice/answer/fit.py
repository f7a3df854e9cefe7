"""The line to fit, with its velocity and loss: what a sheet says under the answer."""

from __future__ import annotations

from fuelwiz.advice.answer.how_far import refused_word
from fuelwiz.advice.limits import limit_phrase, short_why
from fuelwiz.advice.phrases import GUESSED, lost, spare, speed
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import SizeFigures


def line_to_fit(subject: Subject) -> str | None:
    """The sentence; None where no line is given."""
    if not subject.has_runs:
        return None
    line, pick = subject.line, subject.pick
    if pick.fixed:
        verdict = "works" if pick.line_works else "does not work"
        return f"The line you have {verdict}: {_figures(subject, pick)}."
    if line is None:
        why = limit_phrase(subject, pick, pick.limits[0]) if pick.limits else _figures(subject, pick)
        return f"No size tried works, not even {subject.figures.sizes[-1].size}: {why}."
    if line.limits:
        return _enough_line(subject, line)
    mine = subject.figures.chosen == line.size
    right = f"Your {line.size} is the right line" if mine else f"{line.size} is the line to fit"
    fit = f"{right}: {_figures(subject, line)}."
    return f"{fit}{_of_the_chosen(subject, line)}"


def _enough_line(subject: Subject, line: SizeFigures) -> str:
    """A line that is large enough where no size works, since something else fails with every one of them."""
    mine = subject.figures.chosen == line.size
    enough = f"{f'Your {line.size}' if mine else line.size} is large enough: {_figures(subject, line)}"
    why = short_why(subject, line.limits[0])
    chosen = subject.figures.row(subject.figures.chosen)
    other = "" if chosen is None or chosen.line_works else _of_the_chosen(subject, line)
    return f"The line is not the cause: {why} with every size. {enough}.{other}"


def _of_the_chosen(subject: Subject, line: SizeFigures) -> str:
    """What the size that was chosen is like, where it is another one."""
    chosen = subject.figures.row(subject.figures.chosen)
    if chosen is None or chosen is line:
        return ""
    if chosen.limits:
        return f" Your {chosen.size} {refused_word(subject, chosen)}: {limit_phrase(subject, chosen, chosen.limits[0])}."
    if chosen.bore_m > line.bore_m:
        return f" Your {chosen.size} is more than enough."
    return f" Your {chosen.size} works, but its velocity is {chosen.band}."


def _figures(subject: Subject, row: SizeFigures) -> str:
    """Velocity, loss and what is to spare, as they follow a size."""
    parts = [speed(subject, row), lost(subject, row), spare(subject, row)]
    return ", ".join(filter(None, parts)) + (GUESSED if subject.one_point and row.margin is not None else "")
