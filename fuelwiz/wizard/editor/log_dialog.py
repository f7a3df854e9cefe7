"""Reading the log of a build: the disk is waited for beside the keys, and what was found stands in its step."""

from __future__ import annotations

from fuelwiz.desk.log_read import LogRead, reader
from fuelwiz.errors import FuelwizError
from fuelwiz.wizard.editor.host import Host

PATIENCE_S = 0.05


class LogDialog:
    """The log of the build on a screen's desk."""

    def __init__(self, host: Host) -> None:
        self.host = host

    def read(self) -> None:
        """Read the log that the build names."""
        desk = self.host.desk
        if desk.result is None or not desk.result.session.log.file:
            self.host.say("Name the log first: the file that the logger wrote, beside the build's.")
            return
        read = reader(desk.folder, desk.result.session, desk.result.figures)
        if not self.host.program.off_the_keys(read, self._read, PATIENCE_S):
            self.host.say("Reading the log ...")

    def _read(self, found: LogRead | FuelwizError) -> None:
        """The log has come back from the disk."""
        if isinstance(found, FuelwizError):
            self.host.say(str(found))
            return
        self.host.desk.log_read = found
        self.host.form.rebuild()
        self.host.show_all()
        log = found.figures
        self.host.say(f"Read: {log.rows} rows, {log.samples} at full power, {log.skipped} skipped.")
