"""Plain files: written at one stroke, and what the system refuses in words."""

from __future__ import annotations

import os
import secrets
import stat
from contextlib import suppress
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.printable import clean

BYTE_ORDER_MARK = "\ufeff"


def reason(error: Exception) -> str:
    """What the system says of an error, in a few words."""
    return (getattr(error, "strerror", None) or clean(str(error))).lower()


def write_atomically(path: Path, text: str) -> None:
    """Puts a text into a file at one stroke: a reader, or a power cut, meets the old file or the new one.

    A link is followed, and the permissions of a file that is there are kept.

    Raises:
        OutputError: the file cannot be written; what stood there still stands.
    """
    name = clean(str(path))
    try:
        target = path.resolve()
        mode = _mode(target)
        beside = target.with_name(f".{target.name[:80]}.{secrets.token_hex(4)}.tmp")
        _write_beside(beside, target, text.encode("utf-8"), mode)
    except PermissionError:
        raise OutputError(f"{name}: may not be written: the folder or the file forbids it") from None
    except FileNotFoundError:
        raise OutputError(f"{name}: there is no folder {clean(str(path.parent))}") from None
    except (OSError, ValueError, RuntimeError) as error:
        raise OutputError(f"{name}: cannot be written: {reason(error)}") from None


def _mode(target: Path) -> int | None:
    """The permissions of the file that is there; None where there is none."""
    try:
        found = target.stat()
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(found.st_mode):
        raise OSError("it is a folder")
    if not os.access(target, os.W_OK):
        raise PermissionError
    return stat.S_IMODE(found.st_mode)


def _write_beside(beside: Path, target: Path, content: bytes, mode: int | None) -> None:
    """Writes a file beside the target, sees it safely on the disk, and puts it in the target's place."""
    handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            beside.chmod(mode)
        os.replace(beside, target)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
    _settle(target.parent)


def _settle(folder: Path) -> None:
    """Sees the folder's new entry safely on the disk, on systems that can."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
