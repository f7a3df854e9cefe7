"""How long the parts take that are filled in later: printed, never asserted by the clock."""

from __future__ import annotations

import statistics
import time
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from fuelwiz.session import Session, validate
from fuelwiz.sizing import in_steps, quick_figures

pytestmark = pytest.mark.benchmark

EXAMPLES = Path(__file__).parents[1] / "examples"
BUILDS = ("twins", "outside-twins", "pipe", "hill-climb-six", "hill-climb-coupe", "full-session")
ROUNDS = 3


def spent(session: Session) -> Iterator[tuple[float, float, float]]:
    """Seconds for the changes, today's and the next goal's, for the spread, and of the longest step of all."""
    first = quick_figures(session)
    for _ in range(ROUNDS):
        start = last = time.perf_counter()
        changed, longest = start, 0.0
        for step in in_steps(session, first):
            now = time.perf_counter()
            longest, last = max(longest, now - last), now
            if step.changes and step.spread is None and (step.next is None or step.next.changes):
                changed = changed if changed > start else now
        yield changed - start, last - changed, longest


@pytest.mark.parametrize("name", BUILDS)
def test_changes_and_spread(name: str) -> None:
    """Wanted: changes with the way out under 0.3 s, the spread under 0.5 s and each point of a pull in proportion."""
    session = validate(tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")), name)
    changes, spread, longest = (statistics.median(each) for each in zip(*spent(session), strict=True))
    assert quick_figures(session).spread is None
    print(
        f"{name}, {len(session.pull)} points of a pull: changes {changes * 1e3:.0f} ms, "
        f"spread {spread * 1e3:.0f} ms, longest step {longest * 1e3:.1f} ms"
    )
