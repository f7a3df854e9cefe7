"""The builds in tests/examples come to the figures of an independent solver.

That is a second program, written apart from this one from the same relations; it is not kept here.
"""

from __future__ import annotations

import json
import tomllib
from dataclasses import asdict
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.session import validate
from fuelwiz.sizing import assess, in_steps, quick_figures

EXAMPLES = Path(__file__).parents[1] / "examples"
NAMES = sorted(path.stem for path in EXAMPLES.glob("*.json"))
ONE_IN_TEN_THOUSAND = 1e-4
SHARE, MARGIN = 0.01, 0.005
"""How near shares of the draws and percentiles of the margin come to those of very many draws."""
NOT_SOLVED_HERE = {"bench"}
DRAWN = {"draws", "chance", "short", "margin", "limits"}


def differences(found: Any, wanted: Any, path: str = "") -> list[str]:
    """The paths at which figures differ by more than one part in ten thousand."""
    if isinstance(wanted, dict):
        if not isinstance(found, dict):
            return [f"{path}: {found!r}, not {wanted!r}"]
        passed_over = NOT_SOLVED_HERE | (DRAWN if path == ".spread" else set())
        keys = [key for key in wanted if key not in passed_over]
        return [each for key in keys for each in differences(found.get(key), wanted[key], f"{path}.{key}")]
    if isinstance(wanted, list):
        if not isinstance(found, list | tuple) or len(found) != len(wanted):
            return [f"{path}: {found!r}, not {wanted!r}"]
        pairs = enumerate(zip(found, wanted, strict=True))
        return [each for i, pair in pairs for each in differences(*pair, f"{path}[{i}]")]
    if isinstance(wanted, bool) or wanted is None or isinstance(wanted, str):
        return (
            []
            if found == wanted and isinstance(found, type(wanted))
            else [f"{path}: {found!r}, not {wanted!r}"]
        )
    near = found is not None and abs(found - wanted) <= ONE_IN_TEN_THOUSAND * abs(wanted) + 1e-12
    return [] if near else [f"{path}: {found!r}, not {wanted!r}"]


@cache
def example(name: str) -> tuple[dict[str, Any], dict[str, Any]]:
    """What an example comes to here, and there."""
    plain = tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))
    wanted = json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8"))
    return asdict(assess(validate(plain, name))), wanted


@pytest.mark.parametrize("name", NAMES)
def test_an_example_comes_out(name: str) -> None:
    assert differences(*example(name)) == []


@pytest.mark.parametrize("name", NAMES)
def test_what_the_draws_of_an_example_come_to(name: str) -> None:
    found, wanted = (figures["spread"] for figures in example(name))
    if wanted is None:
        assert found is None
        return
    assert found["chance"] == pytest.approx(wanted["chance"], abs=SHARE)
    assert found["short"] == pytest.approx(wanted["short"], abs=SHARE)
    assert found["margin"] == {
        key: pytest.approx(margin, abs=MARGIN) for key, margin in wanted["margin"].items()
    }
    shares = {each["limit"]: each["share"] for each in found["limits"]}
    for each in wanted["limits"]:
        assert shares.pop(each["limit"], 0.0) == pytest.approx(each["share"], abs=SHARE), each["limit"]
    assert all(share < SHARE for share in shares.values())


def test_figures_fill_up_in_steps_and_end_complete() -> None:
    plain = tomllib.loads((EXAMPLES / "hill-climb-coupe.toml").read_text(encoding="utf-8"))
    session = validate(plain, "coupe")
    first = quick_figures(session)
    steps = list(in_steps(session, first))
    assert steps[0] == first
    assert steps[-1] == assess(session)
    assert len(steps) > 60, "short enough to be dropped between two keys"
    assert first.spread is None and first.changes == ()
    with_changes = next(step for step in steps if step.changes)
    assert with_changes.spread is None, "what to change comes before how sure"
