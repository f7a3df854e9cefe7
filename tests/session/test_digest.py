"""The digest of a build's inputs: it moves with what is computed from, and with nothing else."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.session import inputs_digest, validate

EXAMPLE = Path(__file__).parent.parent / "examples" / "full-session.toml"


def _plain() -> dict[str, Any]:
    return tomllib.loads(EXAMPLE.read_text(encoding="utf-8"))


def _digest(plain: dict[str, Any]) -> str:
    return inputs_digest(validate(plain, "build"))


def _with(path: str, value: Any) -> dict[str, Any]:
    """The example with one key changed; None takes it out."""
    plain = _plain()
    *above, key = [int(part) if part.isdecimal() else part for part in path.split(".")]
    at: Any = plain
    for part in above:
        at = at[part]
    if value is None:
        del at[key]
    else:
        at[key] = value
    return plain


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("name", "another name"),
        ("notes", "a note"),
        ("show_units", "metric"),
        ("fitted", {"line": "-10"}),
        ("record", None),
        ("pump.name", "another"),
        ("feed.run.0.what", "the long one"),
        ("pressure.base", "300 kPa"),
        ("goal.reserve", "15.0 %"),
    ],
)
def test_names_and_other_units_leave_it(path: str, value: Any) -> None:
    assert _digest(_with(path, value)) == _digest(_plain())


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("goal.power", "411 hp"),
        ("goal.reserve", None),
        ("pump.curve.0.points", [["40 psi", "97 gal/h"], ["60 psi", "84 gal/h"]]),
        ("pump.relief", None),
        ("feed.chosen", "-6"),
        ("feed.run.0.fittings", {"straight": 3, "swept_90": 2}),
        ("stress.case.0.change", {"goal.power": "431 hp"}),
        ("surge", None),
    ],
)
def test_what_is_computed_from_moves_it(path: str, value: Any) -> None:
    assert _digest(_with(path, value)) != _digest(_plain())


def test_it_is_sixteen_digits_long() -> None:
    assert len(_digest(_plain())) == len("9f86d081884c7d65")
    assert int(_digest(_plain()), 16) >= 0
