"""Every sentence that the words hold is made by at least one scenario: each finding, each limit, each bad day."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

import fuelwiz.advice
from fuelwiz.advice import Result, result
from fuelwiz.advice.answer.follows import follows
from fuelwiz.sizing import Figures, in_steps
from fuelwiz.sizing.vocabulary import CASES, LIMITS

from .builds import NAMES, independent
from .scenarios import ALL, made

ROOM = Path(fuelwiz.advice.__file__).parent
SPEAKING = (
    *sorted((ROOM / "findings").glob("*.py")),
    *sorted((ROOM / "limits").glob("*.py")),
    *sorted((ROOM / "answer").glob("*.py")),
    *(
        ROOM / f"{name}.py"
        for name in (
            "assumed",
            "case_sentences",
            "cases",
            "cautions",
            "first_limit",
            "next_goal",
            "phrases",
            "next_step",
            "stages",
            "sizes",
        )
    ),
)
SIMPLE = (ast.Return, ast.Assign, ast.AugAssign, ast.Expr)
Place = tuple[str, int]


def sentences(path: Path) -> Iterator[ast.stmt]:
    """The statements inside functions that hold words for people: more than one, with a blank between."""
    for function in ast.walk(ast.parse(path.read_text())):
        if not isinstance(function, ast.FunctionDef):
            continue
        for statement in ast.walk(function):
            if (
                isinstance(statement, SIMPLE)
                and statement is not function.body[0]
                and any(
                    isinstance(part, ast.Constant)
                    and isinstance(part.value, str)
                    and " " in part.value.strip()
                    for part in ast.walk(statement)
                )
            ):
                yield statement


IN_FULL = (
    "limit: velocity",
    "limit: injectors",
    "limit: return",
    "goal far beyond any change",
    "sound but for the next goal",
    "next goal short of the reserve with the first boost",
    "two pumps where one does",
    "a wire that does as much as a pump",
    "too fast and barely enough",
)
"""Scenarios that are solved with spread and changes too, which take hundreds of solutions."""


def _in_full(one: Result) -> Iterator[Figures]:
    """The figures as they fill up: those with changes, and the last."""
    steps = list(in_steps(one.session, one.figures))
    yield next((step for step in steps if step.changes), steps[-1])
    yield steps[-1]


@cache
def lines_run() -> frozenset[Place]:
    """The lines of the words that are run when every scenario is put into words."""
    run: set[Place] = set()
    files = {str(path) for path in SPEAKING}

    def trace(frame: FrameType, event: str, _arg: Any) -> Any:
        if frame.f_code.co_filename not in files:
            return None
        if event == "line":
            run.add((frame.f_code.co_filename, frame.f_lineno))
        return trace

    results = [*(made(name) for name in ALL), *(independent(name) for name in NAMES)]
    at_first = [replace(one, figures=replace(one.figures, stress=())) for one in results]
    at_last = [replace(one, figures=last) for one in map(made, IN_FULL) for last in _in_full(one)]
    before = sys.gettrace()
    sys.settrace(trace)
    try:
        for one in (*results, *at_first, *at_last):
            result(one.session, one.figures)
            follows(one.session, one.figures)
    finally:
        sys.settrace(before)
    return frozenset(run)


@pytest.mark.parametrize("path", SPEAKING, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_each_sentence_is_made_in_a_scenario(path: Path) -> None:
    missing = [
        f"{path.name}:{statement.lineno} {ast.unparse(statement)[:90]}"
        for statement in sentences(path)
        if not any(
            (str(path), line) in lines_run()
            for line in range(statement.lineno, (statement.end_lineno or 0) + 1)
        )
    ]
    assert not missing, "\n".join(missing)


def test_the_lines_are_looked_at() -> None:
    """Were tracing off, or no file found, nothing above could fail."""
    found = {path.stem for path in SPEAKING if list(sentences(path))}
    assert {"of_size", "of_build", "pump", "fuel", "lines", "how_far", "cases", "what_first"} <= found
    assert len(lines_run()) > 400


def test_each_limit_and_each_bad_day_is_met() -> None:
    results = [made(name) for name in ALL]
    assert {limit for one in results for limit in one.figures.verdict.limits} == set(LIMITS)
    assert {case.case for one in results for case in one.figures.stress} >= set(CASES)
