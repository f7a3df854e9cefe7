"""Everything that is refused or wanting in a build, by the field where it is to be put right."""

from __future__ import annotations

from collections.abc import Iterable

from fuelwiz.desk.curves import half_points
from fuelwiz.desk.edits import ALWAYS_WANTED, refusal_of
from fuelwiz.desk.errors import NoSuchField
from fuelwiz.desk.fields import spec_at
from fuelwiz.desk.state import State
from fuelwiz.desk.words import Refusal, of_fault
from fuelwiz.errors import Fault
from fuelwiz.session import FieldSpec
from fuelwiz.units import UnitSystem


def all_refused(state: State, faults: Iterable[Fault], system: UnitSystem) -> dict[str, Refusal]:
    """Why each field is refused; first what cannot be read, then what is wanting, then what does not fit together."""
    found: dict[str, Refusal] = {}
    for path in state.raw:
        refusal = refusal_of(state, path, system)
        if refusal is not None:
            found[path] = refusal
    for path, refusal in half_points(state):
        found.setdefault(path, refusal)
    for fault in faults:
        path = _field_of_fault(fault.key)
        if path not in ALWAYS_WANTED:
            found.setdefault(path, of_fault(path, _spec(path), fault))
    return found


def _field_of_fault(key: str) -> str:
    """The field to put a fault right in: a suction hose without a size wants one; a pump, its first point."""
    if key.startswith("inlet.run.") and key.rpartition(".")[2].isdecimal():
        return f"{key}.size"
    return key


def _spec(path: str) -> FieldSpec | None:
    try:
        return spec_at(path)
    except NoSuchField:
        return None
