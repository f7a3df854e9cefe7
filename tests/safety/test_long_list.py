"""A folder of two thousand builds: its first rows stand there at once, and it fills in while one types."""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path

from wizard.build_lists import at_list

from fuelwiz.wizard.build_list.list_state import FIRST, BuildList

BUILDS = 2000
FIRST_ROWS_WITHIN_S = 0.5
FIRST_PAINT = """
import sys
from datetime import date
from pathlib import Path
import fuelwiz.wizard.build_list.list_screen
from fuelwiz.wizard.build_list.list_page import ListPage, page_lines
from fuelwiz.wizard.build_list.list_state import BuildList
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
page = ListPage(BuildList(Path(sys.argv[1])))
page.builds.read(at_a_glance=True)
print(page_lines(page, date.today(), Area(Look(), 80, 24))[5].text)
print(*sorted(name for name in sys.modules if name.count(".") < 2))
"""


def folder_of_many(folder: Path) -> Path:
    """Two thousand builds, a tenth of them broken."""
    for number in range(BUILDS):
        end = '"' if number % 10 else ""
        text = f'format = 1\nname = "Build {number:04}{end}\n[goal]\npower = "{100 + number} hp"\n'
        (folder / f"build-{number:04}.toml").write_text(text)
    return folder


def test_the_first_rows_are_read_at_once_and_the_others_are_names(tmp_path: Path) -> None:
    builds = BuildList(folder_of_many(tmp_path))
    start = time.process_time()
    builds.read()
    assert time.process_time() - start < FIRST_ROWS_WITHIN_S
    assert len(builds.entries) == BUILDS
    assert all(entry.is_read for entry in builds.entries[:FIRST])
    assert not builds.entries[-1].is_read and builds.entries[-1].name


def test_the_first_rows_wait_for_nothing_that_calculates(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", FIRST_PAINT, str(folder_of_many(tmp_path))],
        capture_output=True,
        text=True,
        check=True,
    )
    row, loaded = done.stdout.splitlines()
    assert "Build 1" in row or "Build 0" in row, row
    heavy = {
        "pydantic",
        "fluids",
        "tomlkit",
        "fuelwiz.advice",
        "fuelwiz.sizing",
        "fuelwiz.session",
        "fuelwiz.desk",
    }
    assert not heavy & set(loaded.split())


async def test_it_fills_in_while_one_types(tmp_path: Path) -> None:
    async with at_list(folder_of_many(tmp_path)) as reader:
        await reader.press("/")
        await reader.type("Build 1777")
        assert reader.screen.builds.needle.text == "Build 1777"
        await reader.until(lambda: not reader.screen.builds.unread(1))
        assert reader.names == ["Build 1777"]
        assert "Build 1777" in reader.text
