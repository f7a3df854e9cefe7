"""What two or more builds were told differently, key by key, in the texts that were typed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from math import isclose
from typing import Any, NamedTuple

from fuelwiz.advice.result import Result
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.session import KeyPath, Node, fallback_text, path_of, tree, value_at
from fuelwiz.terms import FITTINGS

NO_INPUTS = {"format", "name", "notes", "show_units", "fitted", "record"}
TEXTS = {"text", "note"}


@record
class JudgedBuild:
    """A build to compare: the name of its file, what the file holds, and what it comes to."""

    file: str
    plain: dict[str, Any]
    result: Result


class Wording(NamedTuple):
    """What people call a key: before its value, inside a sentence, and what an answer to it is in words.

    Whoever compares hands it in, as the words of the questions are not known here; without it keys stand as they are.
    """

    label: Callable[[str], str] = str
    noun: Callable[[str], str] = str
    answer: Callable[[str, str], str] = lambda _key, answer: answer


KEYS_AS_THEY_ARE = Wording()


@record
class Difference:
    """A key, and what each build says there; None where it says nothing."""

    key: str
    texts: tuple[str | None, ...]


def differences(builds: Sequence[JudgedBuild], wording: Wording = KEYS_AS_THEY_ARE) -> tuple[Difference, ...]:
    """Every key of which the values differ, in the order of the file; a section that one lacks is one key."""
    sessions = [build.result.session for build in builds]
    return tuple(_in_table(tree(), (), sessions, _Side(builds, wording)))


def _in_table(node: Node, key_path: KeyPath, tables: Sequence[Any], side: _Side) -> Iterator[Difference]:
    for key, below in node.keys.items():
        if not key_path and key in NO_INPUTS:
            continue
        values = [getattr(table, below.name) for table in tables]
        if below.spec is not None:
            yield from _in_value(below, (*key_path, key), values, side)
        elif below.tables is not None:
            for at in range(max(len(value) for value in values)):
                items = [value[at] if at < len(value) else None for value in values]
                yield from _in_section(below, (*key_path, key, at), items, side)
        else:
            yield from _in_section(below, (*key_path, key), values, side)


def _in_section(node: Node, key_path: KeyPath, sections: Sequence[Any], side: _Side) -> Iterator[Difference]:
    if all(section is not None for section in sections):
        yield from _in_table(node, key_path, sections, side)
    elif any(section is not None for section in sections):
        yield Difference(path_of(key_path), tuple(_named(section) for section in sections))


def _named(section: Any) -> str | None:
    """A section in a word: what it is called, where it has a name."""
    if section is None:
        return None
    return getattr(section, "what", "") or getattr(section, "name", "") or "given"


def _in_value(node: Node, key_path: KeyPath, values: Sequence[Any], side: _Side) -> Iterator[Difference]:
    if all(_same(value, values[0]) for value in values):
        return
    if node.spec is not None and node.spec.type in TEXTS:
        yield Difference(path_of(key_path), tuple(value or None for value in values))
        return
    texts = tuple(side.typed(build, key_path) for build in side.builds)
    if any(text is not None for text in texts):  # none where a copy keeps a size that nobody chose
        yield Difference(path_of(key_path), texts)


def _same(one: Any, other: Any) -> bool:
    """Whether two values are one, whatever the units in which they were typed."""
    if isinstance(one, float) and isinstance(other, float):
        return isclose(one, other, rel_tol=1e-9, abs_tol=1e-15)
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(_same(*pair) for pair in zip(one, other, strict=True))
    return bool(one == other)


@record
class _Side:
    """The builds, and in which words they are told."""

    builds: Sequence[JudgedBuild]
    wording: Wording

    def typed(self, build: JudgedBuild, key_path: KeyPath) -> str | None:
        """A value as the file has it; the fallback where the file says nothing, and named as one."""
        key = path_of(key_path)
        value = value_at(build.plain, key_path)
        if value is not None:
            return clean(self._in_words(key, value))
        taken = fallback_text(build.result.session, key)
        return None if taken is None else f"{self.wording.answer(key, taken)} (assumed)"

    def _in_words(self, key: str, value: Any) -> str:
        if key.endswith(".fittings") and isinstance(value, dict):
            return ", ".join(f"{count} {FITTINGS.get(kind, kind)}" for kind, count in value.items()) or "none"
        if isinstance(value, dict):
            return (
                ", ".join(f"{self.wording.noun(at)} {_joined(item)}" for at, item in value.items()) or "none"
            )
        if isinstance(value, list):
            return ", ".join(map(_joined, value)) or "none"
        return self.wording.answer(key, str(value))


def _joined(value: Any) -> str:
    """The parts of a point, or a plain value."""
    return " ".join(map(_joined, value)) if isinstance(value, list) else str(value)
