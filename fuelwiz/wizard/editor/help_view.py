"""The page on a question: what it is, why it is asked, and what to do when one is not sure."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.questions.catalogue import Question
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted

PARTS = (
    ("What it is", "what"),
    ("Why asked", "why"),
    ("Rule", "rule"),
    ("Usual", "usual"),
    ("If wrong", "wrong"),
    ("Not sure", "unsure"),
    ("Units", "units"),
    ("Source", "source"),
)
LABEL = 3
TEXT = 14
BELOW = "PgDn for the rest"


def help_lines(question: Question, area: Area) -> list[Strip]:
    """The parts that have something to say, label beside text where there is room, else above it."""
    beside = area.width >= 60
    lines = []
    for label, name in PARTS:
        text = getattr(question.help, name)
        if not text:
            continue
        if not beside:
            lines.append(area.row().put(LABEL, label, bold=True).strip())
            lines += [area.row().put(LABEL, words, "muted").strip() for words in area.wrapped(text, LABEL)]
            continue
        for i, words in enumerate(area.wrapped(text, TEXT)):
            line = area.row()
            if i == 0:
                line.put(LABEL, label, bold=True)
            lines.append(line.put(TEXT, words).strip())
    return lines


class HelpView(Painted):
    """Shows the page on the question that has the pointer; it takes no keys of its own."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, id="help")
        self.question: Question | None = None
        self.answer: list[str] = []
        self.opened = False
        self.scrolls = False  # whether the page, as last painted, takes more lines than it has
        self._top = 0

    def show(self, question: Question, answer: str = "", *, opened: bool = False) -> None:
        """Show the page on a question, from its top where it is another one."""
        if question is not self.question:
            self._top = 0
        self.question, self.opened = question, opened
        self.answer = [answer] if answer else []
        self.repaint()

    def scroll_lines(self, lines: int) -> None:
        """Move the page."""
        self._top = max(0, self._top + lines)
        self.repaint()

    def painted(self, area: Area) -> list[Strip]:
        """A rule with the question's name, the answer where the page hides it, and the page."""
        question = self.question
        if question is None:
            return area.filled([])
        if self.opened:
            head = [self._rule(f"help: {question.label}", area)]
            head += [line for text in self.answer for line in area.paragraph(text, rows=1)]
        else:
            head = [area.row().put(LABEL, f"Help: {question.label}", bold=True).strip(), area.row().strip()]
        room = area.rows - len(head)
        page = help_lines(question, area)
        self.scrolls = len(page) > room
        self._top = min(self._top, max(0, len(page) - room))
        shown = page[self._top : self._top + room]
        if self._top + room < len(page) and shown:
            shown[-1] = area.row().put(LABEL, BELOW if self.opened else f"F1, then {BELOW}", "muted").strip()
        return area.filled([*head, *shown])

    def _rule(self, title: str, area: Area) -> Strip:
        dash = area.look.mark("rule")
        line = area.row().put(0, dash, "muted").put(1, f"[{title}]", bold=True)
        note = " F1 or Esc closes "
        rest = area.width - len(title) - 3
        tail = f"{dash * 2}{note}"
        return line.put(len(title) + 3, tail + dash * max(rest - len(tail), 0), "muted").strip()
