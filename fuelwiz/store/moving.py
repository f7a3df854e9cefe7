"""Moving and adding files of the folder of builds: nothing is ever overwritten, and refusals are in words."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.file_limits import SUFFIX
from fuelwiz.files import Access, move, put_in_place, reason
from fuelwiz.printable import clean
from fuelwiz.store.drafts import DRAFT, draft_of, drafts_of

HISTORY = ".history"

_MOST_NUMBERS = 1000


def put_new(target: Path, content: bytes, like: Path | None = None) -> None:
    """Puts a new file into its folder at one stroke, with the permissions of the file that it is like.

    Raises:
        FileExistsError: something stands at the target.
        OSError: it cannot be written.
    """
    put_in_place(target, content, access=None if like is None else Access.of(like), move=move)


def free_names(path: Path) -> Iterator[Path]:
    """The path itself, then the same with a number: build.toml, build-2.toml, build-3.toml."""
    ending = next((one for one in (SUFFIX + DRAFT, DRAFT, SUFFIX) if path.name.endswith(one)), "")
    stem = path.name.removesuffix(ending)
    yield path
    for number in range(2, _MOST_NUMBERS):
        yield path.with_name(f"{stem}-{number}{ending}")


def move_what_goes_along(source: Path, target: Path) -> None:
    """Moves a build's drafts, and what is kept of how it was before; what cannot be moved stays."""
    for old, new in _beside(source, target):
        if os.path.lexists(old):
            with suppress(OSError):
                new.parent.mkdir(exist_ok=True)
                move(old, new)


def _beside(source: Path, target: Path) -> Iterator[tuple[Path, Path]]:
    """What stands beside a build, each with its place beside the build's new one."""
    old_start, new_start = (draft_of(path).name.removesuffix(DRAFT) for path in (source, target))
    for draft in drafts_of(source):
        yield draft.place, target.with_name(new_start + draft.place.name.removeprefix(old_start))
    yield source.parent / HISTORY / source.name, target.parent / HISTORY / target.name


@contextmanager
def os_errors_as_output_errors(path: Path) -> Iterator[None]:
    """What the system refuses of an act on a file, as an OutputError in words."""
    name = clean(path.name) or "?"
    try:
        yield
    except PermissionError:
        raise OutputError(f"{name}: permission denied") from None
    except FileNotFoundError:
        raise OutputError(f"{name}: no longer exists") from None
    except FileExistsError:
        raise OutputError(f"{name}: that name is already taken") from None
    except (OSError, ValueError) as error:
        raise OutputError(f"{name}: {reason(error)}") from None
