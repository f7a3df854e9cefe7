"""Where a report goes, and in which form: standard output as its terminal can show it, or a file."""

from __future__ import annotations

import errno
import os
import shutil
import sys
import time
from pathlib import Path

from fuelwiz.advice.result import Result
from fuelwiz.errors import OutputError
from fuelwiz.file_limits import SUFFIX
from fuelwiz.files import NotPlain, reason, write_atomically
from fuelwiz.printable import NO_BREAK, clean, visible
from fuelwiz.report.text_look import WIDTH, TextLook, speaks_utf8, text_look_of
from fuelwiz.sizing.figures import PlotOf
from fuelwiz.terminal.cells import hanging
from fuelwiz.terminal.folding import in_ascii

READER_COMES_WITHIN_S = 5.0
ENDINGS = {".md": "markdown", ".markdown": "markdown", ".html": "html", ".htm": "html", ".json": "json"}


def in_format(
    result: Result, form: str, *, to_file: bool, whole: bool = False, plot_of: PlotOf | None = None
) -> str:
    """The report of a build as text, Markdown, HTML or JSON, in the signs that its place can hold.

    Args:
        result: figures and words.
        form: "text", "markdown", "html" or "json".
        whole: whether text and Markdown hold everything in place of one page.
        to_file: whether it goes to a file, which is UTF-8, 80 columns wide, and has no colors.
        plot_of: for the picture of pump against system, which HTML has where it is given.
    """
    anything = to_file or speaks_utf8(sys.stdout, os.environ)
    if form == "json":
        from fuelwiz.report.json_form import json_text

        return json_text(result, ascii_only=not anything)
    if form == "html":
        from fuelwiz.report.page import html_page

        page = visible(html_page(result, plot_of))
        return page if anything else page.encode("ascii", "xmlcharrefreplace").decode("ascii")
    from fuelwiz.report.compose import page_of, sheet_of

    sheet = sheet_of(result) if whole else page_of(result)
    if form == "markdown":
        from fuelwiz.report.markdown import markdown_of

        text = visible(markdown_of(sheet))
        return text if anything else in_ascii(text)
    from fuelwiz.report.text import text_of

    return text_of(sheet, TextLook() if to_file else stdout_look())


def write_report(result: Result, path: Path, plot_of: PlotOf | None = None) -> Path:
    """Write the report of a build in the form that the file's ending asks for, else as text.

    Args:
        result: figures and words.
        path: the file.
        plot_of: for the picture of pump against system, which HTML has where it is given.

    Raises:
        OutputError: the file cannot be written.
    """
    form = ENDINGS.get(path.suffix.lower(), "text")
    write_file(in_format(result, form, to_file=True, plot_of=plot_of), path, to_device=False)
    return path


def stdout_look(*, fill: bool = False) -> TextLook:
    """How to write to standard output: 80 columns or less; on a terminal that is to be filled, all it has."""
    columns = shutil.get_terminal_size((WIDTH, 24)).columns
    return text_look_of(sys.stdout, os.environ, columns if fill else min(columns, WIDTH))


def said_in_two_lines(result: Result) -> tuple[str, ...]:
    """The first two lines of the answer: whether a build does and how far, and where it is tightest."""
    return result.words.answer[:2]


def shown(line: str) -> str:
    """A line that is safe on standard output, in the signs that it can hold."""
    plain = visible(clean(line)).replace(NO_BREAK, " ")
    return plain if speaks_utf8(sys.stdout, os.environ) else in_ascii(plain)


def printed(line: str) -> str:
    """A line as standard output takes it: whole, but broken between words where a terminal would break it anywhere."""
    plain = shown(line)
    if not sys.stdout.isatty():
        return f"{plain}\n"
    return hanging(plain, shutil.get_terminal_size((WIDTH, 24)).columns)


def write_file(text: str, path: Path, *, never: Path | None = None, to_device: bool = True) -> None:
    """Write a report to a file at one stroke; to a device or a pipe as it comes.

    Args:
        text: ends with a line end.
        path: the file; no name that a build may have, nor one that this program keeps drafts and the like under.
        never: a file that must not be written over.
        to_device: whether a device or a pipe may be written to.

    Raises:
        OutputError: the file cannot be written.
    """
    name = clean(str(path))
    _refuse_own_names(path, name)
    try:
        if never is not None and path.exists() and path.samefile(never):
            raise OutputError(f"{name}: is the build's own file, give the report another name")
        is_device = path.exists() and not path.is_file() and not path.is_dir()
        if is_device and not to_device:
            raise NotPlain("it is not a plain file")
        if is_device:
            _write_as_it_comes(path, text)
    except (OSError, ValueError) as error:
        raise OutputError(f"{name}: cannot be written: {reason(error)}") from None
    if not is_device:
        write_atomically(path, text)


def _refuse_own_names(path: Path, name: str) -> None:
    """Stops a report that would go over a build, a draft or a lock, by a link too."""
    try:
        real = path.resolve()
    except (OSError, ValueError, RuntimeError) as error:
        raise OutputError(f"{name}: cannot be written: {reason(error)}") from None
    if SUFFIX in (path.suffix.lower(), real.suffix.lower()):
        raise OutputError(f"{name}: a name that ends in .toml is a build's, give the report another")
    if real.name.startswith(".") and real.suffix in (".draft", ".lock"):
        raise OutputError(f"{name}: a name like this is kept for drafts, give the report another")


def _write_as_it_comes(path: Path, text: str) -> None:
    """Write to a device or a pipe; a pipe that nobody reads is not waited for long."""
    end = time.monotonic() + READER_COMES_WITHIN_S
    while True:
        try:
            handle = os.open(path, os.O_WRONLY | getattr(os, "O_NONBLOCK", 0))
            break
        except OSError as error:
            if error.errno != errno.ENXIO or time.monotonic() > end:
                raise
            time.sleep(0.05)
    os.set_blocking(handle, True)
    with open(handle, "w", encoding="utf-8") as file:
        file.write(text)
