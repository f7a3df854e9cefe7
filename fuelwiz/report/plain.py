"""Figures as JSON has them: plain dictionaries, lists, numbers and texts."""

from __future__ import annotations

from math import isfinite
from typing import Any

from fuelwiz.printable import NO_BREAK

Plain = dict[str, Any]


def plain_value(value: Any) -> Any:
    """A value as JSON has it: no tuples, no number without an end, and blanks that a search finds."""
    if isinstance(value, dict):
        return {key: plain_value(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [plain_value(item) for item in value]
    if isinstance(value, float) and not isfinite(value):
        return None
    return value.replace(NO_BREAK, " ") if isinstance(value, str) else value
