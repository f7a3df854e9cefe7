"""Figures in the help are what the program itself comes to, to the digits printed.

The texts are read, not repeated: each check finds the figure in its sentence. The invented pump and car are
those of tests/examples/hill-climb-coupe.toml. Whether the program is right is checked elsewhere, against
outside sources.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Any

import pytest

from fuelwiz import units
from fuelwiz.physics import fuel, line

from .calculated import (
    HOT_K,
    WIRED,
    air_psi,
    blend,
    bsfc,
    capacity,
    claimed,
    coefficient,
    density,
    duty,
    end_psi,
    feed_loss_psi,
    feet_of_hose,
    filter_share,
    flow_for_100_hp,
    flow_share_of_volts,
    hose_psi,
    open_regulator_psi,
    percent_less,
    percent_more,
    psi,
    return_gain_psi,
    vapour_psi,
    velocity_ft_s,
    warming_fahrenheit,
    wire_ohm,
    wired,
)

ONE_POINT = {"pump.curve.0.points": [["40 psi", "112 gal/h"]]}
AT_12_V = {"pump.curve.0.voltage": "12 V"}
SMALL_FILTER = {"feed.filter.0.rated_flow": "60 gal/h"}
DIRTY = {"feed.filter.0.clogging": 4}
MORE_LOSS = {"feed.constant_loss": "2 psi"}


CHASSIS: dict[str, Any] = {**WIRED, "return_path": "chassis"}
TWINS = {"pump.count": 2}
Claim = tuple[str, str, Callable[[], float]]
DEMAND: list[Claim] = [
    ("goal.power", "the pump about # gal/h short", lambda: flow_for_100_hp(blend(0.10))),
    ("goal.power_at", "is about # hp at the crank", lambda: 400 / 0.85),
    ("goal.power_at", "comes out # % too small", lambda: percent_less(400, 400 / 0.85)),
    ("goal.driveline_loss", "340 at the wheels is # at", lambda: 340 / 0.85),
    ("goal.driveline_loss", "look # % smaller", lambda: percent_less(1 / 0.90, 1 / 0.80)),
    ("goal.reserve", "80 gal/h with 15 % needs # gal/h", lambda: 80 * 1.15),
    (
        "engine.induction",
        "burned # % less than",
        lambda: percent_less(bsfc("none", 0.0), bsfc("turbo", 0.0)),
    ),
    ("engine.induction", "gasoline about #,", lambda: bsfc("none", 0.0)),
    ("engine.bsfc", "a turbo takes # lb/hp·h on E10", lambda: bsfc("turbo", 0.10)),
    ("engine.bsfc", "on E10 and # lb/hp·h on E85", lambda: bsfc("turbo", 0.85)),
    ("engine.bsfc", "demand look # % smaller", lambda: percent_less(0.55, 0.65)),
    ("goal.next_boost", "15 psi at 500 hp becomes # psi", lambda: (air_psi(0) + 15) * 600 / 500 - air_psi(0)),
    ("engine.idle_fuel", "the return line by # %", lambda: 100 * (1 - 0.98**2)),
    ("engine.lambda", "shows # % less air", lambda: percent_less(0.80, 0.85)),
    ("fuel.which", "100 hp # gal/h of E10", lambda: flow_for_100_hp(blend(0.10))),
    ("fuel.which", "gal/h of E10, # of E85", lambda: flow_for_100_hp(blend(0.85))),
    ("fuel.which", "# of methanol", lambda: flow_for_100_hp(fuel.pure("methanol", temperature_k=HOT_K))),
    (
        "fuel.which",
        "filled with E85 is # % short",
        lambda: percent_less(flow_for_100_hp(blend(0.10)), flow_for_100_hp(blend(0.85))),
    ),
    ("fuel.ethanol", "E85 holds # MJ/kg", lambda: blend(0.85).lhv_J_kg / 1e6),
    ("fuel.ethanol", "MJ/kg, E10 #", lambda: blend(0.10).lhv_J_kg / 1e6),
    ("fuel.ethanol", "holds # % of gasoline's", lambda: 100 * blend(1.0).lhv_J_kg / blend(0.0).lhv_J_kg),
    (
        "fuel.ethanol",
        "system is short by # %",
        lambda: percent_less(flow_for_100_hp(blend(0.51)), flow_for_100_hp(blend(0.85))),
    ),
    ("fuel.temperature", "hides # % of flow", lambda: percent_more(density(0.1), density(0.1, "122 °F"))),
    ("fuel.temperature", "and # psi of E10's", lambda: vapour_psi("122 °F") - vapour_psi("104 °F")),
    ("fuel.lhv", "demand look # % smaller", lambda: percent_less(1 / 1.1, 1)),
]
PRESSURE: list[Claim] = [
    ("pressure.boost", "43.5 psi and 22 psi make # psi", lambda: 43.5 + 22),
    ("pressure.base", "injectors spray # % more", lambda: percent_more((58 / 43.5) ** 0.5, 1)),
    ("pressure.base", "the pump works # psi higher", lambda: 58 - 43.5),
    ("pressure.reference", "and flow # % less", lambda: percent_less((23.5 / 43.5) ** 0.5, 1)),
    ("pressure.idle_vacuum", "43.5 psi and 9 psi make # psi", lambda: 43.5 - 9),
    ("pressure.idle_vacuum", "return look # psi worse", lambda: psi(units.to_si(18 - 8, "inHg"))),
    ("pressure.altitude", "forgotten hides # psi", lambda: air_psi(0) - air_psi(units.to_si(6500, "ft"))),
]
PUMP: list[Claim] = [
    ("pump.known", "it comes out # % low", lambda: percent_less(capacity(ONE_POINT), capacity())),
    ("pump.figure.pressure", "40 is true promises # %", lambda: 58 - 40),
    ("pump.curve.voltage", "65 psi look # % stronger", lambda: percent_more(capacity(AT_12_V), capacity())),
    (
        "pump.volts",
        "costs about # % of the flow",
        lambda: percent_less(capacity({"pump.volts": "13 V"}), capacity()),
    ),
    (
        "pump.volts",
        "promises # % more flow",
        lambda: percent_more(capacity(), capacity({"pump.volts": "12.7 V"})),
    ),
    ("pump.volts", "at 65 psi, # gal/h in place", capacity),
    ("pump.volts", "gal/h in place of #", lambda: capacity({"pump.volts": "12.7 V"})),
    ("pump.arrangement", "at 65 psi: # gal/h in parallel", lambda: capacity(TWINS)),
    (
        "pump.arrangement",
        "in parallel, # in series",
        lambda: capacity({**TWINS, "pump.arrangement": "series"}),
    ),
    (
        "pump.current",
        "14 ft of 12 AWG: about # % of the flow",
        lambda: 100 * flow_share_of_volts(wire_ohm(12) * 5),
    ),
]
LINES: list[Claim] = [
    ("feed.length", "E85 hides # psi in a -6", lambda: hose_psi(79, 6, 10)),
    ("feed.length", "in a -6 and # psi in a -8", lambda: hose_psi(79, 8, 10)),
    ("feed.hoses", "about a foot of hose, # psi in a -8", lambda: 2 * hose_psi(79, 8, straight=1)),
    ("feed.bends", "90° end counts like # ft", lambda: feet_of_hose("swept_90")),
    ("feed.bends", "a straight one like # ft", lambda: feet_of_hose("straight")),
    ("feed.bends", "a sharp elbow like # ft", lambda: feet_of_hose("forged_90")),
    (
        "feed.filter",
        "entered as a 120 one hides # psi",
        lambda: feed_loss_psi(SMALL_FILTER) - feed_loss_psi(),
    ),
    (
        "feed.run.hose",
        "nominal shows # psi where",
        lambda: feed_loss_psi({"feed.run.0.hose": "nominal"}, "-6"),
    ),
    ("feed.run.hose", "psi where # is true, at 79", lambda: feed_loss_psi({}, "-6")),
    ("feed.run.fittings", "forgotten hide # psi in a -8", lambda: hose_psi(79, 8, forged_90=2)),
    ("feed.run.fittings", "in a -8 and # psi in a -6", lambda: hose_psi(79, 6, forged_90=2)),
    ("feed.run.fittings", "straight has a K of #", lambda: coefficient("straight")),
    ("feed.run.fittings", "0.46, 90° #", lambda: coefficient("swept_90")),
    ("feed.run.fittings", "forged 90° #", lambda: coefficient("forged_90")),
    ("feed.run.fittings", "tee side #", lambda: coefficient("tee_branch")),
    ("feed.run.rise", "gravity × rise: # psi", lambda: psi(density(0.85) * 9.80665 * 0.3048)),
    ("feed.run.size", "the -6 still runs at # ft/s", lambda: velocity_ft_s(79, "ptfe", 6)),
    ("feed.run.bore", "velocity look # % lower", lambda: percent_less(1 / 1.05**2, 1)),
    ("feed.filters", "forgotten, hides # psi", lambda: 1.5 * filter_share(2 / 3)),
    ("feed.filter.rated_loss", "3 is true hides # psi", lambda: 1.5 * filter_share(2 / 3)),
    ("feed.filter.clogging", "4 is true hides # psi", lambda: feed_loss_psi(DIRTY) - feed_loss_psi()),
    ("feed.filter.clogging", "at 79 gal/h, and # % of", lambda: percent_less(capacity(DIRTY), capacity())),
    ("feed.part", "hides # psi at 79 gal/h", lambda: 0.8 * 0.79**2),
    ("feed.end_ratio", "0.7 is true hides # psi", lambda: end_psi(0.7) - end_psi(0.85)),
    ("feed.constant_loss", "forgotten hides # % of", lambda: percent_less(capacity(MORE_LOSS), capacity())),
]
INLET_AND_RETURN: list[Claim] = [
    ("inlet.strainer.rated_loss", "loses # psi at 93 gal/h", lambda: 0.5 * filter_share(93 / 150)),
    ("inlet.strainer.clogging", "4 is true hides # psi", lambda: 3 * 0.5 * filter_share(93 / 150)),
    ("inlet.fuel_head", "forgotten takes # psi", lambda: 2 * psi(density(0.85) * 9.80665 * 0.3048)),
    ("inlet.line", "a PTFE -8 runs at # ft/s", lambda: velocity_ft_s(93, "ptfe", 8)),
    ("inlet.line", "a -6 at #, too fast", lambda: velocity_ft_s(93, "ptfe", 6)),
    ("inlet.line", "a -10 at #, good", lambda: velocity_ft_s(93, "ptfe", 10)),
    ("inlet.run.hose", "nominal shows # ft/s", lambda: velocity_ft_s(93, "nominal", 8)),
    ("inlet.run.length", "is loss: # psi for each foot", lambda: hose_psi(93, 8, 1)),
    ("inlet.run.fittings", "forgotten, hide # psi", lambda: hose_psi(93, 8, forged_90=2)),
    ("inlet.run.extra_k", "10 forgotten hides # psi", lambda: hose_psi(93, 8, k=10)),
    ("return.length", "PTFE -6 adds # psi", lambda: hose_psi(115, 6, 15)),
    ("return.length", "115 gal/h, # psi in a -8", lambda: hose_psi(115, 8, 15)),
    ("return.hose", "loss: # psi shown", lambda: hose_psi(115, 6, 15, hose="rubber", straight=2, exit=1)),
    ("return.hose", "psi shown where # is true", lambda: hose_psi(115, 6, 15, straight=2, exit=1)),
    ("return_line.chosen", "entered as a -8 hides # psi", lambda: return_gain_psi(115)),
    ("return_line.chosen", "and # psi at the 200 gal/h", lambda: return_gain_psi(200)),
    ("return_line.run.fittings", "forgotten hide # psi", lambda: hose_psi(115, 6, forged_90=2)),
    ("return_line.run.extra_k", "10 forgotten hides # psi", lambda: hose_psi(115, 8, k=10)),
    ("return_line.regulator.rated_flow", "100 gal/h and # psi at 200", lambda: open_regulator_psi(200)),
    (
        "return_line.regulator.rated_loss",
        "100 gal/h hides # psi",
        lambda: open_regulator_psi(200, 10) - open_regulator_psi(200),
    ),
    ("surge.volume", "0.5 gal lasts # s", lambda: 0.5 / 80 * 3600),
    ("surge.volume", "seem to last # s", lambda: 1 / 80 * 3600),
]
WIRING_AND_REST: list[Claim] = [
    ("wiring.supply", "promises # % more flow", lambda: percent_more(wired(supply="14.4 V"), wired())),
    ("wiring.wire", "out and back, lose # V", lambda: 15 * wire_ohm(12)),
    ("wiring.wire", "in 16 AWG # V", lambda: 15 * wire_ohm(16)),
    ("wiring.wire", "16 is true hides # %", lambda: percent_less(wired(wire="16 AWG"), wired())),
    ("wiring.length", "in 12 AWG, hides # %", lambda: percent_less(wired(length="21 ft"), wired())),
    ("wiring.return_path", "half as much: # % more", lambda: percent_more(capacity(**CHASSIS), wired())),
    (
        "wiring.circuits",
        "two circuits, hide # %",
        lambda: percent_less(capacity(TWINS, **WIRED, circuits=1), capacity(TWINS, **WIRED, circuits=2)),
    ),
    (
        "wiring.connections",
        "0.5 is true hides # %",
        lambda: percent_less(wired(connections="0.5 V"), wired()),
    ),
    (
        "wiring.temperature",
        "212 is true hides # %",
        lambda: percent_less(wired(temperature="212 °F"), wired()),
    ),
    ("injectors.rated_pressure", "a duty of # %", lambda: duty(rated_pressure="43.5 psi")),
    ("injectors.rated_pressure", "% where # % is true", lambda: duty(rated_pressure="58 psi")),
    ("injectors.rated_flow", "a duty # % lower", lambda: percent_less(1 / 1.1, 1)),
    ("tank.volume", "E85 by up to # °F", lambda: warming_fahrenheit("50 %")),
    ("tank.fill", "there is: # °F in an hour", lambda: warming_fahrenheit("50 %")),
    ("tank.fill", "in place of # for", lambda: warming_fahrenheit("25 %")),
]


@pytest.mark.parametrize(
    ("key", "phrase", "computed"),
    [*DEMAND, *PRESSURE, *PUMP, *LINES, *INLET_AND_RETURN, *WIRING_AND_REST],
    ids=lambda part: part if isinstance(part, str) else "",
)
def test_a_figure_in_the_help_is_what_the_program_comes_to(key: str, phrase: Any, computed: Any) -> None:
    assert computed() == claimed(key, phrase)


@pytest.mark.parametrize("example_boost", ["10 psi", "30 psi"])
def test_boost_10_psi_too_low_flatters_the_margin(example_boost: str) -> None:
    """Five to ten per cent of flow for 10 psi, as the help on boost says."""
    shift = abs(capacity({"pressure.boost": example_boost}) / capacity() - 1)
    assert 0.05 <= shift <= 0.10


def test_one_size_down_loses_two_to_twelve_times_as_much() -> None:
    ratios = [hose_psi(79, small, 15) / hose_psi(79, large, 15) for large, small in ((10, 8), (8, 6), (6, 4))]
    assert min(ratios) > 2
    assert max(ratios) < 12


def test_vapour_pressure_of_e10_doubles_from_100_to_140_degf() -> None:
    assert vapour_psi("140 °F") / vapour_psi("100 °F") == pytest.approx(2, rel=0.03)


def test_twice_the_viscosity_raises_friction_by_about_a_fifth() -> None:
    factors = [
        line.friction_factor(reynolds=reynolds, relative_roughness=1e-4) for reynolds in (6e3, 12e3, 24e3)
    ]
    rises = [thick / thin - 1 for thick, thin in pairwise(factors)]
    assert all(0.15 < rise < 0.25 for rise in rises)
