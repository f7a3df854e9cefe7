"""What the answer stands on while not all of what is told fits together."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from fuelwiz.desk.fields import leaf_length
from fuelwiz.desk.plain import Plain, Way, put, taken_out, value_at, way
from fuelwiz.errors import Fault, SessionError
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
_MOST_PASSES = 4


@dataclass(frozen=True, slots=True)
class Standing:
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


def standing(plain: Plain, good: Plain | None, name: str) -> Standing:
    """The build that is told, or the nearest one that can be.

    What is at fault stands as in `good`, the last data that made a session; what was not there then is left
    out, with the optional section or list entry that cannot be without it.
    """
    told = for_file(plain)
    try:
        return Standing(validate(told, name), told, ())
    except SessionError as error:
        faults = error.faults
    known, wrong, near = good, faults, told
    for _ in range(_MOST_PASSES):
        near = _mended(near, known, wrong)
        try:
            return Standing(validate(near, name), near, faults)
        except SessionError as error:
            known, wrong = None, error.faults
    return Standing(None, None, faults)


def _mended(plain: Plain, good: Plain | None, faults: Iterable[Fault]) -> Plain:
    """The data with each fault put right as far as that goes; list entries last to first, so that numbers hold."""
    ways = {_value_way(way(fault.key)) for fault in faults}
    for at in sorted(ways, key=lambda at: tuple((isinstance(part, int), part) for part in at), reverse=True):
        plain = _put_right(plain, good, at)
    return plain


def _value_way(at: Way) -> Way:
    """The way to the whole value that a fault lies in."""
    return at[: leaf_length(at) or len(at)]


def _put_right(plain: Plain, good: Plain | None, at: Way) -> Plain:
    stood, stands = value_at(good, at) if good is not None else None, value_at(plain, at)
    if stood is not None and stood != stands:
        back: Plain = put(plain, at, stood)
        return back
    if at == ("fuel", "kind") or (stands is None and at[:1] == ("fuel",)):
        return (
            taken_out(plain, ("fuel",), keep_sections=True)
            if good is None
            else _section_of(good, plain, "fuel")
        )
    if stands is None:
        at = _removable(at)
    return taken_out(plain, at, keep_sections=True) if at else plain


def _section_of(good: Plain, plain: Plain, section: str) -> Plain:
    if section in good:
        return {**plain, section: good[section]}
    return taken_out(plain, (section,), keep_sections=True)


def _removable(at: Way) -> Way:
    """The nearest list entry or optional section that a way leads into; nothing where there is none."""
    for length in range(len(at), 0, -1):
        if isinstance(at[length - 1], int) or at[:length] in _OPTIONAL:
            return at[:length]
    return ()
