"""A page of help says that it goes on where it does, and only there."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.wizard.app import FuelwizApp

from .keyboard import Keyboard, at_build, copy_of, flat

READ_ON = "PgDn read on"


REST = "PgDn for the rest"


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36), (160, 50)])
async def test_the_footer_offers_to_read_on_where_there_is_more(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    goes_on = set()
    async with at_build(copy_of("mild", tmp_path), size) as keys:
        for path in ("units", "goal.power", "fuel.which"):
            keys.form.go_to_path(path)
            await keys.press("f1")
            assert (READ_ON in flat(keys.part("footer"))) == (REST in keys.text)
            goes_on.add(REST in keys.text)
            await keys.press(*["pagedown"] * 8)
            assert REST not in keys.text
            await keys.press("escape")
    if size == (80, 24):
        assert goes_on == {True, False}


async def test_the_page_of_the_list_says_that_it_goes_on_until_its_end(tmp_path: Path) -> None:
    copy_of("mild", tmp_path)
    async with FuelwizApp(tmp_path).run_test(size=(80, 24)) as pilot:
        keys = Keyboard(pilot)
        await keys.until("Mild eight")
        await keys.press("f1")
        assert REST in keys.text and READ_ON in keys.text
        first = keys.lines[3]
        for _ in range(30):
            await keys.press("pagedown")
        assert REST not in keys.text and keys.lines[3] != first
