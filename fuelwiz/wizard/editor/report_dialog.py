"""Writing the report of a build to a file: asks for its name, and before anything is written over."""

from __future__ import annotations

import math
import os
from functools import partial
from pathlib import Path

from fuelwiz.errors import FuelwizError
from fuelwiz.store.folder import file_name
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt


class ReportDialog:
    """The report of the build on a screen's desk."""

    def __init__(self, host: Host) -> None:
        self.host = host

    def write_report(self) -> None:
        """Write the report of the build to a file whose name is asked for."""
        desk = self.host.desk
        if desk.result is None:
            self.host.say("There is no report to write yet: the power is missing.")
            return
        name = f"{file_name(desk.name).removesuffix('.toml')}-report.txt"
        self.host.ask(Prompt("Write the report to:", self._to, editor=LineEdit.marked(name)))

    def _to(self, name: str) -> None:
        path = self.host.desk.folder / name
        if _is_there(path):
            question = f"{path.name} already exists. y overwrites it, Esc cancels"
            self.host.ask(Prompt(question, lambda _letter: self._write(path), letters="y"))
        else:
            self._write(path)

    def _write(self, path: Path) -> None:
        from fuelwiz.desk.plots import Plots
        from fuelwiz.report import write_report

        desk = self.host.desk
        desk.fill_in(math.inf)
        assert desk.result is not None
        try:
            write_report(desk.result, path, partial(Plots(), desk.result))
        except FuelwizError as error:
            self.host.say(str(error))
        else:
            self.host.say(f"Written: {path}")


def _is_there(path: Path) -> bool:
    try:
        return os.path.lexists(path)
    except ValueError:
        return False
