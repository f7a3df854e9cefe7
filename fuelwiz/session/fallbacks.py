"""Fallbacks: what a key that is left out counts as, those that depend on other keys too."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.demand import IDLE_SHARE
from fuelwiz.session.fields import Section
from fuelwiz.session.hardware import OPEN_REGULATOR
from fuelwiz.session.paths import field_at, key_path_of
from fuelwiz.session.readers import read
from fuelwiz.session.sections import Session
from fuelwiz.session.spec import as_text

USUAL_BOOST = {"turbo": "15 psi", "supercharger": "8 psi", "none": "0 psi"}
USUAL_VOLTS = f"{ASSUMED_VOLTS:.1f} V"
USUAL_VACUUM = {"manifold": "9 psi", "atmosphere": "0 psi"}


def _pumps(session: Session) -> int:
    return 1 if session.pump is None else session.pump.count


def _reference(session: Session) -> str:
    return "manifold" if session.pressure.regulator == "rail" else "atmosphere"


def _connections(session: Session) -> str:
    wiring = session.wiring
    return "0.3 V" if wiring is not None and wiring.return_path == "chassis" else "0.2 V"


def _carries(session: Session) -> str:
    return "all" if session.pump is not None and session.pump.place == "outside" else "each"


_DERIVED: dict[str, Callable[[Session], Any]] = {
    "show_power": lambda session: "hp" if session.show_units == "us" else "kW",
    "pressure.boost": lambda session: USUAL_BOOST[session.engine.induction],
    "pressure.reference": _reference,
    "pressure.idle_vacuum": lambda session: USUAL_VACUUM[session.pressure.reference],
    "pump.running_at_idle": _pumps,
    "bench.pumps": _pumps,
    "wiring.circuits": _pumps,
    "wiring.connections": _connections,
    "inlet.strainer.carries": _carries,
    "inlet.run.carries": _carries,
    "injectors.count": lambda session: session.engine.cylinders,
    "return_line.regulator.rated_flow": lambda session: OPEN_REGULATOR["rated_flow"],
    "return_line.regulator.rated_loss": lambda session: OPEN_REGULATOR["rated_loss"],
}

DERIVED_FALLBACKS = {
    "name": "the name of the file",
    "goal.next_boost": "boost as absolute pressure in the ratio of the powers",
    "goal.next_induction": "as today; a supercharger where boost comes to an engine without",
    "engine.bsfc": "from the fuel's heating value and the efficiency that goes with the induction",
    "engine.idle_fuel": f"{100 * IDLE_SHARE:g} % of the demand",
    "fuel.reid_pressure": "the blend's by table",
    "pressure.boost": (
        f"{USUAL_BOOST['turbo']} with a turbo, {USUAL_BOOST['supercharger']} with a supercharger,"
        f" else {USUAL_BOOST['none']}"
    ),
    "pressure.reference": "manifold with the regulator at the rail, else atmosphere",
    "pressure.idle_vacuum": (
        f"{USUAL_VACUUM['manifold']} with the manifold as reference, else {USUAL_VACUUM['atmosphere']}"
    ),
    "pump.running_at_idle": "as many as there are",
    "pump.kind": "not known: the lower flow of both kinds",
    "pump.volts": f"what the wiring comes to, or {USUAL_VOLTS} without wiring",
    "bench.pumps": "as many as there are",
    "wiring.circuits": "one a pump",
    "wiring.connections": "0.2 V, or 0.3 V with the chassis as return path",
    "feed.run.wall": "0.035 in for a tube named in inches, 1 mm for one in millimeters",
    "inlet.strainer.carries": "all pumps' flow with the pump outside, else each pump's own",
    "inlet.run.carries": "all pumps' flow with the pump outside, else each pump's own",
    "surge.pressure": "that of the tank",
    "injectors.count": "one a cylinder",
    "stress.case.name": "its number",
}
"""Fallbacks that depend on other keys, in words."""


def fallback_text(session: Session, path: str) -> str | None:
    """What the key at a path counts as where it is left out, as the file would say it.

    Args:
        session: the build, for fallbacks that depend on other keys.
        path: of a key with a value, with or without list numbers.

    Returns:
        The text; None where nothing is assumed, or where it is calculated from the figures.

    Raises:
        KeyError: there is no such key.
    """
    key_path = key_path_of(path)
    bare = ".".join(part for part in key_path if isinstance(part, str))
    spec = field_at(bare)
    if bare == "stress.case.name":
        return _case_name(next((part for part in key_path if isinstance(part, int)), 0))
    derived = _DERIVED.get(bare)
    return spec.fallback_text if derived is None else as_text(derived(session))


def fill_in(session: Session, default_name: str) -> Session:
    """The session with the fallbacks filled in that depend on other keys; what the file gave stays noted."""
    _put(session, "name", default_name)
    for path in (
        "pressure.boost",
        "pressure.reference",
        "pressure.idle_vacuum",
        "pump.running_at_idle",
        "wiring.circuits",
        "wiring.connections",
        "injectors.count",
    ):
        section, key = path.split(".")
        if getattr(session, section) is not None:
            _put(getattr(session, section), key, read(field_at(path), _DERIVED[path](session)))
    if session.inlet is not None:
        for part in (session.inlet.strainer, *session.inlet.run):
            if part is not None:
                _put(part, "carries", _carries(session))
    for test in session.bench:
        _put(test, "pumps", _pumps(session))
    for number, case in enumerate(session.stress.case):
        _put(case, "name", _case_name(number))
    return session


def _case_name(number: int) -> str:
    return f"case {number + 1}"


def _put(section: Section, key: str, value: Any) -> None:
    """Fills a key that was left out; nobody has seen the section yet, so it may still be written."""
    if getattr(section, key) is None:
        section.__dict__[key] = value
