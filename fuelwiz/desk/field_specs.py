"""What is declared about the field at a path, inside points, fittings and stress cases too."""

from __future__ import annotations

from functools import cache, lru_cache

from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.plain import KeyPath, Plain, value_at, value_path
from fuelwiz.session import FieldSpec, field_at, leaf_paths, list_key_paths
from fuelwiz.shown_units import of_pair
from fuelwiz.units import UnitSystem

MOST_POINTS = 200
AMPS = "pump.amps"
"""The path of the current in the table of the first curve, before the number of its point."""
NOT_TYPED = frozenset({"format", "kept", "flag", "change", "points", "fittings"})
Cell = tuple[str, int, int]
"""The path of a list of points, the number of a point, and its column."""


@lru_cache(maxsize=2048)
def spec_at(path: str) -> FieldSpec:
    """What is declared about the field at a path.

    Raises:
        NoSuchField: the path leads to no field.
    """
    if amps_number(path) is not None:
        return field_at("pump.current").parts[1]
    parts = value_path(path)
    length = leaf_length(parts)
    if length is None:
        raise NoSuchField(f"there is no {path} in a build")
    return _inside(field_at(".".join(map(str, parts[:length]))), parts[length:], path)


def amps_number(path: str) -> int | None:
    """The point of the first curve that a path asks the current of; None for any other path."""
    above, _, number = path.rpartition(".")
    return int(number) if above == AMPS and number.isdecimal() else None


def leaf_length(key_path: KeyPath) -> int | None:
    """How much of a path leads to a key that holds a value; what is left leads into that value."""
    keys: KeyPath = ()
    for length, part in enumerate(key_path, 1):
        if isinstance(part, int):
            if keys not in list_key_paths() or isinstance(key_path[length - 2], int):
                return None
            continue
        if keys in list_key_paths() and isinstance(key_path[length - 2], str):
            return None
        keys = (*keys, part)
        if ".".join(map(str, keys)) in _leaves():
            return length
    return None


@cache
def _leaves() -> frozenset[str]:
    return frozenset(leaf_paths())


def _inside(spec: FieldSpec, trail: KeyPath, path: str) -> FieldSpec:
    match spec.type, trail:
        case _, ():
            return spec
        case "points", (int(), 0 | 1 as column):
            return spec.parts[column]
        case "fittings", (str(name),) if name in spec.choices:
            return spec.parts[0]
        case "sizes" | "velocities", (int(),):
            return spec.parts[0]
        case "change", (str(changed),):
            return spec_at(changed)
    raise NoSuchField(f"there is no {path} in a build")


def unit_of(spec: FieldSpec, system: UnitSystem) -> str:
    """The unit that a bare number takes, as the file would write it; empty where there is none."""
    return of_pair(spec.us_unit or "", spec.metric_unit or "", system)


def column_units(path: str, system: UnitSystem) -> tuple[str, str]:
    """The units of both columns of a list of points; list numbers in the path are passed over."""
    bare = ".".join(part for part in path.split(".") if not part.isdecimal())
    pressure, other = field_at(bare).parts
    return unit_of(pressure, system), unit_of(other, system)


def cell_of(path: str) -> Cell | None:
    """The cell that a path leads to; None where it leads to no cell of points."""
    parts = path.split(".")
    if len(parts) < 4 or parts[0] != "pump" or not (parts[-1] in {"0", "1"} and parts[-2].isdecimal()):
        return None
    points = ".".join(parts[:-2])
    return (points, int(parts[-2]), int(parts[-1])) if points.endswith((".points", "pump.current")) else None


def place_exists(plain: Plain, path: str) -> bool:
    """Whether a value can be put at the path of a field: in an entry that is there, or in the next one of its list."""
    key_path = value_path(path)
    length = leaf_length(key_path) or 0
    for place in range(length):
        number = key_path[place]
        if isinstance(number, int):
            keys = tuple(part for part in key_path[:place] if isinstance(part, str))
            if number > len(value_at(plain, key_path[:place]) or ()) or number >= list_key_paths()[keys].most:
                return False
    cell = cell_of(path)
    return cell is None or cell[1] < MOST_POINTS
