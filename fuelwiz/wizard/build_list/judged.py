"""A build of the list judged: what its row and the lines below the list say of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fuelwiz.errors import SessionError
from fuelwiz.record import record
from fuelwiz.store.build_file import BuildFile, first_fault
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.chrome import FIRST_STEPS

if TYPE_CHECKING:
    from fuelwiz.advice.subject import Subject

NONE_WORKS = "none works"


@record
class Verdict:
    """A verdict as a row shows it: the name of its mark, if any, its word, its color, and the program's yes or no."""

    mark: str | None
    word: str
    role: Role
    works: bool | None


@record
class Judged:
    """What a build comes to; of a file that is no build `fault` says why, and all else is empty.

    `line` is the size that is judged, `spare` what the pump has to spare in percent, `change` what was changed
    last, `assumed` counts what was left out, `most_assumed` is the value of it that matters most, `steps_open` names
    the steps of which the file answers nothing, `by_hand` says whether the file has been edited since it was saved,
    `answered_before` what the program said then where it says something else now although nothing was edited.
    """

    verdict: Verdict = Verdict("unknown", "", "muted", None)
    goal: str = ""
    fuel: str = ""
    line: str = ""
    spare: str = ""
    answer: tuple[str, ...] = ()
    answer_forms: tuple[tuple[str, ...], ...] = ()
    change: str = ""
    assumed: str = ""
    most_assumed: str = ""
    steps_open: tuple[str, ...] = ()
    by_hand: bool = False
    answered_before: str = ""
    fault: str = ""
    more_faults: int = 0


def judge(entry: BuildFile) -> Judged:
    """What a build comes to. Loads all that calculates, so it is not for the first paint; never raises."""
    try:
        plain, build = _build(entry)
        return _judged(entry, plain, build)
    except SessionError as error:
        return Judged(fault=first_fault(error), more_faults=len(error.faults) - 1)
    except Exception:  # a file from anybody must not take the list down with it
        return Judged(fault="cannot be judged here: open it to see why")


def _build(entry: BuildFile) -> tuple[dict[str, Any], Subject]:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.document.file import load
    from fuelwiz.session import validate
    from fuelwiz.sizing import quick_figures

    if entry.is_draft:
        plain, session = entry.plain, validate(entry.plain, entry.name)
    else:
        document, session = load(entry.path)
        plain = document.plain
    return plain, Subject(session, quick_figures(session))


def _judged(entry: BuildFile, plain: dict[str, Any], build: Subject) -> Judged:
    from fuelwiz.advice import result
    from fuelwiz.advice.assumed import count_in_words, most_in_words
    from fuelwiz.advice.row import SPARE
    from fuelwiz.desk.change_words import last_change_words
    from fuelwiz.desk.steps import steps_in
    from fuelwiz.questions import STEPS
    from fuelwiz.session import inputs_digest

    figures, session = build.figures, build.session
    words = result(session, figures).words
    touched = steps_in(plain)
    verdict = _verdict(build, sum(step.id not in touched for step in STEPS[:FIRST_STEPS]))
    record = entry.record
    saved_as = record.inputs if record else ""
    is_same = saved_as == inputs_digest(session)
    answer = words.answer[0].replace("\N{NO-BREAK SPACE}", " ")
    return Judged(
        verdict=verdict,
        goal=build.numbers.figure("power", figures.demand.crank_power_W),
        fuel=build.fuel,
        line="none" if verdict.word == NONE_WORKS and figures.chosen is None else figures.verdict.size,
        spare=SPARE.number(build, figures.pick) or "",
        answer=words.answer[:2],
        answer_forms=words.answer_forms[:2],
        change=last_change_words(entry.path),
        assumed=count_in_words(figures.assumed),
        most_assumed=most_in_words(figures.assumed),
        steps_open=tuple(step.name for step in STEPS if step.id not in touched),
        by_hand=bool(saved_as) and not is_same,
        answered_before=record.answer if record and is_same and record.answer != answer else "",
    )


def _verdict(build: Subject, steps_open: int) -> Verdict:
    """The word for the velocity, with its mark where the build works; what is open, while that is not known."""
    figures = build.figures
    works = figures.verdict.works
    if works is None:
        return Verdict("note", f"{steps_open} open" if steps_open else "open", "muted", None)
    if build.has_runs and build.has_pump and figures.recommended is None:
        return Verdict(None, NONE_WORKS, "fault", works)
    band = figures.pick.band
    return Verdict(band, band, band, works) if works else Verdict(None, band, "muted", works)
