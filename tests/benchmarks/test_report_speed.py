"""How long an answer takes: printed, never asserted by the clock."""

from __future__ import annotations

import resource
import statistics
import subprocess
import sys
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
CHECKED = ROOT / "examples" / "hill-climb-six.toml"
ROUNDS = 5
PACKAGES = (
    "fuelwiz",
    "pydantic",
    "pydantic_core",
    "annotated_types",
    "typing_inspection",
    "rich",
)
LOADS = """
import sys
sys.argv = ["fuelwiz", *sys.argv[1:]]
from fuelwiz.cli import main
main(sys.argv[1:])
print("\\nloaded:", *sys.modules)
"""


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


@pytest.mark.parametrize(
    "asked",
    [["check", str(CHECKED)], ["report", str(BUILD)]],
    ids=["a check", "a report"],
)
def test_a_command_against_the_import_of_what_it_needs(asked: list[str]) -> None:
    """A check: at most 1.1 times. A report also works out what changes buy and how sure it all is: half a second.

    What it needs is loaded once as an import statement loads it, and once as sparingly as the program does.
    """
    command = [sys.executable, "-c", "import sys; from fuelwiz.cli import main; sys.exit(main())", *asked]
    modules = ", ".join(_loaded_by(asked))
    plain = [sys.executable, "-c", f"import fluids, {modules}"]
    sparing = [sys.executable, "-c", f"{AS_THE_PROGRAM}; import {modules}; gc.freeze()"]
    for each in (command, plain, sparing):
        _seconds(each)
    rounds = [[_seconds(each) for each in (command, plain, sparing)] for _ in range(ROUNDS)]
    ours, plainly, sparingly = (statistics.median(times) for times in zip(*rounds, strict=True))
    print(
        f"{asked[0]} {ours * 1e3:.0f} ms of the processor, import of what it needs {plainly * 1e3:.0f} ms: "
        f"{ours / plainly:.2f} times; of no more than its modules {sparingly * 1e3:.0f} ms: {ours / sparingly:.2f} times"
    )


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


AS_THE_PROGRAM = (
    "import gc; gc.disable(); from fuelwiz.physics.relations import from_fluids; "
    "from_fluids('friction'), from_fluids('fittings')"
)
"""Garbage is not looked for, and of fluids only what is used is loaded."""


def _loaded_by(asked: list[str]) -> list[str]:
    """The modules that a command loads, in the order in which it does."""
    done = subprocess.run(
        [sys.executable, "-c", LOADS, *asked], check=False, capture_output=True, text=True, cwd=ROOT.parent
    )
    names = done.stdout.rpartition("\nloaded:")[2].split()
    return [name for name in names if name.partition(".")[0] in PACKAGES]


def _seconds(command: list[str]) -> float:
    """How long the processor works for a command, whatever it says; a neighbor's load hardly moves that."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
