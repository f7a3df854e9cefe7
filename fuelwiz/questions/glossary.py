"""The page of words: what the trade's words mean, for those who meet them here first."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from fuelwiz.questions.placeholders import filled
from fuelwiz.units import UnitSystem


@cache
def glossary(system: UnitSystem = "us") -> Mapping[str, str]:
    """What each word means, in the units of the build and in the order of reading: parts first, physics last."""
    said = tomllib.loads(Path(__file__).with_name("glossary.toml").read_text(encoding="utf-8"))
    return MappingProxyType({word: filled(meaning, word, system) for word, meaning in said.items()})
