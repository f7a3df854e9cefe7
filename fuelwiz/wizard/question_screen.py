"""A question that has to be answered before anything else: it fills the screen, and nothing is typed past it."""

from __future__ import annotations

from typing import cast

from textual.app import ComposeResult
from textual.events import Key, Paste
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.wizard.actions import Action, by_key
from fuelwiz.wizard.chrome import MOVE, footer_line
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, fill
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.question import ESCAPE, Choice, Question

TAKE = Action("take", ("enter",), "", "takes it", "")
NOT_TAKEN = "Choose one of these first. What you typed just now is not in the build."
_SIGN, _WORDS = 3, 8


class QuestionScreen(Screen[None]):
    """Stands on top of a build until one of the choices is taken."""

    def __init__(self, question: Question) -> None:
        super().__init__()
        self.question = question
        self.at = 0
        self.note = ""

    def compose(self) -> ComposeResult:
        """One painted part, as large as the screen."""
        yield LinesView(cast("Program", self.app).look, "question", self._lines)

    def on_mount(self) -> None:
        """Fill the window."""
        fill(self, self.query_one(LinesView))
        self.call_later(cast("Program", self.app).show_now)

    def _lines(self, area: Area) -> list[Strip]:
        body = area.high(area.rows - 1)
        note = body.paragraph(self.note, _SIGN, "fault", bold=True) if self.note else []
        # What there is to know gives way first: the choices are always in sight.
        choices = [
            line for at, choice in enumerate(self.question.choices) for line in self._choice(at, choice, body)
        ]
        room = max(body.rows - len(choices) - len(note) - 4, 1)
        known = [line for text in self.question.sentences for line in body.paragraph(text, _SIGN)][:room]
        blank = body.row().strip()
        title = area.row("bar").put(1, self.question.title, bold=True).strip()
        lines = [title, blank, *known, blank, *choices, *([blank, *note] if note else [])]
        return [*body.filled(lines), footer_line([MOVE], TAKE, area)]

    def _choice(self, at: int, choice: Choice, area: Area) -> list[Strip]:
        is_at = at == self.at
        line = area.row("row" if is_at else "background")
        line.put(1, area.look.mark("pointer") if is_at else " ", "focus", True)
        sign = "Esc" if choice.key == ESCAPE else choice.key
        line.put(_SIGN, sign, "focus", True).put(_WORDS, choice.words, bold=True)
        return [line.strip(), *area.paragraph(choice.follows, _WORDS, "muted")]

    def on_key(self, event: Key) -> None:
        """Every key: it moves, chooses, leaves the program, or is told to be of no use here."""
        event.stop()
        event.prevent_default()
        if hand_on(self, event):
            return
        program, choices = cast("Program", self.app), self.question.choices
        key = event.character.lower() if event.character and event.is_printable else event.key
        self.note = ""
        if event.key in ("up", "down"):
            self.at = (self.at + (1 if event.key == "down" else -1)) % len(choices)
        elif event.key == "enter":
            self._take(choices[self.at].key)
        elif any(choice.key == key for choice in choices):
            self._take(key)
        elif (action := by_key(program.keys.build, event.key)) is not None and action.id == "quit":
            program.leave()
        else:
            self.note = NOT_TAKEN
        self._repaint()

    def on_paste(self, event: Paste) -> None:
        """What is pasted answers nothing."""
        event.stop()
        if hand_on(self, event):
            return
        self.note = NOT_TAKEN
        self._repaint()

    def _take(self, key: str) -> None:
        self.app.pop_screen()
        self.question.done(key)

    def _repaint(self) -> None:
        if self.is_mounted and self.is_current:
            self.query_one(LinesView).repaint()
