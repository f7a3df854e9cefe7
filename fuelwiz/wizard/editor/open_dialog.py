"""What is asked when a build is opened: somebody else has it open, or a draft of it was left."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from fuelwiz.desk.change_words import change_lines
from fuelwiz.desk.desk import Desk
from fuelwiz.document.changes import changes
from fuelwiz.errors import FuelwizError
from fuelwiz.store.bin import put_in_bin
from fuelwiz.store.drafts import changed_ns
from fuelwiz.store.folder import copy
from fuelwiz.store.sitting import Sitting
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.question import ESCAPE, Choice, Question

BESIDE = (
    Choice("c", "copy it", "and work on the copy; nothing of theirs is touched"),
    Choice("g", "go on here too", "each keeps a draft of their own; a save shows what the other changed"),
    Choice(ESCAPE, "only look", "nothing can be changed, but it can be saved under another name"),
)
OFFER = (
    Choice("d", "open the draft", "and go on with it; the saved build stays as it is until you save"),
    Choice("x", "put the draft in the bin", "u in the list of builds restores it"),
    Choice(ESCAPE, "stay with the saved build", "the draft is kept, and offered again"),
)
_MOST_CHANGES = 5


class OpenDialog:
    """Asks on top of a build's screen, once its first answer stands there; keys that came early wait for the answer."""

    def __init__(self, host: Host) -> None:
        self.host = host

    def tell_owner(self, owner: Sitting) -> None:
        """Say who has the build open; to go on in the same file is a choice of one's own."""
        sentence = f"{self.host.desk.name} is open {owner.words}."
        self.host.program.ask_first(
            Question("Open elsewhere", (sentence,), BESIDE, lambda key: self._beside(owner, key))
        )

    def _beside(self, owner: Sitting, key: str) -> None:
        storage = self.host.desk.storage
        if key == "c" and storage.path is not None and self._copied(storage.path):
            return
        if key == "g":
            storage.goes_on_beside = True
            if storage.hold(by_force=not owner.is_of_this_host) is None:
                self.host.say("This build is yours now.")
            else:
                self.host.say("Each keeps a draft of their own; a save shows what the other changed.")
        else:
            storage.looks_at = owner
            if key == ESCAPE:
                self.host.say("You only look: nothing you type changes this build.")
            self.host.show_all()
        self.host.take_early_keys()

    def _copied(self, path: Path) -> bool:
        """Whether there is a copy, and it is being opened; else the footer says why not."""
        try:
            copied = copy(path)
        except FuelwizError as error:
            self.host.say(f"Not copied, so you only look. {error}")
            return False
        self.host.program.open_build(copied, self.host.early_keys.taken())
        return True

    def offer_draft(self, place: Path) -> None:
        """A draft says something else than the file: offer to go on with it."""
        sentences = (
            f"{self.host.desk.name} has a draft{_kept(place)} that was never saved.",
            *_differences(self.host.desk, place),
        )
        self.host.program.ask_first(
            Question("A draft was left", sentences, OFFER, lambda key: self._draft(place, key))
        )

    def _draft(self, place: Path, key: str) -> None:
        desk = self.host.desk
        try:
            if key == "d":
                found = Desk.from_draft(place)
                desk.storage.release()
                self.host.program.show_build(found, self.host.early_keys.taken())
                return
            if key == "x":
                put_in_bin(place)
                self.host.say("The draft is in the bin; u in the list restores it.")
        except FuelwizError as error:
            self.host.say(str(error))
        self.host.take_early_keys()


def _kept(place: Path) -> str:
    """When a draft was kept, as far as its disk tells."""
    try:
        return f" of {datetime.fromtimestamp(changed_ns(place) / 1e9):%Y-%m-%d %H:%M}"
    except (OverflowError, OSError, ValueError):
        return ""


def _differences(desk: Desk, place: Path) -> list[str]:
    """What a draft says otherwise than the build, the first few of it."""
    try:
        draft = Desk.from_draft(place)
    except FuelwizError as error:
        return [str(error)]
    lines = change_lines(changes(desk.plain, draft.plain, into_absent=False))
    more = [f"and {len(lines) - _MOST_CHANGES} more"] if len(lines) > _MOST_CHANGES else []
    sentences = [f"It says: {', '.join([*lines[:_MOST_CHANGES], *more])}."] if lines else []
    return (
        [*sentences, "A table of points stands on its page, not used yet."]
        if draft.table[1].strip()
        else sentences
    )
