"""How quick the figures of each sample are: printed, never asserted by the clock."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from fuelwiz.advice import result
from fuelwiz.document.file import load
from fuelwiz.sizing import quick_figures

pytestmark = pytest.mark.benchmark

ROOT = Path(__file__).parents[2]


def milliseconds(work: Callable[[], object], times: int) -> float:
    """The median of several turns, after one that is not counted."""
    work()
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spent.append((time.perf_counter() - start) * 1e3)
    return statistics.median(spent)


@pytest.mark.parametrize(
    "sample", sorted((ROOT / "saved_sessions").glob("*.toml")), ids=lambda path: path.stem
)
def test_one_result(sample: Path) -> None:
    """A whole result, bad days and words included; wanted 25 ms."""
    _, session = load(sample)
    figures = milliseconds(lambda: quick_figures(session), 20)
    whole = milliseconds(lambda: result(session, quick_figures(session)), 20)
    assert quick_figures(session) == quick_figures(session)
    print(f"{sample.stem}: figures {figures:.1f} ms, whole result {whole:.1f} ms")
