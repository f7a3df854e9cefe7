"""The first screen of a build: its first questions with what its file says, before anything is calculated."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from textual.app import ComposeResult
from textual.events import Key, Paste
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.file_limits import MOST_BYTES, SUFFIX
from fuelwiz.files import read_start
from fuelwiz.questions.catalogue import step_questions
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted, fill
from fuelwiz.wizard.screen_layout import layout_for

if TYPE_CHECKING:
    from fuelwiz.wizard.program import Program

FIELD = 24
FLUSH_S = 0.005  # for what draws, before what loads takes the processor


class LoadingView(Painted):
    """The questions of the first step and the file's own texts; nothing that has to be calculated.

    It stands in the terminal's own colors: a ground of ours would be sent for every cell, and again a moment later.
    """

    def __init__(self, look: Look, name: str, plain: dict[str, Any]) -> None:
        super().__init__(replace(look, colors="none"), id="loading")
        self._title = name
        self._plain = plain

    def take_look(self, look: Look) -> None:
        """Another background is nothing to it."""

    def painted(self, area: Area) -> list[Strip]:
        """A line for the name, one for the step, and a row a question."""
        layout = layout_for(area.width, area.rows)
        column = layout.form.x
        lines = [area.row().strip() for _ in range(layout.form.y)]
        if layout.top.is_shown and lines:
            lines[0] = area.row("bar").put(1, self._title, bold=True).strip()
        for question in [q for q in step_questions("goal") if not q.more][:5]:
            text = self._text(question.key)
            if text or question.key == "goal.power":
                lines.append(area.row().put(column + 3, question.label).put(column + FIELD, text).strip())
        return area.filled(lines)

    def _text(self, key: str) -> str:
        section, _, name = key.partition(".")
        table = self._plain.get(section)
        value = table.get(name, "") if isinstance(table, dict) else ""
        return "".join(sign for sign in str(value) if sign.isprintable())[:40]


class LoadingScreen(Screen[None]):
    """Stands while the rest is loaded; keys pressed meanwhile are handed on."""

    def __init__(self, path: Path, look: Look, then: Callable[[list[Key | Paste]], None]) -> None:
        super().__init__()
        self._path = path
        self._look = look
        self._then = then
        self._keys: list[Key | Paste] = []

    def compose(self) -> ComposeResult:
        """One painted part, as large as the screen."""
        yield LoadingView(self._look, self._path.name.removesuffix(SUFFIX), plain_of(self._path))

    def on_mount(self) -> None:
        """Load the rest once this has been drawn."""
        fill(self, self.query_one(LoadingView))
        cast("Program", self.app).once_displayed(self._load)

    def _load(self) -> None:
        self.set_timer(FLUSH_S, lambda: self._then(self._keys))

    def on_key(self, event: Key) -> None:
        """Keep a key for the screen that follows."""
        event.stop()
        event.prevent_default()
        if not hand_on(self, event):
            self._keys.append(event)

    def on_paste(self, event: Paste) -> None:
        """Keep pasted text for the screen that follows."""
        event.stop()
        if not hand_on(self, event):
            self._keys.append(event)


def plain_of(path: Path) -> dict[str, Any]:
    """What the file says, as far as it can be read at once; the screen that follows says what is wrong with it."""
    try:
        content = read_start(path, MOST_BYTES)
        return tomllib.loads(content.decode("utf-8-sig")) if content.count(b"[") < 2000 else {}
    except (OSError, ValueError, RecursionError):
        return {}
