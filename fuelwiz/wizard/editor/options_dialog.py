"""Which parts file is searched: the one in the folder of builds, or one whose name is asked for."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt

FOLDER = "parts"
NEEDS = "To look for parts, the program needs a power and a feed line first."


class OptionsDialog:
    """Asks for the file where there is not just one, and opens the page of sets."""

    def __init__(self, host: Host) -> None:
        self.host = host

    def open(self) -> None:
        """Open the page with the only parts file there is, else ask which."""
        session = self.host.desk.session
        if session is None or not session.feed.run:
            self.host.say(NEEDS)
            return
        files = parts_files(self.host.desk.folder)
        if len(files) == 1:
            self.host.show_options(files[0])
        else:
            first = files[0] if files else Path(FOLDER) / "shop.toml"
            shown = first.name if not files else f"{FOLDER}/{first.name}"
            self.host.ask(Prompt("Parts file:", self._named, editor=LineEdit.at_end(shown)))

    def _named(self, name: str) -> None:
        self.host.show_options(self.host.desk.folder / Path(name).expanduser())


def parts_files(folder: Path) -> list[Path]:
    """The parts files beside the builds, by name; none where they cannot be looked at."""
    try:
        return sorted(path for path in (folder / FOLDER).glob("*.toml") if not path.name.startswith("."))
    except OSError:
        return []
