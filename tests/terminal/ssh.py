"""A server of one's own on 127.0.0.1, with keys that are thrown away."""

from __future__ import annotations

import getpass
import shlex
import shutil
import socket
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest

from .terminal import Terminal, running

SERVER = shutil.which("sshd") or shutil.which("sshd", path="/usr/sbin:/usr/local/sbin")
PATIENCE_S = 10.0


def needs(*programs: str) -> None:
    """Skip where one of these is missing."""
    for program in programs:
        if (SERVER if program == "sshd" else shutil.which(program)) is None:
            pytest.skip(f"{program} is not on this system")


@dataclass(frozen=True, slots=True)
class Server:
    """Where it listens, and the key that it takes."""

    port: int
    key: Path

    def client(self, command: Sequence[str], **environ: str) -> list[str]:
        """An ssh client that runs a command there, on a terminal."""
        variables = [f"{name}={value}" for name, value in environ.items()]
        there = shlex.join(["env", *variables, *command])
        return [
            "ssh", "-tt", "-F", "none", "-i", str(self.key), "-p", str(self.port),
            "-o", "StrictHostKeyChecking=no", "-o", "UserKnownHostsFile=/dev/null", "-o", "LogLevel=ERROR",
            "-o", "IdentitiesOnly=yes", f"{getpass.getuser()}@127.0.0.1", there,
        ]  # fmt: skip


@contextmanager
def server(folder: Path) -> Iterator[Server]:
    """Runs until it is no longer wanted; its keys go with the folder."""
    needs("sshd", "ssh", "ssh-keygen")
    for name in ("host", "user"):
        subprocess.run(["ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", str(folder / name)], check=True)
    allowed = folder / "allowed"
    allowed.write_text((folder / "user.pub").read_text(encoding="utf-8"), encoding="utf-8")
    allowed.chmod(0o600)
    port = _free_port()
    settings = (
        f"Port {port}", "ListenAddress 127.0.0.1", f"HostKey {folder / 'host'}", "PidFile none",
        f"AuthorizedKeysFile {allowed}", "StrictModes no", "UsePAM no", "PasswordAuthentication no",
        "KbdInteractiveAuthentication no", "PermitRootLogin prohibit-password", "AcceptEnv LANG LC_*",
    )  # fmt: skip
    (folder / "settings").write_text("\n".join(settings) + "\n", encoding="utf-8")
    if getpass.getuser() == "root":
        Path("/run/sshd").mkdir(exist_ok=True)  # where a server that root runs has nobody in it
    process = subprocess.Popen(
        [str(SERVER), "-D", "-e", "-f", str(folder / "settings")], stderr=subprocess.DEVNULL
    )
    try:
        _wait_for(port)
        yield Server(port, folder / "user")
    finally:
        process.terminate()
        process.wait(PATIENCE_S)


@contextmanager
def wizard_there(there: Server, file: Path, *inside: str, **environ: str) -> Iterator[Terminal]:
    """The wizard on a terminal of 80 by 24 that ssh has brought there, inside another program if one is named."""
    command = [*inside, sys.executable, "-m", "fuelwiz", str(file)]
    variables = {"TERM": "xterm-256color", "LANG": "C.UTF-8", **environ}
    with running(there.client(command, **variables), file.parent, 80, 24, **variables) as terminal:
        yield terminal


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def _wait_for(port: int) -> None:
    end = time.monotonic() + PATIENCE_S
    while True:
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)) == 0:
                return
        assert time.monotonic() < end, "the server does not listen"
        time.sleep(0.05)
