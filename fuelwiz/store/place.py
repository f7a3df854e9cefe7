"""Where the builds are kept."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

VARIABLE = "FUELWIZ_SESSIONS"
USUAL = "saved_sessions"


def sessions_folder(asked: Path | None, environ: Mapping[str, str]) -> Path:
    """The folder of builds: the one asked for, else the environment's, else the one at hand, else the user's.

    Args:
        asked: what the command line names.
        environ: the environment's variables.
    """
    if asked is not None:
        return asked
    named = environ.get(VARIABLE, "")
    if named.strip():
        return Path(named)
    here = Path(USUAL)
    return here if here.is_dir() else _user_folder() or here


def _user_folder() -> Path | None:
    """The folder for the user's data; None for a user without a home."""
    from platformdirs import user_data_path

    try:
        return user_data_path("fuelwiz", appauthor=False) / USUAL
    except (RuntimeError, OSError):
        return None
