"""The lines below the list: they speak for the build under the pointer."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from textual.strip import Strip

from fuelwiz.store.build_file import BuildFile, Recorded
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.build_list.judged import Judged
from fuelwiz.wizard.build_list.list_state import BuildList, day_of
from fuelwiz.wizard.build_list.list_table import day_words
from fuelwiz.wizard.chrome import number_word
from fuelwiz.wizard.paint import VERDICT_TEXT, Area, verdict_lines

TEXT = VERDICT_TEXT
EDGE = 1  # cell that stays free at the right of a text
NEW = (
    "A new build: an answer after five steps, about ten minutes; six more if you like.",
    "Type ? at most questions that you cannot answer yet.",
)


def summary_lines(builds: BuildList, today: date, area: Area) -> list[Strip]:
    """Answer, last change and what is assumed; in more lines also what to do next, the notes and the file."""
    entry = builds.entry
    if entry is None:
        first, *others = NEW if builds.has_new_row else ("No build matches.",)
        return area.filled(_below_mark("note", "muted", first, others, area))
    known = builds.known(entry)
    fault = entry.fault or (known.fault if known is not None else "")
    if fault:
        return area.filled(_of_broken(entry, fault, known, area))
    mark, role, answer = _answer(entry, known, area)
    return area.filled(_below_mark(mark, role, answer, _below(entry, known, today, area), area))


def _below_mark(
    mark: str, role: Role, first: str, others: list[str] | tuple[str, ...], area: Area
) -> list[Strip]:
    """The first sentence as a verdict behind its mark, the others under it, as many as fit."""
    room = max(area.rows - min(len(others), 2 if area.rows < 6 else 4), 1)
    lines = verdict_lines(area.wrapped(first, TEXT, room), mark, "text" if role == "muted" else role, area)
    for text in others:
        left = area.rows - len(lines)
        lines += area.paragraph(text, TEXT, "muted", min(left, 2))
    return lines


def _answer(entry: BuildFile, known: Judged | None, area: Area) -> tuple[str, Role, str]:
    """The mark, its role, and the answer: what the record says until the build has been calculated."""
    if known is None:
        record = entry.record
        if record is None or not record.answer:
            return "note", "muted", f"{entry.name}: being calculated."
        return _mark_of(record.works), "muted", f"{entry.name}: {record.answer}"
    works = known.verdict.works
    role: Role = "muted" if works is None else "easy" if works else "too fast"
    room = area.width - TEXT - EDGE - len(entry.name) - 2
    text = f"{entry.name}: {known.answer[0] if area.rows >= 6 else _fitting(known.answer_forms[0], room)}"
    return _mark_of(works), role, text


def _mark_of(works: bool | None) -> str:
    return "not sure" if works is None else "works" if works else "look here"


def _below(entry: BuildFile, known: Judged | None, today: date, area: Area) -> list[str]:
    lines = [_change(entry, known, today)]
    if known is not None:
        lines.append(_assumed(known, area))
    if known is not None and area.rows >= 4:
        lines = [*_second_line(known, area), *lines]
    if area.rows >= 6:
        lines += _more(entry, known)
    return [line for line in lines if line]


def _second_line(known: Judged, area: Area) -> tuple[str, ...]:
    """Where the build is tightest, whole where that takes one row."""
    return tuple(_fitting(forms, area.width - TEXT - EDGE) for forms in known.answer_forms[1:])


def _fitting(forms: Sequence[str], columns: int) -> str:
    """The fullest form that fits; whatever gives advice is loaded by the first build that is judged, not before."""
    from fuelwiz.advice.answer.lines import fitting

    return fitting(forms, columns)


def _change(entry: BuildFile, known: Judged | None, today: date) -> str:
    """What was changed last, or at least when."""
    if entry.is_draft:
        return "Never saved: this is a draft. Enter opens it."
    if entry.has_draft:
        return "A draft was left: Enter offers it."
    if known is not None and known.by_hand and entry.record is not None:
        return f"Changed by hand since it was saved{_on(entry.record)}."
    if known is not None and known.change:
        return f"Last change: {known.change}."
    when = day_words(day_of(entry), today)
    return f"Last changed {when if when in ('today', 'yesterday') else f'on {when}'}." if when else ""


def _on(record: Recorded) -> str:
    return f" on {record.saved}" if record.saved else ""


def _assumed(known: Judged, area: Area) -> str:
    """How much is assumed, and which steps have no answer; as much of that as there is room for."""
    left_out = known.assumed or "nothing assumed"
    most = f" ({known.most_assumed} matters most)" if known.most_assumed else ""
    sentences = [
        f"{left_out}{more}; {steps}." for steps in _without_answer(known.steps_open) for more in (most, "")
    ]
    fitting = next((one for one in sentences if len(one) < area.width - TEXT), sentences[-1])
    return fitting[:1].upper() + fitting[1:]


def _without_answer(steps: Sequence[str]) -> tuple[str, ...]:
    """The steps of which the file answers nothing, by name, and how many they are, ever shorter."""
    if not steps:
        return ("every step has an answer",)
    count = _counted(len(steps), "step")
    whole = f"{count} without an answer"
    return f"{whole}: {', '.join(steps)}", whole, f"{count} open"


def _counted(count: int, one: str, many: str = "") -> str:
    """A number of things in words."""
    return f"{number_word(count)} {one if count == 1 else many or one + 's'}"


def _more(entry: BuildFile, known: Judged | None) -> list[str]:
    """What only a tall screen has room for."""
    lines = []
    record = entry.record
    if known is not None and known.answered_before and record is not None:
        lines.append(f"The same build, saved{_on(record)}, gave this result then: {known.answered_before}")
    notes = entry.notes
    if notes:
        lines.append(f"Notes: {notes}")
    lines.append("A draft, not saved yet." if entry.is_draft else f"File: {entry.file_name}")
    return lines


def _of_broken(entry: BuildFile, fault: str, known: Judged | None, area: Area) -> list[Strip]:
    more = known.more_faults if known is not None else 0
    others = (
        [f"{_counted(more, 'more thing is', 'more things are')} wrong in it.".capitalize()] if more else []
    )
    if known is not None:
        others.append("Enter opens it; each fault is shown at its question.")
    else:
        others.append("Fix it in a text editor; nothing here changes it.")
    return _below_mark("look here", "fault", f"{entry.file_name} cannot be used: {fault}.", others, area)
