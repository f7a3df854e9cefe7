"""The manual page, made from what `--help` says."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator, Mapping

from fuelwiz import __version__
from fuelwiz.usage import ABOUT, CARE, COMMANDS, ENVIRONMENT, EXAMPLES, KEYS, command_parser, wizard_parser


def man_page() -> str:
    """The page in the man macros: groff_man(7), "Document structure macros"."""
    return "\n".join([*_head(), *_commands(), *_environment(), *_tail()]) + "\n"


def _head() -> Iterator[str]:
    yield f'.TH FUELWIZ 1 "" "fuelwiz {__version__}" "User Commands"'
    yield ".SH NAME"
    yield rf"fuelwiz \- {_plain(ABOUT[0].lower() + ABOUT[1:].rstrip('.'))}"
    yield ".SH SYNOPSIS"
    for line in (wizard_parser().usage or "").splitlines():
        yield f".B {_plain(line.strip())}"
        yield ".br"
    yield ".SH DESCRIPTION"
    yield _plain(ABOUT)
    yield ".SH OPTIONS"
    yield from _arguments(wizard_parser())


def _commands() -> Iterator[str]:
    yield ".SH COMMANDS"
    for name, command in COMMANDS.items():
        yield f".SS fuelwiz {name}"
        yield _plain(command.about)
        yield from _arguments(command_parser(name))
        yield ".PP"
        yield "Example:"
        yield from _as_it_stands(command.example)


def _environment() -> Iterator[str]:
    yield ".SH ENVIRONMENT"
    yield from _items(ENVIRONMENT)


def _tail() -> Iterator[str]:
    yield ".SH FILES"
    yield from _as_it_stands(KEYS[0].upper() + KEYS[1:])
    yield ".SH EXAMPLES"
    yield from _as_it_stands(EXAMPLES)
    care, _, status = CARE.partition("\n\n")
    yield ".SH EXIT STATUS"
    yield _plain(status.removeprefix("Exit status: "))
    yield ".SH CAUTIONS"
    yield _plain(care)


def _arguments(parser: argparse.ArgumentParser) -> Iterator[str]:
    return _items({_called(action): action.help or "" for action in parser._actions if action.dest != "help"})


def _called(action: argparse.Action) -> str:
    """An argument as one types it."""
    takes = f" {action.metavar or '|'.join(map(str, action.choices or ())) or action.dest}"
    if action.option_strings:
        return ", ".join(action.option_strings) + (takes if action.nargs != 0 else "")
    return takes.strip()


def _items(items: Mapping[str, str]) -> Iterator[str]:
    for name, text in items.items():
        yield ".TP"
        yield f".B {_plain(name)}"
        yield _plain(text)


def _as_it_stands(text: str) -> Iterator[str]:
    yield ".PP"
    yield ".nf"
    yield from (_plain(line) for line in text.splitlines())
    yield ".fi"


def _plain(text: str) -> str:
    """A text in which nothing is a request, and hyphens stay those that one types."""
    escaped = text.replace("\\", "\\e").replace("-", "\\-")
    return re.sub(r"^(?=[.'])", r"\\&", escaped, flags=re.MULTILINE)
