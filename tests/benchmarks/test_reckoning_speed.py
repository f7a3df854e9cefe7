"""How quick the reckoning is, and `report` as a whole process: printed, never asserted by the clock."""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from fuelwiz.advice import result
from fuelwiz.document.file import load
from fuelwiz.sizing import assess

ROOT = Path(__file__).parents[2]
SAMPLE = ROOT / "saved_sessions" / "gravel-four.toml"
LIBRARIES = "import pydantic, tomlkit, pint, fluids"


def milliseconds(work: Callable[[], object], times: int) -> float:
    """The median of several turns, after one that is not counted."""
    work()
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spent.append((time.perf_counter() - start) * 1e3)
    return statistics.median(spent)


def process(*arguments: str) -> Callable[[], subprocess.CompletedProcess[bytes]]:
    return lambda: subprocess.run([sys.executable, *arguments], check=True, capture_output=True, cwd=ROOT)


@pytest.mark.parametrize(
    "sample", sorted((ROOT / "saved_sessions").glob("*.toml")), ids=lambda path: path.stem
)
def test_one_result(sample: Path) -> None:
    """A whole result, bad days and words included; wanted 25 ms."""
    _, session = load(sample)
    figures = milliseconds(lambda: assess(session), 20)
    whole = milliseconds(lambda: result(session, assess(session)), 20)
    assert assess(session) == assess(session)
    print(f"{sample.stem}: figures {figures:.1f} ms, whole result {whole:.1f} ms")


def test_report_as_a_process() -> None:
    """`fuelwiz report` against the import of the libraries; wanted 1.3 times."""
    report = process("-m", "fuelwiz", "report", str(SAMPLE))
    libraries = process("-c", LIBRARIES)
    assert b"What gives out first" in report().stdout
    ours, theirs = milliseconds(report, 5), milliseconds(libraries, 5)
    print(f"report {ours:.0f} ms, {ours / theirs:.2f} times the import of its libraries")
