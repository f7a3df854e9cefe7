"""Where no set would do: the part that is named lets a set in once it stands in the file."""

from __future__ import annotations

from typing import Any

import pytest

from .files import BEGINNING, SAMPLE_PARTS, build, found, plain, pump

HOSE = {"hose": "ptfe", "price": 8, "end": 20}
LONG_RETURN = {
    "sizes": ["-4", "-6", "-8"],
    "run": [{"hose": "ptfe", "length": "60 ft"}],
    "regulator": {"rated_flow": "40 gal/h", "rated_loss": "20 psi"},
}


def gph(flow_m3_s: float | None) -> float:
    assert flow_m3_s is not None
    return flow_m3_s * 3600 / 3.785411784e-3  # NIST SP 811, table B.8


def test_a_pump_of_the_flow_that_is_named_lets_a_set_in() -> None:
    built = build(goal={"power": "900 hp"}, injectors={"rated_flow": "4000 cc/min"}, pump=None)
    built["feed"] = {**built["feed"], "chosen": "-12"}
    parts = {**BEGINNING, "pump": [pump(60, most=1)]}
    short = found(built, parts)
    assert not short.works and short.missing is not None and short.missing.part == "pump"
    assert short.missing.count == 1 and short.missing.flow_m3_s and short.missing.pressure_Pa
    psi = short.missing.pressure_Pa / 6894.757293168361
    ends = (20, 60) if psi <= 60 else (60, 100)
    shares = {20: 1.0, 60: 0.8, 100: 0.45}
    between = (psi - ends[0]) / (ends[1] - ends[0])
    share = shares[ends[0]] + between * (shares[ends[1]] - shares[ends[0]])
    with_it = found(built, {**parts, "pump": [pump(1.05 * gph(short.missing.flow_m3_s) / share, most=1)]})
    assert with_it.works


@pytest.mark.parametrize(
    ("sections", "hoses", "part", "size"),
    [
        ({}, ["-4"], "feed", "-8"),
        ({"return_line": LONG_RETURN}, [], "regulator", None),
    ],
)
def test_hose_and_regulator(sections: dict[str, Any], hoses: list[str], part: str, size: str | None) -> None:
    built = build(**sections)
    if hoses:
        built["feed"] = {**built["feed"], "sizes": ["-4", "-8"], "chosen": "-4"}
    parts = {**plain(SAMPLE_PARTS), "hose": [{**HOSE, "size": each} for each in hoses]}
    parts.pop("regulator")
    short = found(built, parts)
    assert short.missing is not None and (short.missing.part, short.missing.size) == (part, size)
    if part == "feed":
        more = {**parts, "hose": [*parts["hose"], {**HOSE, "size": size}]}
    else:
        flow, loss = short.missing.flow_m3_s, short.missing.pressure_Pa
        more = {**parts, "regulator": [{"rated_flow": f"{gph(flow)} gal/h", "rated_loss": f"{loss} Pa"}]}
    assert found(built, more).works


def test_nothing_is_named_where_a_set_would_do_or_more_than_one_thing_is_short() -> None:
    assert found(build(), plain(SAMPLE_PARTS)).missing is None
    built = build(goal={"power": "3000 hp"}, injectors={"rated_flow": "200 cc/min"})
    assert found(built, {**BEGINNING, "pump": [pump(60, most=1)]}).missing is None
