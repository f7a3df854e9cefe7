"""A canvas of cells that curves are drawn on: in braille dots, or in letters where only ASCII shows."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fuelwiz.terminal.palette import Role
    from fuelwiz.wizard.look import Look
    from fuelwiz.wizard.paint import Row

# Bits of a braille character by the column and row of its dot (Unicode 15, chapter 21.1, figure 21-1).
_DOTS = ((0x01, 0x02, 0x04, 0x40), (0x08, 0x10, 0x20, 0x80))
_DASH = 4  # dots of a dash, and of the gap behind it
_ENTRY = 0x2800

Curve = Callable[[float], float | None]


class Canvas:
    """Cells to draw on; x runs from 0 to 1 over the width, y from 0 at the bottom to 1 at the top."""

    def __init__(self, look: Look, width: int, height: int) -> None:
        self.look = look
        self.width = width
        self.height = height
        self._across, self._down = (2, 4) if look.unicode else (1, 1)
        self._dots = [[0] * width for _ in range(height)]
        self._letters = [[""] * width for _ in range(height)]
        self._roles: list[list[Role]] = [["muted"] * width for _ in range(height)]

    def draw(self, curve: Curve, letter: str, role: Role, dashed: bool = False) -> None:
        """Draw a curve; a dashed one has gaps, and no stroke goes beyond the canvas."""
        columns, rows = self.width * self._across, self.height * self._down
        before: int | None = None
        for x in range(columns):
            y = curve((x + 0.5) / columns)
            at = None if y is None else min(max(int((1 - y) * rows // 1), -1), rows)
            if at is not None and not (dashed and self.look.unicode and x // _DASH % 2):
                start = at if before is None else before + (at > before) - (at < before)
                for dot in range(min(start, at), max(start, at) + 1):
                    self._dot(x, dot, letter, role)
            before = at

    def write(self, column: int, row: int, text: str, role: Role, over: bool = False) -> None:
        """Write a text; it gives way to what is drawn there unless it goes `over` it."""
        for at, letter in enumerate(self.look.fold(text), column):
            if 0 <= at < self.width and 0 <= row < self.height and (over or self.is_free(at, row)):
                self._letters[row][at], self._dots[row][at] = letter, 0
                self._roles[row][at] = role

    def has_room(self, column: int, row: int, text: str) -> bool:
        """Whether a text and the cell behind it fall on cells where nothing is drawn."""
        cells = range(column, column + len(text) + 1)
        inside = 0 <= row < self.height and cells[0] >= 0 and cells[-1] < self.width
        return inside and all(self.is_free(at, row) for at in cells)

    def is_free(self, column: int, row: int) -> bool:
        """Whether nothing is drawn in a cell."""
        return not self._dots[row][column] and not self._letters[row][column].strip()

    def seen(self, curve: Curve) -> list[tuple[int, int]]:
        """The cells that a curve goes through at the middle of each column, as column and row."""
        found = []
        for column in range(self.width):
            y = curve((column + 0.5) / self.width)
            if y is not None and 0 <= y < 1:
                found.append((column, int((1 - y) * self.height // 1)))
        return [(column, min(row, self.height - 1)) for column, row in found]

    def lay_row(self, row: int, line: Row, column: int) -> Row:
        """Lay one row of the canvas onto a line of the screen."""
        shown = [
            chr(_ENTRY + dots) if dots else letter or " "
            for dots, letter in zip(self._dots[row], self._letters[row], strict=True)
        ]
        start, role = 0, self._roles[row][0]
        for at, mark in enumerate(shown):
            if mark != " " and self._roles[row][at] != role:
                line.put(column + start, "".join(shown[start:at]), role)
                start, role = at, self._roles[row][at]
        return line.put(column + start, "".join(shown[start:]), role)

    def _dot(self, x: int, y: int, letter: str, role: Role) -> None:
        column, row = x // self._across, y // self._down
        if not (0 <= column < self.width and 0 <= row < self.height):
            return
        if self.look.unicode:
            self._dots[row][column] |= _DOTS[x % 2][y % 4]
        else:
            self._letters[row][column] = letter
        self._roles[row][column] = role
