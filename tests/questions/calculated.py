"""Short ways to what the program comes to, in US units, for checks on figures in the help."""

from __future__ import annotations

import json
import re
import tomllib
from dataclasses import fields
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from fuelwiz import units
from fuelwiz.facts import bore_m
from fuelwiz.physics import demand, fittings, fuel, inlet, line, wire
from fuelwiz.questions import catalogue
from fuelwiz.session import apply_change, validate
from fuelwiz.sizing import first_figures
from fuelwiz.sizing.figures import Figures, SizeFigures

QUESTIONS = catalogue()
COUPE = tomllib.loads((Path(__file__).parents[1] / "examples" / "hill-climb-coupe.toml").read_text("utf-8"))
HOT_K = units.parse("104 °F", "temperature")
WIRED = {"supply": "13.8 V", "connections": "0.15 V", "wire": "12 AWG", "length": "14 ft"}


def claimed(key: str, phrase: str) -> Any:
    """The figure that stands for # in a phrase of a question, as near as half of its last digit."""
    question = QUESTIONS[key]
    text = " ".join(
        [question.why, *(getattr(question.help, part.name) for part in fields(question.help))]
    ).replace("\u00a0", " ")
    found = re.findall(re.escape(phrase).replace(r"\#", r"(\d+(?:\.\d+)?)"), text)
    assert len(found) == 1, f"{phrase!r} stands {len(found)} times in: {text}"
    decimals = len(found[0].partition(".")[2])
    return pytest.approx(float(found[0]), abs=0.5001 * 10**-decimals)


@cache
def _figures(changes: str, wiring: str) -> Figures:
    plain = {**COUPE, "feed": {**COUPE["feed"], "chosen": "-8"}}
    if wiring != "{}":
        plain["pump"] = {key: value for key, value in COUPE["pump"].items() if key != "volts"}
        plain["wiring"] = json.loads(wiring)
    return first_figures(validate(apply_change(plain, json.loads(changes)), "coupe"))


def figures(changes: dict[str, Any] | None = None, **wiring: Any) -> Figures:
    """The coupe through -8 with some answers changed; with a wiring, the volts are those that it leaves."""
    return _figures(json.dumps(changes or {}), json.dumps(wiring))


def size(name: str, changes: dict[str, Any] | None = None) -> SizeFigures:
    row = figures(changes).row(name)
    assert row is not None
    return row


def capacity(changes: dict[str, Any] | None = None, **wiring: Any) -> float:
    """What the pump sends through -8, gal/h."""
    return gph(figures(changes, **wiring).pick.capacity_m3_s or 0.0)


def feed_loss_psi(changes: dict[str, Any] | None = None, name: str = "-8") -> float:
    return psi(size(name, changes).feed_loss_Pa or 0.0)


def gph(flow_m3_s: float) -> float:
    return units.from_si(flow_m3_s, "gal/h")


def psi(pressure_pa: float) -> float:
    return units.from_si(pressure_pa, "psi")


def flow_for_100_hp(liquid: fuel.Fuel, induction: str = "turbo") -> float:
    bsfc = demand.usual_bsfc_kg_J(lhv_J_kg=liquid.lhv_J_kg, induction=induction)
    return gph(units.to_si(100, "hp") * bsfc / liquid.density_kg_m3)


def blend(ethanol: float, temperature: str = "104 °F") -> fuel.Fuel:
    return fuel.blend(ethanol=ethanol, temperature_k=units.parse(temperature, "temperature"))


def density(ethanol: float, temperature: str = "104 °F") -> float:
    return blend(ethanol, temperature).density_kg_m3


def vapour_psi(temperature: str) -> float:
    """Of E10."""
    return psi(blend(0.10, temperature).vapour_pressure_pa or 0.0)


def air_psi(altitude_m: float) -> float:
    return psi(inlet.atmosphere_pa(altitude_m))


def velocity_ft_s(flow_gph: float, hose: str, dash: int) -> float:
    flow = units.to_si(flow_gph, "gal/h")
    return units.from_si(line.velocity_m_s(flow_m3_s=flow, bore_m=bore_m(hose, dash)), "ft/s")


def hose_psi(
    flow_gph: float, dash: int, feet: float = 0.0, *, hose: str = "ptfe", k: float = 0.0, **ends: int
) -> float:
    """Loss of warm E85 in a run of hose with its ends."""
    bore, warm = bore_m(hose, dash), blend(0.85)
    run = line.Run(
        bore_m=bore,
        length_m=units.to_si(feet, "ft"),
        roughness_m=10e-6 if hose == "rubber" else 1.5e-6,
        loss_coefficient=k + fittings.sum_of_fittings(ends, bore_m=bore, end_ratio=0.85),
    )
    loss = line.run_loss(
        run,
        flow_m3_s=units.to_si(flow_gph, "gal/h"),
        density_kg_m3=warm.density_kg_m3,
        viscosity_m2_s=warm.viscosity_m2_s,
    )
    return psi(loss.friction_pa + loss.fittings_pa)


def feet_of_hose(kind: str) -> float:
    """How many feet of -8 lose as much as one fitting, at the coupe's demand."""
    end: dict[str, Any] = {kind: 1}
    return hose_psi(79, 8, **end) / hose_psi(79, 8, 1.0)


def open_regulator_psi(flow_gph: float, rated_psi: float = 6.0) -> float:
    return fittings.part_loss_pa(flow_m3_s=flow_gph, rated_flow_m3_s=100, rated_loss_pa=rated_psi)


def filter_share(flow: float) -> float:
    """Loss over rated loss of a clean filter, at a flow over its rated flow."""
    return fittings.filter_loss_pa(flow_m3_s=flow, rated_flow_m3_s=1, rated_loss_pa=1, clogging=1)


def percent_more(found: float, than: float) -> float:
    return 100 * (found / than - 1)


def percent_less(found: float, than: float) -> float:
    return 100 * (1 - found / than)


def duty(**changes: Any) -> float:
    injectors = figures({f"injectors.{key}": value for key, value in changes.items()}).injectors
    assert injectors is not None
    assert injectors.duty is not None
    return 100 * injectors.duty


def warming_fahrenheit(fill: str) -> float:
    heat = figures({"tank.volume": "14.5 gal", "tank.fill": fill}).heat
    assert heat is not None
    return heat.rise_K_per_h * 9 / 5


def end_psi(ratio: float) -> float:
    return feed_loss_psi({"feed.end_ratio": ratio})


def bsfc(induction: str, ethanol: float) -> float:
    """lb/(hp*h)."""
    found = demand.usual_bsfc_kg_J(lhv_J_kg=blend(ethanol).lhv_J_kg, induction=induction)
    return units.from_si(found, "lb/(hp*h)")


def coefficient(kind: str) -> float:
    return fittings.loss_coefficient(kind, bore_m("ptfe", 8), 0.85)


def return_gain_psi(flow_gph: float) -> float:
    """What -8 saves over -6 in a return of 15 ft."""
    return hose_psi(flow_gph, 6, 15, straight=2, exit=1) - hose_psi(flow_gph, 8, 15, straight=2, exit=1)


def wire_ohm(gauge: int) -> float:
    """14 ft out and back in a warm loom."""
    area = wire.awg_area_m2(gauge)
    return wire.loop_resistance_ohm(
        area_m2=area, length_m=units.to_si(14, "ft"), by_chassis=False, temperature_k=HOT_K
    )


def wired(**changes: str) -> float:
    wiring: dict[str, Any] = {**WIRED, **changes}
    return capacity(**wiring)


def flow_share_of_volts(lost: float) -> float:
    """Share of the flow that goes with some of 13.5 V."""
    return 1 - capacity({"pump.volts": f"{13.5 - lost:.4f} V"}) / capacity()
