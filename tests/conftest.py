"""What holds for every test: all share the cores, and what benchmarks print is shown though they pass."""

from __future__ import annotations

import compileall
import gc
import os
from collections.abc import Generator, Iterator
from pathlib import Path
from typing import Any

import pytest

PACKAGE = Path(__file__).parents[1] / "fuelwiz"


@pytest.fixture(scope="session", autouse=True)
def own_state(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """What has no other place goes to a folder of the tests' own, never to the user's."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_STATE_HOME", str(tmp_path_factory.mktemp("state")))
        yield


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """A worker for each core where the whole is run, and one more, as those at a terminal mostly wait for it.

    None where a part is asked for, which starts sooner alone.
    """
    whole = config.args_source == pytest.Config.ArgsSource.TESTPATHS and not config.option.keyword
    return len(os.sched_getaffinity(0)) + 1 if whole and "not benchmark" in config.option.markexpr else 0


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """What is collected is no garbage: looking through ten thousand tests for it was a twentieth of the whole."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        gc.enable()


def pytest_configure(config: pytest.Config) -> None:
    """Nothing is measured while tests run beside one another. The package is compiled, as pip installs it.

    In a checkout that may not write its bytecode each program that a test starts would compile it anew.
    """
    if config.option.numprocesses:
        config.option.benchmark_disable = True
    if not hasattr(config, "workerinput"):
        compileall.compile_dir(PACKAGE, quiet=2)


def pytest_terminal_summary(terminalreporter: Any) -> None:
    """Shows what the benchmarks measured, in a section of its own."""
    passed = terminalreporter.stats.get("passed", [])
    measured = [report.capstdout.strip() for report in passed if "benchmarks/" in report.nodeid]
    lines = [line for text in measured for line in text.splitlines()]
    if lines:
        terminalreporter.section("measured")
        for line in lines:
            terminalreporter.line(line)
