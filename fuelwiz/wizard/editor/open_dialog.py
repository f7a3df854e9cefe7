"""What is asked when a build is opened: somebody else has it open, or a draft of it was left."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk.desk import Desk
from fuelwiz.errors import FuelwizError
from fuelwiz.store.bin import put_in_bin
from fuelwiz.store.folder import copy
from fuelwiz.store.sitting import Sitting
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.prompt import Prompt

OFFER = "A draft was left: d opens it, x puts it in the bin, Esc stays with the saved file"


class OpenDialog:
    """Asks in the footer of a build's screen, once its first answer stands there."""

    def __init__(self, host: Host) -> None:
        self.host = host

    def tell_owner(self, owner: Sitting) -> None:
        """Say who has the build open; to go on in the same file is a choice of one's own."""
        question = f"Open {owner.words}: c copies it, g goes on here too, Esc only looks"
        self.host.ask(Prompt(question, lambda letter: self._beside(owner, letter), letters="cg"))

    def _beside(self, owner: Sitting, letter: str) -> None:
        storage = self.host.desk.storage
        if letter == "g":
            storage.goes_on_beside = True
            if storage.hold(by_force=not owner.is_of_this_host) is None:
                self.host.say("This build is yours now.")
            else:
                self.host.say("Each keeps a draft of their own; a save shows what the other changed.")
            return
        if storage.path is None:
            return
        try:
            path = copy(storage.path)
        except FuelwizError as error:
            self.host.say(str(error))
        else:
            self.host.program.open_build(path)

    def offer_draft(self, place: Path) -> None:
        """A draft says something else than the file: offer to go on with it."""
        self.host.ask(Prompt(OFFER, lambda letter: self._draft(place, letter), letters="dx"))

    def _draft(self, place: Path, letter: str) -> None:
        desk = self.host.desk
        try:
            if letter == "x":
                put_in_bin(place)
                self.host.say("The draft is in the bin; u in the list restores it.")
                return
            found = Desk.from_draft(place)
        except FuelwizError as error:
            self.host.say(str(error))
            return
        desk.storage.release()
        self.host.program.show_build(found)
