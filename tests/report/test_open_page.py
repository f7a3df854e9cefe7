"""A page for the browser: a file that its owner alone can read, and a browser where there is a screen."""

from __future__ import annotations

import stat
import webbrowser
from pathlib import Path

import pytest

from fuelwiz.cli import main
from fuelwiz.errors import OutputError
from fuelwiz.report.open_page import opened, private_page

BUILD = str(Path(__file__).parent.parent / "examples" / "full-session.toml")


@pytest.fixture(autouse=True)
def _temporary_files_here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))


def test_its_owner_alone_can_read_it(tmp_path: Path) -> None:
    path = private_page("<p>°</p>\n")
    assert path.parent == tmp_path and path.suffix == ".html"
    assert path.read_text(encoding="utf-8") == "<p>°</p>\n"
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert private_page("x") != path


def test_where_it_cannot_be_written_that_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", "/proc/no-such-folder")
    with pytest.raises(OutputError, match="cannot be written"):
        private_page("x")


@pytest.mark.parametrize(
    ("environ", "system", "asked"),
    [
        ({}, "linux", False),
        ({"DISPLAY": ":0"}, "linux", True),
        ({"WAYLAND_DISPLAY": "w"}, "linux", True),
        ({}, "darwin", True),
        ({}, "win32", True),
    ],
)
def test_a_browser_is_asked_where_there_is_a_screen(
    environ: dict[str, str], system: str, asked: bool
) -> None:
    addresses: list[str] = []

    def browse(address: str) -> bool:
        addresses.append(address)
        return True

    assert opened(Path("/tmp/a b.html"), environ, system, browse) is asked
    assert addresses == (["file:///tmp/a%20b.html"] if asked else [])


def test_a_browser_that_fails_is_no_browser() -> None:
    def browse(_address: str) -> bool:
        raise webbrowser.Error("none")

    assert not opened(Path("/tmp/x.html"), {"DISPLAY": ":0"}, "linux", browse)


def test_without_a_browser_the_path_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    assert main(["report", BUILD, "--open"]) == 0
    (page,) = tmp_path.glob("fuelwiz-*.html")
    assert capsys.readouterr().out == f"There is no browser here. The page is in {page}\n"
    assert page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")


def test_open_and_output_exclude_each_other(tmp_path: Path) -> None:
    assert main(["report", BUILD, "--open", "--output", str(tmp_path / "x.html")]) == 2
