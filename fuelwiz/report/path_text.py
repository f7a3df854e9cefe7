"""The fuel's way as lines of text: a row a part where there is room, two where there is not."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import SYMBOLS, FuelPath, PathLine, PathPlace
from fuelwiz.report.table_layout import Fold
from fuelwiz.terminal.cells import pad, width_of, wrap_plain

ONE_ROW_FROM = 64
WIDEST_NAME = 14
LEADS: dict[PathPlace, str] = {"stop": " ", "between": "  │ ", "branch": "  ├ "}
ON = "  │ "
GAP = 2


def path_lines(path: FuelPath, width: int, fold: Fold) -> list[str]:
    """The way in lines of `width` columns at most, in the signs that `fold` leaves."""
    shown = FuelPath(tuple(_shown(line, fold) for line in path.lines))
    draw = _one_row if width >= ONE_ROW_FROM else _two_rows
    lines = [line for part in draw(shown, width) for line in part]
    if path.sentence:
        lines += ["", *wrap_plain(fold(path.sentence), width)]
    return [line.rstrip() for line in _folded(lines, width, fold)]


def _shown(line: PathLine, fold: Fold) -> PathLine:
    """A part in the signs that are measured, as they are the ones to be shown."""
    return line._replace(
        name=fold(line.name), given=fold(line.given), speed=fold(line.speed), comes_out=fold(line.comes_out)
    )


def _folded(lines: list[str], width: int, fold: Fold) -> Iterator[str]:
    """Each line in the signs that can be shown; one that grows beyond the width gives up blanks inside."""
    for line in lines:
        folded = fold(line).rstrip()
        while width_of(folded) > width and "   " in folded.lstrip():
            lead = len(folded) - len(folded.lstrip())
            folded = folded[:lead] + folded[lead:].replace("   ", "  ", 1)
        yield from [folded] if width_of(folded) <= width else wrap_plain(folded, width)


def _one_row(path: FuelPath, width: int) -> Iterator[list[str]]:
    """Name, what was given, speed and what comes out, in columns; what was given takes further rows."""
    name = min(max((width_of(line.name) for line in path.lines), default=0), WIDEST_NAME) + len(ON) + GAP
    rights = _rights(path)
    for line, right in zip(path.lines, rights, strict=True):
        given = wrap_plain(line.given_text, max(width - name - width_of(right), WIDEST_NAME))
        first, *rest = wrap_plain(line.name, name - len(ON) - GAP)
        rows = [LEADS[line.place] + first, *(_on(line) + more for more in rest)]
        rows += [_on(line)] * (len(given) - len(rows))
        given += [""] * (len(rows) - len(given))
        lines = [pad(row, name) + more for row, more in zip(rows, given, strict=True)]
        lines[0] += " " * (width - width_of(lines[0]) - width_of(right)) + right
        yield lines


def _rights(path: FuelPath) -> list[str]:
    """What stands at the right of each part: the speed in a column of its own, and what comes out."""
    flowing = [line for line in path.lines if line.speed]
    speed = max((width_of(_plain(line.speed)) for line in flowing), default=0)
    out = max((width_of(_out(line)) for line in flowing), default=0)
    columns = (
        (pad(_plain(line.speed), speed, right=True), pad(_out(line), out, right=True))
        if line.speed
        else ("", _out(line))
        for line in path.lines
    )
    return ["".join(" " * GAP + text for text in pair if text) for pair in columns]


def _two_rows(path: FuelPath, width: int) -> Iterator[list[str]]:
    """Name and what comes out, and in the rows below what was given and the speed."""
    for line in path.lines:
        head = LEADS[line.place] + line.name
        out = _out(line)
        room = width - width_of(head) - width_of(out)
        rows = [head + " " * room + out] if room >= GAP else [*_hung(width, line)]
        if room < GAP and out:
            rows += [f"{_on(line)}  {more}" for more in wrap_plain(out, width - len(ON) - 2)]
        facts = ", ".join(filter(None, (line.given_text, line.speed)))
        rows += [f"{_on(line)}  {more}" for more in wrap_plain(facts, width - len(ON) - 2) if more]
        yield rows


def _hung(width: int, line: PathLine) -> Iterator[str]:
    first, *rest = wrap_plain(line.name, width - len(ON))
    yield LEADS[line.place] + first
    yield from (_on(line) + more for more in rest)


def _on(line: PathLine) -> str:
    """What stands at the left of a part's further rows."""
    return " " * len(ON) if line.place == "stop" else ON


def _out(line: PathLine) -> str:
    """What comes out, behind its mark."""
    mark = SYMBOLS[line.mark] if line.mark else ""
    return _plain(f"{mark} {line.comes_out}".strip())


def _plain(text: str) -> str:
    return " ".join(wrap_plain(text, 10_000))
