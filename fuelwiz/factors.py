"""Factors of units stored between runs in the user's cache, so that pint is loaded once and not at every start."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable
from contextlib import suppress
from importlib.util import find_spec
from math import isfinite
from pathlib import Path

from fuelwiz.files import put_in_place

Factor = tuple[float, float, float]
"""An SI value is (number * first + second) / third."""

FILE = "factors.json"


def factors(
    folder: Path | None, expressions: Iterable[str], compute: Callable[[str], Factor]
) -> dict[str, Factor]:
    """The factor of every expression, as an earlier run stored it; computed and stored where none did.

    Args:
        folder: where they are stored; None to store nothing.
        expressions: units as pint knows them.
        compute: what gives the factor of one.
    """
    wanted = sorted(set(expressions))
    stamp = _stamp()
    stored = _stored(folder, stamp) if folder is not None and stamp else {}
    if stored.keys() >= set(wanted):
        return stored
    computed = {expression: compute(expression) for expression in wanted}
    if folder is not None and stamp:
        _store(folder, stamp, computed)
    return computed


def _stamp() -> str | None:
    """What tells one installation of pint from another, without loading it: the file that defines its units."""
    spec = find_spec("pint")
    if spec is None or spec.origin is None:
        return None
    try:
        definitions = Path(spec.origin).with_name("default_en.txt").stat()
    except OSError:
        return None
    return f"{spec.origin} {definitions.st_size} {definitions.st_mtime_ns}"


def _stored(folder: Path, stamp: str) -> dict[str, Factor]:
    """What an earlier run stored; nothing where the file is damaged or another pint wrote it."""
    try:
        plain = json.loads((folder / FILE).read_text(encoding="utf-8"))
        if plain["pint"] != stamp:
            return {}
        stored = {name: tuple(map(float, factor)) for name, factor in plain["factors"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return {}
    sound = all(len(factor) == 3 and all(map(isfinite, factor)) and factor[2] for factor in stored.values())
    return {name: (one, two, three) for name, (one, two, three) in stored.items()} if sound else {}


def _store(folder: Path, stamp: str, computed: dict[str, Factor]) -> None:
    """Writes the factors at one stroke; a folder that cannot be written stores nothing."""
    text = json.dumps({"pint": stamp, "factors": computed}, indent=1)
    with suppress(OSError):
        folder.mkdir(parents=True, exist_ok=True)
        put_in_place(folder / FILE, text.encode("utf-8"))
