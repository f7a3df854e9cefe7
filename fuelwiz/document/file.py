"""A session file: read, with what is refused before it is parsed."""

from __future__ import annotations

import re
import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any, NoReturn

from fuelwiz.document.scan import deepest, key_lines, line_of
from fuelwiz.errors import Fault, SessionError
from fuelwiz.file_limits import MOST_BYTES, MOST_LEVELS, SUFFIX
from fuelwiz.files import BYTE_ORDER_MARK, NotPlain, TooLarge, read_whole, reason
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.session import Session, newer_format, validate

_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")
_PLAINER = {
    "Invalid value": "a value is missing here, or is not in quotes",
    "Expected newline or end of": "there is something after the value: are the quotes right?",
    "Expected '=' after a key": "a key needs = and a value after it",
    "Unterminated string": "a text has no closing quotes",
    "Illegal character": "a text has no closing quotes, or holds a control character",
    "Unclosed array": "a list has no closing bracket",
    "Unclosed inline table": "a table has no closing brace",
    "Cannot overwrite a value": "this key is here twice",
    "Duplicate inline table key": "a key is in this table twice",
    "Cannot declare": "this section is here twice",
    "Cannot mutate immutable namespace": "this table is already closed",
    "Unescaped": "a backslash in a text must be doubled",
    "Escaped character": "a backslash in a text must be doubled",
    "Expected ']": "a section header has no closing bracket",
    "Invalid initial character": "a key cannot start like this",
    "Found invalid character": "this character is not allowed here",
    "Invalid hex value": "a backslash in a text must be doubled",
    "Invalid date": "this is not a date",
}


@record
class Document:
    """A session file as it stands: its text to the last character, and the plain data that it holds."""

    path: Path
    text: str
    plain: dict[str, Any]


def load(path: Path) -> tuple[Document, Session]:
    """A session file and the session that it holds.

    Raises:
        SessionError: with every fault, and the line of each where it can be found.
    """
    return _judged(read(path))


def load_text(content: bytes, called: str) -> tuple[Document, Session]:
    """The same from what came another way than from a file; messages call it so."""
    return _judged(_document(Path(called), content, Session.called))


def _judged(document: Document) -> tuple[Document, Session]:
    path = document.path
    if document.plain.get("kind") == "parts":
        _refuse(path, "is a parts file, not a build: `fuelwiz options` looks for sets of its parts")
    try:
        return document, validate(document.plain, path.name.removesuffix(SUFFIX))
    except SessionError as error:
        raise SessionError(clean(str(path)), with_lines(error.faults, document.text)) from None


def with_lines(faults: tuple[Fault, ...], text: str) -> tuple[Fault, ...]:
    """The faults with the line of the text that each is about, where its key or the section is there."""
    lines = key_lines(text.removeprefix(BYTE_ORDER_MARK))
    return tuple(replace(fault, line=line_of(lines, fault.key)) for fault in faults)


def read(path: Path, called: str = Session.called) -> Document:
    """A session file, or one that is `called` otherwise, parsed but not yet judged.

    Raises:
        SessionError: the file cannot be opened, is too large, nested too deep, no TOML, or of a newer format.
    """
    return _document(path, _content(path, called), called)


def _document(path: Path, raw: bytes, called: str) -> Document:
    """What a file holds, parsed."""
    text = _text(path, raw, called)
    content = text.removeprefix(BYTE_ORDER_MARK)
    if not content.strip():
        _refuse(path, f"is empty: a {called} begins with format = 1")
    levels = deepest(content)
    if levels > MOST_LEVELS:
        _refuse(path, f"is nested {levels} deep; the limit is {MOST_LEVELS}")
    plain = _parsed(path, content)
    newer = newer_format(plain)
    if newer:
        raise SessionError(clean(str(path)), with_lines(tuple(newer), text))
    return Document(path, text, plain)


def _refuse(path: Path, words: str, line: int | None = None) -> NoReturn:
    raise SessionError(clean(str(path)), (Fault("", words, line),))


def _content(path: Path, called: str) -> bytes:
    """What is in a file."""
    try:
        return read_whole(path, MOST_BYTES)
    except FileNotFoundError:
        _refuse(path, "there is no such file")
    except PermissionError:
        _refuse(path, "may not be read: permission denied")
    except IsADirectoryError:
        _refuse(path, f"is a folder, not a {called}")
    except NotPlain:
        _refuse(path, "is not a plain file")
    except TooLarge:
        _refuse(path, f"is larger than {MOST_BYTES // 1024} KiB, which no {called} is")
    except (OSError, ValueError) as error:
        _refuse(path, f"cannot be read: {reason(error)}")


def _text(path: Path, content: bytes, called: str) -> str:
    """The text of a file; no byte of it is changed but the encoding."""
    if len(content) > MOST_BYTES:
        _refuse(path, f"is larger than {MOST_BYTES // 1024} KiB, which no {called} is")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        _refuse(path, "is not text in UTF-8", content.count(b"\n", 0, error.start) + 1)


def _parsed(path: Path, content: str) -> dict[str, Any]:
    try:
        return tomllib.loads(content)
    except tomllib.TOMLDecodeError as error:
        words, line = _toml_fault(str(error), content)
        _refuse(path, words, line)
    except (ValueError, RecursionError):
        _refuse(path, "is not TOML: a number in it is far too large")


def _toml_fault(message: str, content: str) -> tuple[str, int | None]:
    """The parser's complaint in plain words, and its line."""
    place = _PLACE.search(message)
    plainer = next((words for start, words in _PLAINER.items() if message.startswith(start)), None)
    line = None
    if place:
        line = int(place[1]) if place[1] else content.rstrip().count("\n") + 1
    return f"is not TOML: {plainer or _PLACE.sub('', message)}", line
