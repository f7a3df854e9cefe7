"""Leaving when the terminal hangs up, the system asks for the end, or the terminal is gone: the draft is kept."""

from __future__ import annotations

import os
import select
import signal
import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from types import FrameType
from typing import Any, Protocol

HUNG_UP, INTERRUPTED, ASKED_TO_END = 129, 130, 143
_STATUS = {signal.SIGHUP: HUNG_UP, signal.SIGINT: INTERRUPTED, signal.SIGTERM: ASKED_TO_END}
GRACE_S = 1.0
DISK_S = 3.0
"""How long a slow disk is waited for before the end, with a draft to keep."""
CHECK_EVERY_S = 1.0


class Guarded(Protocol):
    """What has to be known of the program to end it in good order."""

    check_terminal: Callable[[], None]
    """Called every now and then while the program runs."""

    crash: Exception | None
    """What went wrong in the program itself, if anything."""

    not_kept: str
    """Why the draft could not be kept, if so."""

    @property
    def return_code(self) -> int | None:
        """The exit status that was asked for."""

    def run(self, *, mouse: bool) -> int | None:
        """Run until the program is left."""

    def keep_draft(self) -> bool:
        """Write the draft of the build that is open; whether one was written."""

    def leave(self, status: int = 0) -> None:
        """End the program."""

    def call_later(self, callback: Callable[..., Any], *args: Any) -> Any:
        """Call something in the program's own turn."""


class Leaving:
    """Keeps the draft and ends the program, whatever state the terminal is in."""

    def __init__(self, app: Guarded) -> None:
        self.app = app
        self.status: int | None = None

    def install(self) -> None:
        """Answer signals here, in plain handlers: they run even while a stalled terminal blocks the event loop."""
        for number in _STATUS:
            if signal.getsignal(number) is not signal.SIG_IGN:
                signal.signal(number, self._signalled)

    def _signalled(self, number: int, frame: FrameType | None) -> None:
        self.leave(_STATUS[signal.Signals(number)])

    def leave(self, status: int) -> None:
        """Keep the draft, ask the program to end, and end it after a second if it cannot."""
        if self.status is not None:
            return
        self.status = status
        _end_after(DISK_S, status)
        self.app.keep_draft()
        _end_after(GRACE_S, status)
        self.app.call_later(self.app.leave, status)

    def check_terminal(self) -> None:
        """Leave where the terminal is gone without a signal."""
        if not terminal_is_there():
            self.leave(HUNG_UP)


def _end_after(seconds: float, status: int) -> None:
    """End the process, whatever it hangs on by then."""
    watchdog = threading.Timer(seconds, os._exit, (status,))
    watchdog.daemon = True
    watchdog.start()


def terminal_is_there() -> bool:
    """Whether something still holds the other end of the line that keys come from.

    A terminal that has hung up no longer says that it is one, so the line itself is asked.
    """
    stdin = sys.__stdin__
    try:
        if stdin is None:
            return True
        watch = select.poll()
        watch.register(stdin.fileno(), select.POLLIN)
        gone = select.POLLHUP | select.POLLERR | select.POLLNVAL
        return not any(event & gone for _, event in watch.poll(0))
    except (OSError, ValueError):
        return False


def _say_at_the_end(text: str) -> None:
    """A last word on standard error, once the terminal is as it was; there may be nobody to read it."""
    if text and sys.__stderr__ is not None:
        with suppress(OSError, ValueError):
            sys.__stderr__.write(f"fuelwiz: {text}\n")
            sys.__stderr__.flush()


def guarded_run(app: Guarded, *, mouse: bool) -> int:
    """Run the program; its exit status, that of a hang-up or a request to end included.

    Raises:
        Exception: what went wrong in the program itself, once the terminal is as it was.
    """
    leaving = Leaving(app)
    leaving.install()
    app.check_terminal = leaving.check_terminal
    status = app.run(mouse=mouse)
    if app.crash is not None and leaving.status is None:
        raise app.crash
    _say_at_the_end(app.not_kept)
    if leaving.status is not None:
        return leaving.status
    return status or app.return_code or 0
