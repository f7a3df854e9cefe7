"""The keys of a file as a tree, read off its sections: what stands where, and in what order.

A session file is meant where no other root is given.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache
from types import NoneType
from typing import Any, get_args

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from fuelwiz.printable import clean
from fuelwiz.session.fields import Leaf, OrFalse, Section, Tables
from fuelwiz.session.sections import Session
from fuelwiz.session.spec import FieldSpec

KeyPath = tuple[str | int, ...]
"""A path to a value: keys, and numbers in lists."""

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_NUMBER = re.compile(r"[0-9]{1,4}")
_LONGEST_KEY = 60


@dataclass(frozen=True, slots=True)
class Node:
    """A key: a value (`spec`), a table (`keys`; `or_false`: or false for none), or a list of tables (`tables`)."""

    name: str
    section: type[Section] | None = None
    spec: FieldSpec | None = None
    tables: Tables | None = None
    or_false: bool = False
    keys: dict[str, Node] = field(default_factory=dict)


@cache
def tree(root: type[Section] = Session) -> Node:
    """The whole file."""
    return Node("", root, keys=_keys(root))


def _keys(section: type[Section]) -> dict[str, Node]:
    return {_key(name, info): _node(name, info) for name, info in section.model_fields.items()}


def _key(name: str, info: FieldInfo) -> str:
    return info.alias or name


def _node(name: str, info: FieldInfo) -> Node:
    for mark in info.metadata:
        if isinstance(mark, Leaf):
            return Node(name, spec=mark.spec)
    section = _section_in(info.annotation)
    tables = next((mark for mark in info.metadata if isinstance(mark, Tables)), None)
    or_false = any(isinstance(mark, OrFalse) for mark in info.metadata)
    return Node(name, section, tables=tables, or_false=or_false, keys=_keys(section))


def _section_in(annotation: Any) -> type[Section]:
    """The section in `Pump`, `Pump | None` or `tuple[Run, ...]`."""
    if isinstance(annotation, type) and issubclass(annotation, Section):
        return annotation
    inner = [part for part in get_args(annotation) if part not in {NoneType, Ellipsis}]
    return _section_in(inner[0])


def key_path_of(path: str) -> KeyPath:
    """A dotted path as keys and numbers."""
    return tuple(int(part) if _NUMBER.fullmatch(part) else part for part in path.split("."))


def path_of(key_path: KeyPath) -> str:
    """A key path as a dotted path that is safe to print; a key that is no bare one comes in quotes."""
    return ".".join(_shown_key(part) for part in key_path)


def _shown_key(part: str | int) -> str:
    if isinstance(part, int) or (_BARE.fullmatch(part) and len(part) <= _LONGEST_KEY):
        return str(part)
    cut = part if len(part) <= _LONGEST_KEY else f"{part[: _LONGEST_KEY - 1]}…"
    return f'"{clean(cut)}"'


def node_at(key_path: KeyPath, root: type[Section] = Session) -> Node | None:
    """The key at a path, list numbers passed over; None where there is no such key."""
    node: Node | None = tree(root)
    for part in key_path:
        if node is None:
            return None
        if isinstance(part, str):
            node = node.keys.get(part)
    return node


def _leaves(node: Node, above: str) -> Iterator[tuple[str, FieldSpec]]:
    for key, below in node.keys.items():
        if below.spec is not None:
            yield above + key, below.spec
        else:
            yield from _leaves(below, f"{above}{key}.")


@cache
def _specs(root: type[Section]) -> dict[str, FieldSpec]:
    return dict(_leaves(tree(root), ""))


def leaf_paths(root: type[Section] = Session) -> tuple[str, ...]:
    """The path of every key that holds a value, in the order of the file, without list numbers."""
    return tuple(_specs(root))


def field_at(path: str, root: type[Section] = Session) -> FieldSpec:
    """What is declared about a key; list numbers in the path are passed over.

    Raises:
        KeyError: there is no such key.
    """
    return _specs(root)[".".join(part for part in key_path_of(path) if isinstance(part, str))]


@cache
def list_key_paths(root: type[Section] = Session) -> dict[KeyPath, Tables]:
    """Where lists of tables stand, and how many they may hold."""
    return dict(_lists(tree(root), ()))


def _lists(node: Node, above: KeyPath) -> Iterator[tuple[KeyPath, Tables]]:
    for key, below in node.keys.items():
        if below.tables is not None:
            yield (*above, key), below.tables
        yield from _lists(below, (*above, key))


def given(session: Session, path: str) -> bool:
    """Whether the file gave the key at a path, such as "goal.reserve" or "feed.run.0.length"."""
    at: Any = session
    node = tree()
    for part in key_path_of(path):
        if isinstance(part, int):
            if not isinstance(at, tuple) or part >= len(at):
                return False
            at = at[part]
            continue
        below = node.keys.get(part)
        if below is None or not isinstance(at, BaseModel) or below.name not in at.model_fields_set:
            return False
        at, node = getattr(at, below.name), below
    return True


def value_at(plain: Any, key_path: KeyPath) -> Any:
    """What plain data hold at a path; None where there is nothing."""
    value = plain
    for part in key_path:
        if isinstance(part, str) and isinstance(value, dict):
            value = value.get(part)
        elif isinstance(part, int) and isinstance(value, list) and part < len(value):
            value = value[part]
        else:
            return None
    return value


def order_of(key_path: KeyPath, root: type[Section] = Session) -> tuple[int, ...]:
    """Where a key stands in the order of the file; unknown keys come last."""
    node: Node | None = tree(root)
    places = []
    for part in key_path:
        if isinstance(part, int):
            places.append(part)
            continue
        keys = list(node.keys) if node is not None else []
        places.append(keys.index(part) if part in keys else len(keys))
        node = node.keys.get(part) if node is not None else None
    return tuple(places)
