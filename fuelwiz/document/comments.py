"""A comment of the program's own beside a value, without touching what the builder wrote."""

from __future__ import annotations

from fuelwiz.document.session_text import SessionText
from fuelwiz.files import BYTE_ORDER_MARK
from fuelwiz.session import KeyPath


def with_comment(text: str, key_path: KeyPath, comment: str, *, takes_place_of: str) -> str:
    """The text of a session file with a comment beside a key.

    Args:
        text: what stands in the file.
        key_path: of the key; where it is no line of its own nothing changes.
        comment: one line, without its sign.
        takes_place_of: how an earlier comment begins that this one replaces; any other comment stays, and this one
            then stands above the key.

    Returns:
        The new text.
    """
    mark = BYTE_ORDER_MARK if text.startswith(BYTE_ORDER_MARK) else ""
    content = text.removeprefix(BYTE_ORDER_MARK)
    windows = "\r\n" in content
    session_text = SessionText(content.replace("\r\n", "\n"))
    session_text.put_comment(key_path, comment, takes_place_of)
    new = session_text.text()
    return mark + (new.replace("\n", "\r\n") if windows else new)
