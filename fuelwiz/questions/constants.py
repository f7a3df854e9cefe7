"""The constants that the texts of the questions speak of, by the names that they are written with."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.facts import table
from fuelwiz.physics import circuit, curve, demand, injector, inlet, line
from fuelwiz.questions.round_figures import EXACT, in_system, readable
from fuelwiz.session import OPEN_REGULATOR, USUAL_BOOST, USUAL_VACUUM
from fuelwiz.shown_units import base_system
from fuelwiz.sizing import thresholds
from fuelwiz.units import UnitSystem, parse, to_si


def constant(name: str, units: UnitSystem) -> str | None:
    """A constant in the units of the build, as it is when asked; None where none goes by that name."""
    worth = CONSTANTS.get(name)
    return None if worth is None else worth(units)


def _percent(share: float) -> str:
    return f"{readable(100 * share, near_enough=EXACT)} %"


def _one_point_slope(units: UnitSystem) -> str:
    each = "psi" if base_system(units) == "us" else "bar"
    return f"{_percent(curve.ONE_POINT_SLOPE * parse(f'1 {each}', 'pressure_change'))} for each {each}"


CONSTANTS: dict[str, Callable[[UnitSystem], str]] = {
    "efficiency without boost": lambda _: _percent(demand.BRAKE_EFFICIENCY["none"]),
    "efficiency with a turbo": lambda _: _percent(demand.BRAKE_EFFICIENCY["turbo"]),
    "efficiency with a supercharger": lambda _: _percent(demand.BRAKE_EFFICIENCY["supercharger"]),
    "idle share": lambda _: _percent(demand.IDLE_SHARE),
    "turbo boost": lambda units: _declared(USUAL_BOOST["turbo"], units),
    "supercharger boost": lambda units: _declared(USUAL_BOOST["supercharger"], units),
    "idle vacuum": lambda units: in_system(parse(USUAL_VACUUM["manifold"], "pressure_change"), "inHg", units),
    "regulator flow": lambda units: _declared(OPEN_REGULATOR["rated_flow"], units),
    "regulator loss": lambda units: _declared(OPEN_REGULATOR["rated_loss"], units),
    "sag limit": lambda _: _percent(thresholds.MOST_SAG),
    "margin outside": lambda units: in_system(inlet.LEAST_VAPOUR_MARGIN_PA["outside"], "psi", units),
    "one point slope": _one_point_slope,
    "usual volts": lambda _: f"{circuit.ASSUMED_VOLTS:.1f} V",
    "other ethanol": lambda _: readable(100 * thresholds.OTHER_ETHANOL),
    "mountain altitude": lambda units: in_system(thresholds.HIGH_ALTITUDE_M, "ft", units),
    "test fluid": lambda _: f"{injector.TEST_FLUID_KG_M3:.0f} kg/m³",
    "laminar below": lambda _: f"{line.LAMINAR_BELOW:.0f}",
    "turbulent from": lambda _: f"{line.TURBULENT_FROM:.0f}",
    "copper": lambda _: f"{100 * table('wire')['temperature_coefficient']:.2f} %",
}


def _declared(text: str, units: UnitSystem) -> str:
    """A quantity as the model declares it, in the units of the build."""
    number, unit = text.split()
    return in_system(to_si(float(number), unit), unit, units)
