"""A pasted table of points, or a CSV file's name, and what was understood of it."""

from __future__ import annotations

from pathlib import Path

from textual.strip import Strip

from fuelwiz.desk.points import Points, read_points
from fuelwiz.errors import FuelwizError
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted

MOST_BYTES = 64 * 1024
MOST_LINES = 400


class PointsView(Painted):
    """Text on the left as it was pasted or typed, on the right what it means."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, id="points")
        self.lines = [""]
        self.second_unit = "gal/h"
        self.first_unit = "psi"
        self.trouble = ""

    @property
    def text(self) -> str:
        """All that was typed or pasted."""
        return "\n".join(self.lines)

    def start(self, first_unit: str, second_unit: str, text: str = "") -> None:
        """Begin with what was pasted, if anything."""
        self.first_unit, self.second_unit = first_unit, second_unit
        self.lines, self.trouble = [""], ""
        self.insert(text)

    def insert(self, text: str) -> None:
        """Put typed or pasted text in at the end."""
        whole = self.text + text.replace("\r\n", "\n").replace("\r", "\n")
        self.lines = whole.split("\n")[:MOST_LINES]
        self.repaint()

    def backspace(self) -> None:
        """Take the last sign away."""
        self.lines = (self.text[:-1]).split("\n")
        self.repaint()

    def understood(self) -> Points:
        """The points in the text, or in the CSV file that it names."""
        text = self.text
        name = text.strip()
        if name and "\n" not in name and name.lower().endswith((".csv", ".txt", ".tsv")):
            text = self._file(name)
        return read_points(text, (self.first_unit, self.second_unit))

    def _file(self, name: str) -> str:
        self.trouble = ""
        try:
            with Path(name).expanduser().open("rb") as file:
                return file.read(MOST_BYTES).decode("utf-8-sig", errors="replace")
        except (OSError, ValueError, RuntimeError) as error:
            self.trouble = f"{name} cannot be read: {getattr(error, 'strerror', None) or 'no such file'}"
            return ""

    def painted(self, area: Area) -> list[Strip]:
        """The text and what was understood, side by side where there is room."""
        lines = [area.row().put(1, "Paste the table here, or type a CSV file's name", "focus", True).strip()]
        try:
            said = self._said(self.understood())
        except FuelwizError as error:
            said = [f"! {error}"]
        half = area.width // 2 if area.width >= 60 else area.width
        room = area.rows - 1
        shown = self.lines[-room:]
        wrapped = [part for text in said for part in Area(area.look, half, room).wrapped(text, 2)]
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

    def _said(self, points: Points) -> list[str]:
        if self.trouble:
            return [f"! {self.trouble}"]
        if not self.text.strip():
            return [f"Two columns: pressure, then {'flow' if self.second_unit != 'A' else 'current'}.",
                    f"Without units {self.first_unit} and {self.second_unit} are taken."]
        said = [f"Understood {len(points.points)} points:"]
        said += [f"  {pressure}   {other}" for pressure, other in points.points[:12]]
        said += [f"! {sentence}" for sentence in points.left_out[:6]]
        if points.points:
            said.append(f"F8 uses these {len(points.points)} points, Esc leaves them.")
        return said
