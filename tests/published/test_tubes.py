"""Tubes by outside diameter and wall against the sizes of the trade."""

from __future__ import annotations

import pytest

from fuelwiz.session import Session, Size, bore_of_m, validate

from .reference import INCH_M, VALUES

TUBES = VALUES["dash"]["tube"]
THIN = [row for row in TUBES if row["wall_in"] == 0.035]


def size_of(text: str) -> Size:
    session: Session = validate({"format": 1, "goal": {"power": "400 hp"}, "feed": {"sizes": [text]}})
    return session.feed.sizes[0]


@pytest.mark.parametrize("row", THIN, ids=lambda row: str(row["od"]))
def test_a_tube_in_inches_has_the_usual_wall(row: dict[str, object]) -> None:
    """Tables of tube by outside diameter and wall (the source stands in the reference values)."""
    assert bore_of_m(size_of(f"{row['od']} in"), "tube") == pytest.approx(row["id_in"] * INCH_M, rel=1e-9)


@pytest.mark.parametrize("row", TUBES, ids=lambda row: f"{row['od']} x {row['wall_in']}")
def test_a_wall_that_is_given_counts(row: dict[str, object]) -> None:
    wall = float(row["wall_in"]) * INCH_M  # type: ignore[arg-type]
    bore = bore_of_m(size_of(f"{row['od']} in"), "tube", wall)
    assert bore == pytest.approx(row["id_in"] * INCH_M, rel=1e-9)


@pytest.mark.parametrize(("outside", "inside"), [(6, 4), (8, 6), (10, 8), (12, 10)])
def test_a_metric_tube_has_a_wall_of_one_millimeter(outside: int, inside: int) -> None:
    """EN 10305-4 lists 6, 8, 10 and 12 mm tube with a wall of 1 mm (from memory)."""
    assert bore_of_m(size_of(f"{outside} mm"), "tube") == pytest.approx(inside * 1e-3)


@pytest.mark.parametrize("hose", ["ptfe", "rubber", "nominal"])
def test_a_length_is_the_bore_of_a_hose(hose: str) -> None:
    assert bore_of_m(size_of("3/8 in"), hose) == pytest.approx(0.375 * INCH_M)


def test_a_dash_size_with_a_wall() -> None:
    """Number 8 is 1/2 in outside: with 0.049 in of wall 0.402 in are left."""
    assert bore_of_m(size_of("-8"), "tube", 0.049 * INCH_M) == pytest.approx(0.402 * INCH_M)
