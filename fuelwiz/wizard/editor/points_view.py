"""The page that takes a table of points, pasted or read from a CSV file, and shows how it was understood."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.desk.points.point_cells import PULL
from fuelwiz.file_limits import MOST_BYTES
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted

if TYPE_CHECKING:
    from fuelwiz.desk.points.paste import Points
    from fuelwiz.units import UnitSystem
    from fuelwiz.wizard.look import Look

MOST_LINES = 400


def counted(points: int) -> str:
    """A number of points in words."""
    return f"{points} point{'' if points == 1 else 's'}"


class PointsView(Painted):
    """Text on the left as it was pasted or typed, on the right what it means."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, id="points")
        self.lines = [""]
        self.first_unit, self.second_unit = "psi", "gal/h"
        self.folder = Path()
        self.path = "pump.curve.points"
        self.system: UnitSystem = "us"
        self._understood: tuple[tuple[object, ...], Points] | None = None

    @property
    def text(self) -> str:
        """All that was typed or pasted."""
        return "\n".join(self.lines)

    def start(self, path: str, folder: Path, units: tuple[str, str], text: str = "") -> None:
        """Begin a table for the points at a path, with what was pasted, if anything."""
        self.path, self.folder = path, folder
        self.first_unit, self.second_unit = units
        self.lines = [""]
        self.insert(text)

    def insert(self, text: str) -> None:
        """Put typed or pasted text in at the end."""
        whole = self.text + text.replace("\r\n", "\n").replace("\r", "\n")
        self.lines = whole[:MOST_BYTES].split("\n")[:MOST_LINES]
        self.repaint()

    def backspace(self) -> None:
        """Take the last sign away."""
        self.lines = (self.text[:-1]).split("\n")
        self.repaint()

    def empty(self) -> None:
        """Take all of it away."""
        self.lines = [""]
        self.repaint()

    def understood(self) -> Points:
        """The points in the text, or in the file that it names."""
        from fuelwiz.desk.points.points_file import points_typed
        from fuelwiz.desk.points.pull_table import read_pull

        if self.path == PULL:
            return read_pull(self.text, self.system)
        asked = (self.text, self.folder, (self.first_unit, self.second_unit), self.path)
        if self._understood is None or self._understood[0] != asked:
            self._understood = asked, points_typed(*asked)
        return self._understood[1]

    def painted(self, area: Area) -> list[Strip]:
        """The text and what was understood, side by side where there is room."""
        lines = [
            area.row().put(1, "Paste the table here, or type the name of a CSV file", "focus", True).strip()
        ]
        notes = self._notes(self.understood())
        half = area.width // 2 if area.width >= 60 else area.width
        room = area.rows - 1
        shown = self.lines[-room:]
        wrapped = [part for text in notes for part in Area(area.look, half, room).wrapped(text, 2)]
        for i in range(room):
            line = area.row()
            if i < len(shown):
                text = area.look.fold(shown[i])[: half - 5]
                line.put(4, text)
                if i == len(shown) - 1:
                    line.lay(4 + len(text), " ", area.look.style("text", "field") + area.look.cursor)
            if i < len(wrapped):
                line.put(half + 2, wrapped[i], "fault" if wrapped[i].startswith("!") else "text")
            lines.append(line.strip())
        return area.filled(lines)

    def _notes(self, points: Points) -> list[str]:
        if not self.text.strip() and self.path == PULL:
            return [
                "Columns: engine speed, power, boost; or power, boost.",
                "Each point on a line of its own.",
            ]
        if not self.text.strip():
            return [
                f"One line or many: pressure, then {'flow' if self.second_unit != 'A' else 'current'}.",
                f"Numbers without a unit are taken as {self.first_unit} and {self.second_unit}.",
            ]
        notes = [
            f"Understood {counted(len(points.points))}"
            + (f", for {points.voltage}:" if points.voltage else ":")
        ]
        speeds = [f"   {speed} rpm" if speed else "" for speed in points.speeds] or [""] * len(points.points)
        notes += [
            f"  {one}   {other}{speed}"
            for (one, other), speed in zip(points.points[:12], speeds, strict=False)
        ]
        for volts, further in points.further:
            notes.append(f"and {len(further)} for {volts}:")
            notes += [f"  {pressure}   {other}" for pressure, other in further[:6]]
        if points.current:
            notes.append(f"and {len(points.current)} of current:")
            notes += [f"  {pressure}   {other}" for pressure, other in points.current[:6]]
        notes += [f"! {sentence}" for sentence in points.left_out[:6]]
        if points.points:
            these = f"these {counted(len(points.points))}" if len(points.points) > 1 else "this point"
            notes.append(f"F8 uses {these}, Esc leaves them here.")
        return notes
