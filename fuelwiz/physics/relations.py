"""What is taken from fluids: loaded when it is first asked for, since a screen can stand before that."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from importlib import import_module
from importlib.util import find_spec, module_from_spec
from typing import Any


@cache
def from_fluids(module: str) -> Any:
    """A module of fluids, "friction" or "fittings".

    fluids loads all its modules at once, and numpy where there is one, though neither of these two needs them and they
    give the same for plain floats without; an answer would wait for them longer than for its figures.

    >>> round(from_fluids("fittings").entrance_sharp(), 2)
    0.57
    """
    with _nothing_else_loaded():
        return import_module(f"fluids.{module}")


@contextmanager
def _nothing_else_loaded() -> Iterator[None]:
    """Have fluids stand there with nothing in it yet, and numpy out of its sight, where neither was loaded before."""
    ours = [name for name in ("fluids", "numpy") if name not in sys.modules]
    if "fluids" in ours:
        spec = find_spec("fluids")
        assert spec is not None
        sys.modules["fluids"] = module_from_spec(spec)
    if "numpy" in ours:
        sys.modules["numpy"] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        for name in ours:
            del sys.modules[name]
