"""The screen of one build: questions, help and answer, and what every key does there."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import cast

from textual.app import ComposeResult
from textual.events import Key, Paste, Resize
from textual.screen import Screen
from textual.strip import Strip
from textual.widget import Widget

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.plots import Plots, Ways
from fuelwiz.sizing.vocabulary import Change
from fuelwiz.wizard.actions import Action, by_id
from fuelwiz.wizard.chrome import Headline, keys_page, step_marks, top_line
from fuelwiz.wizard.early_keys import EarlyKeys
from fuelwiz.wizard.editor.arriving import arrive
from fuelwiz.wizard.editor.build_actions import BuildActions
from fuelwiz.wizard.editor.build_keys import BuildKeys
from fuelwiz.wizard.editor.form_view import FormView
from fuelwiz.wizard.editor.frame import READ_ON, headline, listed_actions, offered_actions
from fuelwiz.wizard.editor.help_view import HelpView
from fuelwiz.wizard.editor.host import Host, Mode
from fuelwiz.wizard.editor.pauses import LOOK_OVER_S, Pauses
from fuelwiz.wizard.editor.points_dialog import PointsDialog
from fuelwiz.wizard.editor.points_view import PointsView
from fuelwiz.wizard.editor.save_dialog import SaveDialog
from fuelwiz.wizard.editor.step_view import StepView
from fuelwiz.wizard.editor.steps_view import StepsView
from fuelwiz.wizard.footer import footer_lines, rows_of_footer
from fuelwiz.wizard.form.form import Form, Reaction
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.live.pane import LivePane
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, place
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.prompt import Prompt
from fuelwiz.wizard.screen_layout import PAGES, Box, ScreenLayout, layout_for, too_small


class BuildScreen(StepView, Screen[None]):
    """One build. Every key comes here first; nothing on the screen has the focus of its own."""

    strip_rows = 0  # above the footer, where a kind of this screen has more to say

    def __init__(
        self,
        desk: Desk,
        *,
        step: str | None = None,
        keys: Sequence[Key | Paste] = (),
        opened_by: str = "",
        at_first: Callable[[Host], None] | None = None,
    ) -> None:
        super().__init__()
        self.desk = desk
        self.form = Form(desk, step or "goal")
        self.mode: Mode = "form"
        self.is_new = desk.storage.snapshot.text is None
        self.highlighted = ""
        self.message = ""
        self.prompt: Prompt | None = None
        self.saving = self.save_dialog()
        self.points = PointsDialog(self)
        self.actions = BuildActions(self, self.saving, self.points)
        self._keys = BuildKeys(self)
        self._step = step
        self.early_keys = EarlyKeys(keys, opened_by)
        self.is_ready = False
        self._at_first = at_first
        self._layout: ScreenLayout | None = None
        self._footer_rows = 1
        self._pauses = Pauses(self)

    @property
    def program(self) -> Program:
        """The program that this screen belongs to."""
        return cast("Program", self.app)

    def save_dialog(self) -> SaveDialog:
        """What saves this kind of build."""
        return SaveDialog(self)

    def compose(self) -> ComposeResult:
        """The parts, in the order in which they are read."""
        look = self.program.look
        yield LinesView(look, "top", lambda area: [top_line(self.headline(), area)])
        yield StepsView(look, self.form)
        yield FormView(look, self.form)
        yield HelpView(look)
        yield LivePane(look, Plots(), Ways(), id="live")
        listed = self.program.keys.build
        yield LinesView(
            look, "sheet", lambda area: keys_page(listed_actions(self.form, listed), area, step_marks(look))
        )
        yield PointsView(look)
        yield LinesView(look, "strip", self.strip_lines)
        yield LinesView(look, "footer", self._footer)

    def on_mount(self) -> None:
        """Show the screen first and calculate then: what calculates takes longest to load."""
        self.styles.background = self.program.look.screen_background
        self.call_later(self._first_answer)

    @property
    def _is_here(self) -> bool:
        """Whether its parts still stand: what was to follow may come after another screen took its place."""
        return self.is_mounted and self.is_attached and self in self.app.screen_stack

    def _first_answer(self) -> None:
        if not self._is_here:
            return
        self.desk.update()
        why = arrive(self.form, is_begun=self._step is not None or self.desk.path is None)
        self.is_ready = True
        self.lay_out()
        self.set_timer(LOOK_OVER_S, self.look_over)
        self._pauses.begin()
        self.say(self.program.message or why)
        self.program.message = ""
        self.points.open_again()
        if self._at_first is not None:
            self._at_first(self)
        else:
            self.take_early_keys()

    def take_early_keys(self) -> None:
        """Take what was typed before the build could take it."""
        for event in self.early_keys.taken():  # at once: others wait behind them already
            self.on_paste(event) if isinstance(event, Paste) else self.on_key(event)

    def on_unmount(self) -> None:
        """Whoever opens the build from here on need not be told of this one."""
        self.desk.storage.release()

    def on_resize(self, event: Resize) -> None:
        """Lay everything out for the new size; before the first answer there is nothing to lay out."""
        if self.is_ready:
            self.lay_out()

    def lay_out(self) -> None:
        """Put every part where it belongs at this size and in this mode, and paint it there."""
        if not self._is_here:
            return
        self._put_in_place()
        self.show_all()
        self.program.show_now()

    def _put_in_place(self) -> None:
        width, height = self.size
        strip_rows = 0 if self.mode in PAGES else self.strip_rows
        layout = layout_for(width, height - strip_rows, table_focused=self.mode == "table")
        self._layout = layout
        if self.is_too_small:
            self._too_small(width, height)
            return
        form = self.query_one(FormView)
        form.why_rows = 0 if layout.hidden_by_help(self.mode) else layout.why_rows
        form.has_keys = self.mode in ("form", "help")
        self.query_one(StepsView).in_column = layout.steps_in_column
        for name, box in layout.parts(self.mode, strip_rows, self._footer_rows).items():
            place(self.query_one(f"#{name}"), box)

    def _too_small(self, width: int, height: int) -> None:
        for widget in self.query(Widget):
            place(widget, Box(0, 0, width, height) if widget.id == "footer" else Box())
        self._fit_footer()

    def show_all(self) -> None:
        """Paint what differs from what stands there."""
        if not self._is_here or self._layout is None:
            return
        self.query_one(FormView).repaint()
        self.show_answer()
        page = self.query_one(HelpView)
        words = self.desk.result.words if self.desk.result else None
        page.show(
            self.form.question,
            words.answer_forms[0][-1] if words else "",
            opened=not self._layout.help.is_shown,
        )
        for name in ("top", "steps", "sheet", "points", "strip", "footer"):
            cast("LinesView", self.query_one(f"#{name}")).repaint()

    def look_over(self) -> None:
        """Which steps are answered by now."""
        if not self._is_here:
            return
        self.query_one(StepsView).look_over()

    def show_answer(self) -> None:
        """The live pane as the desk has it now."""
        if not self._is_here:
            return
        live = self.live
        number, count = self.form.pointer.position()
        live.notes = (f"question {number} of {count}",)
        live.all_names = self._layout is not None and not self._layout.is_stacked
        live.table_focused = self.mode == "table"
        live.about = self.form.place.step
        live.show(self.desk.result, self.shown_size, held=self.desk.held, view=self.view)

    @property
    def shown_size(self) -> str:
        """The size that is highlighted; where none was picked, the one that the build is judged at."""
        result = self.desk.result
        if result is None:
            return ""
        if result.figures.row(self.highlighted) is None:
            return result.figures.verdict.size
        return self.highlighted

    def headline(self) -> Headline:
        """What the top line says."""
        return headline(self.desk, self.saving.kept)

    def strip_lines(self, area: Area) -> list[Strip]:
        """What stands above the footer; nothing here."""
        return []

    def _footer(self, area: Area) -> list[Strip]:
        if self.is_too_small:
            return area.paragraph(too_small(*self.size), 0)
        last = by_id(self.program.keys.build, "keys")
        return footer_lines(self.prompt, self.message, self.offered(), last, area)

    def _fit_footer(self) -> None:
        """Give the footer as many rows as what it says takes."""
        if not self._is_here:
            return
        if self._layout is None or self.is_too_small:
            cast("LinesView", self.query_one("#footer")).repaint()
            return
        area = Area(self.program.look, self.size.width, self.size.height)
        rows = rows_of_footer(self.prompt, self.message, by_id(self.program.keys.build, "keys"), area)
        if rows != self._footer_rows:
            self._footer_rows = rows
            self.lay_out()
        else:
            cast("LinesView", self.query_one("#footer")).repaint()

    @property
    def is_too_small(self) -> bool:
        """Whether the window has no room for a build."""
        return bool(too_small(*self.size))

    def offered(self) -> list[Action]:
        """The actions that matter now, the one thing to do first."""
        offered = offered_actions(self.mode, self.form, self.view, self.program.keys.build)
        reads_on = self.mode != "help" or self.query_one(HelpView).scrolls
        return offered if reads_on else [action for action in offered if action.id != READ_ON]

    def say(self, text: str) -> None:
        """A sentence in the footer until the next key."""
        self.message = text
        self._fit_footer()

    def ask(self, prompt: Prompt) -> None:
        """Ask something in the footer row."""
        self.prompt = prompt
        self._fit_footer()

    def to_mode(self, mode: Mode) -> None:
        """Give the keys to another part of the screen."""
        self.mode = mode
        self.lay_out()

    def on_paste(self, event: Paste) -> None:
        """Pasted text goes where the keys go."""
        event.stop()
        if self.early_keys.hold(event) or hand_on(self, event):
            return
        self._keys.paste(event.text)
        self.show_all()

    def on_key(self, event: Key) -> None:
        """Every key, once: to the prompt, to an action, or to what has the keys."""
        event.stop()
        event.prevent_default()
        if self.early_keys.hold(event) or hand_on(self, event):
            return
        key, character = event.key, event.character if event.is_printable else None
        if self.is_too_small:  # nothing is in sight that a key could be meant for
            self._keys.press_unseen(key)
            return
        self._pauses.key_pressed()
        self.message = ""
        self._keys.press(key, character)
        if self.is_current:
            self._fit_footer()
            self.show_all()

    def react(self, reaction: Reaction) -> None:
        """What follows from what the form did."""
        self._keys.react(reaction)

    def turn_help(self, way: int) -> None:
        """Turn the page on a question."""
        page = self.query_one(HelpView)
        page.scroll_lines((page.size.height - 2) * way)

    def changed(self) -> None:
        """Something was typed: keep it soon, and calculate the slower parts when typing pauses."""
        if self.form.path == "feed.chosen":
            self.highlighted = ""  # the size that is chosen there is the one to show
        self._pauses.changed()

    def keep(self) -> None:
        """Write the draft now."""
        self._pauses.keep()

    def keep_draft(self) -> None:
        """Write the draft, or take it away where nothing is unsaved any more."""
        if self.desk.dirty:
            self.saving.keep_draft()
        else:  # saved meanwhile, or taken back
            self.desk.discard_draft()

    @property
    def points_view(self) -> PointsView:
        """The page that takes a table of points."""
        return self.query_one(PointsView)

    @property
    def live(self) -> LivePane:
        """The answer and the view under it."""
        return self.query_one(LivePane)

    def try_what_if(self, change: Change | None = None) -> None:
        """Try changes on a scratch copy on top of this screen, one of them made already where it is given."""
        copy, result = self.desk.what_if(), self.desk.result
        if change is None or result is None:
            self.program.show_what_if(self, copy)
            return
        from fuelwiz.desk.making import make_change

        self.program.show_what_if(self, copy, make_change(copy, change, result.figures))

    def show_options(self, parts: Path) -> None:
        """Search a parts file for sets that would do, on top of this screen."""
        self.program.show_options(self, parts)
