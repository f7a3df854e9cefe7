"""Every public function of the physics shows how it is used, and what it shows is so."""

from __future__ import annotations

import doctest
import importlib
import inspect
import pkgutil
from types import ModuleType

import pytest

import fuelwiz.physics

NAMES = sorted(module.name for module in pkgutil.iter_modules(fuelwiz.physics.__path__))


def module(name: str) -> ModuleType:
    return importlib.import_module(f"fuelwiz.physics.{name}")


@pytest.mark.parametrize("name", NAMES)
def test_what_the_docstrings_show_is_so(name: str) -> None:
    assert doctest.testmod(module(name)).failed == 0


@pytest.mark.parametrize("name", NAMES)
def test_every_public_function_and_class_shows_its_use(name: str) -> None:
    found = module(name)
    silent = [
        word
        for word, thing in vars(found).items()
        if not word.startswith("_")
        and (inspect.isfunction(thing) or inspect.isclass(thing) or hasattr(thing, "cache_info"))
        and thing.__module__ == found.__name__
        and ">>>" not in (thing.__doc__ or "")
    ]
    assert silent == []
