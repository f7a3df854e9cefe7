"""Loss coefficients against handbooks; on an end ratio of 1 nothing narrows and the bare fitting is left."""

from __future__ import annotations

import math

import pytest

from fuelwiz.physics.fittings import loss_coefficient

from .reference import VALUES, near, printed, row

COEFFICIENTS = VALUES["loss_coefficient"]


def published(what: str) -> float:
    """A published coefficient that is one number."""
    return float(row(COEFFICIENTS, what=what)["value"])


def crane_factor(bore_m: float) -> float:
    """The friction factor of TP-410 for fittings, told by the tee's 20 fT."""
    return loss_coefficient("tee_run", bore_m, 1.0) / 20


def narrowing(ratio: float) -> float:
    """Into a bore of that part of the hose's and out again, on the narrow one.

    Rennels's sharp contraction (Pipe Flow, 2012, chapter 10) and Borda and Carnot's expansion.
    """
    jet = 1 + 0.622 * (1 - 0.215 * ratio**2 - 0.785 * ratio**5)
    return 0.0696 * (1 - ratio**5) * jet**2 + (jet - 1) ** 2 + (1 - ratio**2) ** 2


@pytest.mark.parametrize(
    ("kind", "bend", "factors"),
    [
        ("straight", 0.0, 0.0),
        ("swept_45", 0.0, -0.5 * (math.pi / 4 * 3 + 6) + 12),
        ("swept_90", 0.0, 12.0),
        ("swept_180", 0.0, math.pi / 4 * 3 + 6 + 12),
        ("forged_90", published("sharp miter 90 deg, Rennels"), 0.0),
    ],
)
def test_on_a_hose_end(kind: str, bend: float, factors: float) -> None:
    """An end loses its narrowing and its bend, both on the narrow bore: 0.85^-4 times that on the hose's own.

    Bends after TP-410 A-30 (from memory), in its friction factor; see the swept ends below for the 1.5 %.
    """
    on_narrow_bore = narrowing(0.85) + bend + factors * crane_factor(0.85 * 8.7e-3)
    assert loss_coefficient(kind, 8.7e-3, 0.85) == near(on_narrow_bore / 0.85**4, 0.015 if factors else 1e-9)


@pytest.mark.parametrize(("kind", "factors"), [("tee_run", 20), ("tee_branch", 60)])
def test_a_tee_is_as_narrow_as_the_ends_on_it(kind: str, factors: int) -> None:
    """TP-410 A-30 (from memory), on the narrow bore: 0.85^-4 times that on the hose's own."""
    on_narrow_bore = factors * crane_factor(0.85 * 8.7e-3)
    assert loss_coefficient(kind, 8.7e-3, 0.85) == near(on_narrow_bore / 0.85**4, 1e-9)


@pytest.mark.parametrize(
    ("kind", "what"), [("entrance", "entrance, square edge, flush"), ("exit", "exit, any")]
)
@pytest.mark.parametrize("end_ratio", [0.6, 1.0])
def test_sharp_edges(kind: str, what: str, end_ratio: float) -> None:
    """TP-410 A-30; White table 6.5 and Cengel table 8-4 (from memory) say the same."""
    assert loss_coefficient(kind, 8.7e-3, end_ratio) == published(what)


@pytest.mark.parametrize(
    ("ratio", "what"), [(0.5, "sudden expansion D1/D2=0.5"), (0.7, "sudden expansion D1/D2=0.7")]
)
def test_straight_end_is_a_contraction_and_an_expansion(ratio: float, what: str) -> None:
    """What is left of Rennels's contraction and ours is Borda and Carnot's expansion, (1 - b^2)^2."""
    contraction = narrowing(ratio) - (1 - ratio**2) ** 2
    on_small_bore = loss_coefficient("straight", 0.01, ratio) * ratio**4
    assert on_small_bore - contraction == near(published(what), 1e-9)


def test_contraction_of_rennels() -> None:
    """Rennels at d/D 0.4, as fluids tests it; the expansion beside it is Borda and Carnot's."""
    on_small_bore = loss_coefficient("straight", 0.01, 0.4) * 0.4**4
    expected = published("sudden contraction d/D=0.4, Rennels")
    assert on_small_bore - (1 - 0.4**2) ** 2 == near(expected, 1e-9)


def test_contraction_against_other_handbooks() -> None:
    """At d/D 0.5 Rennels gives 0.496, over White's 0.42 (1 - b^2), TP-410's 0.5 (1 - b^2) (from memory)."""
    contraction = loss_coefficient("straight", 0.01, 0.5) * 0.5**4 - published("sudden expansion D1/D2=0.5")
    assert contraction == printed(0.496, 3)
    assert published("sudden contraction d/D=0.5, White 0.42(1-b^2)") < 0.5 * (1 - 0.5**2) < contraction


def test_change_of_bore() -> None:
    """TP-410 2-6 and the tests of fluids: on twice the bore a coefficient counts 16 times."""
    narrow, wide = 32.68875692997804, published("K change of basis 32.68875692997804, 10 mm -> 20 mm")
    times = loss_coefficient("tee_run", 0.020, 0.5) / loss_coefficient("tee_run", 0.010, 1.0)
    assert times == near(wide / narrow, 1e-12)


def test_crane_factor_of_a_wide_pipe() -> None:
    """TP-410's fT at 100 mm, as fluids tests it."""
    assert crane_factor(0.1) == near(published("fT of TP-410 at ID 100 mm"), 1e-6)


def test_crane_factor_of_small_bores() -> None:
    """fT at the bores of hoses, below the half inch where TP-410 itself starts; four decimals are printed."""
    entry = row(COEFFICIENTS, what="fT at small bores 4.8/6.4/7.9/8.7/10.3/12.7/15.9 mm")
    bores = [4.8, 6.4, 7.9, 8.7, 10.3, 12.7, 15.9]
    for bore_mm, factor in zip(bores, map(float, entry["value"].split("/")), strict=True):
        assert crane_factor(bore_mm / 1000) == near(factor, 0.02)


def test_crane_factor_of_nominal_sizes() -> None:
    """TP-410 A-27 (2009, from memory): 0.026, 0.022 and 0.019 for 1/2, 1 and 2 in schedule 40 pipe.

    Three decimals are printed, and editions differ by one in the last.
    """
    for bore_in, factor in [(0.622, 0.026), (1.049, 0.022), (2.067, 0.019)]:
        assert crane_factor(bore_in * 25.4e-3) == pytest.approx(factor, abs=0.001)


def test_tees() -> None:
    """TP-410 A-30 (from memory): 60 fT through the branch to 20 fT through the run."""
    assert row(COEFFICIENTS, what="tee, flow through run / branch")["value"] == "20 fT / 60 fT"
    assert loss_coefficient("tee_branch", 0.01, 1.0) == near(60 * crane_factor(0.01), 1e-12)


@pytest.mark.parametrize(("kind", "turns"), [("swept_45", 0.5), ("swept_90", 1.0), ("swept_180", 2.0)])
def test_swept_ends(kind: str, turns: float) -> None:
    """TP-410 A-30 (from memory): 12 fT for 90 degrees on 3 diameters, and for n of them in one bend
    (n - 1)(pi/4 fT r/d + K/2) + K.

    fluids draws a smooth curve through the table of radii, which runs 1 % over it at 3 diameters.
    """
    factor = crane_factor(0.01)
    quarter = 12 * factor
    expected = (turns - 1) * (0.25 * math.pi * factor * 3 + 0.5 * quarter) + quarter
    assert loss_coefficient(kind, 0.01, 1.0) == near(expected, 0.015)


@pytest.mark.parametrize(
    ("kind", "what"),
    [
        ("swept_45", "45 deg standard elbow"),
        ("swept_90", "90 deg standard threaded elbow"),
        ("swept_180", "180 deg return"),
    ],
)
def test_swept_ends_lose_less_than_threaded_elbows(kind: str, what: str) -> None:
    """TP-410 A-30: standard elbows of 16, 30 and 50 fT turn shorter than a swept end."""
    standard = float(row(COEFFICIENTS, what=what)["value"].removesuffix(" fT"))
    assert loss_coefficient(kind, 0.01, 1.0) < standard * crane_factor(0.01)


def test_forged_elbow_is_a_sharp_mitre() -> None:
    """Rennels's mitre of 90 degrees, as fluids tests it; Cengel table 8-4 has 1.1 for it (from memory)."""
    mitre = loss_coefficient("forged_90", 0.01, 1.0)
    assert mitre == near(published("sharp miter 90 deg, Rennels"), 1e-9)
    assert mitre == near(1.1, 0.1)
