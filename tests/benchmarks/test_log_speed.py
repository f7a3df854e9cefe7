"""How long a log of 200 000 rows takes, and how much memory; wanted: under 2 s and 150 MB."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from measured.cars import Car, Logger, plain, write_log

from fuelwiz.document.merge import merge

pytestmark = pytest.mark.benchmark

PROGRAM = """
import resource, sys, time
from fuelwiz.cli import main
started = time.process_time()
status = main(["log", *sys.argv[1:], "--format", "json"])
used = time.process_time() - started
peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
print(f"{status} {used:.2f} {peak:.0f}", file=sys.stderr)
"""


def test_a_log_of_200_000_rows(tmp_path: Path) -> None:
    build, log = tmp_path / "car.toml", tmp_path / "long.csv"
    build.write_text(merge("format = 1\n", plain(Car())), encoding="utf-8")
    write_log(log, Car(factor=0.65), Logger(hz=100, pulls=270, driving_s=100, seed=5))
    command = [sys.executable, "-c", PROGRAM, str(build), str(log)]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    status, seconds, megabytes = done.stderr.split()[-3:]
    print(f"log of 200 000 rows: {seconds} s of the processor, {megabytes} MB at most")
    assert status == "0"
