"""What is taken from fluids: the same figures with numpy and without it, and numpy left as it was."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

FIGURES = """
import json, sys
{before}
from fuelwiz.physics.fittings import KINDS, loss_coefficient
from fuelwiz.physics.line import friction_factor
found = [loss_coefficient(kind, bore, 0.85) for kind in KINDS for bore in (0.0047, 0.0103, 0.0222)]
found += [friction_factor(reynolds=re, relative_roughness=rough) for re in (3000.0, 2e4, 1e6) for rough in (0.0, 2e-3)]
loaded = sys.modules.get("numpy") is not None
import numpy
print(json.dumps([found, loaded, float(numpy.mean([1.0, 3.0]))]))
"""


def _run(before: str) -> tuple[list[float], bool, float]:
    code = FIGURES.format(before=before)
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    found, loaded, mean = json.loads(done.stdout)
    return found, loaded, mean


def test_figures_are_those_that_fluids_gives_with_numpy() -> None:
    without, loaded, mean = _run("")
    with_numpy, loaded_before, _ = _run("import numpy")
    assert without == pytest.approx(with_numpy, rel=1e-12)
    assert (loaded, loaded_before) == (False, True)
    assert mean == 2.0
