"""Plain files: read up to a limit, written at one stroke, and what the system refuses in words."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable
from contextlib import suppress
from itertools import islice
from pathlib import Path
from types import ModuleType

from fuelwiz.errors import OutputError
from fuelwiz.printable import clean
from fuelwiz.record import record

fcntl: ModuleType | None
try:
    import fcntl
except ImportError:  # a system that knows no such holding
    fcntl = None

UNFINISHED = ".tmp"
"""The ending of a file that is still being written, or was left by a write that was cut short."""
_LONGEST_STEM = 180
BYTE_ORDER_MARK = "\ufeff"


class NotPlain(OSError):  # noqa: N818  named for what it says
    """A path leads to a pipe, a device or the like."""


class TooLarge(OSError):  # noqa: N818  named for what it says
    """A file is larger than what is read of its kind."""


def reason(error: Exception) -> str:
    """What the system says of an error, in a few words."""
    return (getattr(error, "strerror", None) or clean(str(error))).lower()


def read_start(path: Path, most: int, *, follow: bool = True) -> bytes:
    """The first bytes of a plain file.

    Args:
        path: the file.
        most: how many bytes are read of it.
        follow: whether a link is followed; else it is no plain file.

    Raises:
        OSError: it cannot be read, is a folder, or is no plain file.
        ValueError: the path is none.
    """
    _refuse_not_plain((path.stat() if follow else path.lstat()).st_mode)
    # Without O_NONBLOCK a pipe that has taken the name since would be waited for.
    flags = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
    handle = os.open(path, flags if follow else flags | getattr(os, "O_NOFOLLOW", 0))
    with open(handle, "rb") as file:
        _refuse_not_plain(os.fstat(handle).st_mode)
        return file.read(most)


def _refuse_not_plain(kind: int) -> None:
    if stat.S_ISLNK(kind):
        raise NotPlain("it is a link")
    if not stat.S_ISREG(kind) and not stat.S_ISDIR(kind):
        raise NotPlain("it is not a plain file")


def read_whole(path: Path, most: int, *, follow: bool = True) -> bytes:
    """What stands in a plain file; raises as `read_start` does, and TooLarge for more than `most` bytes."""
    content = read_start(path, most + 1, follow=follow)
    if len(content) > most:
        raise TooLarge(f"it is larger than {most // 1024} KiB")
    return content


@record
class Seen:
    """A plain file as it lies in a folder: its path, its size, and when it was last changed, in seconds since 1970."""

    path: Path
    size: int
    changed: float


def plain_files(folder: Path, endings: tuple[str, ...], most: int) -> list[Seen]:
    """The plain files of a folder with one of these endings, last changed on top; no links, pipes or hidden ones.

    Args:
        folder: where to look; one that cannot be read holds nothing.
        endings: such as ".csv", in small letters.
        most: so many entries of the folder are looked at.
    """
    found = []
    try:
        with os.scandir(folder) as entries:
            for entry in islice(entries, most):
                name = entry.name
                if not name.lower().endswith(endings) or name.startswith(".") or clean(name) != name:
                    continue
                with suppress(OSError):
                    status = entry.stat(follow_symlinks=False)
                    if stat.S_ISREG(status.st_mode):
                        found.append(Seen(folder / name, status.st_size, status.st_mtime))
    except (OSError, ValueError):
        return []
    return sorted(found, key=lambda seen: (-seen.changed, seen.path.name))


@record
class Access:
    """Who may do what with a file: its permissions, and its owner and group, None for those of any new file."""

    mode: int
    owner: int | None = None
    group: int | None = None

    @classmethod
    def of(cls, path: Path) -> Access | None:
        """That of a file; None where there is none."""
        try:
            status = path.stat()
        except (OSError, ValueError):
            return None
        return cls(stat.S_IMODE(status.st_mode), status.st_uid, status.st_gid)

    def give(self, handle: int) -> None:
        """Make it that of an open file, as far as the system allows; it is never wider than it was."""
        mode = self.mode
        if hasattr(os, "fchown"):
            for owner, group in ((-1, self.group), (self.owner, -1)):
                if owner is not None and group is not None:
                    with suppress(PermissionError):
                        os.fchown(handle, owner, group)
            if self.group is not None and os.fstat(handle).st_gid != self.group:
                mode &= ~(stat.S_ISGID | stat.S_IRWXG) | (mode & stat.S_IRWXO) << 3
        if hasattr(os, "fchmod"):
            os.fchmod(handle, mode)


def put_in_place(
    target: Path,
    content: bytes,
    *,
    access: Access | None = None,
    move: Callable[[Path, Path], object] | None = None,
) -> None:
    """Writes a file beside the target, sees it safely on the disk, and moves it into the target's place.

    Args:
        target: the file; its folder is there.
        content: what is to stand in it.
        access: who may do what with it; None for what holds of any new file.
        move: what puts it there; None to replace what stands there.

    Raises:
        OSError: it cannot be written; what stood there still stands.
    """
    beside = target.with_name(
        f".{cut_to_bytes(target.name, _LONGEST_STEM)}.{os.urandom(4).hex()}{UNFINISHED}"
    )
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_NOFOLLOW", 0)
    handle = os.open(beside, flags, 0o666 if access is None else 0o600)
    try:
        with open(handle, "wb") as file:
            hold(handle)  # who finds it knows by this that it is still being written
            file.write(content)
            file.flush()
            if access is not None:
                access.give(handle)
            os.fsync(handle)
            (move or os.replace)(beside, target)
    except BaseException:
        with suppress(OSError):
            beside.unlink()
        raise
    _fsync_folder(target.parent)


def move(source: Path, target: Path) -> None:
    """Moves a file, a link as the link it is.

    Raises:
        FileExistsError: something stands at the target.
        OSError: it cannot be moved.
    """
    if os.path.lexists(target):
        raise FileExistsError(str(target))
    try:
        os.link(source, target, follow_symlinks=False)
    except (FileExistsError, FileNotFoundError):
        raise
    except (OSError, NotImplementedError):
        # A file system without hard links: an empty file claims the name, and the move replaces it.
        os.close(os.open(target, os.O_WRONLY | os.O_CREAT | os.O_EXCL))
        os.replace(source, target)
        return
    source.unlink()


def cut_to_bytes(name: str, most: int) -> str:
    """The start of a name that takes no more than so many bytes on a disk."""
    return name.encode("utf-8", "surrogateescape")[:most].decode("utf-8", "ignore")


def hold(handle: int) -> bool | None:
    """Hold an open file or folder for oneself until it is closed; false where another does.

    None where this system or this disk cannot tell. The system gives it up when the process dies.
    """
    if fcntl is None:
        return None
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:
        return None
    return True


def _fsync_folder(folder: Path) -> None:
    """Sees the folder's new entry safely on the disk, on systems that can."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def write_atomically(path: Path, text: str, *, follow: bool = True, access: Access | None = None) -> None:
    """Puts a text into a file at one stroke: a reader, or a power cut, meets the old file or the new one.

    Args:
        path: the file. Its permissions, its owner and its group are kept where it is there.
        text: what is to stand in it.
        follow: whether a link is followed; else the link itself is replaced.
        access: who may do what with it in place of what was so; None to keep that.

    Raises:
        OutputError: the file cannot be written; what stood there still stands.
    """
    name = clean(str(path))
    try:
        target = path.resolve() if follow else path
        kept = _access_of(target, follow)
        put_in_place(target, text.encode("utf-8"), access=access or kept)
    except PermissionError:
        raise OutputError(f"{name}: may not be written: permission denied", "permission denied") from None
    except FileNotFoundError:
        folder = f"there is no folder {clean(str(path.parent))}"
        raise OutputError(f"{name}: {folder}", folder) from None
    except (OSError, ValueError, RuntimeError) as error:
        raise OutputError(f"{name}: cannot be written: {reason(error)}", reason(error)) from None


def _access_of(target: Path, follow: bool) -> Access | None:
    """That of the file that is there; None where there is none, or a link that will be replaced."""
    try:
        status = target.stat() if follow else target.lstat()
    except FileNotFoundError:
        return None
    if stat.S_ISLNK(status.st_mode):
        return None
    if stat.S_ISDIR(status.st_mode):
        raise OSError("it is a folder")
    if not stat.S_ISREG(status.st_mode):
        raise NotPlain("it is not a plain file")
    if not os.access(target, os.W_OK):
        raise PermissionError
    return Access(stat.S_IMODE(status.st_mode), status.st_uid, status.st_gid)


def changed_by_a_save(path: Path) -> str | None:
    """What of a file's owner and group cannot be kept when it is written, in words; None where all can."""
    access = Access.of(path)
    if access is None or not hasattr(os, "geteuid") or os.geteuid() == 0:
        return None
    lost = []
    if access.owner != os.geteuid():
        lost.append("owner")
    if access.group not in {os.getegid(), *os.getgroups()}:
        lost.append("group")
    return " and ".join(lost) or None
