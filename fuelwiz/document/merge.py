"""New data into an old text: every comment, the order, and the spelling of what did not change survive."""

from __future__ import annotations

import tomllib
from itertools import takewhile
from typing import Any

from fuelwiz.document import inline
from fuelwiz.document.matching import are_tables, matched
from fuelwiz.document.session_text import SessionText
from fuelwiz.document.text_blocks import TextLines
from fuelwiz.document.toml_text import reads_as, same, value_text
from fuelwiz.files import BYTE_ORDER_MARK
from fuelwiz.session import KeyPath, order_of


def merge(text: str, plain: dict[str, Any]) -> str:
    """The text of a session file with new data in it.

    Args:
        text: what stands in the file; it is TOML.
        plain: what is to stand there.

    Returns:
        The new text, the old one to the last character where nothing changed.
    """
    mark = BYTE_ORDER_MARK if text.startswith(BYTE_ORDER_MARK) else ""
    content = text.removeprefix(BYTE_ORDER_MARK)
    if same(tomllib.loads(content), plain):
        return text
    windows = "\n" not in content.replace("\r\n", "")
    new = _edited(content.replace("\r\n", "\n") if windows else content, plain)
    if not content.endswith("\n") and content:
        new = new.removesuffix("\n")
    return mark + (new.replace("\n", "\r\n") if windows and "\r\n" in content else new)


def _edited(content: str, plain: dict[str, Any]) -> str:
    session_text = SessionText(content)
    _edit(session_text, (), tomllib.loads(content), plain)
    new = session_text.text()
    if reads_as(new, plain):
        return new
    # A layout that cannot be edited in place is written afresh: comments inside may go, but never data.
    return _afresh(_opening_comment(content), plain)


def _afresh(opening: str, plain: dict[str, Any]) -> str:
    session_text = SessionText(opening)
    _edit(session_text, (), {}, plain)
    new = session_text.text()
    if reads_as(new, plain):
        return new
    import tomlkit  # only for data that no session file can hold

    return opening + tomlkit.dumps(plain)


def _opening_comment(content: str) -> str:
    """The comment lines that a file begins with."""
    return "".join(f"{line}\n" for line in takewhile(lambda line: line.startswith("#"), content.split("\n")))


def _edit(session_text: SessionText, table: KeyPath, old: dict[str, Any], new: dict[str, Any]) -> None:
    """Makes a table of the session_text hold the new keys and values."""
    for key in old.keys() - new.keys():
        session_text.remove((*table, key))
    for key in sorted(new, key=lambda key: order_of((*table, key))):
        key_path = (*table, key)
        if key not in old:
            session_text.add(key_path, new[key])
        elif not same(old[key], new[key]):
            _change(session_text, key_path, old[key], new[key])


def _change(session_text: SessionText, key_path: KeyPath, old: Any, new: Any) -> None:
    entry = session_text.entry(key_path)
    if entry is not None:
        _rewrite(entry, old, new)
    elif isinstance(old, dict) and isinstance(new, dict):
        _edit(session_text, key_path, old, new)
        if not session_text.holds(key_path):
            session_text.add(key_path, {})
    elif are_tables(old) and are_tables(new):
        _edit_list(session_text, key_path, old, new)
    else:
        session_text.remove(key_path)
        session_text.add(key_path, new)


def _edit_list(
    session_text: SessionText, key_path: KeyPath, old: list[dict[str, Any]], new: list[dict[str, Any]]
) -> None:
    """Makes a list of tables hold the new ones; those that stay keep their lines and comments."""
    pairs = dict(matched(old, new))
    for number in range(len(old)):
        if number not in pairs:
            session_text.remove((*key_path, number))
    session_text.renumber(key_path, pairs)
    stayed = {place: number for number, place in pairs.items()}
    for place, table in enumerate(new):
        if place in stayed:
            _edit(session_text, (*key_path, place), old[stayed[place]], table)
        else:
            session_text.add((*key_path, place), table)


def _rewrite(entry: TextLines, old: Any, new: Any) -> None:
    """Gives a line its new value; inside a list or an inline table only what changed is touched."""
    alike = type(old) is type(new) and isinstance(new, dict | list)
    entry.put(inline.edited(entry.value, old, new) if alike else value_text(new))
