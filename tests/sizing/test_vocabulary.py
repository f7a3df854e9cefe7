"""The closed lists of words, in the order in which people are told, and the edges between them."""

from __future__ import annotations

import tomllib
from itertools import pairwise
from pathlib import Path
from typing import get_args

import pytest

from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures
from fuelwiz.sizing.vocabulary import (
    BANDS,
    BUILD_LIMITS,
    CASES,
    LIMITS,
    LINE_LIMITS,
    SIZE_LIMITS,
    Band,
    CeilingPart,
    FlowRegime,
    band_of,
    no_faster_than,
    regime_at,
)

EXAMPLES = Path(__file__).parent.parent / "examples"
NAMES = sorted(path.stem for path in EXAMPLES.glob("*.toml"))
EDGES = (4.0, 6.0, 8.0, 10.0)


@pytest.mark.parametrize(
    ("velocity", "band"),
    [
        (0.0, "easy"),
        (4.0, "easy"),
        (4.0001, "good"),
        (6.0, "good"),
        (6.0001, "brisk"),
        (8.0, "brisk"),
        (8.0001, "fast"),
        (10.0, "fast"),
        (10.0001, "too fast"),
        (1e6, "too fast"),
    ],
)
def test_a_band_includes_its_upper_edge(velocity: float, band: Band) -> None:
    assert band_of(velocity, EDGES) == band


def test_bands_are_one_scale() -> None:
    for slower, faster in pairwise(BANDS):
        assert no_faster_than(slower, faster) and no_faster_than(slower, slower)
        assert not no_faster_than(faster, slower)


@pytest.mark.parametrize(
    ("reynolds", "regime"),
    [
        (2040.0, "laminar"),
        (2040.1, "transitional"),
        (3999.9, "transitional"),
        (4000.0, "turbulent"),
    ],
)
def test_edges_of_the_flow(reynolds: float, regime: FlowRegime) -> None:
    assert regime_at(reynolds) == regime


def test_no_limit_stands_twice_and_those_of_the_line_are_of_a_size() -> None:
    assert len(set(LIMITS)) == len(LIMITS) == len(SIZE_LIMITS) + len(BUILD_LIMITS)
    assert SIZE_LIMITS[: len(LINE_LIMITS)] == LINE_LIMITS


@pytest.mark.parametrize("name", NAMES)
def test_figures_use_the_lists_in_their_order(name: str) -> None:
    figures = quick_figures(
        validate(tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")), name)
    )
    for limits in (figures.verdict.limits, *(case.limits for case in figures.stress)):
        assert list(limits) == sorted(limits, key=LIMITS.index)
    for row in figures.sizes:
        assert list(row.limits) == sorted(row.limits, key=SIZE_LIMITS.index)
        assert row.line_works == (not set(row.limits) & set(LINE_LIMITS))
    built_in = [case.case for case in figures.stress if case.case in CASES]
    assert built_in == [case for case in CASES if case in built_in]
    assert {ceiling.part for ceiling in figures.ceilings} <= set(get_args(CeilingPart))
