"""Builds to speak about: examples with their independent figures, and variations solved by ourselves."""

from __future__ import annotations

import copy
import tomllib
from pathlib import Path
from typing import Any

from independent import independent_figures

from fuelwiz.advice import Result, result
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

EXAMPLES = Path(__file__).parents[1] / "examples"
NAMES = tuple(sorted(path.stem for path in EXAMPLES.glob("*.toml")))


def plain(name: str) -> dict[str, Any]:
    """An example as its file has it."""
    return tomllib.loads((EXAMPLES / f"{name}.toml").read_text())


def independent(name: str) -> Result:
    """An example in words, from the figures of the independent solver (tests/examples/*.json)."""
    session = validate(plain(name), name)
    return result(session, independent_figures(name, session))


def told(name: str, **changes: Any) -> Result:
    """An example in words, with keys changed (`pump__volts="12.7 V"`; None takes a key out)."""
    session = validate(changed(plain(name), changes), name)
    return result(session, quick_figures(session))


def changed(session: dict[str, Any], changes: dict[str, Any]) -> dict[str, Any]:
    """A copy with keys changed, their paths written with two underscores."""
    session = copy.deepcopy(session)
    for path, value in changes.items():
        *above, last = path.split("__")
        at: Any = session
        for part in above:
            at = at[int(part)] if isinstance(at, list) else at.setdefault(part, {})
        if value is None:
            at.pop(last, None)
        else:
            at[last] = value
    return session


def texts(words_of: Result) -> list[str]:
    """Every text that a result holds."""
    words = words_of.words
    explained = [
        text
        for one in words.explanations
        for text in (one.no, one.means, one.costs, one.next, one.smaller)
        if text is not None
    ]
    first = [words.first_limit] if words.first_limit is not None else []
    found = [finding.text for finding in words.findings]
    return [
        *(form for forms in words.answer_forms for form in forms),
        *([words.line_to_fit] if words.line_to_fit is not None else []),
        *([words.next_step] if words.next_step else []),
        *explained,
        *words.stress,
        *words.case_names,
        *first,
        *words.next_goal,
        *found,
        *words.cautions,
    ]


def spaced(text: str) -> str:
    """A text with plain spaces where it has no-break ones."""
    return text.replace("\u00a0", " ")
