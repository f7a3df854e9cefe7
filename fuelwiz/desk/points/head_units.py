"""The unit of a row in a table of points: that of its first cell, whatever the build is shown in."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from fuelwiz import units
from fuelwiz.desk.field_numbers import split_or_whole
from fuelwiz.desk.field_specs import spec_at, unit_of
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.desk.state import State
from fuelwiz.session import FieldSpec
from fuelwiz.shown_units import unit_sign
from fuelwiz.units import UnitSystem

_CELL = re.compile(
    r"(?P<before>(?:pump\.(?:curve\.\d+\.points|current|amps)|pull)\.)\d+(?P<after>(?:\.\w+)?)"
)


def spec_in_row(state: State, path: str, system: UnitSystem) -> FieldSpec:
    """What is declared about a field; in a table its unit is the one that the row's first cell was given in."""
    spec = spec_at(path)
    cell = _CELL.fullmatch(path)
    if cell is None or spec.kind is None:
        return spec
    first = f"{cell['before']}0{cell['after']}"
    text = state.raw.get(first)
    if text is None:
        text = str(value_at(state.plain, value_path(first)) or "")
    return _in_unit(spec, split_or_whole(text)[1], system)


def unit_in_row(state: State, path: str, system: UnitSystem) -> str:
    """The unit that a bare number takes there, as it is shown."""
    return unit_sign(unit_of(spec_in_row(state, path, system), system))


@lru_cache(maxsize=256)
def _in_unit(spec: FieldSpec, unit: str, system: UnitSystem) -> FieldSpec:
    if not unit or unit == unit_of(spec, system) or spec.kind not in units.kinds_of(unit):
        return spec
    return replace(spec, us_unit=unit, metric_unit=unit)
