"""Plain data of small and full builds, and what is said of them."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from fuelwiz.errors import Fault, SessionError
from fuelwiz.session import Session, validate

FULL = Path(__file__).parent / "full.toml"
EXAMPLES = sorted((Path(__file__).parents[1] / "examples").glob("*.toml"))


def full() -> dict[str, Any]:
    """Every section, every kind of key."""
    return tomllib.loads(FULL.read_text(encoding="utf-8"))


def smallest() -> dict[str, Any]:
    """The least that a session file may hold."""
    return {"format": 1, "goal": {"power": "410 hp"}}


def with_value(plain: dict[str, Any], path: str, value: Any) -> dict[str, Any]:
    """The data with one more value; sections and list items on the way are put in where they are missing."""
    at: Any = plain
    *above, last = (int(part) if part.isdecimal() else part for part in path.split("."))
    for depth, part in enumerate(above):
        below = [*above, last][depth + 1]
        empty: Any = [] if isinstance(below, int) else {}
        if isinstance(at, dict):
            at = at.setdefault(str(part), empty)
        else:
            at.extend({} for _ in range(int(part) + 1 - len(at)))
            at = at[part]
    at[last] = value
    return plain


def session(path: str = "", value: Any = None) -> Session:
    """The smallest build, with one more value."""
    return validate(with_value(smallest(), path, value) if path else smallest(), "a build")


def faults(plain: dict[str, Any]) -> dict[str, str]:
    """Key and words of every fault; empty where there is none."""
    return {fault.key: fault.text for fault in fault_list(plain)}


def fault_list(plain: dict[str, Any]) -> tuple[Fault, ...]:
    """Every fault."""
    try:
        validate(plain, "a build")
    except SessionError as error:
        return error.faults
    return ()


def value_of(built: Session, path: str) -> Any:
    """The value that a session holds at a path."""
    at: Any = built
    for part in path.split("."):
        at = at[int(part)] if part.isdecimal() else getattr(at, {"lambda": "lambda_"}.get(part, part))
    return at
