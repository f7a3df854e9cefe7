"""A folder of two thousand builds: its first rows stand there at once, and it fills in while one types."""

from __future__ import annotations

import time
from pathlib import Path

from wizard.build_lists import at_list

from fuelwiz.wizard.build_list.list_state import FIRST, BuildList

BUILDS = 2000
FIRST_ROWS_WITHIN_S = 0.5


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


async def test_it_fills_in_while_one_types(tmp_path: Path) -> None:
    async with at_list(folder_of_many(tmp_path)) as reader:
        await reader.press("/")
        await reader.type("Build 1777")
        assert reader.screen.builds.needle.text == "Build 1777"
        await reader.until(lambda: not reader.screen.builds.unread(1))
        assert reader.names == ["Build 1777"]
        assert "Build 1777" in reader.text
