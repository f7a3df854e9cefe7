"""What the wizard's tests share."""

from __future__ import annotations

import asyncio
from collections.abc import Generator, Iterator
from time import monotonic, process_time

import pytest
from textual import app as textual_app

from fuelwiz.sizing import spread
from fuelwiz.sizing.picked import Picked
from fuelwiz.sizing.slow_figures import SpreadFigures

LOOKED_AGAIN_S = 0.003
IDLE_S = 0.0005  # of the processor, in that time

Steps = Generator[None, None, SpreadFigures | None]


async def _idle(min_sleep: float = LOOKED_AGAIN_S, max_sleep: float = 1.0) -> None:
    """Wait until the program has nothing to do, as Textual's own does, which looks every 20 ms."""
    start = monotonic()
    while True:
        used = process_time()
        await asyncio.sleep(LOOKED_AGAIN_S)
        waited = monotonic() - start
        if waited >= max_sleep or (waited > min_sleep and process_time() - used < IDLE_S):
            return


@pytest.fixture(scope="package", autouse=True)
def keys_are_taken_soon() -> Iterator[None]:
    """A pilot waits twice after each key until the program is idle: that was most of what many of these tests took."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(textual_app, "wait_for_idle", _idle)
        yield


class KnownSpreads:
    """How sure each build is, worked out once and given again to whoever opens the same build, in as many steps."""

    def __init__(self) -> None:
        self._work_out = spread.spread_in_steps
        self._known: dict[str, tuple[int, SpreadFigures | None]] = {}

    def in_steps(self, today: Picked) -> Steps:
        session = today.sized.system.session
        given = session.model_dump(exclude_unset=True)  # what is assumed is known less well
        told = repr((given, session, today.sized.candidate, today.return_pick))
        if told not in self._known:
            self._known[told] = yield from self._counted(self._work_out(today))
            return self._known[told][1]
        steps, found = self._known[told]
        for _ in range(steps):
            yield
        return found

    @staticmethod
    def _counted(work: Steps) -> Generator[None, None, tuple[int, SpreadFigures | None]]:
        steps = 0
        while True:
            try:
                next(work)
            except StopIteration as done:
                return steps, done.value
            steps += 1
            yield


@pytest.fixture(scope="package", autouse=True)
def spreads_are_known() -> Iterator[None]:
    """The thousand solutions behind a spread are tested in its own room; most of these tests open one of ten builds."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(spread, "spread_in_steps", KnownSpreads().in_steps)
        yield
