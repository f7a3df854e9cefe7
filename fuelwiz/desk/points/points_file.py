"""A table of points in a file: whatever a spreadsheet or an editor wrote."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk.points.paste import FLOW, Points, read_points
from fuelwiz.file_limits import MOST_BYTES
from fuelwiz.files import read_start
from fuelwiz.printable import clean

__all__ = ["Points", "points_in_file", "points_typed", "read_points"]

_LONGEST_FILE_NAME = 1000
_ENCODINGS = (("utf-16", b"\xff\xfe"), ("utf-16", b"\xfe\xff"), ("utf-8-sig", b""), ("cp1252", b""))
_SUFFIXES = (".csv", ".txt", ".tsv")


def points_typed(text: str, folder: Path, default_units: tuple[str, str], path: str = FLOW) -> Points:
    """What stands in the box: a table, or the name of a file that holds one.

    Args:
        text: as pasted or typed.
        folder: where a file's name is looked up that gives no folder.
        default_units: of pressure, and of flow or current, where the table names none.
        path: the list of points that it is for, without list numbers.
    """
    name = clean(text).strip().strip("\"'")
    if name and "\n" not in text.strip() and len(name) <= _LONGEST_FILE_NAME:
        file = _in_folder(name, folder)
        if _is_file(file) or name.lower().endswith(_SUFFIXES):
            return points_in_file(file, default_units, path)
    return read_points(text, default_units, path)


def points_in_file(file: Path, default_units: tuple[str, str], path: str = FLOW) -> Points:
    """The points in a file with a table; a file that cannot be read is one sentence and no points."""
    if not _is_file(file):
        return Points((), None, (f'there is no file "{clean(file.name)}"',))
    try:
        content = read_start(file, 4 * MOST_BYTES)  # the table says itself where it is cut
    except OSError:
        return Points((), None, (f'the file "{clean(file.name)}" may not be read',))
    return read_points(_decoded(content), default_units, path)


def _in_folder(name: str, folder: Path) -> Path:
    try:
        return folder / Path(name).expanduser()
    except RuntimeError:
        return folder / name


def _is_file(file: Path) -> bool:
    try:
        return file.is_file()
    except (OSError, ValueError):
        return False


def _decoded(content: bytes) -> str:
    """Spreadsheets write UTF-8, UTF-16 with a mark, or the code page of their country."""
    for encoding, mark in _ENCODINGS:
        if content.startswith(mark):
            try:
                return content.decode(encoding)
            except UnicodeDecodeError:
                continue
    return content.decode("latin-1")
