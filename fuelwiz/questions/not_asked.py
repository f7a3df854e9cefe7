"""What people look for and no question asks: why not, and the question nearest to it."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path

from fuelwiz.record import record


@record
class NotAsked:
    """What is looked for, the further words that it is found by, why it is not asked, and the nearest question."""

    name: str
    words: str
    say: str
    nearest: str


@cache
def not_asked() -> tuple[NotAsked, ...]:
    """All of it, in the order of the steps."""
    said = tomllib.loads(Path(__file__).with_name("not_asked.toml").read_text(encoding="utf-8"))
    return tuple(NotAsked(name, **entry) for name, entry in said.items())
