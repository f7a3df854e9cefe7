"""A file of columns, read in one pass: the numbers of the columns that are wanted, row by row."""

from __future__ import annotations

import csv
import os
import stat
from array import array
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from itertools import chain, islice
from math import isnan, nan
from operator import itemgetter
from pathlib import Path
from typing import TextIO

from fuelwiz.errors import LogError
from fuelwiz.files import BYTE_ORDER_MARK, reason
from fuelwiz.measured.log.columns import Taken
from fuelwiz.measured.log.layout import FIRST_LINES, Head, Layout, clock_s, layout_of
from fuelwiz.printable import clean
from fuelwiz.record import record

MOST_BYTES = 64 * 1024 * 1024
MOST_ROWS = 2_000_000
_SNIFFED = 64 * 1024
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")
SAID_IN_EVERY_ROW = frozenset({"time", "rail", "manifold", "boost"})
NOT_WITHOUT = SAID_IN_EVERY_ROW | {"rpm", "duty", "pulse_width", "flow"}
"""A row without one of these tells nothing; the first few must stand in the row itself."""

LOOKED_UP_EVERY = 4096
"""So many rows are read between two looks at whoever watches."""

Choose = Callable[[Sequence[Head]], tuple[Taken, ...]]
Watch = Callable[[float], None]
"""Is told how much of a file has been read, from 0 to 1; what it raises ends the reading."""


@record
class Table:
    """The columns that were read, in SI, and how many rows were; a cell that says nothing is not a number."""

    columns: dict[str, array[float]]
    taken: tuple[Taken, ...]
    rows: int
    skipped: int


def read_heads(path: Path) -> tuple[Head, ...]:
    """The heads of a file, read from its first lines; raises as `read_table` does."""
    with _in_words(path), _opened(path) as file:
        return _start(file)[1].heads


def read_table(path: Path, choose: Choose, watch: Watch | None = None) -> Table:
    """The wanted columns of a file.

    Args:
        path: of the file; 64 MiB at most.
        choose: which columns to take, given the heads.
        watch: told as the reading goes on.

    Raises:
        LogError: in a sentence that names the file.
    """
    with _in_words(path), _opened(path) as file:
        return _read(file, choose, _telling(file, watch))


@contextmanager
def _in_words(path: Path) -> Iterator[None]:
    """Whatever goes wrong with a file, as a sentence that names it."""
    name = clean(str(path))
    try:
        yield
    except LogError as error:
        raise LogError(f"{name}: {error}") from None
    except csv.Error as error:
        raise LogError(f"{name}: cannot be read as columns: {error}") from None
    except FileNotFoundError:
        raise LogError(f"{name}: there is no such file") from None
    except (OSError, ValueError) as error:
        raise LogError(f"{name}: cannot be read: {reason(error)}") from None


@contextmanager
def _opened(path: Path) -> Iterator[TextIO]:
    """The file as text, whatever its bytes; refused where it is no plain file, too large, or no text."""
    status = path.stat()
    if stat.S_ISDIR(status.st_mode):
        raise LogError("is a folder, not a log")
    if not stat.S_ISREG(status.st_mode):
        raise LogError("is not a plain file")
    if status.st_size > MOST_BYTES:
        raise LogError(f"is larger than {MOST_BYTES // 1024 // 1024} MiB, the most that is read of a log")
    # Without O_NONBLOCK a pipe that has taken the name since would be waited for.
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    with open(handle, "rb") as raw:
        start = raw.read(_SNIFFED)
        if start.startswith(_UTF_16):
            raise LogError("is text in UTF-16: save it as UTF-8, or as plain CSV")
        if b"\0" in start:
            raise LogError("is not text: a log is a file of columns that the logger's program exports as CSV")
        raw.seek(0)
        with open(
            raw.fileno(), encoding="utf-8", errors="surrogateescape", newline="", closefd=False
        ) as file:
            yield file


def _telling(file: TextIO, watch: Watch | None) -> Callable[[], None] | None:
    """What tells a watcher how far a file has been read."""
    if watch is None:
        return None
    handle = file.fileno()
    size = max(os.fstat(handle).st_size, 1)
    return lambda: watch(min(os.lseek(handle, 0, os.SEEK_CUR) / size, 1.0))


def _start(file: TextIO) -> tuple[list[str], Layout]:
    """The first lines, and how the file is laid out."""
    first = list(islice(file, FIRST_LINES))
    if first:
        first[0] = first[0].removeprefix(BYTE_ORDER_MARK)
    if not any(line.strip() for line in first):
        raise LogError("is empty")
    return first, layout_of([_readable(line) for line in first])


def _read(file: TextIO, choose: Choose, look_up: Callable[[], None] | None) -> Table:
    first, layout = _start(file)
    taken = choose(layout.heads)
    lines = chain(first[layout.first_row :], file)
    rows = _Rows(layout, taken)
    rows.read(lines, look_up)
    if not rows.count:
        raise LogError("holds no row that can be read as numbers under its heads")
    return Table(rows.columns(), taken, rows.count, rows.skipped)


def _readable(line: str) -> str:
    """A line of heads with the bytes that are no UTF-8 as the old code page has them, such as the sign of degrees."""
    return (
        line.encode("utf-8", "surrogateescape").decode("cp1252", "replace")
        if not line.isascii() and _halves(line)
        else line
    )


def _halves(line: str) -> bool:
    return any("\udc80" <= sign <= "\udcff" for sign in line)


class _Rows:
    """The rows of a file, as they are read."""

    def __init__(self, layout: Layout, taken: Sequence[Taken]) -> None:
        self._layout, self._taken = layout, taken
        self._heads = list(layout.cells)
        self._data = array("d")
        self._last = [nan] * len(taken)
        self._reads = [clock_s if layout.heads[one.at].is_clock else float for one in taken]
        self._has_clock = clock_s in self._reads
        self.count = self.skipped = 0

    def read(self, lines: Iterator[str], look_up: Callable[[], None] | None) -> None:
        """All rows: a quick way for those that are whole, a slow one for the rest."""
        if self._layout.decimal_comma:
            lines = (line.replace(",", ".") for line in lines)
        pick = itemgetter(*(one.at for one in self._taken))
        numbers = self._mixed if self._has_clock else _floats
        keep = self._data.extend
        for number, row in enumerate(csv.reader(lines, delimiter=self._layout.delimiter)):
            if look_up is not None and not number % LOOKED_UP_EVERY:
                look_up()
            try:
                values = numbers(pick(row))
                total = sum(values)
            except (ValueError, IndexError):
                self._slowly(row)
                continue
            if total - total != 0:
                self._slowly(row)
                continue
            keep(values)
            self.count += 1
            if self.count > MOST_ROWS:
                raise LogError(f"has more than {MOST_ROWS} rows, the most that are read of a log")
            self._last = values

    def _mixed(self, cells: Sequence[str]) -> list[float]:
        """The numbers of a row in which times stand as hours, minutes and seconds."""
        return [reads(cell) for reads, cell in zip(self._reads, cells, strict=True)]

    def _slowly(self, row: list[str]) -> None:
        """A row with gaps: a slow sensor keeps its last value; without time, rail or the like the row is skipped."""
        if not any(cell.strip() for cell in row) or self._is_heads(row):
            return
        values = []
        for one, reads, before in zip(self._taken, self._reads, self._last, strict=True):
            value = _number(row[one.at], reads) if one.at < len(row) else nan
            if isnan(value):
                value = nan if one.key in SAID_IN_EVERY_ROW else before
                if isnan(value) and one.key in NOT_WITHOUT:
                    self.skipped += 1
                    return
            values.append(value)
        self._data.extend(values)
        self.count += 1
        self._last = values

    def _is_heads(self, row: list[str]) -> bool:
        """Whether the heads, or their units, stand here again."""
        cells = [cell.strip() for cell in row]
        heads = (
            [cell.replace(",", ".") for cell in self._heads] if self._layout.decimal_comma else self._heads
        )
        return cells == heads or (
            len(cells) == len(heads) and any(cells) and all(isnan(_number(cell)) for cell in cells)
        )

    def columns(self) -> dict[str, array[float]]:
        """Each column in SI, by its key."""
        width = len(self._taken)
        found = {}
        for at, one in enumerate(self._taken):
            column = self._data[at::width]
            if one.times != 1 or one.plus != 0:
                times, plus = one.times, one.plus
                column = array("d", [times * value + plus for value in column])
            found[one.key] = column
        return found


def _floats(cells: Sequence[str]) -> list[float]:
    return list(map(float, cells))


def _number(cell: str, reads: Callable[[str], float] = float) -> float:
    """A cell as a finite number; not a number where it is none."""
    try:
        value = reads(cell)
    except ValueError:
        return nan
    return value if value - value == 0 else nan
