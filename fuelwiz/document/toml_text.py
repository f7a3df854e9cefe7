"""Plain data as TOML text, the way a person would type it."""

from __future__ import annotations

import json
import re
import tomllib
from datetime import date, datetime, time
from math import isinf, isnan
from typing import Any

_BARE = re.compile(r"[A-Za-z0-9_-]+")


def key_text(key: str) -> str:
    """A key, in quotes where it is no bare one."""
    return key if _BARE.fullmatch(key) else _quoted(key)


def value_text(value: Any) -> str:
    """A value on one line; a text over several lines keeps them."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _long_text(value) if "\n" in value else _quoted(value)
    if isinstance(value, float):
        return _float_text(value)
    if isinstance(value, list):
        return "[" + ", ".join(value_text(item) for item in value) + "]"
    if isinstance(value, dict):
        return _inline_table(value)
    return value.isoformat() if isinstance(value, datetime | date | time) else str(value)


def same(one: Any, other: Any) -> bool:
    """Whether two pieces of plain data are written alike: 1, 1.0 and true are three values."""
    if type(one) is not type(other):
        return False
    if isinstance(one, dict):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(same, one, other))
    return bool(one == other) or (isinstance(one, float) and isnan(one) and isnan(other))


def reads_as(text: str, plain: dict[str, Any]) -> bool:
    """Whether a text is TOML that holds just this."""
    try:
        return same(tomllib.loads(text), plain)
    except tomllib.TOMLDecodeError:
        return False


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def _long_text(text: str) -> str:
    return '"""\n' + "\n".join(_quoted(line)[1:-1] for line in text.split("\n")) + '"""'


def _float_text(value: float) -> str:
    if isnan(value):
        return "nan"
    if isinf(value):
        return "inf" if value > 0 else "-inf"
    return repr(value)


def _inline_table(table: dict[str, Any]) -> str:
    pairs = ", ".join(f"{key_text(key)} = {value_text(value)}" for key, value in table.items())
    return f"{{ {pairs} }}" if pairs else "{}"
