"""What the benchmarks share."""

from __future__ import annotations

import compileall
from pathlib import Path

import pytest

import fuelwiz


@pytest.fixture(scope="session")
def compiled() -> None:
    """The package as pip installs it, compiled: a checkout that may not write its bytecode compiles at each start."""
    compileall.compile_dir(Path(fuelwiz.__file__).parent, quiet=1)
