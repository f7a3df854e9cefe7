"""Drafts: all that is told, refused or not, kept beside the build; hostile drafts are refused in a sentence."""

from __future__ import annotations

import json
import os
import random
from pathlib import Path

import pytest

from fuelwiz.desk import Desk, DraftError
from fuelwiz.errors import OutputError
from fuelwiz.store.folder import entries, unsaved

from .desks import empty, opened, told


def back(place: Path) -> Desk:
    desk = Desk.from_draft(place)
    desk.update()
    return desk


def test_a_draft_keeps_raw_text_and_a_missing_power(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.type("pressure.boost", "22 gal/h")
    desk.choose("pump.known", "curve")
    desk.type("pump.curve.0.points.0.0", "20")
    desk.type("feed.hoses", "many")
    place = desk.write_draft()
    assert place == tmp_path / ".unnamed-1.draft"
    again = back(place)
    for path in (
        "pressure.boost",
        "pump.curve.0.points.0.0",
        "pump.curve.0.points.0.1",
        "feed.hoses",
        "pump.known",
    ):
        assert again.text_in_field(path) == desk.text_in_field(path)
    assert again.refused == desk.refused
    assert again.result is None
    assert again.path is None
    assert again.dirty


def test_the_draft_of_a_file_lies_beside_it_and_goes_back_to_it(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.visit("goal.power")
    desk.type("goal.power", "700")
    desk.visit("pressure.boost")
    desk.type("pressure.boost", "")
    place = desk.write_draft()
    assert place == tmp_path / ".hill-climb-six.toml.draft"
    again = back(place)
    assert again.path == desk.path
    assert again.value("goal.power") == "700 hp"
    assert again.dirty
    assert again.result == desk.result
    assert again.step_state("wiring") == "untouched"
    again.save()
    assert not place.exists()
    assert Desk.open(desk.path or Path()).value("goal.power") == "700 hp"


def test_an_emptied_power_comes_back_empty(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("goal.power", "")
    place = desk.write_draft()
    assert place is not None
    assert back(place).text_in_field("goal.power").refused == "a power is wanted"


def test_a_file_changed_meanwhile_is_noticed_when_the_draft_is_saved(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("goal.power", "700")
    place = desk.write_draft()
    assert place is not None
    assert desk.path is not None
    desk.path.write_text(desk.path.read_text(encoding="utf-8") + "# a line\n", encoding="utf-8")
    with pytest.raises(Exception, match="was changed outside this program"):
        back(place).save()


def test_a_file_that_is_gone_does_not_take_its_draft_along(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("goal.power", "700")
    place = desk.write_draft()
    assert place is not None
    assert desk.path is not None
    desk.path.unlink()
    again = back(place)
    again.save()
    assert Desk.open(desk.path).value("goal.power") == "700 hp"


def test_drafts_without_a_file_are_listed_last_kept_first_and_never_as_builds(tmp_path: Path) -> None:
    first, second = told(tmp_path, name="First"), told(tmp_path)
    for number, desk in enumerate((first, second)):
        place = desk.write_draft()
        assert place is not None
        os.utime(place, (number + 1, number + 1))
    opened(tmp_path)
    (tmp_path / ".garbage.toml.draft").write_bytes(b"\xff\x00")
    (tmp_path / ".else.draft").write_bytes(b"not ours")
    whole = [draft.name for draft in unsaved(tmp_path) if not draft.fault]
    assert whole == ["Unnamed build", "First"]
    damaged = {draft.path.name for draft in unsaved(tmp_path) if draft.fault}
    assert damaged == {".garbage.toml.draft", ".else.draft"}
    with pytest.raises(DraftError, match=r"^\.garbage\.toml\.draft: cannot be read as a draft$"):
        Desk.from_draft(tmp_path / ".garbage.toml.draft")
    assert [entry.name for entry in entries(tmp_path)] == ["Hill-climb six"]
    assert unsaved(tmp_path / "nowhere") == []


def test_two_unnamed_builds_keep_a_draft_each(tmp_path: Path) -> None:
    places = {told(tmp_path).write_draft() for _ in range(3)}
    assert len(places) == 3


def test_nothing_unsaved_keeps_no_draft(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    assert desk.write_draft() is None
    desk.visit("goal.power")
    desk.type("goal.power", "700")
    place = desk.write_draft()
    assert place is not None
    desk.undo()
    assert desk.write_draft() is None
    assert not place.exists()


def test_a_draft_that_nobody_came_back_to_is_not_written_over(tmp_path: Path) -> None:
    first = opened(tmp_path)
    first.type("goal.power", "700")
    first.write_draft()
    second = Desk.open(first.path or Path())
    second.type("goal.power", "600")
    second.write_draft()
    assert {back(place).value("goal.power") for place in tmp_path.glob(".*.draft")} == {"700 hp", "600 hp"}


def test_a_draft_given_up_is_gone(tmp_path: Path) -> None:
    desk = told(tmp_path)
    place = desk.write_draft()
    assert place is not None
    desk.discard_draft()
    assert not place.exists()
    desk.discard_draft()


def test_a_draft_that_no_folder_takes_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "file"))
    monkeypatch.setenv("TMPDIR", str(tmp_path / "file"))
    with pytest.raises(OutputError):
        told(tmp_path / "file" / "folder").write_draft()


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{}",
        b"[]",
        b"null",
        b"\xff\xfe\x00",
        b"9" * 5000,
        b"[" * 100_000,
        b'{"draft": 2, "plain": {}}',
        b'{"draft": 1, "plain": ' + b'{"a": ' * 40 + b"1" + b"}" * 40 + b"}",
        b'{"draft": 1, "plain": {"notes": "' + b"x" * 600_000 + b'"}}',
    ],
)
def test_what_is_no_draft_is_refused_in_a_sentence(tmp_path: Path, content: bytes) -> None:
    place = tmp_path / ".a.toml.draft"
    place.write_bytes(content)
    with pytest.raises(DraftError, match=r"^\.a\.toml\.draft: "):
        Desk.from_draft(place)
    with pytest.raises(DraftError):
        Desk.from_draft(tmp_path / ".gone.toml.draft")


@pytest.mark.parametrize(
    "told",
    [
        {"plain": [], "raw": {"x": 1}, "picked": 5, "seen": "x", "kept": 5, "aside": {"surge": [1]}},
        {"plain": {"goal": "fast", "feed": {"run": [1]}, "pump": {"curve": [{"points": [["1 psi"]]}]}}},
        {"plain": {"goal": {"power": 5, "reserve": "much"}, "engine": {"cylinders": True, "lambda": 1e400}}},
        {"plain": {"feed": {"run": [{"fittings": {"straight": 99, "bent": 1}}] * 100, "sizes": ["x"]}}},
        {"plain": {"name": "\ud800", "notes": "\x1b[2J"}},
        {"plain": {"pump": {"curve": [{"points": [["1 psi", "x"], ["2 psi", "3 gal/h"]]}]}}},
        {
            "plain": {
                "goal": {"power": "100 hp"},
                "stress": {"case": [{"change": {"a": {"b": 1}, "record.x": 2}}]},
            }
        },
        {"plain": {}, "raw": {"feed.run.30.length": "x", "format": "1", "a.b": "c", "feed.hoses": "\x1b"}},
        {"plain": {}, "raw": {"goal.power": "9" * 9999}, "picked": {"pump.known": "nonsense", "x": "y"}},
        {"plain": {}, "aside": {"pump.curve": [{"points": 5}], "x": 1}, "seen": [1, "goal", "nowhere"]},
    ],
)
def test_what_a_draft_cannot_mean_is_left_out(tmp_path: Path, told: dict[str, object]) -> None:
    place = tmp_path / ".a.toml.draft"
    place.write_text(json.dumps({"draft": 1, **told}), encoding="utf-8")
    desk = back(place)
    desk.finish()
    for path in desk.refused:
        assert desk.refused[path]
    assert desk.held is None or desk.held.startswith("Not updated: ")
    for path in ("pump.known", "feed.hoses", "goal.power", "name", "feed.length"):
        desk.text_in_field(path)
    desk.type("goal.power", "750")
    assert desk.result is not None


def test_broken_drafts_never_do_more_than_refuse(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("pressure.boost", "22 gal/h")
    desk.type("pump.curve.0.points.7.0", "20")
    desk.choose("surge.have", "yes")
    place = desk.write_draft()
    assert place is not None
    good, dice = place.read_bytes(), random.Random(7)
    for _ in range(400):
        content = bytearray(good)
        for _ in range(dice.randrange(1, 5)):
            at = dice.randrange(len(content))
            content[at : at + dice.randrange(12)] = dice.choice(
                [b"", b"null", b"{", b'"', b"[]", b"-1", b"true", b"1e999", bytes(content[at : at + 30])]
            )
        place.write_bytes(bytes(content))
        try:
            again = back(place)
        except DraftError:
            continue
        assert again.held is None or again.held
        assert isinstance(again.refused, dict)
