"""What the screens need of the program that shows them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Protocol, TypeVar

from textual.events import Key, Paste
from textual.screen import Screen

from fuelwiz.errors import FuelwizError
from fuelwiz.units import UnitSystem
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.own_keys import KeyTable

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.report.differences import JudgedBuild
    from fuelwiz.wizard.form.finding import Findable, Offer
    from fuelwiz.wizard.question import Question

T = TypeVar("T")


class Program(Protocol):
    """The ways from one screen to another; the screens know each other through it alone."""

    look: Look
    keys: KeyTable
    folder: Path
    message: str

    def show_list(self) -> None:
        """Show the list of past builds."""

    def open_build(self, path: Path, keys: Sequence[Key | Paste] = ()) -> None:
        """Open a build from its file; it takes keys that came early."""

    def show_build(self, desk: Desk, keys: Sequence[Key | Paste] = ()) -> None:
        """Show a build that is on a desk already; it takes keys that came early."""

    def ask_first(self, question: Question) -> None:
        """Ask what has to be answered before anything else."""

    def new_build(self, keys: Sequence[Key | Paste] = (), opened_by: str = "") -> None:
        """Begin an empty build, with keys that came for it, by a key that means nothing more where it is repeated."""

    def open_sample(self) -> None:
        """Open the guided sample."""

    def show_what_if(self, screen: Screen[None], copy: Desk, path: str = "") -> None:
        """Put a scratch copy of the build of a screen on top of it, at a question where one is given."""

    def show_options(self, screen: Screen[None], parts: Path) -> None:
        """Search a parts file for sets that would do, on top of the build of a screen."""

    def explain_parts(self, folder: Path, again: Callable[[], None], other: Callable[[], None]) -> None:
        """Say how a parts file is made; then look again in the folder, or ask for another file."""

    def show_words(self, system: UnitSystem) -> None:
        """Show the page of words on top of a screen, in the units of a build."""

    def compare(self, builds: Sequence[Path | JudgedBuild]) -> None:
        """Put builds side by side, from their files or as they stand on a desk."""

    def use_mouse(self, wanted: bool) -> None:
        """Have the mouse reported, or leave it to the terminal's own selection."""

    def find(
        self, findable: Sequence[Findable], take: Callable[[Findable], None], offer: Offer | None = None
    ) -> None:
        """Find one of these by words of it, and take it; `offer` is what is said around them."""

    def hold_frames(self) -> None:
        """Send the terminal nothing until `show_now`."""

    def show_now(self) -> None:
        """Lay out, paint and send the screen as it is now."""

    def once_displayed(self, then: Callable[[], None]) -> None:
        """Call something when the next frame is on its way."""

    def show_differences(self, differences: Sequence[str]) -> None:
        """Show what somebody else changed in a file, on top of a screen."""

    def off_the_keys(
        self, run: Callable[[], T], done: Callable[[T | FuelwizError], object], patience_s: float
    ) -> bool:
        """Do something with the disk beside the keys; whether it is done already."""

    def leave(self, status: int = 0) -> None:
        """End the program."""

    def leave_with_draft(self) -> None:
        """End the program without a question: what is not saved is kept as a draft."""
