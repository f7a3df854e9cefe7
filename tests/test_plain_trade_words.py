"""Whatever a person reads is plain trade English in American spelling: no text of the package holds other words."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import fuelwiz

PACKAGE = Path(fuelwiz.__file__).parent
NOT_PLAIN = re.compile(
    r"""\b(
        nought | reckon\w* | whoever | mostly | settled?\son | settling\son | presses | gives?\sout | giving\sout
        | lets?\sgo | eats? | eaten | no\slonger\sworks? | no\sline\scures? | is\stold | are\stold | was\stold | told
        | (?:the|a|each|this|that|outside|pump|pumps|circuit|regulator|engine|hose|line|filter)\swants?
        | will\sdo | would\sdo | for\sthe\s(?:engine|pump)\s(?:burns|needs|takes)
    )\b""",
    re.VERBOSE | re.IGNORECASE,
)
NOT_AMERICAN = re.compile(
    r"""\b(
        colour\w* | tyres? | loom | aluminium | vapour\w* | litres? | metres? | centre\w* | neighbour\w* | grey\w*
        | petrol | saloon | spanner | carburettor | harbour | favour\w* | behaviour | labelled | cancelled
        | catalogue | programme | \w+(?:al|an|ogn|im|ur)is(?:e|ed|es|ing|ation)
    )\b""",
    re.VERBOSE | re.IGNORECASE,
)
Text = tuple[str, str]


def docstrings(tree: ast.AST) -> set[int]:
    """The nodes that are documentation, or a name's description under it."""
    return {
        id(node.value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }


def python_texts(path: Path) -> Iterator[Text]:
    """The strings of a module that hold words: more than one, so no keys and no names."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    skipped = docstrings(tree)
    for node in ast.walk(tree):
        if not isinstance(node, ast.Constant) or not isinstance(node.value, str) or id(node) in skipped:
            continue
        if " " in node.value.strip():
            yield f"{path.relative_to(PACKAGE)}:{node.lineno}", node.value


def toml_texts(path: Path) -> Iterator[Text]:
    """Every string of a file of questions."""

    def walk(value: Any, at: str) -> Iterator[Text]:
        if isinstance(value, str):
            yield f"{path.relative_to(PACKAGE)} {at}", value
        elif isinstance(value, dict):
            for key, item in value.items():
                yield from walk(item, f"{at}.{key}")
        elif isinstance(value, list):
            for item in value:
                yield from walk(item, at)

    yield from walk(tomllib.loads(path.read_text(encoding="utf-8")), "")


FILES = sorted([*PACKAGE.rglob("*.py"), *(PACKAGE / "questions").glob("*.toml")])


def texts(path: Path) -> Iterator[Text]:
    """What a person may read of a file."""
    return toml_texts(path) if path.suffix == ".toml" else python_texts(path)


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_words_are_plain_and_american(path: Path) -> None:
    found = [
        f"{place}: {match[0]!r} in {text[:80]!r}"
        for place, text in texts(path)
        for pattern in (NOT_PLAIN, NOT_AMERICAN)
        for match in pattern.finditer(text)
    ]
    assert not found, "\n".join(found)


def test_words_that_are_not_plain_are_found() -> None:
    for text in (
        "it counts as nought",
        "settled on -6",
        "the pump wants 5 psi",
        "The colour of a tyre",
        "it is told",
    ):
        assert NOT_PLAIN.search(text) or NOT_AMERICAN.search(text), text
    for text in ("you want 15 %", "a rise of 5 psi", "the color of the tires", "otherwise raised"):
        assert not (NOT_PLAIN.search(text) or NOT_AMERICAN.search(text)), text
    assert sum(1 for path in FILES for _ in texts(path)) > 2000
