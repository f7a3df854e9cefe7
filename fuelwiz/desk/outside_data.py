"""Data from outside, a file or a draft, made into what can be edited: known keys, and values that can be read."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_specs import spec_at
from fuelwiz.desk.field_text import one_line
from fuelwiz.desk.plain import Plain, put, taken_out, value_path
from fuelwiz.desk.state import State
from fuelwiz.file_limits import LONGEST_TEXT
from fuelwiz.printable import clean
from fuelwiz.session import FieldSpec, Node, Rejected, changed_key_paths, read, tree

_TEXTS = {"quantity", "wire", "size", "choice", "text", "note", "rated_flow"}
_NOT_TOLD = ("record",)


def known_part(plain: Any) -> Plain:
    """What of some data is laid out as a session file is; nothing is said of the values."""
    known = _table(tree(), plain if isinstance(plain, dict) else {})
    return {"format": 1, **{key: value for key, value in known.items() if key not in _NOT_TOLD}}


def is_well_formed(plain: Plain) -> bool:
    """Whether data are laid out as a session file is."""
    return known_part(plain) == {key: value for key, value in plain.items() if key not in _NOT_TOLD}


def known_entry(path: str, value: Any) -> Any:
    """What of a value fits the key at a path; None where nothing does."""
    node = tree()
    for key in path.split("."):
        node = node.keys[key]
    return _fitting(node, value)


def _table(node: Node, value: dict[str, Any]) -> dict[str, Any]:
    values = {key: _fitting(below, value[key]) for key, below in node.keys.items() if key in value}
    return {key: item for key, item in values.items() if item is not None}


def _fitting(node: Node, value: Any) -> Any:
    if node.spec is not None:
        return value if _has_form(node.spec, value) else None
    if node.tables is not None:
        if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
            return None
        return [_table(node, item) for item in value[: node.tables.most]]
    if node.or_false and value is False:
        return False
    return _table(node, value) if isinstance(value, dict) else None


def _has_form(spec: FieldSpec, value: Any) -> bool:
    """Whether a value is of the sort that a key takes, whatever it says."""
    if spec.type in _TEXTS:
        return _is_text(value)
    if spec.type in {"count", "format"}:
        return isinstance(value, int) and not isinstance(value, bool) and abs(value) < 10**9
    if spec.type == "ratio":
        return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)
    if spec.type in {"sizes", "velocities"}:
        return isinstance(value, list) and bool(value) and all(map(_is_text, value))
    if spec.type == "words":
        return isinstance(value, list) and all(map(_is_text, value))
    if spec.type == "points":
        return isinstance(value, list) and bool(value) and all(_is_pair(item) for item in value)
    if spec.type == "column":
        return _is_text(value) or _is_pair(value)
    if spec.type == "fittings":
        return isinstance(value, dict) and all(
            key in spec.choices and _has_form(spec.parts[0], number) for key, number in value.items()
        )
    return isinstance(value, dict)


def _is_pair(item: Any) -> bool:
    return isinstance(item, list) and len(item) == 2 and all(map(_is_text, item))


def _is_text(value: Any) -> bool:
    """Whether a value is a text of whole characters, which a file can hold."""
    return isinstance(value, str) and (
        value.isascii() or not any("\ud800" <= sign <= "\udfff" for sign in value)
    )


def with_unreadable_in_fields(state: State) -> State:
    """A build whose values that cannot be read stand in their fields as they were written.

    Args:
        state: a build of which all is known and has the form of its key.
    """
    plain, raw = state.plain, dict(state.raw)
    for path, spec, value in list(_values(tree(), plain, "")):
        if spec.type == "points":
            plain = _without_bad_points(plain, path, spec, value, raw)
        elif spec.type == "fittings":
            plain = _without_unread(plain, path, value, raw)
        elif spec.type == "change":
            flat = {".".join(map(str, keys)): changed for keys, changed in changed_key_paths(value)}
            plain = _without_unread(put(plain, value_path(path), flat), path, flat, raw)
        elif not _can_be_read(spec, value):
            raw[path] = clean(one_line(value)[:LONGEST_TEXT])
            plain = taken_out(plain, value_path(path))
    return replace(state, plain=plain, raw=raw)


def _values(node: Node, table: dict[str, Any], above: str) -> Iterator[tuple[str, FieldSpec, Any]]:
    """Every value with its path and what is declared about it."""
    for key, below in node.keys.items():
        if key not in table:
            continue
        path, value = f"{above}{key}", table[key]
        if below.spec is not None:
            yield path, below.spec, value
        elif below.tables is not None:
            for number, item in enumerate(value):
                yield from _values(below, item, f"{path}.{number}.")
        elif isinstance(value, dict):
            yield from _values(below, value, f"{path}.")


def _without_unread(plain: Plain, path: str, values: dict[str, Any], raw: dict[str, str]) -> Plain:
    """The data without the entries of a table in a value that cannot be read."""
    for key, value in values.items():
        at = f"{path}.{key}"
        try:
            spec = spec_at(at)
        except NoSuchField:
            continue
        if not _can_be_read(spec, value):
            raw[at] = clean(one_line(value)[:LONGEST_TEXT])
            plain = taken_out(plain, value_path(at))
    return plain


def _without_bad_points(
    plain: Plain, path: str, spec: FieldSpec, points: list[list[str]], raw: dict[str, str]
) -> Plain:
    """The data with the points that can be read; the cells of the others stand after them."""
    good = [point for point in points if all(map(_can_be_read, spec.parts, point))]
    good = good[: int(spec.high or 0)]
    bad = [point for point in points if point not in good]
    for number, point in enumerate(bad[: int(spec.high or 0) - len(good)], len(good)):
        raw.update({f"{path}.{number}.{column}": clean(text) for column, text in enumerate(point)})
    if not bad and len(good) == len(points):
        return plain
    changed: Plain = put(plain, value_path(path), good) if good else taken_out(plain, value_path(path))
    return changed


def _can_be_read(spec: FieldSpec, value: Any) -> bool:
    try:
        read(spec, value)
    except Rejected:
        return False
    return True
