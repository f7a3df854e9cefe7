"""The JSON Schema of a session file says what the model holds."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from fuelwiz.session import leaf_paths, schema

from .builds import EXAMPLES, faults, full, smallest, with_value

VALIDATOR = jsonschema.Draft202012Validator(schema())


def is_valid(plain: dict[str, Any]) -> bool:
    return bool(VALIDATOR.is_valid(plain))


def test_it_is_a_schema_of_its_dialect() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())
    assert schema()["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert json.loads(json.dumps(schema())) == schema()


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_examples_are_valid(path: Path) -> None:
    VALIDATOR.validate(tomllib.loads(path.read_text(encoding="utf-8")))


def test_small_and_full_files_are_valid() -> None:
    VALIDATOR.validate(smallest())
    VALIDATOR.validate(full())


WRONG: list[tuple[str, Any]] = [
    ("format", 2),
    ("goal.power", 410),
    ("goal.power", "much"),
    ("engine.cylinders", 0),
    ("engine.cylinders", "4"),
    ("engine.lambda", 3),
    ("engine.induction", "steam"),
    ("pressure.bost", "21 psi"),
    ("fuel.kind", "own"),
    ("pump.curve", []),
    ("pump.curve.0.points", [["40 psi"]]),
    ("pump.curve.0.points", [["40 psi", "9 gal/h", "3 psi"]]),
    ("feed.sizes", []),
    ("feed.run.0.fittings", {"elbow": 1}),
    ("feed.run.0.fittings", {"exit": 51}),
    ("inlet.run", [{"length": "1 ft"}]),
    ("feed.part", [{}]),
    ("inlet.strainer", True),
    ("fitted.has", ["fliter"]),
    ("pull", [{"rpm": 4500}]),
    ("bench.0.mass", "2.9 kg"),
    ("bench", [{"pressure": "40 psi", "volts": "13 V", "time": "52 s"}]),
    ("gauge.0.idle", 35),
    ("log.columns.rail", ["FuelP"]),
    ("log.columns.rail", ""),
    ("bands.feed", ["4 ft/s"]),
    ("notes", "x" * 4001),
    ("stress.case", [{"name": "x"}]),
    ("unheard", 1),
]


@pytest.mark.parametrize(("path", "value"), WRONG)
def test_what_the_schema_refuses_the_model_refuses(path: str, value: Any) -> None:
    plain = with_value(full(), path, value)
    assert not is_valid(plain)
    assert faults(plain)


def test_goal_and_format_are_needed() -> None:
    assert not is_valid({"format": 1})
    assert not is_valid({"goal": {"power": "410 hp"}})


def test_the_record_is_let_be() -> None:
    assert is_valid(smallest() | {"record": {"works": "yes", "new": 1}})


def _property(path: str) -> dict[str, Any]:
    found: dict[str, Any] = schema()
    for part in path.split("."):
        found = found.get("items", found)
        found = found["anyOf"][1] if "anyOf" in found and "properties" not in found else found
        found = found["properties"][part]
    return found


STANDS_FOR = {"bench.mass": ("bench", "volume"), "log.columns.boost": ("log", "manifold")}
"""Keys that stand in the place of another."""


@pytest.mark.parametrize("path", leaf_paths())
def test_every_key_is_described_and_its_examples_hold(path: str) -> None:
    found = _property(path)
    assert found["description"]
    plain = full()
    del plain["fuel"]["kind"]
    plain["inlet"]["run"] = [{"size": "-10"}]
    plain["return_line"]["part"] = [{"rated_flow": "100 gal/h", "rated_loss": "1 psi"}]
    if path in STANDS_FOR:
        section, key = STANDS_FOR[path]
        at = plain[section]
        del (at[0] if isinstance(at, list) else at["columns"])[key]
    for value in [*found.get("examples", []), *([found["default"]] if "default" in found else [])]:
        changed = with_value(plain, _first(path), value)
        assert is_valid(changed)
        assert faults(changed) == {}, value


def _first(path: str) -> str:
    """The path into the first of each list."""
    *above, last = path.split(".")
    lists = {"run", "filter", "part", "curve", "case", "pull", "bench", "gauge"}
    return ".".join([*(f"{part}.0" if part in lists else part for part in above), last])


def test_a_range_is_in_the_description() -> None:
    assert _property("pressure.boost")["description"].startswith("a pressure with its unit, 0 to 100 psi")
    assert _property("goal.reserve")["default"] == "15 %"
    assert _property("engine.cylinders") == {
        "description": "a whole number, 1 to 24",
        "type": "integer",
        "minimum": 1,
        "maximum": 24,
        "default": 4,
    }
