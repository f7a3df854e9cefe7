"""The step of what was measured: what a test should show, what was found, and a proposal taken with one key."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from fuelwiz.advice.sections.measured import SAFELY_IN_BRIEF
from fuelwiz.wizard.form.form_rows import DoRow, FoundRow
from fuelwiz.wizard.look import Look

from .keyboard import Keyboard, at_build, copy_of, flat

A_TEST = """
[[bench]]
date = "2026-05-14"
at = "pump"
pressure = "40 psi"
volts = "13.5 V"
pumps = 1
volume = "2 gal"
time = "60 s"

[[gauge]]
date = "2026-05-20"
volts = "12 V"
"""


def measured_car(folder: Path) -> Path:
    path = copy_of("hill-climb-six", folder)
    path.write_text(path.read_text(encoding="utf-8") + A_TEST, encoding="utf-8")
    return path


async def to_row(keys: Keyboard, path: str) -> FoundRow:
    """The pointer on the row of that path, by keys."""
    await keys.down_to("0", path)
    row = keys.form.row
    assert isinstance(row, FoundRow) and row.path == path
    return row


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36)])
async def test_how_to_do_it_safely_stands_with_what_to_expect(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        row = await to_row(keys, "measured.expected.0")
        assert row.text.startswith("expect ") and " gal in " in row.text
        assert flat([row.text]) in flat(keys.part("form"))
        assert SAFELY_IN_BRIEF in flat(keys.part("form"))
        keys.says_all_within()


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36)])
async def test_a_proposal_shows_before_and_after_and_is_taken_with_a_key(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_build(measured_car(tmp_path), size) as keys:
        row = await to_row(keys, "measured.pump.health")
        assert row.proposal is not None
        assert keys.desk.result is not None
        spare = keys.desk.result.figures.pick.margin
        said = flat(keys.part("form"))
        assert re.search(
            r"Now \w+, spare \d+ %, feeds \d+ hp; with it fails, spare −\d+ %, feeds \d+ hp\.", said
        )
        await keys.press("y")
        assert keys.desk.value("pump.health") == row.proposal.value
        assert keys.desk.result.figures.pick.margin != spare
        assert "Taken: " in flat(keys.lines[-2:])
        assert all(not isinstance(one, FoundRow) or one.path != row.path for one in keys.form.pointer.rows)
        await keys.press("ctrl+z")
        assert keys.form.path == row.path
        assert keys.desk.value("pump.health") is None
        await keys.press("ctrl+y")
        assert keys.desk.value("pump.health") == row.proposal.value


async def test_enter_takes_nothing(tmp_path: Path) -> None:
    async with at_build(measured_car(tmp_path), (80, 24)) as keys:
        await to_row(keys, "measured.pump.health")
        await keys.press("enter")
        assert keys.desk.value("pump.health") is None
        assert not keys.desk.dirty


async def test_a_reading_stands_beside_what_should_be(tmp_path: Path) -> None:
    async with at_build(measured_car(tmp_path), (60, 20), Look(unicode=False)) as keys:
        row = await to_row(keys, "measured.gauge.0")
        assert row.is_odd
        assert flat([row.text]).startswith("volts at the pump 12.0 V, expected ")
        assert row.whole.endswith("the wires and plugs lose more than expected.")
        keys.says_all_within()


async def type_a_bench_test(keys: Keyboard, *answers: str) -> None:
    """A bench test from its row on, one answer after another; an empty one leaves what stands."""
    await keys.press("ctrl+g", "0")
    for _ in range(40):
        if isinstance(keys.form.row, DoRow) and keys.form.row.list_path == "bench":
            break
        await keys.press("down")
    await keys.press("a")
    for answer in answers:
        await keys.type(answer)
        await keys.press("tab")
    await keys.press("escape")


async def test_a_bench_typed_here_taken_undone_and_taken_again(tmp_path: Path) -> None:
    """File and figures are as before and after: the test stays typed, the share comes, goes and comes."""
    path = copy_of("hill-climb-six", tmp_path)
    async with at_build(path, (80, 24)) as keys:
        await type_a_bench_test(keys, "2026-05-14", "", "40", "13.5", "", "2 gal", "", "60")
        texts, figures = [], []

        async def saved() -> None:
            await keys.press("ctrl+s")
            await keys.until_true(lambda: not keys.desk.dirty)
            assert keys.desk.result is not None
            texts.append(path.read_text(encoding="utf-8"))
            figures.append(keys.desk.result.figures.sizes)

        await saved()
        for key in ("y", "ctrl+z", "y"):
            if key == "y":
                await to_row(keys, "measured.pump.health")
            await keys.press(key)
            await saved()
        typed, taken, undone, again = texts
        assert 'time = "60 s"' in typed and "health" not in typed
        assert "# measured: bench tests, 2026-05-14" in taken and taken == again != undone
        assert undone == typed
        assert figures[1] == figures[3] != figures[2] == figures[0]
