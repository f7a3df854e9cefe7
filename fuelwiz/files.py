"""Plain files: read up to a limit, written at one stroke, and what the system refuses in words."""

from __future__ import annotations

import os
import secrets
import stat
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.printable import clean

BYTE_ORDER_MARK = "\ufeff"


class NotPlain(OSError):  # noqa: N818  named for what it says
    """A path leads to a pipe, a device or the like."""


class TooLarge(OSError):  # noqa: N818  named for what it says
    """A file is larger than what is read of its kind."""


def reason(error: Exception) -> str:
    """What the system says of an error, in a few words."""
    return (getattr(error, "strerror", None) or clean(str(error))).lower()


def read_start(path: Path, most: int) -> bytes:
    """The first bytes of a plain file.

    Args:
        path: the file.
        most: how many bytes are read of it.

    Raises:
        OSError: it cannot be read, is a folder, or is no plain file.
        ValueError: the path is none.
    """
    kind = path.stat().st_mode
    if not stat.S_ISREG(kind) and not stat.S_ISDIR(kind):
        raise NotPlain("it is not a plain file")
    # Without O_NONBLOCK a pipe that has taken the name since would be waited for.
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    with open(handle, "rb") as file:
        return file.read(most)


def read_whole(path: Path, most: int) -> bytes:
    """What stands in a plain file; raises as `read_start` does, and TooLarge for more than `most` bytes."""
    content = read_start(path, most + 1)
    if len(content) > most:
        raise TooLarge(f"it is larger than {most // 1024} KiB")
    return content


def put_in_place(
    target: Path,
    content: bytes,
    *,
    mode: int | None = None,
    move: Callable[[Path, Path], object] | None = None,
) -> None:
    """Writes a file beside the target, sees it safely on the disk, and moves it into the target's place.

    Args:
        target: the file; its folder is there.
        content: what is to stand in it.
        mode: its permissions; None for those of any new file.
        move: what puts it there; None to replace what stands there.

    Raises:
        OSError: it cannot be written; what stood there still stands.
    """
    beside = target.with_name(f".{target.name[:80]}.{secrets.token_hex(4)}.tmp")
    handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    try:
        with open(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            beside.chmod(mode)
        (move or os.replace)(beside, target)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
    _fsync_folder(target.parent)


def _fsync_folder(folder: Path) -> None:
    """Sees the folder's new entry safely on the disk, on systems that can."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def write_atomically(path: Path, text: str) -> None:
    """Puts a text into a file at one stroke: a reader, or a power cut, meets the old file or the new one.

    A link is followed, and the permissions of a file that is there are kept.

    Raises:
        OutputError: the file cannot be written; what stood there still stands.
    """
    name = clean(str(path))
    try:
        target = path.resolve()
        put_in_place(target, text.encode("utf-8"), mode=_mode(target))
    except PermissionError:
        raise OutputError(f"{name}: may not be written: permission denied") from None
    except FileNotFoundError:
        raise OutputError(f"{name}: there is no folder {clean(str(path.parent))}") from None
    except (OSError, ValueError, RuntimeError) as error:
        raise OutputError(f"{name}: cannot be written: {reason(error)}") from None


def _mode(target: Path) -> int | None:
    """The permissions of the file that is there; None where there is none."""
    try:
        status = target.stat()
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(status.st_mode):
        raise OSError("it is a folder")
    if not os.access(target, os.W_OK):
        raise PermissionError
    return stat.S_IMODE(status.st_mode)
