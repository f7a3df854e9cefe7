"""The wizard's line to its terminal: stray bytes do no harm, and the mouse is taken only where it is used."""

from __future__ import annotations

import os
import re
import select
import sys
from collections.abc import Iterable, Iterator
from typing import Any

from textual import events
from textual._xterm_parser import XTermParser
from textual.drivers.linux_driver import LinuxDriver
from textual.message import Message

from fuelwiz.terminal.environment import BACKGROUND_QUERY, background_is_worth_asking
from fuelwiz.terminal.keyboard_input import BURST, MOST_PASTED, Answered, KeyboardInput, Pasted, Piece
from fuelwiz.wizard.background import Background

AT_ONCE = 4096
LOOK_EVERY_S = 0.1
"""How often the thread looks whether it is to end."""
MORE_COMES_WITHIN_S = 0.05
"""What belongs together comes within this, over a slow line too."""
PASTE_ENDS_AFTER_S = 1.0
"""A paste whose end never comes is over after this."""
_ESC = "\x1b"
_SEQUENCE = re.compile("\x1b\\[\\[[A-E]|\x1b\\[[0-?]*[ -/]*[@-~]|\x1bO[ -~]|\x1b|[^\x1b]+")
_MOUSE_ON = "\x1b[?1000h\x1b[?1006h"
_MOUSE_OFF = "\x1b[?1000l\x1b[?1002l\x1b[?1003l\x1b[?1015l\x1b[?1006l"


class TerminalDriver(LinuxDriver):
    """Reads keys as they come, and reports the mouse to the screens that use it."""

    def __init__(self, app: Any, **options: Any) -> None:
        super().__init__(app, **options)
        self._reports_mouse = False
        self._has_asked = False
        if self._file is None or not self._file.isatty():
            self._file = sys.__stdout__

    def start_application_mode(self) -> None:
        """Take the terminal, and ask it once for its background where nothing else tells; nobody waits for it."""
        super().start_application_mode()  # type: ignore[no-untyped-call]
        if not self._has_asked and background_is_worth_asking(os.environ):
            self._has_asked = True
            self.write(BACKGROUND_QUERY)
            self.flush()

    def use_mouse(self, wanted: bool) -> None:
        """Have the mouse reported, or leave it to the terminal's own selection."""
        if not self._mouse or wanted == self._reports_mouse:
            return
        self._reports_mouse = wanted
        self.write(_MOUSE_ON if wanted else _MOUSE_OFF)
        self.flush()

    def _enable_mouse_support(self) -> None:
        """Report the mouse again where it was reported before: the driver is started anew after a stop."""
        if self._reports_mouse:
            self.write(_MOUSE_ON)

    def _enable_mouse_pixels(self) -> None:
        """Places of the mouse are wanted in cells."""

    def _disable_mouse_support(self) -> None:
        if self._mouse:
            self.write(_MOUSE_OFF)
            self.flush()

    def run_input_thread(self) -> None:
        """Take what comes until the program ends; a line that is gone is not asked again and again."""
        keyboard, sequences = KeyboardInput(), Sequences()
        while not self.exit_event.is_set():
            if not self._comes_within(_patience(keyboard)):
                self._hand_on(keyboard.nothing_came(), sequences)
                continue
            content = self._read()
            if not content:
                self.exit_event.wait(LOOK_EVERY_S)
            self._hand_on(keyboard.take(content), sequences)

    def _comes_within(self, seconds: float) -> bool:
        try:
            return bool(select.select([self.fileno], [], [], seconds)[0])
        except (OSError, ValueError):
            self.exit_event.wait(LOOK_EVERY_S)
            return False

    def _read(self) -> bytes:
        """What stands on the line; a burst to its end, so that a paste stays one."""
        content = self._read_once()
        while BURST <= len(content) < MOST_PASTED and self._comes_within(MORE_COMES_WITHIN_S / 2):
            more = self._read_once()
            if not more:
                break
            content += more
        return content

    def _read_once(self) -> bytes:
        try:
            return os.read(self.fileno, AT_ONCE)
        except OSError:
            return b""

    def _hand_on(self, pieces: Iterable[Piece], sequences: Sequences) -> None:
        for piece in pieces:
            if isinstance(piece, Answered):
                self.process_message(Background(piece.text))
                continue
            if isinstance(piece, Pasted):
                self.process_message(events.Paste(piece.text))
                continue
            for message in sequences.messages(piece.text):
                self.process_message(message)


class Sequences:
    """Control sequences and letters as what the screens are told; a sequence that nobody knows is dropped."""

    def __init__(self) -> None:
        self._parser = XTermParser()

    def messages(self, text: str) -> Iterator[Message]:
        """What whole sequences say."""
        for sequence in _SEQUENCE.findall(text):
            if sequence == _ESC:
                yield events.Key("escape", _ESC)
                continue
            yield from (one for one in self._parser.feed(sequence) if not _is_alt_key(one))
            if self._parser._awaiting.timeout is not None:  # it still waits for the end of what is whole
                self._parser = XTermParser()


def _patience(keyboard: KeyboardInput) -> float:
    """How long the line may be silent before what was held back is all that comes."""
    if not keyboard.is_waiting:
        return LOOK_EVERY_S
    return PASTE_ENDS_AFTER_S if keyboard.is_in_paste else MORE_COMES_WITHIN_S


def _is_alt_key(message: Message) -> bool:
    """Whether a letter came with Alt; it stands for nothing here, and must not be typed."""
    return isinstance(message, events.Key) and message.key.startswith("alt+")
