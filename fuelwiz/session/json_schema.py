"""The JSON Schema of a file, read off the same declarations as all else."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from fuelwiz import units
from fuelwiz.session.fallbacks import DERIVED_FALLBACKS
from fuelwiz.session.fields import Section
from fuelwiz.session.paths import Node, tree
from fuelwiz.session.scalars import range_text
from fuelwiz.session.spec import FieldSpec, Type

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema() -> dict[str, Any]:
    """The schema of a session file: what each key is, its range in words, and its fallback.

    Whether a text is a quantity of the right kind and size is more than a schema can say; `check` says it.
    """
    return {
        "$schema": DIALECT,
        "title": "fuelwiz session file, format 1",
        "description": "What a builder said of a fuel system. Gallons are US gallons.",
        **_table(tree(), ""),
    }


def schema_of(root: type[Section], about: str) -> dict[str, Any]:
    """The schema of another file that is declared with the same kinds of key; `about` says what it holds."""
    return {
        "$schema": DIALECT,
        "title": f"fuelwiz {root.called}, format 1",
        "description": f"{about} Gallons are US gallons.",
        **_table(tree(root), ""),
    }


def _table(node: Node, path: str) -> dict[str, Any]:
    """A table; [record] is the program's own, and what else stands there is passed over."""
    required = [key for key, below in node.keys.items() if _is_required(below)]
    schema: dict[str, Any] = {
        "type": "object",
        "properties": {key: _property(below, f"{path}{key}") for key, below in node.keys.items()},
        "additionalProperties": path == "record.",
    }
    if required:
        schema["required"] = required
    return schema | _CONDITIONS.get(path, {})


def _is_required(node: Node) -> bool:
    """Whether a key has to be there; the goal has, as its power has."""
    if node.spec is not None:
        return node.spec.required
    if node.tables is not None:
        return node.tables.least > 0
    return node.name == "goal"


_CONDITIONS: dict[str, dict[str, Any]] = {
    "fuel.": {
        "if": {"properties": {"kind": {"const": "own"}}, "required": ["kind"]},
        "then": {"required": ["density", "viscosity", "lhv"]},
    },
    "inlet.run.": {"anyOf": [{"required": ["size"]}, {"required": ["bore"]}]},
    "bench.": {"oneOf": [{"required": ["volume"]}, {"required": ["mass"]}]},
}


def _property(node: Node, path: str) -> dict[str, Any]:
    if node.spec is not None:
        return _value(node.spec) | _fallback(node.spec, path)
    about = {"description": (node.section.__doc__ or "").strip()} if node.section else {}
    if node.tables is None:
        found = about | _table(node, f"{path}.")
        return {"anyOf": [{"const": False}, found]} if node.or_false else found
    return {
        "type": "array",
        "minItems": node.tables.least,
        "maxItems": node.tables.most,
        "items": about | _table(node, f"{path}."),
    }


def _fallback(spec: FieldSpec, path: str) -> dict[str, Any]:
    if path in DERIVED_FALLBACKS:
        return {"description": f"{_words(spec)}; left out: {DERIVED_FALLBACKS[path]}"}
    return {} if spec.fallback is None else {"default": spec.fallback}


def _words(spec: FieldSpec) -> str:
    """What a value is, and its range."""
    if spec.type == "quantity":
        assert spec.kind is not None
        return f"{units.describe(spec.kind)} with its unit, {range_text(spec)}"
    return _WORDS[spec.type](spec) if spec.type in _WORDS else ""


_WORDS: dict[Type, Callable[[FieldSpec], str]] = {
    "count": lambda spec: f"a whole number, {range_text(spec)}",
    "ratio": lambda spec: f"a bare number, {range_text(spec)}",
    "size": lambda spec: f"a dash size that the hose has, or a bore of {range_text(spec.parts[0])}",
    "wire": lambda spec: f"a gauge of {range_text(spec)}, or an area of {range_text(spec.parts[0])}",
    "rated_flow": lambda spec: (
        f"a flow on n-heptane, {range_text(spec.parts[0])}, or by mass, {range_text(spec.parts[1])}"
    ),
    "velocities": lambda spec: f"four rising velocities, each {range_text(spec.parts[0])}",
    "sizes": lambda spec: "candidates: dash sizes, or bores",
    "fittings": lambda spec: f"how many of each fitting, {range_text(spec.parts[0])}",
    "points": lambda spec: "points rising in pressure: " + " and ".join(_words(part) for part in spec.parts),
    "change": lambda spec: "values by the path of their key, lists by number from 0",
    "text": lambda spec: f"a text of {spec.high} characters at most",
    "note": lambda spec: f"a text of {spec.high} characters at most",
    "kept": lambda spec: "written by the program at each save",
    "flag": lambda spec: "written by the program at each save",
    "format": lambda spec: "the format of the file",
    "choice": lambda spec: "one of these words",
    "words": lambda spec: "any of these words",
    "yes_no": lambda spec: "true or false",
    "span": lambda spec: f"from where to where, each {range_text(spec.parts[0])}",
    "column": lambda spec: f"a column of the log: its head, or its head and its unit such as {spec.us_unit}",
}


def _value(spec: FieldSpec) -> dict[str, Any]:
    """The schema of a value."""
    schema = {"description": _words(spec)} | _SHAPES.get(spec.type, _text)(spec)
    if spec.example not in (None, spec.fallback):
        schema["examples"] = [spec.example]
    return schema


def _text(spec: FieldSpec) -> dict[str, Any]:
    return {"type": "string", "pattern": r"^\s*[-+\u2212]?\s*[0-9.]"}


def _free_text(spec: FieldSpec) -> dict[str, Any]:
    assert spec.high is not None
    return {"type": "string", "maxLength": int(spec.high)}


def _number(spec: FieldSpec) -> dict[str, Any]:
    assert spec.low is not None and spec.high is not None
    to = int if spec.type == "count" else float
    return {
        "type": "integer" if spec.type == "count" else "number",
        "minimum": to(spec.low),
        "maximum": to(spec.high),
    }


def _list(spec: FieldSpec) -> dict[str, Any]:
    assert spec.low is not None and spec.high is not None
    return {
        "type": "array",
        "minItems": int(spec.low),
        "maxItems": int(spec.high),
        "items": _value(spec.parts[0]),
    }


def _points(spec: FieldSpec) -> dict[str, Any]:
    pair = {
        "type": "array",
        "prefixItems": [_value(part) for part in spec.parts],
        "items": False,
        "minItems": 2,
    }
    return _list(spec) | {"items": pair}


def _fittings(spec: FieldSpec) -> dict[str, Any]:
    counts = {name: _number(spec.parts[0]) for name in spec.choices}
    return {"type": "object", "properties": counts, "additionalProperties": False}


_SHAPES: dict[Type, Callable[[FieldSpec], dict[str, Any]]] = {
    "format": lambda spec: {"const": 1},
    "choice": lambda spec: {"enum": list(spec.choices)},
    "count": _number,
    "ratio": _number,
    "text": _free_text,
    "note": _free_text,
    "sizes": _list,
    "velocities": _list,
    "span": _list,
    "yes_no": lambda spec: {"type": "boolean"},
    "points": _points,
    "fittings": _fittings,
    "change": lambda spec: {"type": "object", "minProperties": 1},
    "words": lambda spec: {
        "type": "array",
        "items": {"enum": list(spec.choices)},
        "uniqueItems": True,
    },
    "column": lambda spec: {
        "anyOf": [
            {"type": "string", "minLength": 1},
            {"type": "array", "items": {"type": "string"}, "minItems": 2, "maxItems": 2},
        ]
    },
    "kept": lambda spec: {},
    "flag": lambda spec: {},
}
