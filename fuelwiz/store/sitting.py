"""Who sits at a build: a person at one program on one machine, told apart from all others, and whether it still runs."""

from __future__ import annotations

import os
import socket
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from fuelwiz.printable import clean
from fuelwiz.record import record

_LONGEST = 80
_STARTED_AT = 19
"""The field of /proc/PID/stat behind the name that says when a process was started."""


@record
class Sitting:
    """One time that somebody works at one build; `started` tells a process from a later one of its number."""

    id: str
    user: str
    host: str
    process: int
    started: str
    since: str

    @classmethod
    def new(cls) -> Sitting:
        """One that begins now, in this process."""
        now = datetime.now(UTC).isoformat(timespec="seconds")
        process = os.getpid()
        return cls(os.urandom(8).hex(), _user(), _host(), process, started_of(process), now)

    @classmethod
    def from_plain(cls, plain: Any) -> Sitting | None:
        """One as a file tells it; None where it does not. Its texts are safe to show."""
        if not isinstance(plain, dict):
            return None
        texts = [plain.get(key) for key in ("id", "user", "host", "started", "since")]
        process = plain.get("process")
        known = isinstance(process, int) and not isinstance(process, bool) and 0 < process < 2**31
        if not known or not all(isinstance(text, str) for text in texts):
            return None
        name, user, host, started, since = (clean(str(text))[:_LONGEST] for text in texts)
        return cls(name, user, host, int(str(process)), started, since)

    def as_plain(self) -> dict[str, Any]:
        """What a file keeps of it."""
        return {
            "id": self.id,
            "user": self.user,
            "host": self.host,
            "process": self.process,
            "started": self.started,
            "since": self.since,
        }

    @property
    def is_of_this_host(self) -> bool:
        """Whether it is one of this machine, whose processes can be looked at."""
        return self.host == _host()

    @property
    def may_still_run(self) -> bool:
        """Whether another process works there still; of another machine nobody can tell, so that it may."""
        if not self.is_of_this_host:
            return True
        if self.process == os.getpid():
            return False
        return _is_running(self.process) and started_of(self.process) in (self.started, "")

    @property
    def words(self) -> str:
        """Who, where and since when, by this computer's clock."""
        where = "" if self.is_of_this_host else f" on {self.host}"
        return f"by {self.user or 'somebody'}{where}{self._since_words()}"

    def _since_words(self) -> str:
        try:
            began = datetime.fromisoformat(self.since).astimezone()
        except (ValueError, OverflowError, OSError):
            return ""
        is_today = began.date() == datetime.now().astimezone().date()
        return f" since {began:%H:%M}" if is_today else f" since {began:%Y-%m-%d %H:%M}"


def started_of(process: int) -> str:
    """When a process was started, as its system counts; empty where that is not known."""
    with suppress(OSError, ValueError, IndexError):
        status = Path(f"/proc/{process}/stat").read_bytes()
        return status[status.rindex(b")") + 1 :].split()[_STARTED_AT].decode("ascii")
    return ""


def _is_running(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True


def _user() -> str:
    import getpass

    try:
        return clean(getpass.getuser())[:_LONGEST]
    except (OSError, KeyError, ImportError):
        return ""


def _host() -> str:
    return clean(socket.gethostname())[:_LONGEST]
