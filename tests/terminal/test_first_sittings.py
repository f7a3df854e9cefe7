"""Two people's first sittings, key by key on a real terminal: every fact gets in at the first pass."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from .terminal import Terminal, wizard

MOST_KEYS = 250


class Hands(Terminal):
    """A terminal whose keys are counted; pasting is one."""

    keys = 0

    def tell(self, *keys: str) -> None:
        """Press keys by name, or type a text key by key."""
        for key in keys:
            self.keys += 1 if key in KEYS else len(key)
            self.press(key)


def facts_of(file: Path) -> dict[str, Any]:
    return tomllib.loads(file.read_text(encoding="utf-8"))
