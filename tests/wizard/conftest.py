"""What the wizard's tests share."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator
from time import monotonic, process_time

import pytest
from textual import app as textual_app

LOOKED_AGAIN_S = 0.003
IDLE_S = 0.0005  # of the processor, in that time


async def _idle(min_sleep: float = LOOKED_AGAIN_S, max_sleep: float = 1.0) -> None:
    """Wait until the program has nothing to do, as Textual's own does, which looks every 20 ms."""
    start = monotonic()
    while True:
        used = process_time()
        await asyncio.sleep(LOOKED_AGAIN_S)
        waited = monotonic() - start
        if waited >= max_sleep or (waited > min_sleep and process_time() - used < IDLE_S):
            return


@pytest.fixture(scope="session", autouse=True)
def keys_are_taken_soon() -> Iterator[None]:
    """A pilot waits twice after each key until the program is idle: that was most of what many of these tests took."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(textual_app, "wait_for_idle", _idle)
        yield
