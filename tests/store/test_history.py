"""How a build was before its last change, and what the change was."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.document.changes import Change
from fuelwiz.store.history import keep, last_change

BEFORE = 'format = 1\nname = "Six"\n[goal]\npower = "690 hp"\n[[feed.run]]\nlength = "13 ft"\n'


def saved(path: Path, text: str) -> None:
    """A save as the desk makes it."""
    keep(path, text)
    path.write_text(text)


def test_a_build_saved_once_has_no_last_change(tmp_path: Path) -> None:
    saved(tmp_path / "six.toml", BEFORE)
    assert last_change(tmp_path / "six.toml") == ()
    assert [one.name for one in tmp_path.iterdir()] == ["six.toml"]


def test_the_last_change_key_by_key(tmp_path: Path) -> None:
    path = tmp_path / "six.toml"
    saved(path, BEFORE)
    saved(path, BEFORE.replace("690", "750").replace("13 ft", "12 ft") + '[fuel]\nethanol = "85 %"\n')
    assert last_change(path) == (
        Change("goal.power", "690 hp", "750 hp"),
        Change("feed.run.0.length", "13 ft", "12 ft"),
        Change("fuel", None, {"ethanol": "85 %"}),
    )


def test_a_list_with_more_entries_is_one_change(tmp_path: Path) -> None:
    path = tmp_path / "six.toml"
    saved(path, BEFORE)
    saved(path, BEFORE + '[[feed.run]]\nlength = "3 ft"\n')
    (change,) = last_change(path)
    assert change.key == "feed.run" and len(change.now) == 2


def test_a_save_that_changes_nothing_keeps_the_last_change(tmp_path: Path) -> None:
    path = tmp_path / "six.toml"
    saved(path, BEFORE)
    now = BEFORE.replace("690", "750")
    saved(path, now)
    saved(path, now + '[record]\nsaved = "2026-05-14"\n')
    assert last_change(path) == (Change("goal.power", "690 hp", "750 hp"),)


def test_an_edit_by_hand_counts(tmp_path: Path) -> None:
    path = tmp_path / "six.toml"
    saved(path, BEFORE)
    saved(path, BEFORE.replace("690", "750"))
    path.write_text(BEFORE.replace("690", "800"))
    assert last_change(path) == (Change("goal.power", "690 hp", "800 hp"),)


def test_what_cannot_be_read_or_kept_is_no_matter(tmp_path: Path) -> None:
    path = tmp_path / "six.toml"
    path.write_text("broken = ")
    keep(path, BEFORE)
    assert last_change(path) == () and not (tmp_path / ".history").exists()
    (tmp_path / ".history").write_text("in the way")
    saved(path, BEFORE)
    saved(path, BEFORE.replace("690", "750"))
    assert last_change(path) == () and path.read_text() != BEFORE
