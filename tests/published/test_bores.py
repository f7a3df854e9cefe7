"""Bores of hoses and tubes against the tables of the aircraft trade."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.facts import bore_m, table

from .reference import INCH_M, VALUES, near, row

DASH = VALUES["dash"]
SIZES = [4, 5, 6, 8, 10, 12, 16]


@pytest.mark.parametrize("dash", SIZES)
@pytest.mark.parametrize(("hose", "column"), [("ptfe", "bore_8794_in"), ("rubber", "bore_8788_in")])
def test_bores_of_hoses(hose: str, column: str, dash: int) -> None:
    """FAA AC 43.13-1B table 9-3: MIL-H-8794 (as SAE J517 100R5, 100R14) and MIL-H-8788, exact fractions."""
    assert bore_m(hose, dash) == near(row(DASH["rows"], dash=dash)[column] * INCH_M, 1e-9)


@pytest.mark.parametrize("at", DASH["rows"], ids=lambda at: f"-{at['dash']}")
def test_nominal_bores(at: dict[str, Any]) -> None:
    """The dash number is a tube's outside diameter in sixteenths of an inch; people take it for the bore."""
    assert bore_m("nominal", at["dash"]) == near(at["tube_od_in"] * INCH_M, 1e-12)


@pytest.mark.parametrize("dash", [6, 8, 10, 12, 16])
def test_smooth_ptfe_is_no_narrower_than_its_standard(dash: int) -> None:
    """MIL-H-27267 (from memory): least bores of smooth PTFE hose; ours stand up to 5 % over the least."""
    least = row(DASH["rows"], dash=dash)["bore_ptfe_min_in"] * INCH_M
    assert least <= bore_m("ptfe", dash) <= 1.05 * least


@pytest.mark.parametrize(
    ("dash", "outside"), [(4, "1/4"), (5, "5/16"), (6, "3/8"), (8, "1/2"), (10, "5/8"), (12, "3/4")]
)
def test_bores_of_tubes(dash: int, outside: str) -> None:
    """Tube of a 0.035 in wall: outside diameter less two walls, exact."""
    tube = row(DASH["tube"], od=outside, wall_in=0.035)
    assert bore_m("tube", dash) == near(tube["id_in"] * INCH_M, 1e-9)
    assert bore_m("tube", dash) * 1000 == pytest.approx(tube["id_mm"], abs=DASH["tol_abs_mm"])


@pytest.mark.parametrize("dash", SIZES)
def test_a_tube_is_its_outside_less_two_walls(dash: int) -> None:
    """The same by arithmetic, for the sizes that the tables of tubes leave out."""
    outside = row(DASH["rows"], dash=dash)["tube_od_in"]
    assert bore_m("tube", dash) == near((outside - 2 * 0.035) * INCH_M, 1e-9)


def test_bore_of_a_thick_tube() -> None:
    """FAA lesson on fluid lines: a number 10 tube with a wall of 0.065 in has a bore of 0.495 in."""
    worked = DASH["worked"]
    wall_more = worked["wall_in"] - 0.035
    assert bore_m("tube", worked["dash"]) - 2 * wall_more * INCH_M == near(worked["id_in"] * INCH_M, 1e-9)


def test_every_size_that_we_hold_is_checked_here() -> None:
    """So that no bore joins the tables without its source."""
    for hose in ("ptfe", "rubber", "tube"):
        assert [int(size.removeprefix("-")) for size in table("bores")[hose]] == SIZES
