"""A list of parts in one field: what stands there stays while another is typed, and goes part by part."""

from __future__ import annotations

from fuelwiz.wizard.line_edit import LineEdit

PARTS = "fitted.has"


def with_part_key(editor: LineEdit, key: str, character: str | None) -> LineEdit | None:
    """What a key makes of a list that can be read: a letter begins another part, Backspace takes off the last one.

    None for any other key, and within the list, where it is edited as any text.
    """
    text = editor.text.rstrip()
    if not text or editor.cursor < len(editor.text):
        return None
    if key == "backspace":
        return LineEdit.at_end(text.rstrip(",").rpartition(",")[0].rstrip())
    if character and character.isalpha() and not text.endswith(","):
        return LineEdit.at_end(f"{text}, {character}")
    return None
