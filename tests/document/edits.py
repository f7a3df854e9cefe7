"""A file as a person types it, and what an edit does to it."""

from __future__ import annotations

import difflib
import tomllib
from collections.abc import Callable
from typing import Any

from fuelwiz.document.merge import merge

TYPED = """\
# My wagon.  Do not touch!
format=1
name   = 'Wagon'       # as the club knows it

[goal]
power = "  410   HP "  # dyno, May
# reserve: ask Sam
reserve='15%'

[[feed.run]]           # first
# from the tank
what = "tank to bulkhead"
length = "3.2 m"       # measured twice

# --- second half ---

[[feed.run]]           # second
what = "bulkhead to rail"
length = "4 ft"
fittings = { straight = 2,  swept_90 = 0x1 } # bent by hand

[[feed.filter]]
rated_flow = "120 gal/h"
"""


def changed(text: str, change: Callable[[dict[str, Any]], object]) -> str:
    """The text after a change of its data, which is all that the text then holds."""
    plain = tomllib.loads(text)
    change(plain)
    new = merge(text, plain)
    assert tomllib.loads(new) == plain
    return new


def difference(old: str, new: str) -> list[str]:
    """Lines that went, with -, and lines that came, with +."""
    lines = list(difflib.unified_diff(old.splitlines(), new.splitlines(), n=0, lineterm=""))[2:]
    return [line for line in lines if not line.startswith("@@")]
