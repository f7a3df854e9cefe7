"""A conversation on standard input and output, until one or the other ends."""

from __future__ import annotations

import os
import sys
from collections.abc import Mapping
from pathlib import Path

from fuelwiz.ask.conversation import Conversation
from fuelwiz.desk.desk import Desk
from fuelwiz.errors import FuelwizError
from fuelwiz.file_limits import LONGEST_TEXT
from fuelwiz.report.output import printed
from fuelwiz.standard_streams import complain
from fuelwiz.store.drafts import abandoned_draft
from fuelwiz.store.place import sessions_folder

PROMPT = "> "


def ask(path: Path | None, sessions: Path | None, environ: Mapping[str, str] = os.environ) -> int:
    """Ask for a build until the input ends; the exit status.

    Raises:
        SessionError: the file cannot be read.
    """
    desk = Desk.open(path) if path is not None else Desk.new(sessions_folder(sessions, environ))
    other = desk.storage.hold()
    if other is not None:
        say(f"{desk.name} is open {other.words}. Not opened.")
        return 2
    try:
        return _talk(_draft_or(desk), is_typed=sys.stdin.isatty())
    finally:
        desk.storage.release()


def say(text: str) -> None:
    """Say a line at once; each line of a longer text by itself."""
    for line in text.splitlines():
        sys.stdout.write(printed(line))
    sys.stdout.flush()


def _draft_or(desk: Desk) -> Desk:
    """The build, or its draft where one is there and whoever types wants to go on with it."""
    place = abandoned_draft(desk.path) if desk.path is not None else None
    if place is None:
        return desk
    if not sys.stdin.isatty():
        say("A draft of this build is there; it is left alone, as these lines come from no keyboard.")
        return desk
    say("A draft of this build is there that says more than its file. y goes on with it.")
    return Desk.from_draft(place) if (_line(is_typed=True) or "").strip().lower() in ("y", "yes") else desk


def _talk(desk: Desk, *, is_typed: bool) -> int:
    desk.update()
    conversation, keeper = Conversation(desk, say), Keeper(desk)
    try:
        conversation.begin()
        while not conversation.over:
            line = _line(is_typed=is_typed)
            if line is None:
                break
            conversation.take(line)
            keeper.keep()
            if conversation.over and is_typed and keeper.asks_again():
                conversation.over = False
    finally:
        keeper.keep()
    conversation.say_answer(whole=True)
    if keeper.fault is not None:
        complain(f"{desk.name} is not saved: {keeper.fault}")
        return 2
    if keeper.kept is not None:
        say(f"Not saved: kept as a draft, {keeper.kept}.")
    return 0


class Keeper:
    """Keeps the draft of a build line by line: where no place takes it, that is said once, and it goes on without."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._was_asked = False
        self.kept: Path | None = None
        self.fault: FuelwizError | None = None

    def keep(self) -> None:
        """Keep what is told, where anything is that no file has."""
        before, self.fault = self.fault, None
        try:
            self.kept = self._desk.write_draft()
        except FuelwizError as error:
            self.kept, self.fault = None, error
            if str(error) != str(before):
                say(f"{error}. It goes on without one; /save NAME keeps the build.")

    def asks_again(self) -> bool:
        """Whether what would be lost is said before it is, the first time that it would be."""
        if self.fault is None or self._was_asked:
            return False
        self._was_asked = True
        say("Not saved, no draft kept. /save NAME keeps it, /quit again drops it.")
        return True


def _line(*, is_typed: bool) -> str | None:
    """The next line; None at the end of the input."""
    if is_typed:
        sys.stdout.write(PROMPT)
        sys.stdout.flush()
    content = sys.stdin.buffer.readline(4 * LONGEST_TEXT)
    return content.decode("utf-8", errors="replace") if content else None
