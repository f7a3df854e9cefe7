"""The text of a session file, edited by the ways of its keys so that all else stays as it is."""

from __future__ import annotations

import re
from typing import Any

from fuelwiz.document.text_blocks import TextBlock, TextLines, blocks_of, new_block
from fuelwiz.session import KeyPath, node_at, order_of


class SessionText:
    """A text in blocks, with what it takes to change a key, take one out or put one in."""

    def __init__(self, text: str) -> None:
        self._blocks = blocks_of(text)
        self._airy = "\n\n" in text or len(self._blocks) == 1

    def text(self) -> str:
        """The whole text."""
        pieces = [piece for block in self._blocks for piece in block.pieces() if piece]
        lines = [piece if piece.endswith("\n") else f"{piece}\n" for piece in pieces[:-1]]
        return "".join([*lines, *pieces[-1:]])

    def entry(self, key_path: KeyPath) -> TextLines | None:
        """The line that gives a key its value."""
        return next(
            (entry for block in self._blocks for entry in block.entries if entry.key_path == key_path), None
        )

    def own_comments(self, own: re.Pattern[str]) -> dict[KeyPath, str]:
        """The comments that begin so, by the key beside or right above which each stands, or by its list of tables."""
        found: dict[KeyPath, str] = {}
        for block in self._blocks:
            if block.header and block.key_path[-1:] == (0,):
                found |= _named(block.key_path[:-1], _last_line(block.lead), own)
            for at, entry in enumerate(block.entries):
                if entry.key_path:
                    found |= _named(entry.key_path, block.above(at), own)
                    found |= _named(entry.key_path, entry.text[entry.end :], own)
        return found

    def put_comment(self, key_path: KeyPath, comment: str, own: re.Pattern[str]) -> None:
        """Puts a comment beside a key, or above it where another stands there; above the first table of a list.

        One that begins as `own` gives way to it.
        """
        line = f"# {comment}\n"
        for block in self._blocks:
            if block.key_path == (*key_path, 0) and block.header:
                block.lead = _without_last_line(block.lead, own) + line
            for at, entry in enumerate(block.entries):
                if entry.key_path != key_path:
                    continue
                beside = entry.text[entry.end :].strip()
                if not beside or _is_own(beside, own):
                    entry.text = f"{entry.text[: entry.end]}  {line}"
                elif at and not block.entries[at - 1].key_path:
                    above = block.entries[at - 1]
                    above.text = _without_last_line(above.text, own) + entry.indent + line
                else:
                    block.entries.insert(at, TextLines(entry.indent + line))
                return

    def take_comment(self, key_path: KeyPath, own: re.Pattern[str]) -> None:
        """Takes out the comment of a key, or of a list of tables, that begins so."""
        for block in self._blocks:
            if block.header and block.key_path == (*key_path, 0):
                block.lead = _without_last_line(block.lead, own)
            for at, entry in enumerate(block.entries):
                if entry.key_path != key_path:
                    continue
                if _is_own(entry.text[entry.end :], own):
                    entry.text = f"{entry.text[: entry.end]}\n"
                if at and not block.entries[at - 1].key_path:
                    above = block.entries[at - 1]
                    above.text = _without_last_line(above.text, own)

    def holds(self, key_path: KeyPath) -> bool:
        """Whether any line stands for a path, or for one that leads through it."""
        keys = (entry.key_path for block in self._blocks for entry in block.entries)
        return bool(self._within(key_path)) or any(_is_within(key, key_path) for key in keys)

    def remove(self, key_path: KeyPath) -> None:
        """Takes out a key or a section; comments beside a key, and those that stand apart, stay."""
        remaining = self._blocks[:1]
        for block in self._blocks[1:]:
            if not _is_within(block.key_path, key_path):
                remaining.append(block)
                continue
            if block.lead and not remaining[-1].ends_blank():
                # No blank line says which of the two blocks these comments speak of.
                remaining[-1].entries.append(TextLines(block.lead))
            remaining[-1].entries += block.apart()
        self._blocks = remaining
        for block in remaining:
            entries: list[TextLines] = []
            for entry in block.entries:
                entries += entry.comment() if _is_within(entry.key_path, key_path) else [entry]
            block.entries = entries

    def renumber(self, key_path: KeyPath, places: dict[int, int]) -> None:
        """Gives the tables of a list their new numbers."""

        def moved(old: KeyPath) -> KeyPath:
            number = old[len(key_path)] if len(old) > len(key_path) and _is_within(old, key_path) else None
            return (*key_path, places[number], *old[len(key_path) + 1 :]) if isinstance(number, int) else old

        for block in self._blocks:
            block.key_path = moved(block.key_path)
            for entry in block.entries:
                entry.key_path = moved(entry.key_path)

    def add(self, key_path: KeyPath, value: Any) -> None:
        """Puts in a key or a section that is not there, where the order of the file wants it."""
        node = node_at(key_path)
        is_section = node is not None and node.spec is None
        if isinstance(value, dict) and (is_section or isinstance(key_path[-1], int)):
            self._add_section(key_path, value)
        elif isinstance(value, list) and is_section and _is_table(value):
            for number, item in enumerate(value):
                self._add_section((*key_path, number), item)
        else:
            self._add_entry(key_path, value)

    def _add_section(self, key_path: KeyPath, value: dict[str, Any]) -> None:
        """Puts in a table; one that holds nothing but tables needs no header of its own."""
        if isinstance(key_path[-1], int) or not value or not all(map(_is_table, value.values())):
            self._add_block(key_path)
        for key in sorted(value, key=lambda key: order_of((*key_path, key))):
            self.add((*key_path, key), value[key])

    def _add_block(self, key_path: KeyPath) -> TextBlock:
        block = new_block(key_path)
        place = self._place(key_path)
        if self._airy and any(self._blocks[place - 1].pieces()) and not self._blocks[place - 1].ends_blank():
            self._blocks[place - 1].entries.append(TextLines("\n"))
        if self._airy and place < len(self._blocks):
            block.entries.append(TextLines("\n"))
        self._blocks.insert(place, block)
        return block

    def _place(self, key_path: KeyPath) -> int:
        """Where a new block belongs: behind its list, before its own tables, or by the order of the file."""
        number, family = key_path[-1], key_path
        if isinstance(number, int):
            family = key_path[:-1]
            elder = self._within((*family, number - 1))
            if elder:
                return elder[-1] + 1
        below = self._within(family)
        if below:
            return below[0]
        orders = [(order_of(block.key_path), at) for at, block in enumerate(self._blocks)]
        return max((one for one in orders if one[0] < order_of(key_path)), default=((), 0))[1] + 1

    def _within(self, key_path: KeyPath) -> list[int]:
        """Where the blocks of a section stand, those of its own tables too."""
        return [
            at
            for at, block in enumerate(self._blocks)
            if block.header and _is_within(block.key_path, key_path)
        ]

    def _add_entry(self, key_path: KeyPath, value: Any) -> None:
        block = self._host(key_path[:-1])
        keys = [at for at, entry in enumerate(block.entries) if entry.key_path]
        before = [at for at in keys if order_of(block.entries[at].key_path) < order_of(key_path)]
        if before:
            place = before[-1] + 1
        elif block.header:
            place = 0
        else:
            place = keys[0] if keys else len(block.entries)
        block.entries.insert(place, block.new_entry(key_path, value))

    def _host(self, table: KeyPath) -> TextBlock:
        """The block for a new key of a table: its own, one that names it in dotted keys, or a new one."""
        for block in self._blocks:
            if block.key_path == table:
                return block
        for block in self._blocks:
            if len(block.key_path) < len(table) and any(
                _is_within(entry.key_path, table) for entry in block.entries
            ):
                return block
        return self._add_block(table)


def _is_within(key_path: KeyPath, above: KeyPath) -> bool:
    """Whether a path is `above` or leads through it; no path leads nowhere."""
    return bool(key_path) and key_path[: len(above)] == above


def _is_table(value: Any) -> bool:
    """Whether a value is a table, or a list of nothing but tables."""
    entries = value if isinstance(value, list) else [value]
    return bool(entries) and all(isinstance(one, dict) for one in entries)


def _named(key_path: KeyPath, line: str, own: re.Pattern[str]) -> dict[KeyPath, str]:
    """What a comment says of a key; nothing where it is none of those."""
    return {key_path: line.strip().removeprefix("#").strip()} if _is_own(line, own) else {}


def _is_own(line: str, own: re.Pattern[str]) -> bool:
    line = line.strip()
    return line.startswith("#") and own.match(line.removeprefix("#").strip()) is not None


def _last_line(lines: str) -> str:
    return lines.removesuffix("\n").rpartition("\n")[2]


def _without_last_line(lines: str, own: re.Pattern[str]) -> str:
    """Lines without the last, where that is such a comment."""
    last = _last_line(lines)
    return lines.removesuffix("\n").removesuffix(last) if _is_own(last, own) else lines
