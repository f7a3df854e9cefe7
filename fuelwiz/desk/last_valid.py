"""What the result is calculated from while not all of what is told fits together."""

from __future__ import annotations

from collections.abc import Iterable

from fuelwiz.desk.field_specs import leaf_length
from fuelwiz.desk.plain import KeyPath, Plain, put, taken_out, value_at, value_path
from fuelwiz.errors import Fault, SessionError
from fuelwiz.record import record
from fuelwiz.session import Session, validate

_OPTIONAL = {
    ("pump",),
    ("wiring",),
    ("inlet",),
    ("inlet", "strainer"),
    ("return_line",),
    ("return_line", "regulator"),
    ("surge",),
    ("injectors",),
}
_DIFFERS = "change"
_MOST_PASSES = 4


@record
class LastValid:
    """A session and the plain data that it was made of; `faults` is what is wrong with what was told.

    Session and data are None where no build can be made of it.
    """

    session: Session | None
    plain: Plain | None
    faults: tuple[Fault, ...]


def for_file(plain: Plain) -> Plain:
    """What a file can hold: a pump is no pump until its curve has a point, so the section is left out."""
    curves = value_at(plain, ("pump", "curve")) or ()
    if "pump" not in plain or any(curve.get("points") for curve in curves):
        return plain
    return {key: value for key, value in plain.items() if key != "pump"}


def nearest_valid(plain: Plain, good: Plain | None, name: str) -> LastValid:
    """The build that is told, or the nearest one that can be.

    Args:
        plain: what is told.
        good: the last data that made a session. What is at fault stands as it did there; what was not there
            is left out, with the optional section or list entry that cannot be without it.
        name: of a build that gives none.
    """
    near = for_file(plain)
    try:
        return LastValid(validate(near, name), near, ())
    except SessionError as error:
        faults = error.faults
    known, remaining = good, faults
    for _ in range(_MOST_PASSES):
        near = _mended(near, known, remaining)
        try:
            return LastValid(validate(near, name), near, faults)
        except SessionError as error:
            known, remaining = None, error.faults
    return LastValid(None, None, faults)


def _mended(plain: Plain, good: Plain | None, faults: Iterable[Fault]) -> Plain:
    """The data with each fault put right as far as that goes; list entries last to first, so that numbers hold."""
    key_paths = {_whole_value(value_path(fault.key)) for fault in faults}
    for key_path in sorted(key_paths, key=_order, reverse=True):
        plain = _put_right(plain, good, key_path)
    return plain


def _order(key_path: KeyPath) -> tuple[tuple[bool, str | int], ...]:
    return tuple((isinstance(part, int), part) for part in key_path)


def _whole_value(key_path: KeyPath) -> KeyPath:
    """The path of the whole value that a fault lies in."""
    return key_path[: leaf_length(key_path) or len(key_path)]


def _put_right(plain: Plain, good: Plain | None, key_path: KeyPath) -> Plain:
    stood, stands = value_at(good, key_path) if good is not None else None, value_at(plain, key_path)
    is_no_day = stands is None and key_path[-1] == _DIFFERS  # without an answer that differs it is like today
    if stood is not None and stood != stands and not is_no_day:
        back: Plain = put(plain, key_path, stood)
        return back
    if key_path == ("fuel", "kind") or (stands is None and key_path[:1] == ("fuel",)):
        if good is not None and "fuel" in good:
            return {**plain, "fuel": good["fuel"]}
        return taken_out(plain, ("fuel",), keep_sections=True)
    if stands is None:
        key_path = _removable(key_path)
    return taken_out(plain, key_path, keep_sections=True) if key_path else plain


def _removable(key_path: KeyPath) -> KeyPath:
    """The nearest list entry or optional section that a path leads into; nothing where there is none."""
    for length in range(len(key_path), 0, -1):
        if isinstance(key_path[length - 1], int) or key_path[:length] in _OPTIONAL:
            return key_path[:length]
    return ()
