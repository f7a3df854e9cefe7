"""Scripts that complete commands, options and files in a shell, made from the parsers themselves."""

from __future__ import annotations

import argparse
from collections.abc import Mapping

from fuelwiz.usage import CHOICES

Parsers = Mapping[str, argparse.ArgumentParser]


def script(shell: str, wizard: argparse.ArgumentParser, commands: Parsers) -> str:
    """The script for "bash", "zsh" or "fish"; ends with a line end."""
    return {"bash": _bash, "zsh": _zsh, "fish": _fish}[shell](wizard, commands)


def _options(parser: argparse.ArgumentParser) -> list[argparse.Action]:
    return [action for action in parser._actions if action.option_strings]


def _flags(parser: argparse.ArgumentParser) -> str:
    return " ".join(flag for action in _options(parser) for flag in action.option_strings)


def _words(action: argparse.Action) -> str:
    return " ".join(map(str, action.choices or ()))


def _choices(parser: argparse.ArgumentParser) -> str:
    """The words that a command's own argument may be."""
    return " ".join(_words(action) for action in parser._actions if not action.option_strings).strip()


def _bash(wizard: argparse.ArgumentParser, commands: Parsers) -> str:
    cases = []
    for name, parser in commands.items():
        cases += [
            f'        {name}:{flag}) words="{_words(action)}" ;;'
            for action in _options(parser)
            for flag in action.option_strings
            if action.nargs != 0
        ]
        cases.append(f'        {name}:*) flags="{_flags(parser)}"; words="{_choices(parser)}" ;;')
    branches = "\n".join(cases)
    return f"""\
_fuelwiz() {{
    local word="${{COMP_WORDS[COMP_CWORD]}}" before="${{COMP_WORDS[COMP_CWORD-1]}}" flags="" words=""
    if [ "$COMP_CWORD" -eq 1 ]; then
        flags="{_flags(wizard)}"; words="{" ".join(commands)}"
    else
        case "${{COMP_WORDS[1]}}:$before" in
{branches}
        *:--sessions) ;;
        *) flags="{_flags(wizard)}" ;;
        esac
    fi
    case "$word" in
        -*) COMPREPLY=($(compgen -W "$flags" -- "$word")) ;;
        *) COMPREPLY=($(compgen -W "$words" -- "$word")) ;;
    esac
}}
complete -o default -F _fuelwiz fuelwiz
"""


def _quoted(text: str) -> str:
    """A help text inside single quotes."""
    return text.replace("'", "'\\''")


def _zsh(wizard: argparse.ArgumentParser, commands: Parsers) -> str:
    named = " ".join(f"'{name}:{_zsh_text(parser.description)}'" for name, parser in commands.items())
    cases = "\n".join(
        f"        {name}) _arguments {' '.join(_zsh_arguments(parser))} ;;"
        for name, parser in commands.items()
    )
    return f"""\
#compdef fuelwiz
_fuelwiz() {{
    local -a commands
    commands=({named})
    if (( CURRENT == 2 )) && [[ $words[2] != -* ]]; then
        _describe -t commands command commands
        _files
        return
    fi
    local name=$words[2]
    case $name in
{_zsh_shifted(cases)}
        *) _arguments {" ".join(_zsh_arguments(wizard))} ;;
    esac
}}
compdef _fuelwiz fuelwiz
"""


def _zsh_shifted(cases: str) -> str:
    """The branches of the commands, each of which sees its own words alone."""
    return cases.replace(") _arguments", ") shift words; (( CURRENT-- )); _arguments")


def _zsh_text(text: str | None) -> str:
    return _quoted((text or "").replace(":", "\\:").replace("[", "\\[").replace("]", "\\]"))


def _zsh_arguments(parser: argparse.ArgumentParser) -> list[str]:
    found = []
    for action in parser._actions:
        takes = f":{action.dest}:({_words(action)})" if action.choices else f":{action.dest}:_files"
        if action.option_strings:
            takes = takes if action.nargs != 0 else ""
            found += [f"'{flag}[{_zsh_text(action.help)}]{takes}'" for flag in action.option_strings]
        else:
            found.append(f"'{'*' if action.nargs == '+' else ''}{takes}'")
    return found


def _fish(wizard: argparse.ArgumentParser, commands: Parsers) -> str:
    lines = [
        f"complete -c fuelwiz -n __fish_use_subcommand -a {name} -d '{_fish_text(parser.description)}'"
        for name, parser in commands.items()
    ]
    lines += [_fish_option(action, "__fish_use_subcommand") for action in _options(wizard)]
    for name, parser in commands.items():
        seen = f"'__fish_seen_subcommand_from {name}'"
        lines += [_fish_option(action, seen) for action in _options(parser)]
        if _choices(parser):
            lines.append(f"complete -c fuelwiz -n {seen} -f -a '{_choices(parser)}'")
    return "\n".join(lines) + "\n"


def _fish_text(text: str | None) -> str:
    return (text or "").replace("\\", "\\\\").replace("'", "\\'")


def _fish_choices(action: argparse.Action) -> str:
    """The words an option takes, each with what it stands for: else fish shows the option's own words beside all."""
    words = (str(choice) for choice in action.choices or ())
    return " ".join(f'{word}\\t"{CHOICES[word]}"' if word in CHOICES else word for word in words)


def _fish_option(action: argparse.Action, when: str) -> str:
    names = " ".join(
        f"-l {flag[2:]}" if flag.startswith("--") else f"-s {flag[1:]}" for flag in action.option_strings
    )
    takes = f" -x -a '{_fish_choices(action)}'" if action.choices else " -r" if action.nargs != 0 else ""
    return f"complete -c fuelwiz -n {when} {names}{takes} -d '{_fish_text(action.help)}'"
