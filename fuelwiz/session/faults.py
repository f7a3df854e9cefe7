"""What pydantic refuses, in our words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from pydantic import ValidationError

from fuelwiz import units
from fuelwiz.errors import Fault
from fuelwiz.printable import quoted
from fuelwiz.session.paths import KeyPath, Node, leaf_paths, node_at, path_of, tree
from fuelwiz.session.scalars import nearest
from fuelwiz.session.spec import FieldSpec


def faults_of(error: ValidationError) -> list[Fault]:
    """Every fault that pydantic found."""
    return [fault for one in error.errors(include_url=False) for fault in _faults(one["type"], one)]


def _faults(kind: str, one: Any) -> Iterator[Fault]:
    key_path: KeyPath = one["loc"]
    if kind == "rejected":
        for below, words in one["ctx"]["problems"]:
            yield Fault(path_of(key_path + below), words)
    elif kind == "extra_forbidden":
        yield Fault(path_of(key_path), unknown(key_path))
    elif kind == "missing":
        yield Fault(path_of(key_path), missing(key_path))
    else:
        yield Fault(path_of(key_path), _not_a_table(key_path, one["input"]))


def unknown(key_path: KeyPath) -> str:
    """What to say of a key that there is not: the nearest one that there is, first of its own section."""
    *above, last = key_path
    section = node_at(tuple(above)) or tree()
    own = nearest(str(last), tuple(section.keys))
    meant = own or _nearest_anywhere(str(last))
    if meant:
        return f"is not a key here; did you mean `{meant}`?"
    return f"is not a key here; known are {', '.join(section.keys)}"


def _nearest_anywhere(word: str) -> str | None:
    """The path of the key or section whose name comes nearest, wherever it stands."""
    paths: dict[str, str] = {key: key for key in tree().keys}
    for path in leaf_paths():
        paths.setdefault(path.rpartition(".")[2], path)
        paths.setdefault(path, path)
    meant = nearest(word, tuple(paths))
    return paths[meant] if meant else None


def missing(key_path: KeyPath) -> str:
    """What to say of a key that has to be there."""
    node = node_at(key_path)
    assert node is not None
    if node.spec is None:
        return f"is missing: wants at least one [[{path_of(key_path)}]]"
    return f"is missing: {_wanted(node.spec)}"


def _wanted(spec: FieldSpec) -> str:
    if spec.type == "format":
        return "a session file begins with format = 1"
    if spec.type == "points":
        return "wants one point or more, such as [" + ", ".join(_row(row) for row in spec.example) + "]"
    if spec.kind is not None:
        return f'wants {units.describe(spec.kind)} such as "{spec.example}"'
    return 'wants keys by their path, such as { "fuel.temperature" = "55 degC" }'


def _row(row: list[str]) -> str:
    return "[" + ", ".join(f'"{item}"' for item in row) + "]"


def _not_a_table(key_path: KeyPath, value: Any) -> str:
    """What to say where a value stands in the place of a table, or a table in the place of a list of them."""
    node: Node | None = node_at(key_path)
    header = path_of(tuple(part for part in key_path if isinstance(part, str)))
    if node is not None and node.tables is not None and not isinstance(key_path[-1], int):
        return f"wants tables, each headed [[{header}]] in double brackets, got {quoted(value)}"
    none = ", or false for none" if node is not None and node.or_false else ""
    return f"wants a table of keys{none}, got {quoted(value)}"
