"""What the actions of a build's screen do."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.errors import SaveRefused
from fuelwiz.desk.saving import Saved
from fuelwiz.errors import FuelwizError
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.session import leaf_paths
from fuelwiz.store.folder import file_name
from fuelwiz.wizard.editor.points_view import PointsView
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.live.pane import LivePane
from fuelwiz.wizard.prompt import Prompt

if TYPE_CHECKING:
    from fuelwiz.wizard.editor.build_screen import BuildScreen

LEAVE = "Not saved yet: s saves, k keeps a draft, x drops the changes, Esc stays"


class BuildActions:
    """The actions, by their id; each acts on the screen's desk and form."""

    def __init__(self, screen: BuildScreen) -> None:
        self.screen = screen
        self.kept = ""
        self._named = ""

    def do(self, name: str, key: str = "") -> None:
        """Do the action of that id; `key` tells the two directions of one action apart."""
        act: Callable[[str], None] = getattr(self, f"_{name}")
        act(key)

    def _next(self, key: str) -> None:
        form = self.screen.form
        self.screen.react(form.move_row(1) if key == "down" else form.move(1))

    def _previous(self, key: str) -> None:
        form = self.screen.form
        form.move_row(-1) if key == "up" else form.move(-1)

    def _unsure(self, key: str) -> None:
        self.screen.react(self.screen.form.unsure())

    def _help(self, key: str) -> None:
        self.screen.to_mode("form" if self.screen.mode == "help" else "help")

    def _size(self, key: str) -> None:
        result = self.screen.desk.result
        if result is None:
            return
        names = [row.size for row in result.figures.sizes]
        at = names.index(self.screen.shown_size) + (-1 if key == "pageup" else 1)
        self.screen.highlighted = names[min(max(at, 0), len(names) - 1)]

    def _view(self, key: str) -> None:
        self.screen.next_view()

    def _next_step(self, key: str) -> None:
        self._to_step(1)

    def _previous_step(self, key: str) -> None:
        self._to_step(-1)

    def _to_step(self, way: int) -> None:
        number = self.screen.form.step_number + way
        if 0 <= number < len(STEPS):
            self.screen.form.go_to_step(STEPS[number].id)
        elif way > 0:
            self.screen.say("That was the last step. Ctrl+S saves the build.")

    def _table(self, key: str) -> None:
        self.screen.to_mode("form" if self.screen.mode == "table" else "table")

    def table_key(self, key: str) -> bool:
        """What a key does in the table of sizes; false for one that is not the table's own."""
        live = self.screen.query_one(LivePane)
        if key in ("up", "down") and self.screen.view in ("stress", "findings"):
            live.scroll_lines(1 if key == "down" else -1)
        elif key in ("up", "down"):
            self._size("pagedown" if key == "down" else "pageup")
        elif key == "enter":
            if self.screen.query_one(LivePane).shows_sizes:
                self._settle()
        elif key in ("escape", "f6"):
            self.screen.to_mode("form")
        else:
            return False
        return True

    def _settle(self) -> None:
        size = self.screen.shown_size
        if not size or size == "fixed":
            return
        desk = self.screen.desk
        desk.visit("feed.chosen")
        desk.type("feed.chosen", size)
        self.screen.changed()
        self.screen.say(f"Settled on {size}; Ctrl+Z takes it back.")

    def _undo(self, key: str) -> None:
        self._go_back(self.screen.desk.undo(), "Nothing to undo.")

    def _redo(self, key: str) -> None:
        self._go_back(self.screen.desk.redo(), "Nothing to do again.")

    def _go_back(self, path: str | None, nothing: str) -> None:
        if path is None:
            self.screen.say(nothing)
            return
        self.screen.form.go_to_path(path)
        self.screen.changed()

    def _more(self, key: str) -> None:
        self.screen.form.toggle_more()

    def _remove(self, key: str) -> None:
        if self.screen.form.remove_entry():
            self.screen.changed()
            self.screen.say("Taken out. Ctrl+Z brings it back.")
        else:
            self.screen.say("Put the pointer on the row of a list first: a run, a filter, a part.")

    def _palette(self, key: str) -> None:
        self.screen.wizard.palette()

    def _keys(self, key: str) -> None:
        self.screen.to_mode("keys")

    def _save(self, key: str) -> None:
        desk = self.screen.desk
        if desk.path is None:
            self._save_as(key)
        else:
            self._named = ""
            self._saved(desk.save)

    def _save_as(self, key: str) -> None:
        desk = self.screen.desk
        name = desk.name if desk.is_given("name") else ""
        self.screen.ask(Prompt("Save as:", self._save_named, editor=LineEdit.at_end(name)))

    def _save_named(self, name: str) -> None:
        self._named = name
        self._saved(lambda: self.screen.desk.save_as(name))

    def _saved(self, save: Callable[[], Saved]) -> bool:
        """Save, and say how it went; where a file stands in the way, ask."""
        try:
            saved = save()
        except SaveRefused as refused:
            self._refused(refused)
            return False
        except FuelwizError as error:
            self.screen.say(str(error))
            return False
        self.kept = f"saved {datetime.now():%H:%M}"
        self.screen.say(f"Saved: {saved.path.name}. {saved.left_out or ''}".rstrip())
        return True

    def _refused(self, refused: SaveRefused) -> None:
        if refused.path:
            self.screen.form.go_to_path(refused.path)
        if refused.reason in ("exists", "changed"):
            self.screen.ask(
                Prompt(f"{refused} y writes over it, Esc leaves it", self._overwrite, letters="y")
            )
        else:
            self.screen.say(str(refused))

    def _overwrite(self, letter: str) -> None:
        desk = self.screen.desk
        if self._named:
            self._saved(lambda: desk.save_as(self._named, overwrite=True))
        else:
            self._saved(lambda: desk.save(overwrite=True))

    def keep_draft(self) -> None:
        """Write the draft; says once where that is not possible."""
        try:
            self.screen.desk.write_draft()
        except FuelwizError as error:
            self.kept = "draft not kept"
            self.screen.say(f"The draft cannot be kept: {error}")
        else:
            self.kept = f"draft kept {datetime.now():%H:%M}"

    def offer_draft(self, place: Path) -> None:
        """A draft was kept that is newer than the file: offer to go on with it."""

        def answered(letter: str) -> None:
            try:
                self.screen.wizard.show_build(Desk.from_draft(place))
            except FuelwizError as error:
                self.screen.say(str(error))

        text = "A newer draft was kept: d goes on with it, Esc stays with the file"
        self.screen.ask(Prompt(text, answered, letters="d"))

    def _builds(self, key: str) -> None:
        form = self.screen.form
        if self.screen.mode != "form":
            self.screen.to_mode("form")
        elif form.place.in_entry:
            form.close_entry()
        else:
            self._away(self.screen.wizard.show_list)

    def _quit(self, key: str) -> None:
        self._away(self.screen.wizard.leave)

    def _away(self, go: Callable[[], None]) -> None:
        """Leave the build; unsaved changes are asked about."""
        if not self.screen.desk.dirty:
            go()
            return

        def answered(letter: str) -> None:
            if letter == "x":
                self.screen.desk.discard_draft()
                go()
            elif letter == "k":
                self.keep_draft()
                go()
            elif self.screen.desk.path is None:
                self._save_as("")
            elif self._saved(self.screen.desk.save):
                go()

        self.screen.ask(Prompt(LEAVE, answered, letters="skx"))

    def _write(self, key: str) -> None:
        result = self.screen.desk.result
        if result is None:
            self.screen.say("There is no answer to write yet.")
            return
        name = f"{file_name(self.screen.desk.name).removesuffix('.toml')}-answer.txt"
        self.screen.ask(Prompt("Write the answer to:", self._write_to, editor=LineEdit.at_end(name)))

    def _write_to(self, name: str) -> None:
        from fuelwiz.report import write_report

        desk = self.screen.desk
        desk.finish()
        assert desk.result is not None
        try:
            path = write_report(desk.result, desk.folder / name)
        except FuelwizError as error:
            self.screen.say(str(error))
        else:
            self.screen.say(f"Written: {path}")

    def _points(self, key: str) -> None:
        if self.screen.form.takes_points():
            self.points("")
        else:
            self.screen.say("F8 belongs to a table of points: the pump's flow, or the current it draws.")

    def points(self, text: str) -> None:
        """Open the page that takes a table."""
        view = self.screen.query_one(PointsView)
        metric = self.screen.desk.system == "metric"
        current = self.screen.form.question.key == "pump.current"
        units = ("bar" if metric else "psi", "A" if current else "L/h" if metric else "gal/h")
        path = "pump.current" if current else "pump.curve.points"
        view.start(path, self.screen.desk.folder, units, text)
        self.screen.to_mode("points")

    def points_key(self, key: str, character: str | None) -> None:
        """What a key does on the page that takes a table."""
        view = self.screen.query_one(PointsView)
        if key == "escape":
            self.screen.to_mode("form")
        elif key == "f8":
            self._use_points(view)
        elif key == "enter":
            view.insert("\n")
        elif key == "backspace":
            view.backspace()
        elif character:
            view.insert(character)

    def _use_points(self, view: PointsView) -> None:
        found = view.understood()
        if not found.points:
            return
        form, desk = self.screen.form, self.screen.desk
        path = "pump.current" if form.question.key == "pump.current" else self._points_path()
        desk.visit(path)
        desk.set_points(path, found.points)
        if found.voltage and path.endswith(".points"):
            desk.type(f"{path.removesuffix('.points')}.voltage", found.voltage)
        self.screen.to_mode("form")
        form.rebuild()
        form.go_to_path(f"{path}.0.0") if not form.place.in_entry else form.focus_on(0)
        self.screen.changed()
        self.screen.say(f"{len(found.points)} points taken. Ctrl+Z takes them back.")

    def _points_path(self) -> str:
        place = self.screen.form.place
        return f"pump.curve.{place.index if place.in_entry else 0}.points"

    def ask_change(self) -> None:
        """Ask which value a stress case changes."""
        self.screen.ask(
            Prompt("Which value? Its key in the file, such as fuel.temperature:", self._add_change)
        )

    def _add_change(self, key: str) -> None:
        form, desk = self.screen.form, self.screen.desk
        bare = ".".join(part for part in key.split(".") if not part.isdigit())
        if bare not in leaf_paths():
            self.screen.say(f"There is no key {key}: keys are written as in the file, such as goal.power.")
            return
        said = desk.text_in_field(key)
        desk.type(f"{form.path}.{key}", f"{said.text} {said.unit}".strip())
        form.rebuild()
        self.screen.changed()

    def _what_if(self, key: str) -> None:
        from fuelwiz.wizard.what_if import open_what_if

        open_what_if(self.screen)
