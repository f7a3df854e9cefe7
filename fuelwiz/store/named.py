"""A build by what is typed for it: the path of its file, else its file's name in the folder of builds."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path

from fuelwiz.errors import Fault, SessionError
from fuelwiz.file_limits import SUFFIX

STANDARD_STREAM = "-"


def build_called(typed: str, environ: Mapping[str, str]) -> Path:
    """The path of a build's file; what is typed for standard input stays.

    Args:
        typed: a path, or the name of a file in the folder of builds, its ending left out or not.
        environ: the environment's variables, which may name that folder.

    Raises:
        SessionError: no such file is in either place, and both are named; a path with a folder in it is looked for
            nowhere else.
    """
    path = Path(typed)
    if typed == STANDARD_STREAM or os.path.lexists(path) or len(path.parts) != 1:
        return path
    from fuelwiz.printable import clean
    from fuelwiz.store.place import sessions_folder

    folder = sessions_folder(None, environ)
    for name in (typed, f"{typed}{SUFFIX}"):
        if name.endswith(SUFFIX) and os.path.lexists(folder / name):
            return folder / name
    places = f"there is no such file here, nor in the folder of your builds, {clean(str(folder))}"
    raise SessionError(clean(typed), (Fault("", places),))
