"""A refused text holds the answer up only while its question is asked."""

from __future__ import annotations

from pathlib import Path

import pytest

from .desks import told


@pytest.mark.parametrize("line", ["feed", "return"])
def test_a_count_of_hoses_refused_holds_no_hard_pipe_up(line: str, tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.choose("pressure.regulator", "rail")
    desk.type(f"{line}.length", "15")
    desk.type(f"{line}.hoses", "1")
    desk.type(f"{line}.bends", "2")
    desk.visit(f"{line}.hoses")
    desk.type(f"{line}.hoses", "0")
    assert desk.text_in_field(f"{line}.hoses").refused == "2 bent ends need 1 or more"
    assert desk.held is not None
    desk.visit(f"{line}.hose")
    desk.choose(f"{line}.hose", "tube")
    assert desk.held is None
    assert dict(desk.refused) == {}
    desk.choose(f"{line}.hose", "ptfe")
    assert desk.text_in_field(f"{line}.hoses").text == "0"
    assert f"{line}.hoses" in desk.refused


def test_a_text_not_asked_is_not_taken_meanwhile(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.type("feed.length", "15")
    desk.type("feed.hoses", "1")
    desk.type("feed.bends", "2")
    desk.visit("feed.hoses")
    desk.type("feed.hoses", "0")
    desk.visit("feed.hose")
    desk.choose("feed.hose", "tube")
    desk.visit("feed.bends")
    desk.type("feed.bends", "0")
    assert "straight" not in desk.value("feed.run.0.fittings")
