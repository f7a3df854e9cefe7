"""The text of a session file taken apart: a block for each header, in it an entry for each key."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from fuelwiz.document.scan import statements
from fuelwiz.document.toml_text import key_text, value_text
from fuelwiz.session import KeyPath


@dataclass(slots=True)
class TextLines:
    """Whole lines: a key (`key_path`) with its value from `start` to `end`, or comments and blank lines."""

    text: str
    key_path: KeyPath = ()
    start: int = 0
    end: int = 0

    @property
    def value(self) -> str:
        """The value as it is written."""
        return self.text[self.start : self.end]

    @property
    def indent(self) -> str:
        """The blanks before the key."""
        return self.text[: len(self.text) - len(self.text.lstrip(" \t"))]

    def put(self, written: str) -> None:
        """Writes another value in the place of this one; a comment set off in a column keeps its column."""
        after = self.text[self.end :]
        comment = after.lstrip(" ")
        blanks = len(after) - len(comment)
        if blanks > 1 and comment.startswith("#") and "\n" not in self.value + written:
            after = " " * max(blanks + len(self.value) - len(written), 1) + comment
        self.text = self.text[: self.start] + written + after
        self.end = self.start + len(written)

    def comment(self) -> list[TextLines]:
        """The comment beside the value, as a line of its own."""
        beside = self.text[self.end :].strip()
        return [TextLines(f"{self.indent}{beside}\n")] if beside.startswith("#") else []


@dataclass(slots=True)
class TextBlock:
    """A header, the comments right above it, and the lines below it; the first block has no header."""

    key_path: KeyPath
    lead: str = ""
    header: str = ""
    entries: list[TextLines] = field(default_factory=list)

    def pieces(self) -> list[str]:
        """Its text, piece by piece."""
        return [self.lead, self.header, *(entry.text for entry in self.entries)]

    def ends_blank(self) -> bool:
        """Whether its last line is blank, or there is none."""
        last = self.pieces()[-1]
        return not last.strip() or last.endswith("\n\n")

    def above(self, at: int) -> str:
        """The line right above an entry, where it is no key's."""
        between = "" if at == 0 or self.entries[at - 1].key_path else self.entries[at - 1].text
        return between.removesuffix("\n").rpartition("\n")[2]

    def apart(self) -> list[TextLines]:
        """The comments at its end that a blank line sets apart from it."""
        tail: list[str] = []
        for entry in reversed(self.entries):
            if entry.key_path:
                break
            tail = _lines(entry.text) + tail
        blank = next((at for at, line in enumerate(tail) if not line.strip()), len(tail))
        rest = "".join(tail[blank:])
        return [TextLines(rest)] if "#" in rest else []

    def new_entry(self, key_path: KeyPath, value: Any) -> TextLines:
        """A line for a key of this block, indented as its neighbors are."""
        indent = next((entry.indent for entry in self.entries if entry.key_path), "")
        key = ".".join(key_text(str(part)) for part in key_path[len(self.key_path) :])
        start, written = f"{indent}{key} = ", value_text(value)
        return TextLines(f"{start}{written}\n", key_path, len(start), len(start) + len(written))


def new_block(key_path: KeyPath) -> TextBlock:
    """A block with nothing but its header."""
    name = ".".join(key_text(part) for part in key_path if isinstance(part, str))
    return TextBlock(key_path, header=f"[[{name}]]\n" if isinstance(key_path[-1], int) else f"[{name}]\n")


def blocks_of(text: str) -> list[TextBlock]:
    """A text taken apart; all pieces put together are the same to the last character."""
    blocks = [TextBlock(())]
    at = 0
    for one in statements(text):
        between, line = text[at : one.start], text[one.start : one.end]
        lead = _lead(between) if one.header else ""
        between = between.removesuffix(lead)
        blocks[-1].entries += [TextLines(between)] if between else []
        if one.header:
            blocks.append(TextBlock(one.key_path, lead, line))
        else:
            blocks[-1].entries.append(
                TextLines(line, one.key_path, one.value_start - one.start, one.value_end - one.start)
            )
        at = one.end
    blocks[-1].entries += [TextLines(text[at:])] if text[at:] else []
    return blocks


def _lines(text: str) -> list[str]:
    return re.findall(r"[^\n]*\n|[^\n]+", text)


def _lead(between: str) -> str:
    """The comment lines at the end of a stretch: they speak of the header below."""
    lead: list[str] = []
    for line in reversed(_lines(between)):
        if not line.lstrip().startswith("#"):
            break
        lead.insert(0, line)
    return "".join(lead)
