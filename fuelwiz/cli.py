"""The commands: parse, call, print, exit status. What a command does not need is not loaded for it."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from fuelwiz import __version__
from fuelwiz.errors import FuelwizError, SessionError

if TYPE_CHECKING:
    from fuelwiz.report.differences import Told

FINE, NOT_KNOWN_TO_WORK, BAD = 0, 1, 2
PIPE_CLOSED, INTERRUPTED = 141, 130
FORMATS = ("text", "markdown", "html", "json")
SHELLS = ("bash", "zsh", "fish")

ABOUT = "Sizes the fuel system of a fuel-injected car, from the tank to the injectors."
CARE = """\
Gallons are US gallons. Fuel under pressure burns people and cars: this is an
aid to design, not an approval.

Exit status: 0 fine; 1 `check` found a build that is not known to work; 2 bad
usage, bad input, or an output that cannot be written."""


class Parser(argparse.ArgumentParser):
    """A parser that says what is wrong in one line."""

    def error(self, message: str) -> NoReturn:
        """Leave with bad usage."""
        from fuelwiz.session.clean import clean

        self.exit(BAD, f"{self.prog}: {clean(message)} (see {self.prog} --help)\n")


@dataclass(frozen=True, slots=True)
class Command:
    """One command: what it does in a line, an example, its arguments, and what runs it."""

    about: str
    example: str
    arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]


def main(argv: Sequence[str] | None = None) -> int:
    """Run what was asked for and return the exit status; a traceback only where FUELWIZ_DEBUG asks for it."""
    arguments = list(sys.argv[1:] if argv is None else argv)
    try:
        return _run_and_flush(arguments)
    except BrokenPipeError:
        _give_up_on_output()
        return PIPE_CLOSED
    except KeyboardInterrupt:
        return INTERRUPTED
    except FuelwizError as error:
        _complain(str(error))
        return BAD
    except OSError as error:
        _give_up_on_output()
        _complain(f"standard output cannot be written: {(error.strerror or str(error)).lower()}")
        return BAD
    except Exception as error:
        if os.environ.get("FUELWIZ_DEBUG"):
            raise
        _complain(
            f"something went wrong in the program itself ({type(error).__name__}), not in your file."
            " Please report it; FUELWIZ_DEBUG=1 shows where."
        )
        return BAD


def _run_and_flush(arguments: list[str]) -> int:
    try:
        status = _run(arguments)
    except SystemExit as leave:
        status = leave.code if isinstance(leave.code, int) else FINE
    if sys.stdout is not None:
        sys.stdout.flush()
    return status


def _run(arguments: list[str]) -> int:
    if arguments and arguments[0] in COMMANDS:
        # A command lives for a moment: collecting garbage would only slow the loading of what it needs.
        gc.disable()
        command = COMMANDS[arguments[0]]
        return command.run(command_parser(arguments[0]).parse_args(arguments[1:]))
    parser = wizard_parser()
    asked, over = parser.parse_known_args(arguments)
    if over:
        parser.error(f"cannot make sense of {' '.join(over)}{_meant(asked.file)}")
    return _wizard(asked)


def _meant(word: str | None) -> str:
    """A command that was probably meant by the first word."""
    from difflib import get_close_matches

    close = get_close_matches(word or "", COMMANDS, n=1)
    return f"; did you mean `fuelwiz {close[0]}`?" if close else ""


def wizard_parser() -> argparse.ArgumentParser:
    """The parser of `fuelwiz` without a command."""
    rows = "\n".join(f"  {name:<12}{command.about}" for name, command in COMMANDS.items())
    parser = Parser(
        prog="fuelwiz",
        usage="fuelwiz [--sessions DIR] [--no-mouse] [FILE]\n       fuelwiz COMMAND ...",
        description=ABOUT,
        epilog=f"commands:\n{rows}\n\nexamples:\n  fuelwiz\n  fuelwiz builds/coupe.toml\n"
        "  fuelwiz ./report    opens a build whose file is called like a command\n"
        f"  fuelwiz report builds/coupe.toml\n\n{CARE}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument(
        "file",
        nargs="?",
        metavar="FILE",
        help="a build to open, or to begin; without it the list of past builds",
    )
    parser.add_argument(
        "--sessions",
        metavar="DIR",
        help="the folder of past builds; else FUELWIZ_SESSIONS, saved_sessions/ here, or your data folder",
    )
    parser.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    parser.add_argument("--version", action="version", version=f"fuelwiz {__version__}")
    return parser


def command_parser(name: str) -> argparse.ArgumentParser:
    """The parser of one command."""
    command = COMMANDS[name]
    parser = Parser(
        prog=f"fuelwiz {name}",
        description=command.about,
        epilog=f"example:\n  {command.example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.arguments(parser)
    return parser


def _wizard(asked: argparse.Namespace) -> int:
    folder = asked.sessions or os.environ.get("FUELWIZ_SESSIONS")
    if not (sys.stdin and sys.stdin.isatty() and sys.stdout and sys.stdout.isatty()):
        _complain("the wizard wants a terminal; `fuelwiz report FILE` prints without one")
        return BAD
    from fuelwiz.wizard.app import run

    return run(Path(asked.file) if asked.file else None, Path(folder) if folder else None, not asked.no_mouse)


def _report(asked: argparse.Namespace) -> int:
    from fuelwiz.report.output import in_format, put

    path = Path(asked.file)
    result = _judged(path).result
    output = None if asked.output is None else Path(asked.output)
    put(in_format(result, asked.format, to_file=output is not None), output, never=path)
    return FINE


def _check(asked: argparse.Namespace) -> int:
    from fuelwiz.report.output import said_in_a_line, shown

    worst = FINE
    for file in asked.file:
        try:
            result = _judged(Path(file)).result
        except SessionError as error:
            _complain(str(error))
            count = len(error.faults)
            print(shown(f"{file}: cannot be read, {count} fault{'' if count == 1 else 's'}"))
            worst = BAD
            continue
        print(shown(f"{file}: {said_in_a_line(result)}"))
        if not result.figures.verdict.works:
            worst = max(worst, NOT_KNOWN_TO_WORK)
    return worst


def _compare(asked: argparse.Namespace) -> int:
    if len(asked.file) < 2:
        command_parser("compare").error("wants two files or more")
    from fuelwiz.report.compare import comparison
    from fuelwiz.report.output import put, stdout_look
    from fuelwiz.report.text import text_of

    builds, readable = [], True
    for file in asked.file:
        try:
            builds.append(_judged(Path(file)))
        except SessionError as error:
            _complain(str(error))
            readable = False
    if not readable:
        return BAD
    look = stdout_look(fill=True)
    put(text_of(comparison(builds, look.width), look), None)
    return FINE


def _schema(_asked: argparse.Namespace) -> int:
    import json

    from fuelwiz.session.schema import schema

    print(json.dumps(schema(), indent=2))
    return FINE


def _completion(asked: argparse.Namespace) -> int:
    from fuelwiz.completion import script

    parsers = {name: command_parser(name) for name in COMMANDS}
    print(script(asked.shell, wizard_parser(), parsers), end="")
    return FINE


def _judged(path: Path) -> Told:
    """A session file, what it holds, and what it comes to."""
    from fuelwiz.advice import result
    from fuelwiz.report.differences import Told
    from fuelwiz.session.file import load
    from fuelwiz.sizing import assess

    document, session = load(path)
    return Told(str(path), document.plain, result(session, assess(session)))


def _report_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a session file")
    parser.add_argument("--format", choices=FORMATS, default="text", help="text unless said otherwise")
    parser.add_argument("--output", metavar="PATH", help="a file to write to, in place of the screen")


def _files_argument(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", nargs="+", help="session files")


def _shell_argument(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("shell", choices=SHELLS, help="the shell that the script is for")


COMMANDS = {
    "report": Command(
        "Print all there is to know of a build, or write it to a file.",
        "fuelwiz report builds/coupe.toml --format html --output sheet.html",
        _report_arguments,
        _report,
    ),
    "check": Command(
        "Print a line a build; the exit status says whether all work.",
        "fuelwiz check builds/*.toml",
        _files_argument,
        _check,
    ),
    "compare": Command(
        "Put builds side by side, differences and the better figures marked.",
        "fuelwiz compare before.toml after.toml",
        _files_argument,
        _compare,
    ),
    "schema": Command(
        "Print the JSON Schema of a session file, for editors that check.",
        "fuelwiz schema > session.schema.json",
        lambda _parser: None,
        _schema,
    ),
    "completion": Command(
        "Print a script that completes commands and options at the Tab key.",
        'eval "$(fuelwiz completion bash)"',
        _shell_argument,
        _completion,
    ),
}


def _complain(text: str) -> None:
    """Say on standard error what is wrong, line by line; where that is closed too, say nothing."""
    if sys.stderr is None:
        return
    with suppress(OSError):
        for line in text.splitlines():
            sys.stderr.write(f"fuelwiz: {line}\n")
        sys.stderr.flush()


def _give_up_on_output() -> None:
    """Send what is still in the buffer nowhere, so that leaving raises nothing more."""
    if sys.stdout is None:
        return
    with suppress(OSError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
