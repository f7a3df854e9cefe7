"""What the actions of a build need of its screen."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Literal, Protocol

from textual.timer import Timer

from fuelwiz.desk.desk import Desk
from fuelwiz.sizing.vocabulary import Change
from fuelwiz.wizard.early_keys import EarlyKeys
from fuelwiz.wizard.editor.points_view import PointsView
from fuelwiz.wizard.form.form import Form, Reaction
from fuelwiz.wizard.live.pane import LivePane
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.prompt import Prompt

Mode = Literal["form", "table", "help", "keys", "points"]
"""What has the keys."""


class Host(Protocol):
    """The screen of a build, as its actions see it."""

    desk: Desk
    form: Form
    mode: Mode
    view: str
    highlighted: str
    early_keys: EarlyKeys

    @property
    def program(self) -> Program:
        """The program that the screen belongs to."""

    @property
    def points_view(self) -> PointsView:
        """The page that takes a table of points."""

    @property
    def shown_size(self) -> str:
        """The size that is highlighted."""

    @property
    def live(self) -> LivePane:
        """The answer and the view under it."""

    def show_all(self) -> None:
        """Paint what differs from what stands there."""

    def set_timer(self, delay: float, callback: Callable[[], None]) -> Timer:
        """Call something after a while."""

    def say(self, text: str) -> None:
        """Show a sentence in the footer until the next key."""

    def ask(self, prompt: Prompt) -> None:
        """Ask something in the footer row."""

    def take_early_keys(self) -> None:
        """Take what was typed before the build could take it."""

    def to_mode(self, mode: Mode) -> None:
        """Give the keys to another part of the screen."""

    def react(self, reaction: Reaction) -> None:
        """Do what follows from what the form did."""

    def changed(self) -> None:
        """Something of the build was changed."""

    def show_options(self, parts: Path) -> None:
        """Search a parts file for sets that would do."""

    def try_what_if(self, change: Change | None = None) -> None:
        """Try changes on a scratch copy, one of them made already where it is given."""
