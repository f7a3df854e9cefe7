"""The builds in tests/examples come to the figures of an independent solver.

That is a second program, written apart from this one from the same relations; it is not kept here.
"""

from __future__ import annotations

import json
import tomllib
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.session import validate
from fuelwiz.sizing import assess

EXAMPLES = Path(__file__).parents[1] / "examples"
NAMES = sorted(path.stem for path in EXAMPLES.glob("*.json"))
ONE_IN_TEN_THOUSAND = 1e-4
NOT_SOLVED_HERE = {"spread", "changes", "way_out", "effect", "bench"}


def differences(found: Any, wanted: Any, path: str = "") -> list[str]:
    """The paths at which figures differ by more than one part in ten thousand."""
    if isinstance(wanted, dict):
        if not isinstance(found, dict):
            return [f"{path}: {found!r}, not {wanted!r}"]
        keys = [key for key in wanted if key not in NOT_SOLVED_HERE]
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


@pytest.mark.parametrize("name", NAMES)
def test_an_example_comes_out(name: str) -> None:
    plain = tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))
    wanted = json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8"))
    assert differences(asdict(assess(validate(plain, name))), wanted) == []
