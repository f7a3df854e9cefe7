"""A headless Chromium that a test drives through a pipe, by the DevTools protocol."""

from __future__ import annotations

import base64
import json
import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

NAMES = ("chromium", "chromium-browser", "google-chrome")
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--remote-debugging-pipe",
)
READS, WRITES = 3, 4
"""The file descriptors that the browser takes commands from and answers on."""
MOST_ANSWERS = 2000


def chromium() -> str | None:
    """The browser on this system."""
    return next((found for name in NAMES if (found := shutil.which(name))), None)


class Tab:
    """One page, and all that it has said or asked for."""

    def __init__(self, commands: int, answers: int) -> None:
        self._commands, self._answers = commands, answers
        self._rest = b""
        self._number = 0
        self._session: str | None = None
        self.events: list[dict[str, Any]] = []
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        attached = self.call("Target.attachToTarget", targetId=target, flatten=True)
        self._session = attached["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.call(f"{domain}.enable")

    def call(self, method: str, **parameters: Any) -> dict[str, Any]:
        """Do one thing, and what came of it."""
        self._number += 1
        message: dict[str, Any] = {"id": self._number, "method": method, "params": parameters}
        if self._session is not None:
            message["sessionId"] = self._session
        os.write(self._commands, json.dumps(message).encode() + b"\0")
        for _ in range(MOST_ANSWERS):
            answer = self._read()
            if answer.get("id") == self._number:
                assert "error" not in answer, answer
                return dict(answer["result"])
            self.events.append(answer)
        raise AssertionError(f"no answer to {method}")

    def _read(self) -> dict[str, Any]:
        while b"\0" not in self._rest:
            more = os.read(self._answers, 1 << 16)
            assert more, "the browser is gone"
            self._rest += more
        line, _, self._rest = self._rest.partition(b"\0")
        return dict(json.loads(line))

    def show(self, path: Path) -> None:
        """Open a file, and wait until it is drawn."""
        self.events.clear()
        self.call("Page.navigate", url=path.as_uri())
        self.value(
            "new Promise(done => document.readyState === 'complete' ? done(1)"
            " : addEventListener('load', () => done(1)))"
        )

    def value(self, script: str) -> Any:
        """What a script comes to."""
        answer = self.call("Runtime.evaluate", expression=script, awaitPromise=True, returnByValue=True)
        assert "exceptionDetails" not in answer, answer
        return answer["result"].get("value")

    def look(self, scheme: str) -> None:
        """Prefer "dark" or "light"."""
        self.call("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": scheme}])

    def size(self, width: int, height: int) -> None:
        """Make the window that large."""
        self.call(
            "Emulation.setDeviceMetricsOverride",
            width=width,
            height=height,
            deviceScaleFactor=1,
            mobile=width < 500,
        )

    def pdf(self, path: Path, width_in: float, height_in: float) -> None:
        """Print on paper of that size."""
        printed = self.call(
            "Page.printToPDF", paperWidth=width_in, paperHeight=height_in, preferCSSPageSize=False
        )
        path.write_bytes(base64.b64decode(printed["data"]))

    def picture(self, path: Path) -> None:
        """Keep the whole page as it looks."""
        taken = self.call("Page.captureScreenshot", format="png", captureBeyondViewport=True)
        path.write_bytes(base64.b64decode(taken["data"]))


@contextmanager
def tab_in(browser: str) -> Iterator[Tab]:
    """A tab of a browser of its own, whose folder is empty."""
    command_end, commands = os.pipe()
    answers, answer_end = os.pipe()

    start = f'exec "$0" "$@" {READS}<&{command_end} {WRITES}>&{answer_end}'
    with TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        running = subprocess.Popen(
            ["bash", "-c", start, browser, *FLAGS, f"--user-data-dir={folder}"],
            pass_fds=(command_end, answer_end),
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        os.close(command_end)
        os.close(answer_end)
        try:
            yield Tab(commands, answers)
        finally:
            os.close(commands)
            os.close(answers)
            running.terminate()
            running.wait()
