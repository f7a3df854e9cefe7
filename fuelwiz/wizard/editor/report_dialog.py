"""Writing the report of a build to a file: asks for its name, and before anything is written over."""

from __future__ import annotations

import math
import os
from functools import partial
from pathlib import Path

from fuelwiz.errors import FuelwizError
from fuelwiz.store.folder import file_name
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.editor.log_dialog import LogDialog
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt


class ReportDialog:
    """The report of the build on a screen's desk."""

    def __init__(self, host: Host, log: LogDialog) -> None:
        self.host = host
        self.log = log

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
            self.host.ask(Prompt(question, lambda _letter: self._write_with_log(path), letters="y"))
        else:
            self._write_with_log(path)

    def _write_with_log(self, path: Path) -> None:
        """A report has what the log shows of the build as it is: where nobody had it read, it is read first."""
        result = self.host.desk.result
        if result is not None and result.session.log.file and result.log is None:
            self.log.read(then=lambda: self._write(path))
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
