"""The screen of past builds: takes every key, paints, and has each build calculated while no key comes."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import ClassVar, cast

from textual.app import ComposeResult
from textual.events import Click, Key, MouseScrollDown, MouseScrollUp, Paste, ScreenResume, ScreenSuspend
from textual.screen import Screen
from textual.timer import Timer
from textual.worker import Worker, WorkerState

from fuelwiz.errors import FuelwizError
from fuelwiz.store.build_file import BuildFile
from fuelwiz.wizard.actions import by_key, by_letter
from fuelwiz.wizard.build_list.first_time import CHOICES
from fuelwiz.wizard.build_list.judged import Judged, judge
from fuelwiz.wizard.build_list.list_actions import ListActions
from fuelwiz.wizard.build_list.list_help import most_scrolled
from fuelwiz.wizard.build_list.list_page import ListPage, heights, page_lines
from fuelwiz.wizard.build_list.list_state import BuildList
from fuelwiz.wizard.build_list.list_state import Key as KnownKey
from fuelwiz.wizard.early_keys import EarlyKeys
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.loading import FLUSH_S
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, fill
from fuelwiz.wizard.program import Program

PAUSE_S = 0.15  # without a key, before a build is calculated
NEXT_S = 0.05  # between one and the next
AT_ONCE = 80  # builds that are read at one stroke beside the keys
FILL_PAUSE_S = 0.01
OPENING = "Opening a new build …"


class BuildListScreen(Screen[None]):
    """The list of past builds. Every key comes here; nothing on the screen has the focus of its own."""

    known: ClassVar[dict[KnownKey, Judged]] = {}
    """What was calculated before: the screen is made anew each time the list is shown."""

    last_at: ClassVar[dict[Path, Path]] = {}
    """The build that the pointer was on, by folder."""

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self.page = ListPage(BuildList(folder, judged=self.known), actions=self.program.keys.list)
        self.actions = ListActions(self.page, self.program, self._begin_new)
        self._opening: EarlyKeys | None = None  # for a new build, while one is about to show
        self._pressed = ""
        self._pause: Timer | None = None
        self._is_filling = False
        self._is_read = False
        self._job: Worker[Judged] | None = None

    @property
    def builds(self) -> BuildList:
        """The list."""
        return self.page.builds

    @property
    def program(self) -> Program:
        """The program that this screen belongs to."""
        return cast("Program", self.app)

    @property
    def is_calculating(self) -> bool:
        """Whether a build is being calculated just now."""
        return self._job is not None

    def compose(self) -> ComposeResult:
        """One painted part, as large as the screen."""
        yield LinesView(self.program.look, "list", lambda area: page_lines(self.page, date.today(), area))

    def on_mount(self) -> None:
        """Read the folder and show it; nothing is calculated yet."""
        fill(self, self.query_one(LinesView))
        self.call_later(self.program.show_now)
        self.actions.read(at_a_glance=True)
        self._is_read = True
        if self.builds.folder in self.last_at:
            self.builds.point_at(self.last_at[self.builds.folder])
        if self.program.message:
            self.page.message, self.program.message = self.program.message, ""

    def on_screen_resume(self, event: ScreenResume) -> None:
        """Back from another screen: the folder may hold something else by now."""
        self.program.use_mouse(True)
        if not self._is_read:
            self.actions.read()
        self._is_read = False
        self.show()

    def on_screen_suspend(self, event: ScreenSuspend) -> None:
        """No other screen looks at the mouse: the terminal has it back, to select text with."""
        self.program.use_mouse(False)

    def show(self) -> None:
        """Paint what differs from what stands there; calculate on when keys pause."""
        if self.builds.entry is not None:
            self.last_at[self.builds.folder] = self.builds.entry.path
        if self.is_mounted:
            self.query_one(LinesView).repaint()
            self._calculate_after(PAUSE_S)
            self._fill()

    def on_key(self, event: Key) -> None:
        """Every key, once: to the prompt, to the filter, or to an action."""
        event.stop()
        event.prevent_default()
        if hand_on(self, event):
            return
        if self._opening is not None:
            self._opening.hold(event)
            return
        key, character = event.key, event.character if event.is_printable else None
        self._pressed = key
        page = self.page
        page.message = ""
        if page.prompt is not None:
            asked = page.prompt
            if asked.key(key, character) and page.prompt is asked:
                page.prompt = None
        elif page.mode == "help":
            self._in_help(key)
        elif page.mode == "keys":
            self._letter(key, character)
        elif self.builds.typing:
            self._typed(key, character)
        elif key == "escape" and self.builds.needle.text:
            self.actions.clear_filter()
        elif not self._moved(key):
            self._do(key)
        if self.is_current:
            self.show()

    def _begin_new(self) -> None:
        """Say that a new build opens, in the frame of the key; what it needs is loaded once that is on its way."""
        if self._opening is None:
            self._opening, self.page.message = EarlyKeys(opened_by=self._pressed), OPENING
            self.program.once_displayed(self._open_once_sent)

    def _open_once_sent(self) -> None:
        self.set_timer(FLUSH_S, self._open_new)

    def _open_new(self) -> None:
        keys = self._opening.taken() if self._opening is not None else []
        self._opening, self.page.message = None, ""
        self.program.new_build(keys, self._pressed)

    def _do(self, key: str) -> None:
        action = by_key(self.page.actions, key)
        if action is not None:
            self.actions.do(action.id)

    def _letter(self, key: str, character: str | None) -> None:
        """On the page of all keys one letter does it, and so do the keys themselves; Esc closes the page."""
        self.page.mode = "list"
        action = by_letter(self.page.actions, character or "") or by_key(self.page.actions, key)
        if action is not None and key not in ("escape", "ctrl+g", "f9"):
            self.actions.do(action.id)

    def _in_help(self, key: str) -> None:
        steps = {"pagedown": 10, "pageup": -10, "down": 1, "up": -1}
        if key in steps:
            most = most_scrolled(self._area.high(self._area.rows - 1))
            self.page.scrolled = min(max(self.page.scrolled + steps[key], 0), most)
        elif key in ("f1", "escape", "enter"):
            self.page.mode = "list"
        elif key in ("ctrl+g", "f9"):
            self.page.mode = "keys"
        elif key == "ctrl+q":
            self.actions.do("quit")

    def _typed(self, key: str, character: str | None) -> None:
        """A key that goes into the filter, or ends it."""
        builds = self.builds
        if key == "escape":
            builds.typing = False
            self.actions.clear_filter()
        elif key in ("enter", "tab", "down"):
            builds.typing = False
        elif key in ("ctrl+q", "ctrl+g", "f9", "f1"):
            builds.typing = False
            self._do(key)
        else:
            needle = builds.needle.key(key)
            if needle is None and character:
                needle = builds.needle.insert(character)
            builds.filter(needle or builds.needle)

    def _moved(self, key: str) -> bool:
        """Whether a key moves the pointer."""
        rows = {"up": -1, "down": 1, "pageup": -self._table_rows, "pagedown": self._table_rows}
        rows |= {"home": -(10**6), "end": 10**6}
        if key not in rows:
            return False
        if self.page.is_empty:
            self.page.choice = min(max(self.page.choice + rows[key], 0), len(CHOICES) - 1)
        else:
            self.builds.move(rows[key])
        return True

    def on_paste(self, event: Paste) -> None:
        """Pasted text goes where typed text goes."""
        event.stop()
        if self._opening is not None:
            self._opening.hold(event)
            return
        if self.page.prompt is not None:
            self.page.prompt.paste(event.text)
        elif self.builds.typing:
            printable = "".join(sign for sign in event.text if sign.isprintable())
            self.builds.filter(self.builds.needle.insert(printable))
        self.show()

    def on_click(self, event: Click) -> None:
        """A click puts the pointer on a row, a second one opens it."""
        event.stop()
        page = self.page
        if page.mode != "list" or page.prompt is not None or self._opening is not None:
            return
        if page.is_empty:
            at = event.y - (4 if self._area.rows - 1 >= 22 else 3)
            row = at if 0 <= at < len(CHOICES) else None
            if row is not None:
                page.choice = row
        else:
            window = self.builds.window(self._table_rows)
            at = event.y - heights(self._area.rows).above - 1
            row = window[at] if 0 <= at < len(window) else None
            if row is not None:
                self.builds.at = row
        if row is not None and event.chain == 2:
            self.actions.do("open")
        if self.is_current:
            self.show()

    def on_mouse_scroll_down(self, event: MouseScrollDown) -> None:
        """The wheel moves the pointer."""
        self._wheel(1)

    def on_mouse_scroll_up(self, event: MouseScrollUp) -> None:
        """The wheel moves the pointer."""
        self._wheel(-1)

    def _wheel(self, rows: int) -> None:
        if self.page.mode == "list" and self.page.prompt is None:
            self.builds.move(rows)
            self.show()

    @property
    def _area(self) -> Area:
        return Area(self.program.look, self.size.width, self.size.height)

    @property
    def _table_rows(self) -> int:
        """How many builds show at once."""
        return max(heights(self._area.rows).table - 1, 1)

    def _fill(self) -> None:
        """Read the next builds of a long list beside the keys."""
        builds, found = self.builds, self.builds.listing
        names = builds.unread(AT_ONCE)
        if self._is_filling or not names or found is None or not self.is_mounted:
            return
        self._is_filling = True

        def filled(read: list[BuildFile] | FuelwizError) -> None:
            self._is_filling = False
            if isinstance(read, FuelwizError) or self.builds is not builds or builds.listing is not found:
                self._fill()
                return
            builds.fill(read)
            if self.is_mounted:
                self.query_one(LinesView).repaint()
                self.set_timer(FILL_PAUSE_S, self._fill)

        self.program.off_the_keys(lambda: list(map(found.read, names)), filled, 0.0)

    def _calculate_after(self, seconds: float) -> None:
        """Calculate the next build once no key has come for that long."""
        if self._pause is not None:
            self._pause.stop()
        self._pause = self.set_timer(seconds, self._calculate)

    def _calculate(self) -> None:
        self._pause = None
        if self._job is not None or not self.is_current:
            return
        entry = self.builds.next_unknown(self._table_rows)
        if entry is not None:
            self._job = self.run_worker(
                lambda: judge(entry), thread=True, exit_on_error=False, name="calculate", description=""
            )
            self._entry: BuildFile = entry

    def on_worker_state_changed(self, event: Worker.StateChanged) -> None:
        """A build is calculated: its row and the lines below say so, and the next one's turn comes."""
        job = self._job
        if job is None or event.worker is not job or event.state not in _OVER:
            return
        self._job = None
        judged = job.result if event.state is WorkerState.SUCCESS else None
        self.builds.learn(self._entry, judged or Judged(fault="cannot be judged here: open it to see why"))
        if self.is_mounted:
            self.query_one(LinesView).repaint()
            self._calculate_after(NEXT_S)


_OVER = (WorkerState.SUCCESS, WorkerState.ERROR, WorkerState.CANCELLED)
