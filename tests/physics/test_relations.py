"""What is taken from fluids: the same figures as from the whole of it, which can still be loaded, and numpy too."""

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
loaded = [name for name in ("numpy", "fluids.geometry", "fluids.two_phase") if sys.modules.get(name) is not None]
import fluids, numpy
whole = fluids.geometry.V_horiz_spherical is not None and fluids.friction.Clamond is fluids.Clamond
print(json.dumps([found, loaded, whole and float(numpy.mean([1.0, 3.0]))]))
"""


def _run(before: str) -> tuple[list[float], list[str], float]:
    code = FIGURES.format(before=before)
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    found, loaded, mean = json.loads(done.stdout)
    return found, loaded, mean


def test_figures_are_those_that_fluids_gives_as_a_whole_with_numpy() -> None:
    alone, loaded, mean = _run("")
    as_a_whole, loaded_before, _ = _run("import fluids")
    assert alone == pytest.approx(as_a_whole, rel=1e-12)
    assert loaded == []
    assert loaded_before == ["numpy", "fluids.geometry", "fluids.two_phase"]
    assert mean == 2.0
