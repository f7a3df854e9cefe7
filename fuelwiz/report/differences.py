"""What two or more builds were told differently, key by key, in the texts that were typed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import isclose
from typing import Any

from fuelwiz.advice.result import Result
from fuelwiz.printable import clean
from fuelwiz.session import KeyPath, Node, fallback_text, path_of, tree, value_at

NO_INPUTS = {"format", "name", "notes", "show_units", "fitted", "record"}
TEXTS = {"text", "note"}


@dataclass(frozen=True, slots=True)
class Told:
    """A build to compare: the name of its file, what the file holds, and what it comes to."""

    file: str
    plain: dict[str, Any]
    result: Result


@dataclass(frozen=True, slots=True)
class Difference:
    """A key, and what each build says there; None where it says nothing."""

    key: str
    texts: tuple[str | None, ...]


def differences(builds: Sequence[Told]) -> tuple[Difference, ...]:
    """Every key of which the values differ, in the order of the file; a section that one lacks is one key."""
    sessions = [build.result.session for build in builds]
    return tuple(_in_table(tree(), (), sessions, builds))


def _in_table(
    node: Node, key_path: KeyPath, tables: Sequence[Any], builds: Sequence[Told]
) -> Iterator[Difference]:
    for key, below in node.keys.items():
        if not key_path and key in NO_INPUTS:
            continue
        values = [getattr(table, below.name) for table in tables]
        if below.spec is not None:
            yield from _in_value(below, (*key_path, key), values, builds)
        elif below.tables is not None:
            for at in range(max(len(value) for value in values)):
                items = [value[at] if at < len(value) else None for value in values]
                yield from _in_section(below, (*key_path, key, at), items, builds)
        else:
            yield from _in_section(below, (*key_path, key), values, builds)


def _in_section(
    node: Node, key_path: KeyPath, sections: Sequence[Any], builds: Sequence[Told]
) -> Iterator[Difference]:
    if all(section is not None for section in sections):
        yield from _in_table(node, key_path, sections, builds)
    elif any(section is not None for section in sections):
        yield Difference(path_of(key_path), tuple(_named(section) for section in sections))


def _named(section: Any) -> str | None:
    """A section in a word: what it is called, where it has a name."""
    if section is None:
        return None
    return getattr(section, "what", "") or getattr(section, "name", "") or "given"


def _in_value(
    node: Node, key_path: KeyPath, values: Sequence[Any], builds: Sequence[Told]
) -> Iterator[Difference]:
    if all(_same(value, values[0]) for value in values):
        return
    if node.spec is not None and node.spec.type in TEXTS:
        yield Difference(path_of(key_path), tuple(value or None for value in values))
        return
    texts = tuple(_typed(build, key_path) for build in builds)
    if any(
        text is not None for text in texts
    ):  # none says anything where a copy keeps a size that nobody chose
        yield Difference(path_of(key_path), texts)


def _same(one: Any, other: Any) -> bool:
    """Whether two values are one, whatever the units in which they were typed."""
    if isinstance(one, float) and isinstance(other, float):
        return isclose(one, other, rel_tol=1e-9, abs_tol=1e-15)
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(_same(*pair) for pair in zip(one, other, strict=True))
    return bool(one == other)


def _typed(build: Told, key_path: KeyPath) -> str | None:
    """A value as the file has it; the fallback where the file says nothing, and named as one."""
    value = value_at(build.plain, key_path)
    if value is not None:
        return clean(_in_words(value))
    taken = fallback_text(build.result.session, path_of(key_path))
    return None if taken is None else f"{taken} (assumed)"


def _in_words(value: Any, between: str = ", ") -> str:
    if isinstance(value, dict):
        return between.join(f"{key} {_in_words(item, ' ')}" for key, item in value.items()) or "none"
    if isinstance(value, list):
        return between.join(_in_words(item, " ") for item in value) or "none"
    return str(value)
