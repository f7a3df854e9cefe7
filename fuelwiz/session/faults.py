"""What pydantic refuses, in our words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from pydantic import ValidationError

from fuelwiz import units
from fuelwiz.errors import Fault
from fuelwiz.printable import quoted
from fuelwiz.session.fields import Section
from fuelwiz.session.paths import KeyPath, Node, leaf_paths, node_at, path_of, tree
from fuelwiz.session.scalars import nearest
from fuelwiz.session.sections import Session
from fuelwiz.session.spec import FieldSpec


def faults_of(error: ValidationError, root: type[Section] = Session) -> list[Fault]:
    """Every fault that pydantic found in a file."""
    return [fault for one in error.errors(include_url=False) for fault in _faults(one["type"], one, root)]


def _faults(kind: str, one: Any, root: type[Section]) -> Iterator[Fault]:
    key_path: KeyPath = one["loc"]
    if kind == "rejected":
        for below, words in one["ctx"]["problems"]:
            yield Fault(path_of(key_path + below), words)
    elif kind == "extra_forbidden":
        yield Fault(path_of(key_path), unknown(key_path, root))
    elif kind == "missing":
        yield Fault(path_of(key_path), missing(key_path, root))
    else:
        yield Fault(path_of(key_path), _not_a_table(key_path, one["input"], root))


def unknown(key_path: KeyPath, root: type[Section] = Session) -> str:
    """What to say of a key that there is not: the nearest one that there is, first of its own section."""
    *above, last = key_path
    section = node_at(tuple(above), root) or tree(root)
    own = nearest(str(last), tuple(section.keys))
    meant = own or _nearest_anywhere(str(last), root)
    if meant:
        return f"is not a key here; did you mean `{meant}`?"
    return f"is not a key here; known are {', '.join(section.keys)}"


def _nearest_anywhere(word: str, root: type[Section]) -> str | None:
    """The path of the key or section whose name comes nearest, wherever it stands."""
    paths: dict[str, str] = {key: key for key in tree(root).keys}
    for path in leaf_paths(root):
        paths.setdefault(path.rpartition(".")[2], path)
        paths.setdefault(path, path)
    meant = nearest(word, tuple(paths))
    return paths[meant] if meant else None


def missing(key_path: KeyPath, root: type[Section] = Session) -> str:
    """What to say of a key that has to be there."""
    node = node_at(key_path, root)
    assert node is not None
    if node.spec is None:
        return f"is missing: wants at least one [[{path_of(key_path)}]]"
    return f"is missing: {_wanted(node.spec, root)}"


def _wanted(spec: FieldSpec, root: type[Section]) -> str:
    if spec.type == "format":
        return f"a {root.called} begins with format = 1"
    if spec.type == "choice":
        return f"wants {' or '.join(quoted(word) for word in spec.choices)}"
    if spec.type == "points":
        return "wants one point or more, such as [" + ", ".join(_row(row) for row in spec.example) + "]"
    if spec.type == "size":
        return f'wants a size such as "{spec.example}"'
    if spec.type == "wire":
        return f'wants a wire such as "{spec.example}"'
    if spec.kind is not None:
        return f'wants {units.describe(spec.kind)} such as "{spec.example}"'
    return 'wants keys by their path, such as { "fuel.temperature" = "55 degC" }'


def _row(row: list[str]) -> str:
    return "[" + ", ".join(f'"{item}"' for item in row) + "]"


def _not_a_table(key_path: KeyPath, value: Any, root: type[Section]) -> str:
    """What to say where a value stands in the place of a table, or a table in the place of a list of them."""
    node: Node | None = node_at(key_path, root)
    header = path_of(tuple(part for part in key_path if isinstance(part, str)))
    if node is not None and node.tables is not None and not isinstance(key_path[-1], int):
        return f"wants tables, each headed [[{header}]] in double brackets, got {quoted(value)}"
    none = ", or false for none" if node is not None and node.or_false else ""
    return f"wants a table of keys{none}, got {quoted(value)}"
