"""What is pasted into a form: a value for the place under the pointer, or a whole table."""

from __future__ import annotations

import re

from fuelwiz.session import field_at

TAKE_POINTS = (
    "pump.curve.points",
    "pump.current",
    "pump.known",
    "pump.curve.voltage",
    "pull",
    "pull.power",
    "pull.boost",
    "pull.rpm",
)
"""The questions at which a table may be pasted."""
_NUMBERS = re.compile(r"\d+(?:[.,]\d+)?")
_OF_A_TABLE = 3
"""So many numbers in one pasted line are more than one answer."""


def is_table(text: str) -> bool:
    """Whether a pasted text is a table, on one line or many."""
    lines = text.strip().splitlines()
    return len(lines) > 1 or len(_NUMBERS.findall(text)) >= _OF_A_TABLE


def one_line(text: str) -> str:
    """A pasted text as one line, safe to put into a field."""
    joined = " ".join(line.strip() for line in text.strip().splitlines())
    return "".join(sign for sign in joined if sign.isprintable())


def is_free_text(key: str) -> bool:
    """Whether a question takes words of one's own."""
    try:
        return field_at(key).type in ("text", "note")
    except KeyError:
        return False
