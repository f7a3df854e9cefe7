"""A build by its name: what every command finds of what is typed, and what it says where there is nothing."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from fuelwiz.cli import main
from fuelwiz.errors import SessionError
from fuelwiz.store.named import build_called

REPOSITORY = Path(__file__).parents[2]
SAMPLE = REPOSITORY / "saved_sessions" / "gravel-four.toml"
PARTS = str(REPOSITORY / "saved_sessions" / "parts" / "sample-parts.toml")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of builds with one in it, far from where one stands."""
    place, here = tmp_path / "builds", tmp_path / "here"
    place.mkdir()
    here.mkdir()
    shutil.copy(SAMPLE, place / "coupe.toml")
    monkeypatch.setenv("FUELWIZ_SESSIONS", str(place))
    monkeypatch.chdir(here)
    return place


@pytest.mark.parametrize(
    "words",
    [["report", "{}"], ["check", "{}"], ["compare", "{}", "{}"], ["options", "{}", "--parts", PARTS]],
)
@pytest.mark.parametrize("name", ["coupe.toml", "coupe"])
def test_every_command_finds_a_build_by_its_name(
    words: list[str], name: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([word.format(name) for word in words]) == 0
    out, err = capsys.readouterr()
    assert err == "" and ("Gravel-rally four" in out or "Good for 505 hp" in out)


def test_a_log_is_looked_for_beside_the_build_that_names_it(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with (folder / "coupe.toml").open("a", encoding="utf-8") as build:
        build.write('\n[log]\nfile = "pull.csv"\n')
    assert main(["log", "coupe"]) == 2
    assert str(folder / "pull.csv") in capsys.readouterr().err


def test_what_stands_here_comes_before_the_folder(folder: Path) -> None:
    Path("coupe.toml").write_text("format = 1\n", encoding="utf-8")
    assert build_called("coupe.toml", {"FUELWIZ_SESSIONS": str(folder)}) == Path("coupe.toml")


def test_both_places_are_named_where_it_is_in_neither(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for words in (["report", "couple"], ["check", "couple"], ["options", "couple", "--parts", PARTS]):
        assert main(words) == 2
        said = capsys.readouterr().err
        assert said == (
            f"fuelwiz: couple: there is no such file here, nor in the folder of your builds, {folder}\n"
        )


def test_a_path_with_a_folder_in_it_is_looked_for_nowhere_else(folder: Path) -> None:
    assert build_called("old/coupe.toml", {"FUELWIZ_SESSIONS": str(folder)}) == Path("old/coupe.toml")


def test_no_other_file_of_the_folder_is_taken_for_a_build(folder: Path) -> None:
    (folder / "coupe.txt").write_text("format = 1\n", encoding="utf-8")
    with pytest.raises(SessionError, match="nor in the folder of your builds"):
        build_called("coupe.txt", {"FUELWIZ_SESSIONS": str(folder)})


def test_what_is_shown_of_a_name_is_harmless(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "x\x1b[2J\udcff"]) == 2
    out, err = capsys.readouterr()
    assert "\x1b" not in out + err
