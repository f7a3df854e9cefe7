"""The disk is waited for beside the keys: a slow one holds no key up."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Any, Protocol, TypeVar

from fuelwiz.errors import FuelwizError, OutputError

T = TypeVar("T")


class Turns(Protocol):
    """What can be handed something to do in its own turn, by any thread."""

    def call_later(self, callback: Callable[..., Any], *args: Any) -> Any:
        """Call something in the program's own turn."""


def off_the_keys(
    turns: Turns, run: Callable[[], T], done: Callable[[T | FuelwizError], object], patience_s: float
) -> bool:
    """Do something with the disk in a thread of its own, and hand on what it came to.

    Args:
        turns: the program, whose keys must not wait.
        run: what is done in the thread.
        done: called in the program's turn, with what came of it or what was refused.
        patience_s: how long the program waits for a quick disk.

    Returns:
        Whether it is done already.
    """
    outcome: list[T | FuelwizError] = []
    is_late = threading.Event()
    first = threading.Lock()

    def work() -> None:
        try:
            result: T | FuelwizError = run()
        except FuelwizError as error:
            result = error
        except Exception as error:  # a thread that falls would leave the program waiting for it
            result = OutputError(f"something went wrong in the program itself ({type(error).__name__})")
        with first:
            outcome.append(result)
            if not is_late.is_set():
                return
        turns.call_later(done, result)

    thread = threading.Thread(target=work, name="disk")
    thread.start()
    thread.join(patience_s)
    with first:
        if not outcome:
            is_late.set()
            return False
    done(outcome[0])
    return True
