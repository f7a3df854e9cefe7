"""The screen of one build: questions, help and answer, and what every key does there."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import cast

from textual.app import ComposeResult
from textual.events import Key, Paste, Resize
from textual.screen import Screen
from textual.strip import Strip
from textual.widget import Widget

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.plots import Plots, Ways
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.sizing.vocabulary import Change
from fuelwiz.wizard.actions import Action, by_id, by_key, by_letter
from fuelwiz.wizard.chrome import Headline, footer_line, keys_page, steps_column, steps_row, top_line
from fuelwiz.wizard.editor.build_actions import BuildActions
from fuelwiz.wizard.editor.form_view import FormView
from fuelwiz.wizard.editor.frame import headline, offered_actions, step_marks
from fuelwiz.wizard.editor.help_view import HelpView
from fuelwiz.wizard.editor.host import Host, Mode
from fuelwiz.wizard.editor.pauses import Pauses
from fuelwiz.wizard.editor.points_dialog import PointsDialog
from fuelwiz.wizard.editor.points_view import PointsView
from fuelwiz.wizard.editor.save_dialog import SaveDialog
from fuelwiz.wizard.form.form import Form, Reaction
from fuelwiz.wizard.live.pane import LivePane
from fuelwiz.wizard.live.rule import PATH, SIZES
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, place
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.prompt import Prompt
from fuelwiz.wizard.screen_layout import PAGES, SMALLEST, Box, ScreenLayout, layout_for

TOO_SMALL = "Needs"


class BuildScreen(Screen[None]):
    """One build. Every key comes here first; nothing on the screen has the focus of its own."""

    strip_rows = 0  # above the footer, where a kind of this screen has more to say

    def __init__(
        self,
        desk: Desk,
        *,
        step: str | None = None,
        keys: Sequence[Key | Paste] = (),
        at_first: Callable[[Host], None] | None = None,
    ) -> None:
        super().__init__()
        self.desk = desk
        self.form = Form(desk, step or "goal")
        self.mode: Mode = "form"
        self.view = PATH if desk.path is None else SIZES
        self.highlighted = ""
        self.message = ""
        self.prompt: Prompt | None = None
        self.saving = self.save_dialog()
        self.points = PointsDialog(self)
        self.actions = BuildActions(self, self.saving, self.points)
        self._step = step
        self._early_keys = list(keys)
        self.is_ready = False
        self._at_first = at_first
        self._layout: ScreenLayout | None = None
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
        yield LinesView(look, "steps", self._steps)
        yield FormView(look, self.form)
        yield HelpView(look)
        yield LivePane(look, Plots(), Ways(), id="live")
        yield LinesView(look, "sheet", lambda area: keys_page(self.program.keys.build, area))
        yield PointsView(look)
        yield LinesView(look, "strip", self.strip_lines)
        yield LinesView(look, "footer", self._footer)

    def on_mount(self) -> None:
        """Show the screen first and calculate then: what calculates takes longest to load."""
        self.styles.background = self.program.look.screen_background
        self.call_after_refresh(self._first_answer)

    def _first_answer(self) -> None:
        self.desk.update()
        if self._step is None and self.desk.path is not None:
            self.form.go_to_step(self.desk.step_that_needs_attention())
        else:
            self.form.go_to_path(self.form.path)
        self.is_ready = True
        self._laid_out()
        self._pauses.begin()
        self.say(self.program.message)
        self.program.message = ""
        if self._at_first is not None:
            self._at_first(self)
        for event in self._early_keys:
            event.prevent_default(False)  # it was held back; else nobody would be given it again
            self.post_message(event)

    def on_unmount(self) -> None:
        """Whoever opens the build from here on need not be told of this one."""
        self.desk.storage.release()

    def on_resize(self, event: Resize) -> None:
        """Lay everything out for the new size."""
        self.lay_out()

    def lay_out(self) -> None:
        """Put every part where it belongs at this size and in this mode."""
        width, height = self.size
        strip_rows = 0 if self.mode in PAGES else self.strip_rows
        layout = layout_for(width, height - strip_rows, table_focused=self.mode == "table")
        self._layout = layout
        if width < SMALLEST[0] or height < SMALLEST[1]:
            self._too_small(width, height)
            return
        self.message = "" if self.message.startswith(TOO_SMALL) else self.message
        form = self.query_one(FormView)
        form.why_rows = 0 if layout.hidden_by_help(self.mode) else layout.why_rows
        form.has_keys = self.mode in ("form", "help")
        for name, box in layout.parts(self.mode, strip_rows).items():
            place(self.query_one(f"#{name}"), box)
        self.program.hold_frames()
        self.call_after_refresh(self._laid_out)

    def _laid_out(self) -> None:
        """All parts are in their places: paint them, and show the whole at once."""
        self.show_all()
        if self.is_ready and self._layout is not None:
            self.program.show_next_frame()

    def _too_small(self, width: int, height: int) -> None:
        for widget in self.query(Widget):
            place(widget, Box(0, 0, width, height) if widget.id == "footer" else Box())
        self.say(f"{TOO_SMALL} {SMALLEST[0]} by {SMALLEST[1]}; the window is {width} by {height}.")

    def show_all(self) -> None:
        """Paint what differs from what stands there."""
        if not self.is_mounted or self._layout is None:
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

    def show_answer(self) -> None:
        """The live pane as the desk has it now."""
        live = self.live
        number, count = self.form.pointer.position()
        live.notes = (f"question {number} of {count}",)
        live.all_names = self._layout is not None and not self._layout.is_stacked
        live.table_focused = self.mode == "table"
        live.about = self.form.place.step
        live.show(
            self.desk.result,
            self.shown_size,
            held=self.desk.held,
            view=self.view,
        )

    @property
    def shown_size(self) -> str:
        """The size that is highlighted; where none was picked, the one that the build is judged at."""
        result = self.desk.result
        if result is None:
            return ""
        if result.figures.row(self.highlighted) is None:
            return result.figures.verdict.size
        return self.highlighted

    def _steps(self, area: Area) -> list[Strip]:
        marks = step_marks(self.desk)
        if self._layout is not None and self._layout.steps_in_column:
            return steps_column(marks, self.form.step_number, area)
        return [steps_row(marks, self.form.step_number, area)]

    def headline(self) -> Headline:
        """What the top line says."""
        return headline(self.desk, self.saving.kept)

    def strip_lines(self, area: Area) -> list[Strip]:
        """What stands above the footer; nothing here."""
        return []

    def _footer(self, area: Area) -> list[Strip]:
        if area.rows > 1:  # the window is too small for anything else
            return area.paragraph(self.message, 0)
        if self.prompt is not None:
            return [self.prompt.line(area)]
        return [footer_line(self.offered(), by_id(self.program.keys.build, "keys"), area, self.message)]

    def offered(self) -> list[Action]:
        """The actions that matter now, the one thing to do first."""
        return offered_actions(self.mode, self.form, self.view, self.program.keys.build)

    def say(self, text: str) -> None:
        """A sentence in the footer until the next key."""
        self.message = text
        if self.is_mounted:
            cast("LinesView", self.query_one("#footer")).repaint()

    def ask(self, prompt: Prompt) -> None:
        """Ask something in the footer row."""
        self.prompt = prompt
        cast("LinesView", self.query_one("#footer")).repaint()

    def to_mode(self, mode: Mode) -> None:
        """Give the keys to another part of the screen."""
        self.mode = mode
        self.lay_out()

    def on_paste(self, event: Paste) -> None:
        """Pasted text goes where the keys go."""
        event.stop()
        if not self.is_ready:
            self._early_keys.append(event)
            return
        if self.prompt is not None:
            self.prompt.paste(event.text)
        elif self.mode == "points":
            self.points_view.insert(event.text)
        elif self.mode in ("form", "help"):
            if self.form.paste(event.text) == "paste":
                self.points.open(event.text)
            else:
                self.changed()
        self.show_all()

    def on_key(self, event: Key) -> None:
        """Every key, once: to the prompt, to an action, or to what has the keys."""
        event.stop()
        event.prevent_default()
        if not self.is_ready:  # the first answer still chooses the question to begin with
            self._early_keys.append(event)
            return
        key, character = event.key, event.character if event.is_printable else None
        self._pauses.key_pressed()
        self.message = ""
        if self.prompt is not None:
            asked = self.prompt
            if asked.key(key, character) and self.prompt is asked:
                self.prompt = None
        elif self.mode == "keys":
            self._letter(key, character)
        elif self.mode == "points":
            self.points.key(key, character)
        else:
            self._act_or_type(key, character)
        if self.is_current:
            self.show_all()

    def _letter(self, key: str, character: str | None) -> None:
        """On the page of all keys one letter does it; a digit goes to a step."""
        self.to_mode("form")
        if character and character.isdigit():
            number = (int(character) - 1) % 10
            if number < len(STEPS):
                self.form.go_to_step(STEPS[number].id)
            return
        actions = self.program.keys.build
        action = by_letter(actions, character or "") or by_key(actions, key)
        name = action.id if action else ""
        if character == "b" or name not in ("", "keys", "next", "previous", "builds"):
            self.actions.do(name or "builds")

    def _act_or_type(self, key: str, character: str | None) -> None:
        if key == "question_mark" and self.mode != "table" and self.form.asks_text():
            action = None
        else:
            action = by_key(self.program.keys.build, key)
        if self.mode == "table":
            if not self.actions.table_key(key) and action is not None:
                self.actions.do(action.id, key)
            return
        if self.mode == "help" and key in ("pageup", "pagedown", "escape"):
            self._in_help(key)
        elif action is None or key == "enter":
            self.react(self.form.key(key, character))
        else:
            self.actions.do(action.id, key)

    def _in_help(self, key: str) -> None:
        if key == "escape":
            self.to_mode("form")
        else:
            page = self.query_one(HelpView)
            page.scroll_lines((page.size.height - 2) * (1 if key == "pagedown" else -1))

    def react(self, reaction: Reaction) -> None:
        """What follows from what the form did."""
        if reaction == "edited":
            self.changed()
        elif reaction == "next_step":
            self.actions.do("next_step")
        elif reaction == "previous_step":
            self.actions.last_of_previous_step()
        elif reaction == "changes":
            self.actions.ask_change()

    def changed(self) -> None:
        """Something was typed: keep it soon, and calculate the slower parts when typing pauses."""
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
        self.program.try_what_if(self, change)
