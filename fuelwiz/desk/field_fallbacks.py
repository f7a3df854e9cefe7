"""What stands in a field that nobody has filled: its fallback as the file would say it."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from fuelwiz.advice import Result
from fuelwiz.desk.field_numbers import sensible
from fuelwiz.desk.field_specs import AMPS, spec_at
from fuelwiz.desk.plain import Plain, value_at, value_path
from fuelwiz.physics.demand import IDLE_SHARE
from fuelwiz.session import USUAL_VOLTS, Session, fallback_text, validate
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.next_goal import next_session
from fuelwiz.units import from_si

_DEPENDS_ON = (
    ("engine", "induction"),
    ("engine", "cylinders"),
    ("pressure", "reference"),
    ("pressure", "regulator"),
    ("pump", "count"),
    ("pump", "place"),
    ("wiring", "return_path"),
)


def fallback_in(plain: Plain, path: str, result: Result | None, loaded: bool) -> str | None:
    """The fallback of a field; None where it has none, or where what it is about is not there.

    Args:
        plain: what is told so far.
        path: of the field.
        result: the answer so far, for what is calculated.
        loaded: whether it may be found out by way of a session, which loads the units.
    """
    if not _item_is_there(plain, path):
        return None
    if path == "show_power":
        return "kW" if plain.get("show_units") == "metric" else "hp"
    if not loaded:
        return spec_at(path).fallback_text
    calculated = _calculated(path, result)
    if calculated is not None:
        return calculated
    if (
        ".fittings." in path
        or ".points." in path
        or ".change" in path
        or path.startswith(("pump.current.", f"{AMPS}."))
    ):
        return None
    return fallback_text(_any_session(tuple(value_at(plain, at) for at in _DEPENDS_ON)), path)


def _item_is_there(plain: Plain, path: str) -> bool:
    """A run or filter that is not there has no fallbacks; the pump's first curve is asked for before it is there."""
    at = value_path(path)
    for length, part in enumerate(at, 1):
        if isinstance(part, int) and value_at(plain, at[:length]) is None:
            return at[:2] == ("pump", "curve")
    return True


def _calculated(path: str, result: Result | None) -> str | None:
    """A fallback that the figures say."""
    if result is None:
        return None
    figures = result.figures
    if path == "engine.idle_fuel":
        return f"{sensible(from_si(figures.demand.volume_flow_m3_s * IDLE_SHARE, 'gal/h'))} gal/h"
    if path == "engine.bsfc":
        return next((one.value for one in figures.assumed if one.key == path), None)
    if path in ("goal.next_boost", "goal.next_induction"):
        then = next_session(FuelSystem(result.session))
        if then is None:
            return None
        boost = f"{sensible(from_si(then.pressure.boost, 'psi'))} psi"
        return boost if path == "goal.next_boost" else then.engine.induction
    if path == "pump.volts":
        return USUAL_VOLTS if figures.wiring is None else f"{figures.wiring.pump_volts_V:.1f} V"
    return None


@lru_cache(maxsize=64)
def _any_session(values: tuple[Any, ...]) -> Session:
    """A session with what fallbacks depend on, whether or not the power is known yet."""
    plain: dict[str, Any] = {
        "format": 1,
        "goal": {"power": "100 hp"},
        "pump": {"curve": [{"points": [["1 psi", "1 gal/h"]]}]},
    }
    for (section, key), value in zip(_DEPENDS_ON, values, strict=True):
        if value is not None:
            plain[section] = {**plain.get(section, {}), key: value}
    if "wiring" in plain:
        plain["wiring"]["supply"] = "13.8 V"
    return validate(plain)
