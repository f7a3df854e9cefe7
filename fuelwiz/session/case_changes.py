"""Stress cases of the builder's own: a build with a few keys changed by their path."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from fuelwiz.errors import Fault, SessionError
from fuelwiz.session.faults import unknown
from fuelwiz.session.paths import KeyPath, Node, key_path_of, node_at, path_of

_NEVER_CHANGED = ("stress", "record")


def apply_change(plain: dict[str, Any], change: dict[str, Any]) -> dict[str, Any]:
    """A copy of plain session data with other values at some paths.

    Args:
        plain: the session file's data; left as it is.
        change: values by dotted path, lists by number: {"feed.filter.0.clogging": 2.0}.

    Raises:
        SessionError: a path leads nowhere; each fault's key is the path.
    """
    changed: dict[str, Any] = copied(plain)
    faults = []
    for key_path, value in changed_key_paths(change):
        words = _assign(changed, key_path, copied(value))
        if words:
            faults.append(Fault(path_of(key_path), words))
    if faults:
        raise SessionError("change", tuple(faults))
    return changed


def copied(plain: Any) -> Any:
    """Plain data, copied to the bottom."""
    if isinstance(plain, dict):
        return {key: copied(value) for key, value in plain.items()}
    if isinstance(plain, list):
        return [copied(value) for value in plain]
    return plain


def without_cases(plain: dict[str, Any]) -> dict[str, Any]:
    """The data that a case is applied to."""
    return {key: value for key, value in plain.items() if key not in _NEVER_CHANGED}


def case_faults(number: int, change: dict[str, Any], faults: list[Fault]) -> Iterator[Fault]:
    """The faults that a changed build has, named at the case."""
    key = f"stress.case.{number}.change"
    paths = [path_of(key_path) for key_path, _ in changed_key_paths(change)]
    for fault in faults:
        if any(fault.key == path or fault.key.startswith(f"{path}.") for path in paths):
            yield Fault(f"{key}.{fault.key}", fault.text)
        else:
            yield Fault(key, f"makes a build that cannot be: `{fault.key}` {fault.text}")


def changed_key_paths(change: dict[str, Any], above: KeyPath = ()) -> Iterator[tuple[KeyPath, Any]]:
    """Paths and values; fuel.temperature without quotes, a table in a table to TOML, is a path too."""
    for key, value in change.items():
        key_path = (*above, *key_path_of(str(key)))
        node = node_at(key_path)
        is_section = node is not None and node.spec is None
        if isinstance(value, dict) and is_section and value:
            yield from changed_key_paths(value, key_path)
        else:
            yield key_path, value


def _assign(changed: dict[str, Any], key_path: KeyPath, value: Any) -> str | None:
    """Puts a value at a path; words where the path leads nowhere."""
    if key_path[0] in _NEVER_CHANGED:
        return "cannot be changed by a case"
    at: Any = changed
    for depth, part in enumerate(key_path):
        node = node_at(key_path[: depth + 1])
        words = _no_such(at, part, node, key_path[: depth + 1])
        if words:
            return words
        if depth == len(key_path) - 1:
            at[part] = value
        elif isinstance(at, dict):
            at = (
                at.setdefault(part, {})
                if node is not None and node.spec is None and not node.tables
                else at.get(part)
            )
        else:
            at = at[part]
    return None


def _no_such(at: Any, part: str | int, node: Node | None, key_path: KeyPath) -> str | None:
    if isinstance(at, dict):
        inside_a_value = node is None and _value_above(key_path)
        return unknown(key_path) if node is None and not inside_a_value else None
    if isinstance(at, list):
        if isinstance(part, int) and part < len(at):
            return None
        return f"leads nowhere: `{path_of(key_path[:-1])}` has {len(at)}, counted from 0"
    if at is None:
        return f"leads nowhere: the file has no `{path_of(key_path[:-1])}` to change"
    return f"leads nowhere: `{path_of(key_path[:-1])}` is a single value"


def _value_above(key_path: KeyPath) -> bool:
    """Whether a path goes on inside a value, such as a table of fittings."""
    return any(
        (node := node_at(key_path[:length])) is not None and node.spec for length in range(1, len(key_path))
    )
