"""The log of a build: choosing its file, reading it beside the keys, and picking among its heads."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

from fuelwiz.desk.log_read import COLUMNS, LogRead, reader
from fuelwiz.errors import FuelwizError, LogError
from fuelwiz.files import Seen
from fuelwiz.printable import clean
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.form.finding import Findable, Offer
from fuelwiz.wizard.form.log_columns import is_up_to_date, with_heads
from fuelwiz.wizard.live.rule import LOG

PATIENCE_S = 0.05
TOLD_EVERY_S = 0.2
NONE_HERE = (
    "No CSV file with these words, here or beside the builds. Type or paste the path of one, then Enter."
)
NO_HEAD = "No head of the file has all of these words."


class LogDialog:
    """The log of the build on a screen's desk."""

    def __init__(self, host: Host) -> None:
        self.host = host
        self._share: float | None = None
        self._stopped = False

    def open(self) -> None:
        """What F8 does: read a log that is named, choose one, or pick a head for a column."""
        desk = self.host.desk
        named = desk.result is not None and bool(desk.result.session.log.file)
        if desk.result is None:
            self.host.say("A log is held against the build: give the power first.")
        elif named and not is_up_to_date(desk):
            self.read(then=self._show)
        elif named and self.host.form.question.key.startswith(COLUMNS):
            self._pick_head()
        else:
            self._list_files()

    def _list_files(self) -> None:
        from fuelwiz.measured.log.place import logs_at_hand

        folders = (Path.cwd(), self.host.desk.folder)
        if not self.host.program.off_the_keys(lambda: logs_at_hand(folders), self._offer_files, PATIENCE_S):
            self.host.say("Looking for logs ...")

    def _offer_files(self, found: list[Seen] | FuelwizError) -> None:
        if isinstance(found, FuelwizError):
            self.host.say(str(found))
            return
        listed = [_findable(seen, self.host.desk.folder) for seen in found]
        offer = Offer("Log of a pull", NONE_HERE, "read it", self._choose)
        self.host.program.find(listed, lambda hit: self._choose(hit.id), offer)

    def _choose(self, typed: str) -> None:
        """A file is chosen: it is named in the build, and read."""
        from fuelwiz.measured.log.place import as_named

        folder = self.host.desk.folder
        self._answer("log.file", as_named(_typed_path(typed, folder), folder))
        self.read(then=self._show)

    def _pick_head(self) -> None:
        form = self.host.form
        question, path = with_heads(self.host.desk, form.question), form.path
        heads = [Findable("head", one.value, one.say, "", (one.say,)) for one in question.choices]
        offer = Offer(question.label, NO_HEAD, "take it")
        self.host.program.find(heads, lambda hit: self._take_head(path, hit.id), offer)

    def _take_head(self, path: str, head: str) -> None:
        self._answer(path, head)
        self.host.show_all()

    def _answer(self, path: str, text: str) -> None:
        """Give what was picked as the answer of a question, and stand there."""
        self.host.desk.visit(path)
        self.host.desk.type(path, text)
        self.host.form.rebuild()
        self.host.form.go_to_path(path)
        self.host.changed()

    def read(self, then: Callable[[], None] | None = None) -> None:
        """Read the log that the build names, and go on then; nothing where it names none."""
        desk = self.host.desk
        if desk.result is None or not desk.result.session.log.file or self._share is not None:
            return
        self._share, self._stopped = 0.0, False
        read = reader(desk.folder, desk.result.session, desk.result.figures, self._watch)
        if not self.host.program.off_the_keys(read, lambda found: self._read(found, then), PATIENCE_S):
            self._tell()

    def stop(self) -> bool:
        """End the reading that is going on; whether there was one."""
        if self._share is None or self._stopped:
            return False
        self._stopped = True
        self.host.say("The log is not read.")
        return True

    def _watch(self, share: float) -> None:
        """In the thread that reads: how far it is, and whether it is to end."""
        if self._stopped:
            raise LogError("is not read: it was stopped")
        self._share = share

    def _tell(self) -> None:
        """Say how far the reading is, again and again."""
        if self._share is not None and not self._stopped:
            self.host.say(f"Reading the log: {100 * self._share:.0f} %. Esc stops it.")
            self.host.set_timer(TOLD_EVERY_S, self._tell)

    def _read(self, found: LogRead | FuelwizError, then: Callable[[], None] | None) -> None:
        """The log has come back from the disk."""
        self._share = None
        if self._stopped:
            return
        if isinstance(found, FuelwizError):
            self.host.say(str(found))
            return
        desk = self.host.desk
        desk.log.hold(found)
        desk.update()
        self.host.form.rebuild()
        if then is not None:
            then()
        self.host.show_all()

    def _show(self) -> None:
        """What was read, in the footer, and its picture beside the questions."""
        run = None if self.host.desk.result is None else self.host.desk.result.log
        if run is None:
            return
        if run.figures is None:
            self.host.say(f"{run.file}: {run.refused}.")
            return
        log = run.figures
        self.host.view = LOG
        self.host.say(f"Read: {log.rows} rows, {log.samples} at full power, {log.skipped} skipped.")


def _findable(seen: Seen, folder: Path) -> Findable:
    from fuelwiz.measured.log.place import as_named
    from fuelwiz.measured.log.table import MOST_BYTES

    name = as_named(seen.path, folder)
    size = "too large" if seen.size > MOST_BYTES else _size(seen.size)
    return Findable("file", str(seen.path), clean(name), f"{size}  {_day(seen.changed)}", (name,))


def _size(size: int) -> str:
    return f"{size / 1024 / 1024:.1f} MB" if size >= 1024 * 1024 else f"{max(round(size / 1024), 1)} kB"


def _day(seconds: float) -> str:
    try:
        return date.fromtimestamp(seconds).isoformat()
    except (OSError, ValueError, OverflowError):
        return ""


def _typed_path(typed: str, folder: Path) -> Path:
    """The file that a text means: beside the build, else where one stands."""
    try:
        path = Path(typed.strip().strip("\"'")).expanduser()
        beside = folder / path
        return beside if beside.exists() or not path.exists() else path
    except (OSError, ValueError, RuntimeError):
        return folder / typed
