"""Builds the wheel with what is made from the program itself: the manual page, which stands in the wheel alone."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path
from typing import Any

from setuptools import build_meta
from setuptools.build_meta import *  # noqa: F403  # all but the wheel is as usual

ROOT = Path(__file__).parent.parent
MAN_PAGE = ROOT / "build" / "man" / "fuelwiz.1"
GATHERED = ROOT / "build" / "lib"


def build_wheel(
    wheel_directory: str, config_settings: Any = None, metadata_directory: str | None = None
) -> str:
    """Build as usual, with the page written before the files are gathered, and nothing of a build before."""
    shutil.rmtree(GATHERED, ignore_errors=True)
    sys.path.insert(0, str(ROOT))
    from fuelwiz.man_page import man_page

    MAN_PAGE.parent.mkdir(parents=True, exist_ok=True)
    MAN_PAGE.write_text(man_page(), encoding="utf-8")
    built: str = build_meta.build_wheel(wheel_directory, config_settings, metadata_directory)
    return built
