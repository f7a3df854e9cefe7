"""The commands: parse, call, print, exit status. What a command does not need is not loaded for it."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.errors import FuelwizError, SessionError
from fuelwiz.standard_streams import complain, give_up_on_output, read_input, say
from fuelwiz.store.named import STANDARD_STREAM, build_called
from fuelwiz.usage import COMMANDS, command_parser, meant, parsed, wizard_parser

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.measured.figures import LoggedRun
    from fuelwiz.report.differences import JudgedBuild
    from fuelwiz.session import Session
    from fuelwiz.sizing.figures import Figures, Plot, PlotOf

FINE, NOT_KNOWN_TO_WORK, BAD = 0, 1, 2
PIPE_CLOSED, INTERRUPTED = 141, 130


def main(argv: Sequence[str] | None = None) -> int:
    """Run what was asked for and return the exit status; a traceback only where FUELWIZ_DEBUG asks for it."""
    arguments = list(sys.argv[1:] if argv is None else argv)
    try:
        return _run(arguments)
    except BrokenPipeError:
        give_up_on_output()
        return PIPE_CLOSED
    except KeyboardInterrupt:
        return INTERRUPTED
    except FuelwizError as error:
        complain(str(error))
        return BAD
    except Exception as error:
        if os.environ.get("FUELWIZ_DEBUG"):
            raise
        complain(
            f"something went wrong in the program itself ({type(error).__name__}), not in your file."
            " Please report it; FUELWIZ_DEBUG=1 shows where."
        )
        complain("\n".join(getattr(error, "__notes__", ())))
        return BAD


def _run(arguments: list[str]) -> int:
    try:
        # Collecting garbage would only slow the loading: a command lives for a moment, the wizard turns it on again.
        gc.disable()
        if arguments and arguments[0] in COMMANDS:
            return RUN[arguments[0]](parsed(arguments[0], arguments[1:]))
        return _open_wizard(arguments)
    except SystemExit as leave:
        say("")
        return leave.code if isinstance(leave.code, int) else FINE
    finally:
        gc.freeze()  # nor at the end: the system takes all of it back


def _open_wizard(arguments: list[str]) -> int:
    parser = wizard_parser()
    asked, over = parser.parse_known_args(arguments)
    if over:
        command = meant(asked.file)
        hint = f"; did you mean `fuelwiz {command}`?" if command else ""
        parser.error(f"don't understand {' '.join(over)}{hint}")
    if not (sys.stdin and sys.stdin.isatty() and sys.stdout and sys.stdout.isatty()):
        complain("the wizard needs a terminal; `fuelwiz ask FILE` and `fuelwiz report FILE` work without one")
        return BAD
    if os.environ.get("TERM") == "dumb":
        from fuelwiz.report.output import printed

        say(
            printed(
                "This terminal (TERM=dumb) only prints: the questions come line by line, as in `fuelwiz ask`."
            )
        )
        return _ask(asked)
    from fuelwiz.wizard.app import run

    folder = asked.sessions or os.environ.get("FUELWIZ_SESSIONS")
    from fuelwiz.terminal.environment import takes_mouse

    mouse = asked.mouse or (takes_mouse(os.environ) and not asked.no_mouse)
    return run(Path(asked.file) if asked.file else None, Path(folder) if folder else None, mouse)


def _report(asked: argparse.Namespace) -> int:
    from fuelwiz.report.output import in_format, write_file

    path = build_called(asked.file, os.environ)
    result = _judged(path, in_full=True).result
    if asked.parts is not None:
        result = _priced(result, Path(asked.parts))
    plot_of = _plot_of(result)
    if asked.open:
        return _open_page(in_format(result, "html", to_file=True, plot_of=plot_of))
    to_file = asked.output not in (None, STANDARD_STREAM)
    text = in_format(result, asked.format, to_file=to_file, whole=asked.all, plot_of=plot_of)
    if not to_file:
        say(text)
    else:
        write_file(text, Path(asked.output), never=path)
    return FINE


def _priced(result: Result, parts: Path) -> Result:
    """A result with the prices of a parts file."""
    from dataclasses import replace

    from fuelwiz.options.part_prices import PartPrices
    from fuelwiz.options.parts_check import load_parts

    return replace(result, prices=PartPrices.of(result.session, load_parts(parts), result.figures))


def _plot_of(result: Result) -> PlotOf:
    """Pump against system of a result, worked out where a picture asks for it."""

    def plot_of(size: str) -> Plot | None:
        from fuelwiz.sizing.plot import plot_around

        return plot_around(result.session, size)

    return plot_of


def _open_page(text: str) -> int:
    """Show a page in the browser; where there is none, say where it is."""
    from fuelwiz.report.open_page import opened, private_page
    from fuelwiz.report.output import shown

    path = private_page(text)
    if opened(path, os.environ, sys.platform):
        say(shown(f"Opened in the browser: {path}") + "\n")
    else:
        say(shown(f"There is no browser here. The page is in {path}") + "\n")
    return FINE


def _check(asked: argparse.Namespace) -> int:
    from fuelwiz.report.output import printed, said_in_two_lines

    worst = FINE
    for file in asked.file:
        try:
            result = _judged(build_called(file, os.environ)).result
        except SessionError as error:
            complain(str(error))
            count = len(error.faults)
            say(printed(f"{file}: cannot be read, {count} error{'' if count == 1 else 's'}"))
            worst = BAD
            continue
        first, *others = said_in_two_lines(result)
        for line in (f"{file}: {first}", *others):
            say(printed(line))
        if not result.figures.verdict.works:
            worst = max(worst, NOT_KNOWN_TO_WORK)
    return worst


def _compare(asked: argparse.Namespace) -> int:
    if len(asked.file) < 2:
        command_parser("compare").error("needs two files or more")
    from fuelwiz.desk.labels import WORDS_OF_THE_QUESTIONS
    from fuelwiz.report.compare import comparison
    from fuelwiz.report.output import stdout_look
    from fuelwiz.report.text import text_of

    builds = []
    for file in asked.file:
        try:
            builds.append(_judged(build_called(file, os.environ)))
        except SessionError as error:
            complain(str(error))
    if len(builds) < len(asked.file):
        return BAD
    look = stdout_look(fill=True)
    say(text_of(comparison(builds, look.width, WORDS_OF_THE_QUESTIONS), look))
    return FINE


def _schema(asked: argparse.Namespace) -> int:
    import json

    from fuelwiz.options.parts_check import parts_schema
    from fuelwiz.session import schema

    say(json.dumps(parts_schema() if asked.parts else schema(), indent=2) + "\n")
    return FINE


def _options(asked: argparse.Namespace) -> int:
    from fuelwiz.advice.option_words import passed
    from fuelwiz.advice.subject import Subject
    from fuelwiz.document.file import load
    from fuelwiz.options.outcome import options
    from fuelwiz.options.parts_check import load_parts
    from fuelwiz.options.search import Asked, Search
    from fuelwiz.report.options_form import options_in_format
    from fuelwiz.sizing import quick_figures

    _, session = load(build_called(asked.file, os.environ))
    parts = load_parts(Path(asked.parts))
    figures = quick_figures(session)
    found = options(Search(session, parts, figures, Asked(asked.next, asked.bad_day)))
    besides = passed(next_goal=asked.next, bad_days=asked.bad_day)
    say(options_in_format(Subject(session, figures), found, besides, parts.currency, asked.format))
    return FINE if found.works else NOT_KNOWN_TO_WORK


def _log(asked: argparse.Namespace) -> int:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.document.file import load
    from fuelwiz.measured.log.place import log_path
    from fuelwiz.measured.log.run import read_log
    from fuelwiz.report.log_form import log_in_format
    from fuelwiz.sizing import quick_figures

    path = build_called(asked.file, os.environ)
    _, session = load(path)
    figures = quick_figures(session)
    log = read_log(log_path(path, session, asked.csv), session, figures)
    say(log_in_format(Subject(session, figures), log, asked.format))
    return FINE


def _completion(asked: argparse.Namespace) -> int:
    from fuelwiz.completion import script

    say(script(asked.shell, wizard_parser(), {name: command_parser(name) for name in COMMANDS}))
    return FINE


def _help(asked: argparse.Namespace) -> int:
    parser = command_parser(asked.command) if asked.command else wizard_parser()
    say(parser.format_help())
    return FINE


def _ask(asked: argparse.Namespace) -> int:
    from fuelwiz.ask.run import ask

    folder = asked.sessions or os.environ.get("FUELWIZ_SESSIONS")
    return ask(Path(asked.file) if asked.file else None, Path(folder) if folder else None)


RUN = {
    "ask": _ask,
    "report": _report,
    "check": _check,
    "compare": _compare,
    "log": _log,
    "options": _options,
    "schema": _schema,
    "completion": _completion,
    "help": _help,
}


def _judged(path: Path, *, in_full: bool = False) -> JudgedBuild:
    """A session file, what it holds, and what it comes to; in full with what takes hundreds of solutions too."""
    from fuelwiz.advice import result
    from fuelwiz.document.file import load, load_text
    from fuelwiz.report.differences import JudgedBuild
    from fuelwiz.sizing import assess, quick_figures

    if str(path) == STANDARD_STREAM:
        document, session = load_text(read_input(), "standard input")
    else:
        document, session = load(path)
    figures = assess(session) if in_full else quick_figures(session)
    if not in_full:
        return JudgedBuild(str(path), document.plain, result(session, figures))
    from dataclasses import replace

    from fuelwiz.measured.comments import what_measured

    judged = result(session, figures, _logged(path, session, figures))
    return JudgedBuild(str(path), document.plain, replace(judged, comments=what_measured(document.text)))


def _logged(path: Path, session: Session, figures: Figures) -> LoggedRun | None:
    """The log that a build names, read; one named on standard input lies in the current folder."""
    if not session.log.file:
        return None
    from fuelwiz.measured.log.of_build import logged_run

    return logged_run(path, session, figures)
