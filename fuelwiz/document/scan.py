"""Where things stand in the text of a session file: statements with their keys, and how deep it is nested.

Reads no values, and takes any text: what is no TOML is passed over, and refused by the parser afterwards.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator

from fuelwiz.record import record
from fuelwiz.session import KeyPath, path_of

_TOKEN = re.compile(
    r'"""(?:\\.|[^\\])*?(?:"{3,5}|\Z)'
    r"|'''.*?(?:'{3,5}|\Z)"
    r'|"(?:\\.|[^"\\\n])*"?'
    r"|'[^'\n]*'?"
    r"|#[^\n]*"
    r"|[\[\]{}=,.\n]"
    r"|[^\[\]{}=,.\n\"'#]+",
    re.DOTALL,
)
_BLANK_LINES = re.compile(r"(?:[ \t\r]*(?:#[^\n]*)?\n)*[ \t\r]*(?:#[^\n]*\Z)?")
_KEY = re.compile(r"""[ \t]*([A-Za-z0-9_-]+|"(?:\\.|[^"\\\n])*"|'[^'\n]*')[ \t]*""")


@record
class Statement:
    """A header or a key with its value: the path to it, and where it stands in the text.

    `start` is the first character of its line, `end` the one past its line end; `value_start` and
    `value_end` enclose the value, and are both 0 for a header. `levels` is how many tables and lists stand
    around the innermost value.
    """

    key_path: KeyPath
    header: bool
    start: int
    end: int
    value_start: int
    value_end: int
    levels: int


def statements(text: str) -> Iterator[Statement]:
    """The statements of a text one by one; lines that are none have an empty path."""
    lists: dict[KeyPath, int] = {}
    table: KeyPath = ()
    at = 0
    while (at := _line_start(text, _BLANK_LINES.match(text, at))) < len(text):
        start = text.rfind("\n", 0, at) + 1
        if text[at] == "[" and (found := _header(text, at)):
            keys, is_list, past = found
            table = _resolved(keys, is_list, lists)
            _, end, _ = _value(text, past)
            yield Statement(table, True, start, end, 0, 0, len(table))
        else:
            keys, past = _keys(text, at)
            assigned = bool(keys) and text[past : past + 1] == "="
            value_start = past + 1 if assigned else at
            value_end, end, levels = _value(text, value_start)
            value_start += len(text[value_start:value_end]) - len(text[value_start:value_end].lstrip())
            key_path = (*table, *keys) if assigned else ()
            above = len(table) + max(len(keys) - 1, 0) if assigned else 0
            yield Statement(key_path, False, start, end, value_start, value_end, above + levels)
        at = end


def _line_start(text: str, blank: re.Match[str] | None) -> int:
    return len(text) if blank is None else blank.end()


def _header(text: str, at: int) -> tuple[tuple[str, ...], bool, int] | None:
    """The keys of [a.b] or [[a.b]], whether it is the latter, and where it ends; None where it is neither."""
    is_list = text.startswith("[[", at)
    keys, past = _keys(text, at + 1 + is_list)
    close = "]]" if is_list else "]"
    return (keys, is_list, past + len(close)) if keys and text.startswith(close, past) else None


def _keys(text: str, at: int) -> tuple[tuple[str, ...], int]:
    """A dotted key, and where it ends."""
    keys = []
    while match := _KEY.match(text, at):
        keys.append(_unquoted(match[1]))
        at = match.end()
        if text[at : at + 1] != ".":
            break
        at += 1
    return tuple(keys), at


def _unquoted(key: str) -> str:
    if key[0] not in "\"'":
        return key
    try:
        return str(tomllib.loads(f"key = {key}")["key"])
    except ValueError:
        return key


def _resolved(keys: tuple[str, ...], is_list: bool, lists: dict[KeyPath, int]) -> KeyPath:
    """The path of a header: each list of tables that it passes stands at its last table."""
    key_path: KeyPath = ()
    for number, key in enumerate(keys):
        key_path = (*key_path, key)
        if is_list and number == len(keys) - 1:
            lists[key_path] = lists.get(key_path, 0) + 1
        if key_path in lists:
            key_path = (*key_path, lists[key_path] - 1)
    return key_path


def _value(text: str, at: int) -> tuple[int, int, int]:
    """From a place on: where the value ends, where its last line ends, and how deep it is nested."""
    value_end = at
    nest = _Nest()
    for token in _TOKEN.finditer(text, at):
        sign = token[0]
        if sign == "\n" and not nest.open:
            return value_end, token.end(), nest.deepest
        nest.take(sign)
        if sign[0] != "#" and not sign.isspace():
            value_end = token.start() + len(sign.rstrip())
    return value_end, len(text), nest.deepest


class _Nest:
    """Counts brackets, braces, and the tables that a dotted key opens inside braces."""

    def __init__(self) -> None:
        self.open: list[int] = []
        self.deepest = 0
        self._levels = 0
        self._dots = 0

    def take(self, sign: str) -> None:
        """Counts one token in."""
        if sign in {"[", "{"}:
            self.open.append(1)
            self._levels += 1
        elif sign in {"]", "}"} and self.open:
            self._levels -= self.open.pop()
        elif sign == "=" and self.open:
            self._levels += 1 + self._dots - self.open[-1]
            self.open[-1] = 1 + self._dots
        if sign == ".":
            self._dots += 1
        elif sign in {"[", "{", "]", "}", "=", ","}:
            self._dots = 0
        self.deepest = max(self.deepest, self._levels)


def deepest(text: str) -> int:
    """How many tables and lists stand around the innermost value."""
    return max((statement.levels for statement in statements(text)), default=0)


def key_lines(text: str) -> dict[str, int]:
    """The line, from 1, where each key first stands, by its dotted path; that of a table is its header's."""
    lines: dict[str, int] = {}
    line, counted = 1, 0
    for statement in statements(text):
        line += text.count("\n", counted, statement.start)
        counted = statement.start
        for length in range(len(statement.key_path), 0, -1):
            lines.setdefault(path_of(statement.key_path[:length]), line)
    return lines


def line_of(lines: dict[str, int], path: str) -> int | None:
    """The line of a key, else of what stands nearest above it; None where nothing does."""
    while path and path not in lines:
        path = path.rpartition(".")[0]
    return lines.get(path)
