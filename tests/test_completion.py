"""Completion scripts, as the shells themselves run them."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

from fuelwiz.completion import script
from fuelwiz.usage import COMMANDS, FORMATS, SHELLS, command_parser, wizard_parser


def made_for(shell: str) -> str:
    """The script for a shell."""
    return script(shell, wizard_parser(), {name: command_parser(name) for name in COMMANDS})


def completed(*words: str) -> list[str]:
    """What bash offers for the last of the words typed."""
    typed = " ".join(f"'{word}'" for word in ("fuelwiz", *words))
    command = f"COMP_WORDS=({typed}); COMP_CWORD={len(words)}; _fuelwiz; printf '%s\\n' \"${{COMPREPLY[@]}}\""
    done = subprocess.run(
        ["bash", "-c", f"{made_for('bash')}\n{command}"], capture_output=True, text=True, check=True
    )
    return done.stdout.split()


bash = pytest.mark.skipif(shutil.which("bash") is None, reason="bash is not on this system")


@bash
@pytest.mark.parametrize(
    ("words", "offered"),
    [
        ([""], sorted(COMMANDS)),
        (["re"], ["report"]),
        (["comp"], ["compare", "completion"]),
        (["report", "x.toml", "--format", ""], sorted(FORMATS)),
        (["report", "x.toml", "--format", "h"], ["html"]),
        (["report", "--"], ["--all", "--format", "--help", "--open", "--output", "--parts"]),
        (["completion", ""], sorted(SHELLS)),
        (["--no"], ["--no-mouse"]),
        (["--se"], ["--sessions"]),
        (["x.toml", "--no"], ["--no-mouse"]),
        (["check", ""], []),
        (["report", "--output", ""], []),
    ],
)
def test_bash_offers_what_can_be_typed(words: list[str], offered: list[str]) -> None:
    assert sorted(completed(*words)) == offered


@pytest.mark.parametrize("shell", SHELLS)
def test_the_script_is_sound_to_its_shell(shell: str, tmp_path: Path) -> None:
    if shutil.which(shell) is None:
        pytest.skip(f"{shell} is not on this system")
    path = tmp_path / "script"
    path.write_text(made_for(shell), encoding="utf-8")
    subprocess.run([shell, "-n", str(path)], check=True)


@pytest.mark.parametrize("shell", SHELLS)
def test_every_command_and_option_is_in_the_script(shell: str) -> None:
    text = made_for(shell)
    parsers = [wizard_parser(), *(command_parser(name) for name in COMMANDS)]
    flags = {flag for parser in parsers for action in parser._actions for flag in action.option_strings}
    for word in (*COMMANDS, *FORMATS, *SHELLS, *(flag.lstrip("-") for flag in flags)):
        assert word in text
