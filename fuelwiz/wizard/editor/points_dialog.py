"""What keys do on the page that takes a table of points, and where the points go."""

from __future__ import annotations

from fuelwiz.desk.field_specs import column_units
from fuelwiz.desk.points.point_cells import FIRST_CURVE, PULL
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.editor.points_view import PointsView, counted


class PointsDialog:
    """Opens the page, hands it keys, and takes its points into the build."""

    def __init__(self, host: Host) -> None:
        self.host = host
        self._left: dict[str, str] = {}

    @property
    def view(self) -> PointsView:
        """The page."""
        return self.host.points_view

    def open_here(self) -> None:
        """Open the page for the question under the pointer, if a table leads on; it has what was left there."""
        if self.host.form.opens_points():
            self.open(self._left.get(self._path, ""))
        else:
            self.host.say("F8 is for a table of points: of the pump, or of a pull.")

    def open(self, text: str) -> None:
        """Open the page with what was pasted."""
        desk, path = self.host.desk, self._path
        desk.storage.refuse_to_change()
        shown = column_units("pump.curve.points" if path == PULL else path, desk.system)
        self.view.system = desk.system
        self.view.start(path, desk.folder, shown, text)
        self.host.to_mode("points")
        self.keep()

    def open_again(self) -> None:
        """Open the page with what stood there when its draft was kept."""
        path, text = self.host.desk.table
        if not text:
            return
        form = self.host.form
        if path:
            form.go_to_path(path)
        if not form.takes_points():
            form.go_to_question("pump.known")
        self.open(text)

    def keep(self) -> None:
        """Let the desk know what stands on the page, so that its draft has it."""
        table = (self.host.form.path, self.view.text)
        if table != self.host.desk.table:
            self.host.desk.table = table
            self.host.changed()

    def _close(self, left: str) -> None:
        """Back to the form; what is left on the page stands there when it is opened again."""
        self._left[self.view.path] = left
        self.host.desk.table = ("", "")
        self.host.to_mode("form")
        self.host.changed()

    @property
    def _path(self) -> str:
        return "pump.current" if self._is_current else PULL if self._is_pull else "pump.curve.points"

    @property
    def _is_pull(self) -> bool:
        return self.host.form.question.key.partition(".")[0] == PULL

    @property
    def _is_current(self) -> bool:
        return self.host.form.question.key == "pump.current"

    def key(self, key: str, character: str | None) -> None:
        """What a key does on the page."""
        if key == "escape":
            self._close(self.view.text)
            return
        if key == "f8":
            self._use()
            return
        if key == "enter":
            self.view.insert("\n")
        elif key == "backspace":
            self.view.backspace()
        elif key == "ctrl+u":
            self.view.empty()
        elif character:
            self.view.insert(character)
        self.keep()

    def _use(self) -> None:
        understood = self.view.understood()
        if not understood.points:
            return
        form, desk = self.host.form, self.host.desk
        path = "pump.current" if self._is_current else PULL if self._is_pull else self._curve_path()
        desk.visit(path)
        if path in (FIRST_CURVE, PULL):
            desk.set_points(path, understood)
        else:
            desk.set_points(path, understood.points)
            if understood.voltage and path.endswith(".points"):
                desk.type(f"{path.removesuffix('.points')}.voltage", understood.voltage)
        self._close("")
        form.rebuild()
        form.go_to_path(
            f"{path}.0.power" if path == PULL else f"{path}.0.0"
        ) if not form.place.in_entry else form.focus_on(0)
        self.host.changed()
        self.host.say(f"{counted(len(understood.points))} read. Ctrl+Z undoes it.")

    def _curve_path(self) -> str:
        place = self.host.form.place
        return f"pump.curve.{place.index if place.in_entry else 0}.points"
