"""A report is written beside the keys, of the build as it was when it was asked for."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest

from fuelwiz.advice.result import Result
from fuelwiz.desk import whole_result

from .keyboard import at_build, copy_of, flat


async def test_keys_go_on_while_a_report_is_worked_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    goes_on = threading.Event()
    threads: list[str] = []
    as_it_is = whole_result.whole_result

    def slow(told: Result) -> Result:
        threads.append(threading.current_thread().name)
        goes_on.wait(20)
        return as_it_is(told)

    monkeypatch.setattr(whole_result, "whole_result", slow)
    path = copy_of("hill-climb-coupe", tmp_path)
    async with at_build(path) as keys:
        keys.screen.form.go_to_path("goal.power")
        await keys.press("f7", "ctrl+u")
        await keys.type("sheet.txt")
        await keys.press("enter")
        await keys.until("Writing sheet.txt ...")
        await keys.press(*"800")
        assert keys.desk.value("goal.power") == "800 hp"
        await keys.press("f7", "ctrl+u")
        await keys.type("other.txt")
        await keys.press("enter")
        await keys.until("The last report is still being written.")
        goes_on.set()
        await keys.until("Written: ")
        # A long folder takes a second row, which may break the name anywhere.
        await keys.until_true(lambda: "sheet.txt" in flat(keys.part("footer")).replace(" ", ""))
        assert threads == ["disk"]
        sheet = (tmp_path / "sheet.txt").read_text(encoding="utf-8")
        assert "560 hp" in sheet and "800 hp" not in sheet
        assert not (tmp_path / "other.txt").exists()
        await keys.press("f7", "enter")
        await keys.until("Written: ")
        assert len(threads) == 2


async def test_a_report_that_cannot_be_written_says_why(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-coupe", tmp_path)) as keys:
        await keys.press("f7", "ctrl+u")
        await keys.type("nowhere/sheet.txt")
        await keys.press("enter")
        await keys.until("there is no folder")
        await keys.press("f7", "ctrl+u")
        await keys.type("here.txt")
        await keys.press("enter")
        await keys.until("Written: ")
