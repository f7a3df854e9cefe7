"""The fuel's way as a picture: down the page from tank to tank, a sign and a name for each part."""

from __future__ import annotations

from fuelwiz.advice.blocks import SYMBOLS, FuelPath, PathLine
from fuelwiz.report.page.pictures.shapes import SIGN_WIDTH, Kind, Picture, Shape, Sign, Stroke, Word, signs_in
from fuelwiz.terminal.cells import width_of, wrap

WIDTH = 340
PIPE, BRANCH, NAMES, RIGHT = 16, 34, 40, WIDTH - 4
FIRST, ROW, BETWEEN = 16, 14, 9
FAILS = ("no", "stop", "too fast")
HEADING = "The fuel's way"


def way_picture(path: FuelPath) -> Picture:
    """The way, as high as its texts take."""
    pipes: list[Shape] = []
    parts: list[Shape] = []
    y, before = float(FIRST), None
    for line in path.lines:
        middle = y - 4
        if before is not None:
            pipes.append(Stroke(((PIPE, before), (PIPE, middle)), "gap" if line.gap else "could"))
        if line.place == "branch":
            pipes.append(Stroke(((PIPE, middle), (BRANCH, middle)), "could"))
        drawn, height = _part(line, y)
        parts += drawn
        before, y = middle, y + height
    parts_in_words = "; ".join(_in_words(line) for line in path.lines)
    return Picture("way", HEADING, f"{parts_in_words}.", path.sentence, WIDTH, y, (*pipes, *parts))


def _part(line: PathLine, y: float) -> tuple[list[Shape], float]:
    """A part with its name and what comes out, below them what was given; and the height it takes."""
    look = _look(line)
    x = BRANCH if line.place == "branch" else PIPE
    names = NAMES + (BRANCH - PIPE if line.place == "branch" else 0)
    right = _right(line)
    shapes: list[Shape] = [
        Sign(x, y - 4, line.part, look),
        Word(names, y, line.name, "fails" if look == "fails" else "strong"),
    ]
    room = (RIGHT - names) / SIGN_WIDTH
    rows = [] if width_of(line.name) + 2 + width_of(right) <= room else wrap(right, signs_in(RIGHT - names))
    if right and not rows:
        shapes.append(Word(RIGHT, y, right, "fails" if line.mark in FAILS else "text", "end"))
    for text in rows:
        y += ROW
        shapes.append(Word(RIGHT, y, text, "fails" if line.mark in FAILS else "text", "end"))
    facts = ", ".join(filter(None, (line.given_text, line.speed)))
    under = wrap(facts, signs_in(RIGHT - names)) if facts else []
    shapes += [Word(names, y + ROW * at, text, "muted") for at, text in enumerate(under, 1)]
    return shapes, ROW * (1 + len(rows) + len(under)) + BETWEEN


def _look(line: PathLine) -> Kind:
    if line.mark in FAILS:
        return "fails"
    return "gap" if line.gap else "muted" if line.assumed else "focus"


def _right(line: PathLine) -> str:
    """What comes out there, behind its mark."""
    return f"{SYMBOLS[line.mark] if line.mark else ''} {line.comes_out}".strip()


def _in_words(line: PathLine) -> str:
    return ", ".join(filter(None, (line.name, line.given_text, line.speed, _right(line))))
