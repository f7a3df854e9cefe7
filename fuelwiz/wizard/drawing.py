"""The app as what draws: frames wait until a screen is whole, and until a slow line has taken the one before."""

from __future__ import annotations

import select
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, cast

from textual._compositor import CompositorUpdate
from textual.app import App
from textual.geometry import Offset

from fuelwiz.wizard.frames import Frames, Ready

if TYPE_CHECKING:
    from textual.screen import Screen

TRY_AGAIN_S = 0.03
ANOTHER_SIZE = (0, 0)


class DrawingApp(App[int], inherit_bindings=False):
    """Sends the terminal what differs from what it shows, once a frame is whole.

    Selecting is the terminal's: Textual's would send another pointer for every click.
    """

    ALLOW_SELECT = False

    def __init__(self, *, ansi_color: bool) -> None:
        super().__init__(ansi_color=ansi_color)
        self._frames = Frames()
        self._frames_size = ANOTHER_SIZE
        self._is_held = False
        self._waits = False
        self._cursor_sent = Offset()
        self._once_displayed: Callable[[], None] | None = None

    def hold_frames(self) -> None:
        """Send nothing until `show_now`: what comes is not whole yet."""
        self._is_held = True

    def show_now(self) -> None:
        """Lay out, paint and send the screen as it is now.

        Textual paints by a clock that begins with each screen: the first frame of one would come a tick too late.
        """
        self._is_held = False
        self.screen.refresh(layout=True)
        self.screen._on_timer_update()
        self._send()

    def once_displayed(self, then: Callable[[], None]) -> None:
        """Call something when the next frame is on its way."""
        self._once_displayed = then

    def post_display_hook(self) -> None:
        """A frame is on its way, or there is no terminal that it could go to."""
        then, self._once_displayed = self._once_displayed, None
        if then is not None:
            then()

    def redraw(self) -> None:
        """Send the whole screen: others have written on the terminal."""
        self._frames_size = ANOTHER_SIZE
        self._send()

    def _display(self, screen: Screen[object], renderable: object) -> None:
        driver = self._driver
        if (
            not isinstance(renderable, CompositorUpdate)
            or self._batch_count
            or self.is_headless
            or driver is None
        ):
            super()._display(screen, cast(Any, renderable))
            return
        if tuple(self.size) != self._frames_size:
            self._frames_size = self.size.width, self.size.height
            self._frames.forget(*self._frames_size)
        self._frames.take(renderable)
        if self._is_held or self._waits:
            self.post_display_hook()
        elif self._line_is_slow():
            self._waits = True
            self.set_timer(TRY_AGAIN_S, self._try_again)
        else:
            self._send_difference(screen)

    def _send_difference(self, screen: Screen[object]) -> None:
        text = self._frames.difference(self.console._color_system)
        place = self._frames.cursor
        if place is not None:
            self.cursor_position = Offset(*place)  # Textual leaves the terminal's cursor there
        if text or self.cursor_position != self._cursor_sent:
            self._cursor_sent = self.cursor_position
            super()._display(screen, cast(Any, Ready(text)))

    def _send(self) -> None:
        if self._running and not self._waits:
            self._display(self.screen, CompositorUpdate())

    def _try_again(self) -> None:
        self._waits = False
        self._send()

    def _line_is_slow(self) -> bool:
        """Whether the terminal has not yet taken what was sent before."""
        writer = getattr(self._driver, "_writer_thread", None)
        if writer is None:
            return False
        try:
            return not select.select([], [writer.fileno()], [], 0)[1]
        except (OSError, ValueError):
            return False
