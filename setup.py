"""Builds what is made from the program itself: the manual page, which stands in the wheel alone."""

from __future__ import annotations

import sys
from pathlib import Path

from setuptools import setup
from setuptools.command.build_py import build_py

ROOT = Path(__file__).parent
MAN_PAGE = Path("build") / "man" / "fuelwiz.1"


class BuildWithManPage(build_py):  # type: ignore[misc]  # setuptools says no types
    """Writes the manual page before the files are gathered."""

    def run(self) -> None:
        """Build as usual, with the page."""
        sys.path.insert(0, str(ROOT))
        from fuelwiz.man_page import man_page

        target = ROOT / MAN_PAGE
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(man_page(), encoding="utf-8")
        super().run()


setup(cmdclass={"build_py": BuildWithManPage}, data_files=[("share/man/man1", [str(MAN_PAGE)])])
