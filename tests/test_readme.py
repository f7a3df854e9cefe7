"""README held to the program: its table of keys, its example files, its commands and what they print.

`python tests/test_readme.py` prints the table of keys as the model makes it, to be pasted.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.cli import main
from fuelwiz.session import schema, validate
from fuelwiz.usage import COMMANDS
from fuelwiz.wizard.actions import BUILD, key_name

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8") if (ROOT / "README.md").exists() else ""

HEAD = ("| key | what it may be | if left out |", "| --- | --- | --- |")
LIKE = {"inlet.run.": "feed.run.", "return_line.run.": "feed.run.", "return_line.part.": "feed.part."}
LEFT_OUT = "; left out: "
CUT = "[...]"


def table_of_keys() -> list[str]:
    """The table's lines, without `[record]`, the program's own, and without what is as in the feed."""
    cells = {path: (words, left_out) for path, words, left_out in _rows(schema(), "")}
    kept = (path for path in cells if not path.startswith("record.") and not _is_as_in_the_feed(path, cells))
    return [*HEAD, *(f"| `{path}` | {cells[path][0]} | {cells[path][1]} |" for path in kept)]


def _is_as_in_the_feed(path: str, cells: dict[str, tuple[str, str]]) -> bool:
    feed = next((path.replace(own, of_feed) for own, of_feed in LIKE.items() if path.startswith(own)), None)
    return feed is not None and cells[path] == cells.get(feed)


def _rows(table: dict[str, Any], above: str) -> Iterator[tuple[str, str, str]]:
    needed = table.get("required", [])
    for key, found in table["properties"].items():
        inner = found.get("items", found)
        inner = next((one for one in found.get("anyOf", ()) if "properties" in one), inner)
        if "properties" in inner and "straight" not in inner["properties"]:
            yield from _rows(inner, f"{above}{key}.")
        else:
            yield f"{above}{key}", *_cells(found, key in needed)


def _cells(found: dict[str, Any], needed: bool) -> tuple[str, str]:
    words, _, hanging = found["description"].partition(LEFT_OUT)
    if "enum" in found:
        words = " or ".join(f'`"{word}"`' for word in found["enum"])
    return words.replace(" with its unit", ""), "**needed**" if needed else hanging or _fallback(found)


def _fallback(found: dict[str, Any]) -> str:
    value = found.get("default")
    if value in (None, "", {}):
        return "–"
    return ", ".join(map(str, value)) if isinstance(value, list) else str(value)


def blocks(language: str) -> list[str]:
    """The fenced blocks of README in one language."""
    return re.findall(rf"^```{language}\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)


def shown_runs() -> list[tuple[str, str]]:
    """What README shows of commands on the samples: the arguments, and what it says they print."""
    found = []
    for block in blocks("console"):
        first, _, rest = block.partition("\n")
        if first.startswith("$ .venv/bin/fuelwiz "):
            found.append((first.removeprefix("$ .venv/bin/fuelwiz "), rest))
    return found


def test_table_is_what_the_model_declares() -> None:
    section = README.partition("## Every key")[2]
    assert [line for line in section.splitlines() if line.startswith("|")] == table_of_keys()


@pytest.mark.parametrize("text", blocks("toml"), ids=lambda text: f"{len(text.splitlines())} lines")
def test_example_file_is_one(text: str) -> None:
    validate(tomllib.loads(text), "example")


def test_there_are_example_files_and_runs() -> None:
    assert len(blocks("toml")) >= 2
    assert len(shown_runs()) >= 2


@pytest.mark.parametrize(("arguments", "said"), shown_runs(), ids=lambda text: text[:40])
def test_shown_output_is_what_comes_out(
    arguments: str, said: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    monkeypatch.setenv("COLUMNS", "80")
    main(arguments.split())
    printed = capsys.readouterr().out
    for piece in said.split(f"{CUT}\n"):
        assert piece.strip("\n") in printed


def test_every_command_is_told_of() -> None:
    missing = [name for name in COMMANDS if f"`fuelwiz {name}" not in README]
    assert not missing


def test_keys_it_names_are_those_of_the_wizard() -> None:
    section = README.partition("## The wizard's keys")[2].partition("\n## ")[0]
    named = set(re.findall(r"`([^`]+)`", section))
    known = {key_name(key) for action in BUILD for key in action.keys}
    assert named
    assert named - {"NO_COLOR"} <= known


if __name__ == "__main__":
    print("\n".join(table_of_keys()))
