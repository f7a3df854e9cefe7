"""What is taken from fluids: loaded when it is first asked for, since a screen can stand before that."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from importlib import import_module
from typing import Any


@cache
def from_fluids(module: str) -> Any:
    """A module of fluids, "friction" or "fittings".

    fluids does without numpy where there is none, and gives the same for plain floats. We use nothing else of
    it, and numpy takes longer to load than all that a command needs.

    >>> round(from_fluids("fittings").entrance_sharp(), 2)
    0.57
    """
    with _numpy_out_of_sight():
        return import_module(f"fluids.{module}")


@contextmanager
def _numpy_out_of_sight() -> Iterator[None]:
    if "numpy" in sys.modules:
        yield
        return
    sys.modules["numpy"] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        del sys.modules["numpy"]
