"""Standard input, output and error of a command, whichever of them is closed, full or gone."""

from __future__ import annotations

import os
import sys
from contextlib import suppress

from fuelwiz.errors import OutputError
from fuelwiz.file_limits import MOST_BYTES


def read_input() -> bytes:
    """All that comes on standard input, and a byte more than a session file may have."""
    return sys.stdin.buffer.read(MOST_BYTES + 1) if sys.stdin is not None else b""


def say(text: str) -> None:
    """Print on standard output, at once.

    Raises:
        BrokenPipeError: whoever read it has gone.
        OutputError: it cannot be written.
    """
    if sys.stdout is None:
        if text:
            raise OutputError("there is no standard output to write to")
        return
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        give_up_on_output()
        from fuelwiz.files import reason

        raise OutputError(f"standard output cannot be written: {reason(error)}") from None


def complain(text: str) -> None:
    """Say on standard error what is wrong, line by line; where that is closed too, say nothing."""
    if sys.stderr is None:
        return
    import shutil

    from fuelwiz.terminal.cells import hanging

    with suppress(OSError):
        for line in text.splitlines():
            said = f"fuelwiz: {line}"
            columns = shutil.get_terminal_size().columns
            sys.stderr.write(hanging(said, columns) if sys.stderr.isatty() else f"{said}\n")
        sys.stderr.flush()


def give_up_on_output() -> None:
    """Send what is still in the buffer nowhere, so that leaving raises nothing more."""
    with suppress(OSError, AttributeError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
