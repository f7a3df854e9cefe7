"""A frame with two axes, and where a pair of figures stands in it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil, floor

from fuelwiz.advice.numbers import round_step
from fuelwiz.facts import NEAR
from fuelwiz.printable import MINUS
from fuelwiz.record import record
from fuelwiz.report.page.pictures.shapes import Shape, Stroke, Word

MOST_TICKS = 6

Point = tuple[float, float]


@record
class Frame:
    """The part of a picture that curves are drawn in, and the figures at its edges."""

    x: float
    y: float
    width: float
    height: float
    left: float
    right: float
    bottom: float
    top: float

    def place(self, across: float, up: float) -> Point:
        """Where a pair of figures stands."""
        return (
            self.x + self.width * (across - self.left) / (self.right - self.left),
            self.y + self.height * (self.top - up) / (self.top - self.bottom),
        )

    def inside(self, across: float, up: float) -> bool:
        """Whether a pair of figures stands in the frame."""
        return self.left <= across <= self.right and self.bottom <= up <= self.top

    def curve(self, points: Sequence[Point]) -> tuple[Point, ...]:
        """A line through points, cut off where it leaves the frame below or above."""
        kept: list[Point] = []
        for before, point in zip((points[0], *points), points, strict=False):
            if self.inside(*before) != self.inside(*point):
                kept.append(self._edge(before, point))
            if self.inside(*point):
                kept.append(point)
        return tuple(self.place(*point) for point in kept)

    def _edge(self, one: Point, other: Point) -> Point:
        """Where the line between two points crosses the upper or the lower edge."""
        edge = self.top if max(one[1], other[1]) > self.top else self.bottom
        share = (edge - one[1]) / (other[1] - one[1]) if other[1] != one[1] else 0.0
        return (one[0] + share * (other[0] - one[0]), edge)

    def axes(self, across_unit: str, up_unit: str) -> Iterator[Shape]:
        """Ticks with their figures, fine lines across, and the units."""
        for up in ticks(self.bottom, self.top):
            x, y = self.place(self.left, up)
            yield Stroke(((x, y), (self.x + self.width, y)), "grid")
            yield Word(x - 5, y + 4, short(up), "muted", "end")
        for across in ticks(self.left, self.right):
            x, y = self.place(across, self.bottom)
            yield Stroke(((x, y), (x, y + 4)), "other")
            yield Word(x, y + 17, short(across), "muted", "middle")
        yield Word(self.x - 5, self.y - 8, up_unit, "muted", "end")
        yield Word(self.x + self.width, self.y + self.height + 32, across_unit, "muted", "end")


def ticks(low: float, high: float) -> list[float]:
    """Round figures between two others, six at most."""
    step = round_step((high - low) / MOST_TICKS)
    first = ceil(low / step - NEAR)
    return [at * step for at in range(first, floor(high / step + NEAR) + 1)]


def short(value: float) -> str:
    """A tick's figure as short as it can be written."""
    return f"{value:.6g}".replace("-", MINUS)
