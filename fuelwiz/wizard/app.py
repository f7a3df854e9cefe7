"""The wizard: the list of past builds, and the screen of the one that is open."""

from __future__ import annotations

import gc
import os
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from textual.driver import Driver
from textual.events import Key, Paste
from textual.filter import LineFilter
from textual.screen import Screen

from fuelwiz.errors import FuelwizError
from fuelwiz.terminal.environment import light_in_answer
from fuelwiz.wizard.background import Background
from fuelwiz.wizard.drawing import DrawingApp
from fuelwiz.wizard.leaving import CHECK_EVERY_S, guarded_run
from fuelwiz.wizard.loading import LoadingScreen
from fuelwiz.wizard.look import Look, look_of
from fuelwiz.wizard.own_keys import KeyTable, keys_file, read_keys
from fuelwiz.wizard.painted import Painted

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.report.differences import JudgedBuild
    from fuelwiz.units import UnitSystem
    from fuelwiz.wizard.editor.host import Host
    from fuelwiz.wizard.form.finding import Findable, Offer
    from fuelwiz.wizard.program import Program
    from fuelwiz.wizard.question import Question

T = TypeVar("T")


LOADED_S = 2.0


def _collect_from_here() -> None:
    """Collect garbage from now on; what was loaded for the start stays, and is not looked through again."""
    gc.freeze()
    gc.enable()


class FuelwizApp(DrawingApp, inherit_bindings=False):
    """Shows one screen at a time; takes no key itself."""

    CSS_PATH = Path(__file__).with_name("wizard.tcss")
    ENABLE_COMMAND_PALETTE = False
    BINDINGS = []  # noqa: RUF012  every key is a screen's own

    def __init__(
        self,
        folder: Path,
        path: Path | None = None,
        *,
        look: Look | None = None,
        keys: KeyTable | None = None,
    ) -> None:
        self.look = look or look_of(os.environ)
        super().__init__(ansi_color=self.look.colors != "256")
        self.animation_level = "none"
        self.folder = folder
        self.first_path = path
        self.check_terminal: Callable[[], None] = lambda: None
        self.keys = keys or KeyTable()
        self.message = " ".join(self.keys.faults)
        self.crash: Exception | None = None
        self.not_kept = ""
        self.title = "fuelwiz"

    def get_driver_class(self) -> type[Driver]:
        """The driver of this program, where the system's terminals are those that it knows."""
        usual = super().get_driver_class()
        if usual.__name__ != "LinuxDriver":
            return usual
        from fuelwiz.wizard.terminal_driver import TerminalDriver

        return TerminalDriver

    def on_background(self, event: Background) -> None:
        """The terminal says what color its background has: all that shows is painted for it."""
        light = light_in_answer(event.answer)
        if light is None or light == self.look.light:
            return
        self.look = replace(self.look, light=light)
        for screen in self.screen_stack:
            if screen.id != "_default":
                screen.styles.background = self.look.screen_background
            for part in screen.query(Painted):
                part.take_look(self.look)

    def use_mouse(self, wanted: bool) -> None:
        """Have the mouse reported to the screen in front, or leave it to the terminal."""
        use = getattr(self._driver, "use_mouse", None)
        if use is not None:
            use(wanted)

    def panic(self, *renderables: object) -> None:
        """Something went wrong in the program itself: the draft is kept, and whoever runs it says so in a line."""
        if self.crash is None:
            self.crash = self._exception or RuntimeError("the screen cannot be drawn")
            if self.keep_draft():
                self.crash.add_note("What you typed is kept as a draft: the next start offers it.")
            if self.not_kept:
                self.crash.add_note(self.not_kept)
        super().panic()

    def _fatal_error(self) -> None:
        self.panic()

    def get_line_filters(self) -> Sequence[LineFilter]:
        """None: every color is already one that this terminal has."""
        return ()

    def on_mount(self) -> None:
        """Open the build that was asked for, else the list."""
        self.app_resume_signal.subscribe(self, lambda _: self.redraw())
        self.set_interval(CHECK_EVERY_S, self._check_terminal)
        self.set_timer(LOADED_S, _collect_from_here)
        if self.first_path is None:
            self.show_list()
        else:
            self.open_build(self.first_path)

    def _check_terminal(self) -> None:
        self.check_terminal()

    def find(
        self, findable: Sequence[Findable], take: Callable[[Findable], None], offer: Offer | None = None
    ) -> None:
        """Find a question, an action, a build or the like by words of it."""
        from fuelwiz.wizard.find_screen import FindScreen

        self.push_screen(FindScreen(findable, take, offer))

    def show_list(self) -> None:
        """The list of past builds."""
        from fuelwiz.wizard.build_list.list_screen import BuildListScreen

        self._show(BuildListScreen(self.folder))

    def open_build(self, path: Path, keys: Sequence[Key | Paste] = ()) -> None:
        """A build from its file; where there is no such file, a new one to be saved there.

        What its file says stands on the screen before what calculates is loaded.
        """
        self._show(LoadingScreen(path, self.look, lambda later: self._open(path, [*keys, *later])))

    def show_build(self, desk: Desk, keys: Sequence[Key | Paste] = ()) -> None:
        """A build that is on a desk already."""
        from fuelwiz.wizard.editor.build_screen import BuildScreen

        self._show(BuildScreen(desk, keys=keys, at_first=self._first_question(desk, offers_draft=False)))

    def ask_first(self, question: Question) -> None:
        """What has to be answered before anything else, on top of what is shown."""
        from fuelwiz.wizard.question_screen import QuestionScreen

        self.push_screen(QuestionScreen(question))

    def _open(self, path: Path, keys: Sequence[Key | Paste]) -> None:
        from fuelwiz.desk.desk import Desk
        from fuelwiz.wizard.editor.build_screen import BuildScreen

        try:
            desk = Desk.open(path)
        except FuelwizError as error:
            self.message = str(error)
            self.show_list()
            return
        self._show(BuildScreen(desk, keys=keys, at_first=self._first_question(desk, offers_draft=True)))

    def _first_question(self, desk: Desk, *, offers_draft: bool) -> Callable[[Host], None] | None:
        """What is asked once the build stands there: it is open elsewhere, or a draft of it was left."""
        from fuelwiz.store.drafts import abandoned_draft

        owner = desk.storage.hold()
        draft = abandoned_draft(desk.path) if not owner and offers_draft and desk.path is not None else None
        if owner is None and draft is None:
            return None
        from fuelwiz.wizard.editor.open_dialog import OpenDialog

        if owner is not None:
            return lambda host: OpenDialog(host).tell_owner(owner)
        return lambda host: OpenDialog(host).offer_draft(draft) if draft else None

    def new_build(self, keys: Sequence[Key | Paste] = (), opened_by: str = "") -> None:
        """An empty build."""
        from fuelwiz.desk.desk import Desk
        from fuelwiz.wizard.editor.build_screen import BuildScreen

        self._show(BuildScreen(Desk.new(self.folder), keys=keys, opened_by=opened_by))

    def open_sample(self) -> None:
        """An invented build to learn with."""
        from fuelwiz.wizard.editor.build_screen import BuildScreen
        from fuelwiz.wizard.sample import sample_desk

        self._show(BuildScreen(sample_desk(self.folder)))

    def show_what_if(self, screen: Screen[None], copy: Desk, path: str = "") -> None:
        """A scratch copy of the build of a screen, on top of it."""
        from fuelwiz.wizard.editor.build_screen import BuildScreen
        from fuelwiz.wizard.what_if import WhatIfScreen

        if isinstance(screen, BuildScreen):
            self.push_screen(WhatIfScreen(copy, screen, path))

    def show_options(self, screen: Screen[None], parts: Path) -> None:
        """Sets of parts that would do, on top of the build of a screen."""
        from fuelwiz.wizard.editor.build_screen import BuildScreen
        from fuelwiz.wizard.options_screen import OptionsScreen

        if isinstance(screen, BuildScreen):
            self.push_screen(OptionsScreen(screen, screen.desk, parts))

    def explain_parts(self, folder: Path, again: Callable[[], None], other: Callable[[], None]) -> None:
        """How a parts file is made, and where it is looked for."""
        from fuelwiz.wizard.no_parts_screen import NoPartsScreen

        self.push_screen(NoPartsScreen(folder, again, other))

    def show_words(self, system: UnitSystem) -> None:
        """The page of words, on top of what is shown."""
        from fuelwiz.wizard.words_screen import WordsScreen

        self.push_screen(WordsScreen(system))

    def show_differences(self, differences: Sequence[str]) -> None:
        """What somebody else changed in a file, on top of what is shown."""
        from fuelwiz.wizard.editor.differences_screen import DifferencesScreen

        self.push_screen(DifferencesScreen(differences))

    def off_the_keys(
        self, run: Callable[[], T], done: Callable[[T | FuelwizError], object], patience_s: float
    ) -> bool:
        """Do something with the disk beside the keys; whether it is done already."""
        from fuelwiz.wizard.disk import off_the_keys

        return off_the_keys(self, run, done, patience_s)

    def compare(self, builds: Sequence[Path | JudgedBuild]) -> None:
        """Builds side by side."""
        from fuelwiz.wizard.compare_screen import CompareScreen

        self.push_screen(CompareScreen(builds))

    def leave(self, status: int = 0) -> None:
        """End the program."""
        self.exit(return_code=status)

    def leave_with_draft(self) -> None:
        """End the program without a question: what is not saved is kept as a draft."""
        self.keep_draft()
        self.leave()

    def keep_draft(self) -> bool:
        """Write the draft of the build that is open; whether one was written. Nothing here may fail."""
        kept, self.not_kept = False, ""
        for screen in self._screen_stack:
            desk = getattr(screen, "desk", None)
            if desk is None or not desk.dirty:
                continue
            try:
                kept = desk.write_draft() is not None or kept
            except Exception as error:
                self.not_kept = f"What you typed could not be kept, here or anywhere else: {error}"
        return kept

    def _show(self, screen: Screen[None]) -> None:
        replaces = len(self.screen_stack) > 1
        if replaces or not isinstance(screen, LoadingScreen):
            self.hold_frames()  # until the screen says that it is whole; meanwhile the one before stands
        if replaces:
            self.switch_screen(screen)
        else:
            self.push_screen(screen)


def run(path: Path | None, sessions: Path | None, mouse: bool = True) -> int:
    """Run the wizard until it is left; its exit status."""
    from fuelwiz.store.place import sessions_folder

    app = FuelwizApp(sessions_folder(sessions, os.environ), path, keys=read_keys(keys_file()))
    return guarded_run(app, mouse=mouse)


if TYPE_CHECKING:
    _IS_A_PROGRAM: type[Program] = FuelwizApp  # the screens take it on trust
