"""A page shown in the browser: from a file of one's own that nobody else can read."""

from __future__ import annotations

import os
import tempfile
import webbrowser
from collections.abc import Callable, Mapping
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.files import reason

DISPLAYS = ("DISPLAY", "WAYLAND_DISPLAY")
OWN_SCREEN = ("win32", "darwin")


def private_page(text: str) -> Path:
    """Write a page to a new temporary file that its owner alone can read.

    Raises:
        OutputError: no such file can be written.
    """
    try:
        handle, name = tempfile.mkstemp(prefix="fuelwiz-", suffix=".html")
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(text)
    except OSError as error:
        raise OutputError(f"the page cannot be written: {reason(error)}") from None
    return Path(name)


def opened(
    path: Path, environ: Mapping[str, str], system: str, browse: Callable[[str], bool] = webbrowser.open
) -> bool:
    """Whether a browser took the page; none is asked where there is no screen: one in the terminal would take it over.

    Args:
        path: the page.
        environ: says whether there is a screen, and which browser is wanted.
        system: as `sys.platform` names it; any but "win32" and "darwin" needs a display.
        browse: opens an address.
    """
    if system not in OWN_SCREEN and not any(environ.get(name) for name in DISPLAYS):
        return False
    try:
        return browse(path.as_uri())
    except (OSError, webbrowser.Error):
        return False
