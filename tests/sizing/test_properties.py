"""What must never happen to the figures, whatever the build: worse parts do not improve what they should worsen."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from . import builds
from .builds import EXAMPLES, figures

NEAR = 1e-9

powers = st.floats(150, 900)
boosts = st.floats(0, 40)
ethanols = st.integers(0, 100)


def build(power: float, boost: float, ethanol: int, **changes: Any) -> dict[str, Any]:
    """The full session with another goal, boost and fuel, and values by path."""
    told = {"goal.power": f"{power!r} hp", "pressure.boost": f"{boost!r} psi", "fuel.ethanol": f"{ethanol} %"}
    return builds.build(
        "full-session", told | {path.replace("__", "."): value for path, value in changes.items()}
    )


@settings(max_examples=25, deadline=None)
@given(powers, boosts, ethanols)
def test_a_bigger_bore_never_loses_more(power: float, boost: float, ethanol: int) -> None:
    rows = figures(build(power, boost, ethanol)).sizes
    for smaller, larger in pairwise(rows):
        assert larger.line_loss_Pa <= smaller.line_loss_Pa * (1 + NEAR)
        assert larger.velocity_m_s < smaller.velocity_m_s
        assert larger.capacity_m3_s >= smaller.capacity_m3_s * (1 - NEAR)


@settings(max_examples=25, deadline=None)
@given(powers, st.floats(0, 30), st.floats(0, 10), ethanols)
def test_more_boost_never_raises_capacity(power: float, boost: float, more: float, ethanol: int) -> None:
    low, high = figures(build(power, boost, ethanol)), figures(build(power, boost + more, ethanol))
    for before, after in zip(low.sizes, high.sizes, strict=True):
        assert after.capacity_m3_s <= before.capacity_m3_s * (1 + NEAR)


@settings(max_examples=25, deadline=None)
@given(powers, boosts, st.floats(9, 15), st.floats(0, 3))
def test_more_volts_never_lower_capacity(power: float, boost: float, volts: float, more: float) -> None:
    low = figures(build(power, boost, 70, pump__volts=f"{volts!r} V"))
    high = figures(build(power, boost, 70, pump__volts=f"{volts + more!r} V"))
    for before, after in zip(low.sizes, high.sizes, strict=True):
        assert after.capacity_m3_s >= before.capacity_m3_s * (1 - NEAR)


@settings(max_examples=15, deadline=None)
@given(powers, boosts, st.floats(1, 5), st.floats(1, 4))
def test_a_dirtier_filter_never_helps(power: float, boost: float, dirt: float, more: float) -> None:
    clean = figures(build(power, boost, 70, feed__filter__0__clogging=dirt))
    dirty = figures(build(power, boost, 70, feed__filter__0__clogging=dirt * more))
    for before, after in zip(clean.sizes, dirty.sizes, strict=True):
        assert after.capacity_m3_s <= before.capacity_m3_s * (1 + NEAR)
        assert after.feed_loss_Pa >= before.feed_loss_Pa * (1 - NEAR)


@settings(max_examples=15, deadline=None)
@given(powers, boosts, st.floats(1, 40), st.floats(0, 40))
def test_a_longer_wire_never_helps(power: float, boost: float, feet: float, more: float) -> None:
    plain = build(power, boost, 70)
    del plain["pump"]["volts"]
    plain["wiring"]["length"] = f"{feet!r} ft"
    short = figures(plain)
    plain["wiring"]["length"] = f"{feet + more!r} ft"
    long = figures(plain)
    for before, after in zip(short.sizes, long.sizes, strict=True):
        assert after.capacity_m3_s <= before.capacity_m3_s * (1 + NEAR)
        assert after.pump_volts_V <= before.pump_volts_V + NEAR


@settings(max_examples=15, deadline=None)
@given(powers, st.floats(0, 60), st.floats(0, 25), ethanols)
def test_hotter_fuel_is_nearer_to_boiling(power: float, degrees: float, more: float, ethanol: int) -> None:
    cool = figures(build(power, 20, ethanol, fuel__temperature=f"{degrees!r} degC"))
    hot = figures(build(power, 20, ethanol, fuel__temperature=f"{degrees + more!r} degC"))
    assert hot.fuel.vapour_pressure_Pa >= cool.fuel.vapour_pressure_Pa
    assert (
        hot.inlet.vapour_margin_Pa <= cool.inlet.vapour_margin_Pa + 2000
    )  # less flow through a thinner strainer


@settings(max_examples=15, deadline=None)
@given(powers, boosts, ethanols)
def test_a_smaller_return_never_holds_better(power: float, boost: float, ethanol: int) -> None:
    rows = figures(build(power, boost, ethanol)).return_line.sizes
    for smaller, larger in pairwise(rows):
        assert larger.back_pressure_Pa <= smaller.back_pressure_Pa * (1 + NEAR)
        assert larger.creep_Pa <= smaller.creep_Pa + 1
        assert larger.holds or not smaller.holds


@settings(max_examples=15, deadline=None)
@given(powers, boosts, ethanols)
def test_only_less_ethanol_leaves_more_to_spare(power: float, boost: float, ethanol: int) -> None:
    plain = build(power, boost, ethanol)
    plain["stress"] = {}
    found = figures(plain)
    for case in found.stress:
        if case.case in ("less ethanol", "hot fuel"):
            continue
        assert case.margin <= found.pick.margin + 1e-9, case


@settings(max_examples=40, deadline=None)
@given(st.sampled_from([path.stem for path in EXAMPLES.glob("*.toml")]), st.sets(st.integers(0, 12)))
def test_an_unfinished_build_has_figures_too(name: str, left_out: set[int]) -> None:
    plain = builds.build(name)
    sections = [key for key in plain if key not in ("format", "goal", "stress")]
    for number, key in enumerate(sections):
        if number in left_out:
            del plain[key]
    plain.pop("stress", None)
    found = figures(plain)
    assert found.sizes and found.verdict.size in [row.size for row in found.sizes]
    for row in found.sizes:
        if row.ladder is not None:
            assert row.pump_rise_Pa is not None
            rungs = [getattr(row.ladder, f"{name}_Pa") for name in LADDER]
            assert abs(sum(rungs) - row.pump_rise_Pa) < 1e-6 * max(abs(row.pump_rise_Pa), 1)


LADDER = ("base", "boost", "filters", "friction", "fittings", "parts", "rise", "inlet")
