"""Which parts file is searched: the one beside the builds, or one whose name is asked for."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt

FOLDER = "parts"
NEEDS = "To look for parts, the program needs a power and a feed line first."


class OptionsDialog:
    """Opens the page of sets: asks for the file where there are several, says how to make one where there is none."""

    def __init__(self, host: Host) -> None:
        self.host = host

    def open(self) -> None:
        """Open the page with the only parts file there is, ask which, or say how one is made."""
        session = self.host.desk.session
        if session is None or not session.feed.run:
            self.host.say(NEEDS)
            return
        folder = self.host.desk.folder
        files = parts_files(folder)
        if not files:
            self.host.program.explain_parts((folder / FOLDER).absolute(), self.open, self._ask)
        elif len(files) == 1:
            self.host.show_options(files[0])
        else:
            self._ask()

    def _ask(self) -> None:
        """Ask for the name of a parts file; the first of the folder stands there."""
        files = parts_files(self.host.desk.folder)
        asked = f"Parts file (of {len(files)}):" if files else "Parts file:"
        shown = f"{FOLDER}/{files[0].name}" if files else "shop.toml"
        self.host.ask(Prompt(asked, self._named, editor=LineEdit.at_end(shown)))

    def _named(self, name: str) -> None:
        self.host.show_options(self.host.desk.folder / Path(name).expanduser())


def parts_files(folder: Path) -> list[Path]:
    """The parts files beside the builds, by name; none where they cannot be looked at."""
    try:
        return sorted(path for path in (folder / FOLDER).glob("*.toml") if not path.name.startswith("."))
    except OSError:
        return []
