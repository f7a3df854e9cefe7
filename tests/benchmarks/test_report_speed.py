"""How long an answer takes: printed, never asserted by the clock."""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
import tomllib
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.session import validate
from fuelwiz.sizing import first_figures, quick_figures
from fuelwiz.sizing.figures import Figures

pytestmark = pytest.mark.benchmark

ROOT = Path(__file__).parents[1]
BUILD = ROOT / "examples" / "full-session.toml"
YARDSTICK = "import pydantic, tomlkit, pint, fluids"
ROUNDS = 7


def plain() -> dict[str, Any]:
    """The full session, six sizes, with everything in it."""
    return tomllib.loads(BUILD.read_text(encoding="utf-8"))


def test_one_assessment_of_six_sizes(benchmark: Any) -> None:
    """Aim: 2 ms, at most 5: all that the live pane shows, without stress and next goal."""
    session = validate(plain())
    figures: Figures = benchmark(first_figures, session)
    assert len(figures.sizes) == 6 and figures.stress == ()


def test_the_whole_result_with_its_words(benchmark: Any) -> None:
    """At most 25 ms: stress cases, next goal and every word included."""
    session = validate(plain())

    def whole() -> Result:
        return result(session, quick_figures(session))

    known: Result = benchmark(whole)
    assert known.figures.stress and known.words.answer


def test_a_report_as_a_whole_process() -> None:
    """At most 1.3 times what loading pydantic, tomlkit, pint and fluids takes."""
    report = [sys.executable, "-m", "fuelwiz", "report", str(BUILD)]
    yardstick = [sys.executable, "-c", YARDSTICK]
    for command in (report, yardstick):
        _seconds(command)
    pairs = [(_seconds(report), _seconds(yardstick)) for _ in range(ROUNDS)]
    ours, theirs = (statistics.median(times) for times in zip(*pairs, strict=True))
    print(f"report {ours * 1e3:.0f} ms, {YARDSTICK!r} {theirs * 1e3:.0f} ms: {ours / theirs:.2f} times")


def test_a_page_beyond_the_start() -> None:
    """At most 0.5 s: loading the templates, the curves and drawing, once the result is known."""
    code = (
        "import time; from pathlib import Path; from fuelwiz.cli import _judged, _plot_of\n"
        f"result = _judged(Path({str(BUILD)!r}), in_full=True).result\n"
        "start = time.perf_counter(); from fuelwiz.report.page import html_page\n"
        "html_page(result, _plot_of(result)); print(time.perf_counter() - start)"
    )
    times = [
        float(subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout)
        for _ in range(ROUNDS)
    ]
    print(f"a page beyond the start {statistics.median(times) * 1e3:.0f} ms")


def _seconds(command: list[str]) -> float:
    """How long a command takes that prints something or nothing, and succeeds."""
    start = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start
