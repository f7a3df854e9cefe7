"""What a picture is made of: shapes at places, in the units of its own width and height."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

from fuelwiz.advice.blocks import PathSign

Kind = Literal[
    "text", "muted", "strong", "focus", "pump", "other", "grid", "goal", "works", "fails", "could", "gap"
]
"""How a shape looks; each is a style of the page."""
Anchor = Literal["start", "middle", "end"]


class Stroke(NamedTuple):
    """A line through points."""

    points: tuple[tuple[float, float], ...]
    kind: Kind
    shape: str = "stroke"


class Box(NamedTuple):
    """A filled box, `x` and `y` its upper left corner."""

    x: float
    y: float
    width: float
    height: float
    kind: Kind
    shape: str = "box"


class Dot(NamedTuple):
    """A point that is marked: a disk, or a diamond where it is the one to look at."""

    x: float
    y: float
    kind: Kind
    diamond: bool = False
    shape: str = "dot"


class Word(NamedTuple):
    """A text on its line."""

    x: float
    y: float
    text: str
    kind: Kind = "text"
    anchor: Anchor = "start"
    shape: str = "word"


class Sign(NamedTuple):
    """The sign of a part of the fuel's way, around its middle."""

    x: float
    y: float
    icon: PathSign
    kind: Kind
    shape: str = "sign"


Shape = Stroke | Box | Dot | Word | Sign


class Picture(NamedTuple):
    """Shapes with what they show in words.

    `sentence` stands under the picture, `description` is for people who cannot see it.
    """

    name: str
    heading: str
    description: str
    sentence: str
    width: float
    height: float
    shapes: tuple[Shape, ...]


SIGN_WIDTH = 6.2
"""How wide a sign of a text is at most, on the average."""


def signs_in(width: float) -> int:
    """How many signs of a text fit in that width."""
    return int(width / SIGN_WIDTH)


def legend(entries: Sequence[tuple[str, Kind]], x: float, y: float, width: float) -> Iterator[Shape]:
    """Samples of lines with their names, row by row within the width."""
    left = x
    for text, kind in entries:
        wide = 26 + len(text) * SIGN_WIDTH
        if left > x and left + wide > x + width:
            left, y = x, y + 16
        yield Stroke(((left, y - 4), (left + 18, y - 4)), kind)
        yield Word(left + 23, y, text, "muted")
        left += wide + 14
