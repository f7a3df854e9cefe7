"""Comments of the program's own beside values, without touching what the builder wrote."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from fuelwiz.document.session_text import SessionText
from fuelwiz.files import BYTE_ORDER_MARK
from fuelwiz.session import KeyPath


def own_comments(text: str, own: re.Pattern[str]) -> dict[KeyPath, str]:
    """The comments of a session file that begin in a certain way, by the key that each speaks of.

    Args:
        text: what stands in the file.
        own: how those of the program begin, behind their sign.
    """
    if own.search(text) is None:
        return {}
    return SessionText(text.removeprefix(BYTE_ORDER_MARK).replace("\r\n", "\n")).own_comments(own)


def without_comments(text: str, key_paths: Iterable[KeyPath], own: re.Pattern[str]) -> str:
    """The text of a session file without the program's comments on some keys."""
    return _edited(text, own, dict.fromkeys(key_paths))


def with_comments(text: str, comments: Mapping[KeyPath, str], own: re.Pattern[str]) -> str:
    """The text of a session file with a comment beside each of some keys.

    Args:
        text: what stands in the file.
        comments: one line each, without its sign, by key; where a key is no line of its own nothing changes.
        own: how an earlier comment begins that gives way; any other stays, and the new one then stands above the key.

    Returns:
        The new text, the old one to the last character where every comment stands there already.
    """
    standing = own_comments(text, own)
    return _edited(
        text, own, {key: comment for key, comment in comments.items() if standing.get(key) != comment}
    )


def _edited(text: str, own: re.Pattern[str], comments: Mapping[KeyPath, str | None]) -> str:
    """The text with some comments put in or, where there is none to put, taken out."""
    if not comments:
        return text
    mark = BYTE_ORDER_MARK if text.startswith(BYTE_ORDER_MARK) else ""
    content = text.removeprefix(BYTE_ORDER_MARK)
    windows = "\r\n" in content
    session_text = SessionText(content.replace("\r\n", "\n"))
    for key_path, comment in comments.items():
        if comment is None:
            session_text.take_comment(key_path, own)
        else:
            session_text.put_comment(key_path, comment, own)
    new = session_text.text()
    return mark + (new.replace("\n", "\r\n") if windows else new)
