"""What each key does on the screen of a build: to the prompt, to an action, or to what has the keys."""

from __future__ import annotations

from typing import Protocol

from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.actions import by_key, by_letter
from fuelwiz.wizard.editor.build_actions import BuildActions
from fuelwiz.wizard.editor.doubt_watch import DoubtWatch
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.editor.line_watch import LineWatch
from fuelwiz.wizard.editor.looking import refusing_in_words
from fuelwiz.wizard.editor.points_dialog import PointsDialog
from fuelwiz.wizard.form.form import Reaction
from fuelwiz.wizard.prompt import Prompt

TO_QUESTIONS = ("next", "previous", "next_step", "previous_step", "unsure")
"""Actions that are about a question: from the table of sizes they bring the questions back, so that it is in sight."""


class Keyed(Host, Protocol):
    """The screen of a build, as its keys see it."""

    prompt: Prompt | None
    message: str
    actions: BuildActions
    points: PointsDialog

    def turn_help(self, way: int) -> None:
        """Turn the page on a question."""


class BuildKeys:
    """Gives every key to whatever it is for."""

    def __init__(self, screen: Keyed) -> None:
        self.screen = screen
        self._line_watch = LineWatch()
        self._doubt_watch = DoubtWatch()

    def press(self, key: str, character: str | None) -> None:
        """A key, once; one that would change a build that is only looked at is told so."""
        with refusing_in_words(self.screen):
            self._press(key, character)

    def paste(self, text: str) -> None:
        """Pasted text goes where the keys go."""
        with refusing_in_words(self.screen):
            self._paste(text)

    def _paste(self, text: str) -> None:
        screen = self.screen
        if screen.prompt is not None:
            screen.prompt.paste(text)
        elif screen.mode == "points":
            screen.points_view.insert(text)
            screen.points.keep()
        elif screen.mode in ("form", "help"):
            if screen.form.paste(text) == "paste":
                screen.points.open(text)
            else:
                screen.changed()

    def _press(self, key: str, character: str | None) -> None:
        screen = self.screen
        said = self._said_on_leaving()  # the finder moves the pointer between two keys
        if screen.prompt is not None:
            asked = screen.prompt
            if asked.key(key, character) and screen.prompt is asked:
                screen.prompt = None
        elif screen.mode == "keys":
            self._letter(key, character)
        elif screen.mode == "points":
            screen.points.key(key, character)
        else:
            self._act_or_type(key, character)
        said = self._said_on_leaving() or said
        if said and not screen.message:
            screen.message = said

    def _said_on_leaving(self) -> str:
        """What is said of the question that the pointer has left since this was asked last."""
        form = self.screen.form
        changed_line = self._line_watch.moved(form.desk, form.path)
        return self._doubt_watch.moved(form) or changed_line

    def press_unseen(self, key: str) -> None:
        """A key in a window that is too small: nothing but leaving can be meant, and nothing can be asked."""
        action = by_key(self.screen.program.keys.build, key)
        if action is not None and action.id == "quit":
            self.screen.program.leave_with_draft()

    def react(self, reaction: Reaction) -> None:
        """What follows from what the form did."""
        if reaction == "edited":
            self.screen.changed()
        elif reaction == "next_step":
            self.screen.changed()  # Enter may have owned what stood in the last question
            self.screen.actions.do("next_step")
        elif reaction == "previous_step":
            self.screen.actions.last_of_previous_step()
        elif reaction == "changes":
            self.screen.actions.ask_change()
        elif reaction == "more":
            self.screen.changed()
            self.screen.actions.tell_opened()
        elif reaction == "take":
            self.screen.actions.take()

    def _letter(self, key: str, character: str | None) -> None:
        """On the page of all keys one letter does it; that of a step goes there."""
        screen = self.screen
        screen.to_mode("form")
        step = next((step.id for step in STEPS if step.letter == character), None)
        if step is not None:
            screen.form.go_to_step(step)
            return
        actions = screen.program.keys.build
        action = by_letter(actions, character or "") or by_key(actions, key)
        name = action.id if action else ""
        if character == "b" or name not in ("", "keys", "next", "previous", "builds"):
            screen.actions.do(name or "builds")

    def _act_or_type(self, key: str, character: str | None) -> None:
        screen = self.screen
        is_text = key == "question_mark" and screen.mode != "table" and screen.form.asks_text()
        action = None if is_text else by_key(screen.program.keys.build, key)
        if screen.mode == "table":
            if not screen.actions.table_key(key) and action is not None:
                if action.id in TO_QUESTIONS:
                    screen.to_mode("form")
                screen.actions.do(action.id, key)
        elif screen.mode == "help" and key == "escape":
            screen.to_mode("form")
        elif screen.mode == "help" and key in ("pageup", "pagedown"):
            screen.turn_help(1 if key == "pagedown" else -1)
        elif action is None or key == "enter":
            self.react(screen.form.key(key, character))
        else:
            screen.actions.do(action.id, key)
