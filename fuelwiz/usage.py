"""What can be typed on the command line: commands, their arguments and their help."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple, NoReturn

from fuelwiz import __version__

BAD_USAGE = 2
FORMATS = ("text", "markdown", "html", "json")
LOG_FORMATS = ("text", "json")
SHELLS = ("bash", "zsh", "fish")
CHOICES = {
    "text": "to read in a terminal",
    "markdown": "to put into other texts",
    "html": "a page for the browser",
    "json": "figures for other programs",
}
"""What a word that an option takes stands for, where a shell shows that beside it."""
BUILD = "a build's file, or its name in your folder of builds"

ABOUT = "Sizes the fuel system of a fuel-injected car, from the tank to the injectors."
EXAMPLES = """\
  fuelwiz                        opens your list of builds
  fuelwiz builds/coupe.toml      opens that build, or starts it
  fuelwiz ./report               opens a file named like a command
  fuelwiz report builds/coupe.toml"""
ENVIRONMENT = {
    "FUELWIZ_SESSIONS": "the folder of your builds",
    "FUELWIZ_BACKGROUND": "light or dark; else COLORFGBG; else the terminal",
    "NO_COLOR": "no color anywhere",
    "LC_ALL, LC_CTYPE, LANG": "where they are not UTF-8, all is ASCII",
    "TERM": "dumb: line by line, as `fuelwiz ask` is",
}
KEYS = """\
keys of your own:
  keys.toml in your configuration folder ($XDG_CONFIG_HOME/fuelwiz, else
  ~/.config/fuelwiz; on a Mac ~/Library/Application Support/fuelwiz), such as
    [build]
    save = ["ctrl+s", "f10"]
  with the words of the page of keys (Ctrl+G), _ for a blank; [list] for the
  list of builds. What cannot be is said at the start, with its line."""
CARE = """\
Gallons are US gallons. Fuel under pressure burns people and cars: this is an
aid to design, not an approval: makers' ratings, local codes, your sanctioning
body and qualified people come first.

Exit status: 0 fine; 1 `check` found a build that does not work or has no pump
yet, or `options` no set; 2 bad usage, bad input, or an output that cannot be
written."""


class Parser(argparse.ArgumentParser):
    """A parser that says in one line what is wrong."""

    def error(self, message: str) -> NoReturn:
        """Leave with bad usage."""
        from fuelwiz.printable import clean

        self.exit(BAD_USAGE, f"{self.prog}: {clean(message)} (see {self.prog} --help)\n")


class Command(NamedTuple):
    """One command: what it does in a line, an example, and what gives it its arguments."""

    about: str
    example: str
    arguments: Callable[[Parser], None] = lambda _parser: None


def _report(parser: Parser) -> None:
    parser.add_argument("file", metavar="FILE", help=f"{BUILD}; - reads standard input")
    parser.add_argument("--format", choices=FORMATS, default="text", help="text by default")
    parser.add_argument("--parts", metavar="PARTS", help="a parts file: prices in what to buy")
    parser.add_argument("--all", action="store_true", help="everything, in place of one page")
    place = parser.add_mutually_exclusive_group()
    place.add_argument("--output", metavar="PATH", help="write to this file; - is the screen")
    place.add_argument("--open", action="store_true", help="show it as a page in the browser")


def _files(parser: Parser) -> None:
    parser.add_argument(
        "file", metavar="FILE", nargs="+", help="files of builds, or their names in your folder of builds"
    )


def _log(parser: Parser) -> None:
    parser.add_argument("file", metavar="FILE", help=BUILD)
    parser.add_argument(
        "csv", metavar="CSV", nargs="?", help="the log; else the one that the session file names under [log]"
    )
    parser.add_argument("--format", choices=LOG_FORMATS, default="text", help="text by default")


def _options(parser: Parser) -> None:
    parser.add_argument("file", metavar="FILE", help=BUILD)
    parser.add_argument("--parts", metavar="PARTS", required=True, help="a parts file")
    parser.add_argument("--next", action="store_true", help="a set has to carry the next goal too")
    parser.add_argument("--bad-day", action="store_true", help="a set has to pass on every bad day too")
    parser.add_argument("--format", choices=LOG_FORMATS, default="text", help="text by default")


def _schema(parser: Parser) -> None:
    parser.add_argument("--parts", action="store_true", help="the schema of a parts file instead")


def _shell(parser: Parser) -> None:
    parser.add_argument("shell", choices=SHELLS, help="your shell")


def _explained(parser: Parser) -> None:
    parser.add_argument(
        "command", metavar="COMMAND", nargs="?", choices=tuple(COMMANDS), help="without one, all of fuelwiz"
    )


def _asked(parser: Parser) -> None:
    parser.add_argument(
        "file", metavar="FILE", nargs="?", help="a build to open or to start; without one, a new build"
    )
    parser.add_argument("--sessions", metavar="DIR", help="the folder of your builds, as for fuelwiz itself")


COMMANDS = {
    "ask": Command(
        "Ask the same questions line by line, for screen readers and pipes.",
        "fuelwiz ask builds/coupe.toml",
        _asked,
    ),
    "report": Command(
        "Print the report on a build, one page or --all, or write it to a file.",
        "fuelwiz report builds/coupe.toml --format html --output report.html",
        _report,
    ),
    "check": Command(
        "Print two lines per build; the exit status says whether all work.",
        "fuelwiz check builds/*.toml",
        _files,
    ),
    "compare": Command(
        "Put builds side by side: what differs, and which one is better.",
        "fuelwiz compare before.toml after.toml",
        _files,
    ),
    "log": Command(
        "Hold a logged run against a build: pump, regulator, fuel use.",
        "fuelwiz log builds/coupe.toml pull-may.csv",
        _log,
    ),
    "options": Command(
        "Print which sets of parts, of your own price list, do the job.",
        "fuelwiz options builds/coupe.toml --parts parts/shop.toml --bad-day",
        _options,
    ),
    "schema": Command(
        "Print the JSON Schema of a build's file, for editors that check.",
        "fuelwiz schema > build.schema.json",
        _schema,
    ),
    "completion": Command(
        "Print a script that makes the Tab key complete commands.",
        'eval "$(fuelwiz completion bash)"',
        _shell,
    ),
    "help": Command(
        "Explain a command, as its own --help does.",
        "fuelwiz help report",
        _explained,
    ),
}


def _table(rows: Mapping[str, str], width: int) -> str:
    """Names and what is said of them, within 80 columns."""
    from textwrap import wrap

    indent = " " * (width + 2)
    lines = [wrap(f"  {name:<{width}}{text}", 79, subsequent_indent=indent) for name, text in rows.items()]
    return "\n".join(line for wrapped in lines for line in wrapped)


def wizard_parser() -> Parser:
    """The parser of `fuelwiz` without a command."""
    rows = _table({name: command.about for name, command in COMMANDS.items()}, 12)
    environment = f"environment:\n{_table(ENVIRONMENT, 24)}"
    parser = Parser(
        prog="fuelwiz",
        usage="fuelwiz [--sessions DIR] [--mouse | --no-mouse] [FILE]\n       fuelwiz COMMAND ...",
        description=ABOUT,
        epilog=f"commands:\n{rows}\n\nexamples:\n{EXAMPLES}\n\n{environment}\n\n{KEYS}\n\n{CARE}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    opens = "a build to open or to start; without one, your list of builds"
    folder = "the folder of your builds; else FUELWIZ_SESSIONS, saved_sessions/ here, or your data folder"
    parser.add_argument("file", nargs="?", metavar="FILE", help=opens)
    parser.add_argument("--sessions", metavar="DIR", help=folder)
    mouse = parser.add_mutually_exclusive_group()
    mouse.add_argument(
        "--mouse",
        action="store_true",
        help="use the mouse over SSH and in GNU screen too, where it is left out",
    )
    mouse.add_argument("--no-mouse", action="store_true", help="leave the mouse to the terminal")
    parser.add_argument("-V", "--version", action="version", version=f"fuelwiz {__version__}")
    return parser


def command_parser(name: str) -> Parser:
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


def parsed(name: str, arguments: Sequence[str]) -> argparse.Namespace:
    """The arguments of one command; says where several files were given to a report, which takes one."""
    parser = command_parser(name)
    asked, over = parser.parse_known_args(arguments)
    if over and name == "report" and not any(word.startswith("-") for word in over):
        parser.error("takes one file; `fuelwiz compare` takes several")
    if over:
        parser.error(f"unrecognized arguments: {' '.join(over)}")
    return asked


def meant(word: str | None) -> str | None:
    """The command that was probably meant by a word."""
    from difflib import get_close_matches

    close = get_close_matches(word or "", COMMANDS, n=1)
    return close[0] if close else None
