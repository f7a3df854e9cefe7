"""What holds for every test: figures that benchmarks print are shown though they pass."""

from __future__ import annotations

from typing import Any


def pytest_terminal_summary(terminalreporter: Any) -> None:
    """Shows what the benchmarks measured, in a section of its own."""
    passed = terminalreporter.stats.get("passed", [])
    measured = [report.capstdout.strip() for report in passed if "benchmarks/" in report.nodeid]
    lines = [line for text in measured for line in text.splitlines()]
    if lines:
        terminalreporter.section("measured")
        for line in lines:
            terminalreporter.line(line)
