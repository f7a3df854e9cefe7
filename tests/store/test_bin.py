"""What is deleted comes back, with what goes along with it, and never over something else."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.errors import OutputError
from fuelwiz.store.bin import bring_back, put_in_bin
from fuelwiz.store.folder import entries, unsaved


def files(folder: Path) -> list[str]:
    """The files below a folder, bin and all."""
    return sorted(str(one.relative_to(folder)) for one in folder.rglob("*") if not one.is_dir())


def test_a_deleted_build_comes_back_as_it_was(tmp_path: Path) -> None:
    (tmp_path / ".history").mkdir()
    texts = {"six.toml": "build", ".six.toml.draft": "draft", ".history/six.toml": "before"}
    for name, text in texts.items():
        (tmp_path / name).write_text(text)
    time = (tmp_path / "six.toml").stat().st_mtime_ns
    kept = put_in_bin(tmp_path / "six.toml")
    assert kept.parent.parent == tmp_path / ".bin" and kept.read_text() == "build"
    assert [name for name in files(tmp_path) if not name.startswith(".bin")] == []
    assert bring_back(tmp_path) == tmp_path / "six.toml"
    assert {name: (tmp_path / name).read_text() for name in files(tmp_path)} == texts
    assert (tmp_path / "six.toml").stat().st_mtime_ns == time
    assert list((tmp_path / ".bin").iterdir()) == []


def test_the_last_one_comes_back_first(tmp_path: Path) -> None:
    for name in ("one.toml", "two.toml", "three.toml"):
        (tmp_path / name).write_text(name)
        put_in_bin(tmp_path / name)
    back = [bring_back(tmp_path) for _ in range(4)]
    assert [one and one.name for one in back] == ["three.toml", "two.toml", "one.toml", None]


def test_it_comes_back_with_a_number_where_its_name_is_taken(tmp_path: Path) -> None:
    (tmp_path / "six.toml").write_text("old")
    put_in_bin(tmp_path / "six.toml")
    (tmp_path / "six.toml").write_text("new")
    assert bring_back(tmp_path) == tmp_path / "six-2.toml"
    assert [(tmp_path / name).read_text() for name in ("six.toml", "six-2.toml")] == ["new", "old"]


def test_one_name_can_be_deleted_again_and_again(tmp_path: Path) -> None:
    for text in ("a", "b"):
        (tmp_path / "six.toml").write_text(text)
        put_in_bin(tmp_path / "six.toml")
    assert len(files(tmp_path)) == 2 and entries(tmp_path) == []


def test_a_name_of_the_greatest_length_fits_the_bin(tmp_path: Path) -> None:
    path = tmp_path / ("x" * 250 + ".toml")
    path.write_text("long")
    put_in_bin(path)
    assert bring_back(tmp_path) == path


def test_a_link_is_deleted_as_the_link_it_is(tmp_path: Path) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_text("precious")
    folder = tmp_path / "builds"
    folder.mkdir()
    (folder / "link.toml").symlink_to(outside)
    put_in_bin(folder / "link.toml")
    assert outside.read_text() == "precious" and entries(folder) == []
    assert bring_back(folder) == folder / "link.toml" and (folder / "link.toml").is_symlink()


def test_a_folder_stays_and_a_file_that_is_gone_is_said(tmp_path: Path) -> None:
    (tmp_path / "folder.toml").mkdir()
    with pytest.raises(OutputError, match="is a folder"):
        put_in_bin(tmp_path / "folder.toml")
    with pytest.raises(OutputError, match="no longer exists"):
        put_in_bin(tmp_path / "gone.toml")
    assert not (tmp_path / ".bin").exists()


def test_a_bin_that_leads_elsewhere_is_not_used(tmp_path: Path) -> None:
    elsewhere, folder = tmp_path / "elsewhere", tmp_path / "builds"
    (elsewhere / "2020").mkdir(parents=True)
    (elsewhere / "2020" / "trap.toml").write_text("trap")
    folder.mkdir()
    (folder / ".bin").symlink_to(elsewhere)
    (folder / "six.toml").write_text("build")
    with pytest.raises(OutputError, match="is a link"):
        put_in_bin(folder / "six.toml")
    assert bring_back(folder) is None
    assert (folder / "six.toml").read_text() == "build" and (elsewhere / "2020" / "trap.toml").exists()


def test_a_file_in_place_of_the_bin_is_said(tmp_path: Path) -> None:
    (tmp_path / ".bin").write_text("")
    (tmp_path / "six.toml").write_text("build")
    with pytest.raises(OutputError):
        put_in_bin(tmp_path / "six.toml")
    assert bring_back(tmp_path) is None and (tmp_path / "six.toml").exists()


def test_a_draft_without_a_build_goes_and_comes_back_too(tmp_path: Path) -> None:
    (tmp_path / ".unnamed-1.draft").write_text('{"plain": {"format": 1}}')
    put_in_bin(tmp_path / ".unnamed-1.draft")
    (tmp_path / ".unnamed-1.draft").write_text('{"plain": {"format": 1, "name": "another"}}')
    assert bring_back(tmp_path) == tmp_path / ".unnamed-1-2.draft"
    assert len(unsaved(tmp_path)) == 2
