"""The text of a session file, edited by the ways of its keys so that all else stays as it is."""

from __future__ import annotations

from typing import Any

from fuelwiz.document.text_blocks import TextBlock, TextLines, blocks_of, new_block
from fuelwiz.session import Way, node_at, order_of


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

    def entry(self, way: Way) -> TextLines | None:
        """The line that gives a key its value."""
        return next((entry for block in self._blocks for entry in block.entries if entry.way == way), None)

    def holds(self, way: Way) -> bool:
        """Whether any line stands for a way, or for one that leads through it."""
        keys = (entry.way for block in self._blocks for entry in block.entries)
        return bool(self._within(way)) or any(_is_within(key, way) for key in keys)

    def remove(self, way: Way) -> None:
        """Takes out a key or a section; comments beside a key, and those that stand apart, stay."""
        kept = self._blocks[:1]
        for block in self._blocks[1:]:
            if not _is_within(block.way, way):
                kept.append(block)
                continue
            if block.lead and not kept[-1].ends_blank():
                # No blank line says which of the two blocks these comments speak of.
                kept[-1].entries.append(TextLines(block.lead))
            kept[-1].entries += block.apart()
        self._blocks = kept
        for block in kept:
            entries: list[TextLines] = []
            for entry in block.entries:
                entries += entry.comment() if _is_within(entry.way, way) else [entry]
            block.entries = entries

    def renumber(self, way: Way, places: dict[int, int]) -> None:
        """Gives the tables of a list their new numbers."""

        def moved(old: Way) -> Way:
            number = old[len(way)] if len(old) > len(way) and _is_within(old, way) else None
            return (*way, places[number], *old[len(way) + 1 :]) if isinstance(number, int) else old

        for block in self._blocks:
            block.way = moved(block.way)
            for entry in block.entries:
                entry.way = moved(entry.way)

    def add(self, way: Way, value: Any) -> None:
        """Puts in a key or a section that is not there, where the order of the file wants it."""
        node = node_at(way)
        is_section = node is not None and node.spec is None
        if isinstance(value, dict) and (is_section or isinstance(way[-1], int)):
            self._add_section(way, value)
        elif isinstance(value, list) and is_section and _is_table(value):
            for number, item in enumerate(value):
                self._add_section((*way, number), item)
        else:
            self._add_entry(way, value)

    def _add_section(self, way: Way, value: dict[str, Any]) -> None:
        """Puts in a table; one that holds nothing but tables needs no header of its own."""
        if isinstance(way[-1], int) or not value or not all(map(_is_table, value.values())):
            self._add_block(way)
        for key in sorted(value, key=lambda key: order_of((*way, key))):
            self.add((*way, key), value[key])

    def _add_block(self, way: Way) -> TextBlock:
        block = new_block(way)
        place = self._place(way)
        if self._airy and any(self._blocks[place - 1].pieces()) and not self._blocks[place - 1].ends_blank():
            self._blocks[place - 1].entries.append(TextLines("\n"))
        if self._airy and place < len(self._blocks):
            block.entries.append(TextLines("\n"))
        self._blocks.insert(place, block)
        return block

    def _place(self, way: Way) -> int:
        """Where a new block belongs: behind its list, before its own tables, or by the order of the file."""
        number, family = way[-1], way
        if isinstance(number, int):
            family = way[:-1]
            elder = self._within((*family, number - 1))
            if elder:
                return elder[-1] + 1
        below = self._within(family)
        if below:
            return below[0]
        orders = [(order_of(block.way), at) for at, block in enumerate(self._blocks)]
        return max((one for one in orders if one[0] < order_of(way)), default=((), 0))[1] + 1

    def _within(self, way: Way) -> list[int]:
        """Where the blocks of a section stand, those of its own tables too."""
        return [at for at, block in enumerate(self._blocks) if block.header and _is_within(block.way, way)]

    def _add_entry(self, way: Way, value: Any) -> None:
        block = self._host(way[:-1])
        keys = [at for at, entry in enumerate(block.entries) if entry.way]
        before = [at for at in keys if order_of(block.entries[at].way) < order_of(way)]
        if before:
            place = before[-1] + 1
        elif block.header:
            place = 0
        else:
            place = keys[0] if keys else len(block.entries)
        block.entries.insert(place, block.new_entry(way, value))

    def _host(self, table: Way) -> TextBlock:
        """The block for a new key of a table: its own, one that names it in dotted keys, or a new one."""
        for block in self._blocks:
            if block.way == table:
                return block
        for block in self._blocks:
            if len(block.way) < len(table) and any(_is_within(entry.way, table) for entry in block.entries):
                return block
        return self._add_block(table)


def _is_within(way: Way, above: Way) -> bool:
    """Whether a way is `above` or leads through it; no way leads nowhere."""
    return bool(way) and way[: len(above)] == above


def _is_table(value: Any) -> bool:
    """Whether a value is a table, or a list of nothing but tables."""
    entries = value if isinstance(value, list) else [value]
    return bool(entries) and all(isinstance(one, dict) for one in entries)
