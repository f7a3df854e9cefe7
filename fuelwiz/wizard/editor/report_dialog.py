"""Writing the report of a build to a file: asks for its name, and before anything is written over."""

from __future__ import annotations

import os
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.errors import FuelwizError
from fuelwiz.file_limits import SUFFIX
from fuelwiz.store.folder import file_name
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.editor.log_dialog import LogDialog
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result

PATIENCE_S = 0.1
"""How long keys wait for a report that is written quickly."""
NO_POWER = "There is no report to write yet: the power is missing."


class ReportDialog:
    """The report of the build on a screen's desk."""

    def __init__(self, host: Host, log: LogDialog) -> None:
        self.host = host
        self.log = log
        self._is_writing = False

    def write_report(self) -> None:
        """Write the report of the build to a file whose name is asked for."""
        desk = self.host.desk
        if desk.result is None:
            self.host.say(NO_POWER)
            return
        name = f"{file_name(desk.name).removesuffix(SUFFIX)}-report.txt"
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
        desk = self.host.desk
        found, is_whole = desk.result, desk.filled_in
        if self._is_writing:
            self.host.say("The last report is still being written.")
            return
        if found is None:  # taken out while the log was read
            self.host.say(NO_POWER)
            return
        self._is_writing = True
        if not self.host.program.off_the_keys(
            lambda: _written(found, is_whole, path), self._come_back, PATIENCE_S
        ):
            self.host.say(f"Writing {path.name} ...")

    def _come_back(self, written: Path | FuelwizError) -> None:
        """A report has come back from the disk."""
        self._is_writing = False
        self.host.say(str(written) if isinstance(written, FuelwizError) else f"Written: {written}")
        self.host.show_all()


def _written(found: Result, is_whole: bool, path: Path) -> Path:
    """The report of a result in its file; what is not worked out of it yet comes first."""
    from fuelwiz.desk.plots import Plots
    from fuelwiz.desk.whole_result import whole_result
    from fuelwiz.report import write_report

    whole = found if is_whole else whole_result(found)
    return write_report(whole, path, partial(Plots(), whole))


def _is_there(path: Path) -> bool:
    try:
        return os.path.lexists(path)
    except ValueError:
        return False
