"""What differs between two pieces of plain data."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.document.changes import Change, changes

BEFORE: dict[str, Any] = {"goal": {"power": "410 hp"}, "feed": {"run": [{"length": "3 ft"}]}}


@pytest.mark.parametrize("into_absent", [True, False])
def test_a_value_in_a_table_and_in_a_list_entry(into_absent: bool) -> None:
    now = {"goal": {"power": "420 hp"}, "feed": {"run": [{"length": "4 ft"}]}}
    assert changes(BEFORE, now, into_absent=into_absent) == (
        Change("goal.power", "410 hp", "420 hp"),
        Change("feed.run.0.length", "3 ft", "4 ft"),
    )


def test_what_one_lacks_is_one_change_or_told_key_by_key() -> None:
    now = {**BEFORE, "surge": {"volume": "1 gal"}, "feed": {"run": [{"length": "3 ft"}, {"what": "rail"}]}}
    assert changes(BEFORE, now, into_absent=False) == (
        Change("feed.run", BEFORE["feed"]["run"], now["feed"]["run"]),
        Change("surge", None, {"volume": "1 gal"}),
    )
    assert changes(BEFORE, now, into_absent=True) == (
        Change("feed.run.1.what", None, "rail"),
        Change("surge.volume", None, "1 gal"),
    )
