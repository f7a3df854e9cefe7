"""How long a search of a parts file takes: printed, never asserted by the clock."""

from __future__ import annotations

import random
import time
from typing import Any

import pytest
from options.files import BEGINNING, build, pump, search

from fuelwiz.options.outcome import in_steps
from fuelwiz.options.search import Asked

pytestmark = pytest.mark.benchmark

PUMPS, MOST = 40, 3
SIZES = ("-4", "-6", "-8", "-10", "-12", "-16")


def large_file() -> dict[str, Any]:
    """40 pumps, 3 of each at most; six hoses; wires and injectors; a regulator for every usual pressure."""
    pick = random.Random(22)
    pumps = [
        pump(
            pick.uniform(60, 160),
            name=f"pump {number}",
            most=MOST,
            price=pick.randint(60, 400),
            current=[["40 psi", f"{pick.uniform(6, 11):.1f} A"], ["80 psi", f"{pick.uniform(11, 18):.1f} A"]],
        )
        for number in range(PUMPS)
    ]
    return {
        **BEGINNING,
        "pump": pumps,
        "hose": [{"hose": "ptfe", "size": size, "price": 8, "end": 25} for size in SIZES],
        "wire": [{"wire": f"{gauge} AWG", "price": 1} for gauge in (14, 12, 10, 8)],
        "injectors": [{"rated_flow": f"{flow} cc/min", "price": 90} for flow in (1000, 1300, 1700)],
        "regulator": [
            {
                "rated_flow": "150 gal/h",
                "rated_loss": "4 psi",
                "set_range": ["20 psi", "90 psi"],
                "price": 120,
            }
        ],
    }


@pytest.mark.parametrize("asked", [Asked(), Asked(bad_days=True), Asked(True, True)])
def test_a_search_of_a_large_file(asked: Asked) -> None:
    """Wanted: the whole search with bad days under 4 s, the first sets to look at within 1 s."""
    built = build(
        pump=None,
        feed={**build()["feed"], "chosen": "-8"},
        pressure={**build()["pressure"], "base": "40 psi"},
    )
    start = time.perf_counter()
    looked = search(built, large_file(), asked)
    first = None
    for progress in in_steps(looked):
        if first is None and progress.found.works:
            assert progress.shown()
            first = time.perf_counter() - start
    spent = time.perf_counter() - start
    assert first is not None
    assert looked.sets == PUMPS * MOST * 4 * len(SIZES)
    print(
        f"{looked.sets} sets, {progress.found.works} would do: {spent:.2f} s, the first after {first * 1e3:.0f} ms"
    )
