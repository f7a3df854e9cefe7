"""The list of past builds on the screen: what stands there at each size, and what the keys do."""

from __future__ import annotations

import os
import shutil
import threading
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from fuelwiz.document.file import load
from fuelwiz.session import inputs_digest
from fuelwiz.store.build_file import BuildFile
from fuelwiz.wizard.actions import LIST, Action
from fuelwiz.wizard.build_list import list_screen
from fuelwiz.wizard.build_list.judged import Judged, judge
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.look import Look

from .build_lists import EXAMPLES, SIZES, at_list, folder_of_builds

ASCII = Look(unicode=False, colors="none")


@pytest.fixture
def builds(tmp_path: Path) -> Path:
    return folder_of_builds(tmp_path)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("look", [Look(), Look(colors="16"), ASCII], ids=["256", "16", "ascii"])
async def test_every_build_has_its_row_at_every_size(builds: Path, size: tuple[int, int], look: Look) -> None:
    async with at_list(builds, size, look) as reader:
        await reader.all_calculated()
        reader.stays_inside()
        for row in ("Hill-climb six", "Hill-climb coupe", "goal-alone", "Winter project", "half.toml"):
            assert sum(line[3:].startswith(row) for line in reader.lines) >= 1, row
        for word in ("brisk", "easy", "good", "1 open", "4 open", "yes", "no"):
            assert word in reader.text
        assert reader.pointed.startswith("Hill-climb six") and "E85" in reader.pointed
        if not look.unicode:
            assert reader.text.isascii()


async def test_the_strip_says_what_the_build_comes_to(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.all_calculated()
        below = " ".join(" ".join(reader.lines[19:23]).split())
        assert below.startswith("! Hill-climb six: Short of your reserve: 13 % to spare")
        assert "11 values assumed, 2 sections left out" in below and "steps without an answer" in below


@pytest.fixture
def held_back(monkeypatch: pytest.MonkeyPatch) -> Iterator[threading.Event]:
    """Nothing is calculated before this is set."""
    go = threading.Event()

    def waits(entry: BuildFile) -> Judged:
        go.wait(30)
        return judge(entry)

    monkeypatch.setattr(list_screen, "judge", waits)
    yield go
    go.set()


async def test_what_the_record_says_stands_there_before_anything_is_calculated(
    tmp_path: Path, held_back: threading.Event
) -> None:
    record = 'saved = "2026-05-14"\nworks = true\nmargin = "17 %"\nanswer = "It was -8."\ninputs = "0"\n'
    text = f'format = 1\nname = "One"\n[goal]\npower = "400 hp"\n[record]\n{record}'
    (tmp_path / "one.toml").write_text(text)
    async with at_list(tmp_path, (120, 36)) as reader:
        assert "One: It was -8." in reader.text
        assert reader.pointed.split()[-5:] == ["✓", "yes", "–", "17", "today"]
        held_back.set()
        await reader.all_calculated()
        assert "It was -8." not in reader.text
        assert "Changed by hand since it was saved on 2026-05-14." in reader.text


async def test_keys_do_not_wait_for_what_is_being_calculated(
    builds: Path, held_back: threading.Event
) -> None:
    async with at_list(builds) as reader:
        await reader.until(lambda: reader.screen.is_calculating)
        await reader.press("down", "space", "down", "enter")
        assert reader.app.called == [("open", builds / "twins.toml")] and "1 marked" in reader.text
        held_back.set()
        await reader.all_calculated()
        assert reader.pointed.startswith("Strip sedan, twins")


async def test_a_changed_program_says_what_it_said_before(tmp_path: Path) -> None:
    path = tmp_path / "one.toml"
    path.write_text((EXAMPLES / "hill-climb-coupe.toml").read_text(encoding="utf-8"), encoding="utf-8")
    digest = inputs_digest(load(path)[1])
    record = f'[record]\ninputs = "{digest}"\nsaved = "2020-01-02"\nanswer = "-10 is the line to fit."\n'
    path.write_text(path.read_text(encoding="utf-8") + record, encoding="utf-8")
    async with at_list(tmp_path, (120, 36)) as reader:
        await reader.all_calculated()
        assert (
            "The same build, saved on 2020-01-02, gave this result then: -10 is the line to fit."
            in reader.text
        )


async def test_the_last_change_is_said_key_by_key(builds: Path) -> None:
    path = builds / "hill-climb-six.toml"
    (builds / ".history").mkdir()
    (builds / ".history" / path.name).write_text(path.read_text().replace("750 hp", "690 hp"))
    async with at_list(builds) as reader:
        await reader.all_calculated()
        assert "Last change: power 690 to 750 hp." in reader.text


async def test_a_broken_file_says_why_in_its_row(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.all_calculated()
        await reader.press("end", "up")
        assert reader.pointed.startswith("half.toml  !  line 2: is not TOML")
        await reader.press("enter")
        assert reader.footer.startswith("half.toml cannot be opened") and reader.app.called == []
        await reader.press("up")
        assert reader.pointed.startswith("Winter project  !  line 6: `pressure.base` wants a pressure")
        await reader.press("enter")
        assert reader.app.called == [("open", builds / "winter-project.toml")]


async def test_a_file_put_right_meanwhile_opens(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("end", "up")
        (builds / "half.toml").write_text('format = 1\nname = "half"\n[goal]\npower = "300 hp"\n')
        await reader.press("enter")
        assert reader.app.called == [("open", builds / "half.toml")]


async def test_the_pointer_moves_and_enter_opens(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("down", "down", "up", "enter")
        assert reader.app.called == [("open", builds / "hill-climb-coupe.toml")]
        await reader.press("up", "up", "up")
        assert reader.pointed.startswith("Hill-climb six")
        await reader.press("end", "down", "enter")
        assert reader.pointed.startswith("+ new build")
        await reader.until_called("new")


async def test_the_list_scrolls_with_the_pointer(tmp_path: Path) -> None:
    for number in range(60):
        (tmp_path / f"build-{number:02}.toml").write_text('format = 1\n[goal]\npower = "300 hp"\n')
        os.utime(tmp_path / f"build-{number:02}.toml", (1_000_000_000, 1_000_000_000 - number))
    async with at_list(tmp_path, (60, 20)) as reader:
        await reader.press(*["down"] * 15)
        assert reader.pointed.startswith("build-15") and "16 of 60" in reader.text
        await reader.press("pagedown")
        assert reader.pointed.startswith("build-26")
        await reader.press("end", "up")
        assert reader.pointed.startswith("build-59")
        await reader.press("home")
        assert reader.pointed.startswith("build-00")
        reader.stays_inside()


FILTERED = {
    "coupe": ["Hill-climb coupe"],
    "E85 -8": ["Hill-climb coupe", "Strip sedan, twins", "Hill-climb six, no pump yet"],
    "brisk": ["Hill-climb six"],
    "cannot be read": ["Winter project", "half.toml"],
}


async def test_the_filter_looks_at_name_fuel_line_and_verdict(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.all_calculated()
        for typed, left in FILTERED.items():
            reader.app.called.clear()
            await reader.press("/")
            await reader.type(typed)
            assert reader.names == left
            assert f"{len(left)} of 7" in reader.text and typed in reader.lines[1]
            await reader.press("enter", "enter")
            assert reader.app.called[0][0] == "open"
            await reader.press("escape")
            assert len(reader.names) == 7 and reader.app.called[-1] != ("leave",)


async def test_while_the_filter_is_typed_letters_do_nothing_else(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("/")
        await reader.type("ndxq")
        assert reader.app.called == [] and reader.names == []
        assert "No build matches." in reader.text
        await reader.press("backspace", "backspace", "backspace", "backspace", "escape")
        assert len(reader.names) == 7


async def test_marks_and_compare(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("x")
        assert reader.footer.startswith("Mark two or more builds")
        await reader.press("space", "down", "x")
        six, coupe = builds / "hill-climb-six.toml", builds / "hill-climb-coupe.toml"
        assert reader.app.called == [("compare", six, coupe)]
        await reader.press("down", "space")
        assert "2 marked" in reader.text and reader.footer.startswith("x compare")
        assert sum(line.startswith("•") for line in reader.lines) == 2
        await reader.press("x")
        assert reader.app.called[-1] == ("compare", six, builds / "twins.toml")
        await reader.press("space")
        assert "1 marked" in reader.text


async def test_rename_is_asked_in_the_footer(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("r")
        assert reader.footer.startswith("New name: [Hill-climb six")
        await reader.press("ctrl+u")
        await reader.type("Six q d")
        await reader.press("enter")
        assert reader.pointed.startswith("Six q d")
        assert reader.footer.startswith("Renamed; its file is now six-q-d.toml.")
        assert tomllib.loads((builds / "six-q-d.toml").read_text())["name"] == "Six q d"
        await reader.press("r", "escape")
        assert reader.pointed.startswith("Six q d") and reader.app.called == []


async def test_a_taken_name_is_said_and_nothing_is_lost(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("r", "ctrl+u")
        await reader.type("twins")
        await reader.press("enter")
        assert "already" in reader.footer
        assert len(reader.names) == 7 and (builds / "hill-climb-six.toml").exists()


async def test_copy_puts_the_pointer_on_the_copy(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("c")
        assert reader.pointed.startswith("Hill-climb six, copy")
        assert len(reader.names) == 8


async def test_delete_asks_nothing_and_u_brings_it_back(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("down", "d")
        assert reader.footer.startswith("Deleted: Hill-climb coupe. u restores it.")
        assert "Hill-climb coupe" not in reader.names and reader.pointed.startswith("Strip sedan")
        await reader.press("u")
        assert reader.pointed.startswith("Hill-climb coupe") and len(reader.names) == 7
        await reader.press("u")
        assert reader.footer.startswith("The bin is empty")


async def test_the_last_build_can_be_deleted_and_brought_back(tmp_path: Path) -> None:
    shutil.copy(folder_of_builds(tmp_path) / "twins.toml", tmp_path / "one.toml")
    for path in tmp_path.glob("*-*.toml"):
        path.unlink()
    async with at_list(tmp_path) as reader:
        await reader.press(*"ddd")
        assert "No builds here yet." in reader.text
        await reader.press("u")
        assert len(reader.names) == 1


async def test_a_folder_that_changes_meanwhile(builds: Path) -> None:
    async with at_list(builds) as reader:
        (builds / "hill-climb-six.toml").unlink()
        await reader.press("d")
        assert "no longer exists" in reader.footer and len(reader.names) == 6


async def test_another_folder(builds: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    other = tmp_path_factory.mktemp("other")
    (other / "one.toml").write_text('format = 1\nname = "Elsewhere"\n[goal]\npower = "300 hp"\n')
    async with at_list(builds) as reader:
        await reader.press("f", "ctrl+u")
        await reader.paste(str(other / "nowhere"))
        await reader.press("enter")
        assert "There is no folder" in reader.footer and reader.app.folder == builds
        await reader.press("f", "ctrl+u")
        await reader.paste(str(other))
        await reader.press("enter")
        assert reader.app.folder == other and reader.names == ["Elsewhere"]


async def test_open_a_file_from_elsewhere(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("o")
        await reader.type("nowhere.toml")
        await reader.press("enter")
        assert reader.footer.startswith("There is no file nowhere.toml.") and reader.app.called == []
        await reader.press("o")
        await reader.type("twins.toml")
        await reader.press("enter")
        assert reader.app.called == [("open", builds / "twins.toml")]


@pytest.mark.parametrize("size", SIZES)
async def test_the_page_of_all_keys_is_true(builds: Path, size: tuple[int, int]) -> None:
    async with at_list(builds, size) as reader:
        await reader.press("ctrl+g")
        reader.stays_inside()
        for action in LIST:
            assert action.text in reader.text
        await reader.press("escape")
        assert reader.app.called == []
        await reader.press("f9", "n")
        await reader.until_called("new")
        assert len(reader.app.called) == 1
        await reader.press("f9", "e")
        assert reader.app.called[-1] == ("open", builds / "hill-climb-six.toml")
        await reader.press("f9", "q")
        assert list(reader.app.called[-1]) == ["leave"]


@pytest.mark.parametrize("action", [action for action in LIST if action.letter], ids=lambda one: one.id)
async def test_every_action_has_a_deed(builds: Path, action: Action) -> None:
    async with at_list(builds) as reader:
        await reader.press("ctrl+g", action.letter)
        assert reader.screen.page.mode == ("help" if action.id == "help" else "list")
        changed = (
            reader.app.called,
            reader.screen.page.prompt,
            reader.screen.page.message,
            reader.screen.builds.typing,
            reader.screen.page.mode == "help",
        )
        assert any(changed), action.id


async def test_help_explains_the_marks(builds: Path) -> None:
    async with at_list(builds, (60, 20)) as reader:
        await reader.press("f1")
        for word in ("easy", "good", "brisk", "fast", "too fast"):
            assert word in reader.text
        await reader.press("pagedown")
        assert "restores the last one" in " ".join(reader.text.split())
        reader.stays_inside()
        await reader.press("f1")
        assert reader.pointed.startswith("Hill-climb six")


@pytest.mark.parametrize("key", ["escape", "ctrl+q"])
async def test_leaving(builds: Path, key: str) -> None:
    async with at_list(builds) as reader:
        await reader.press(key)
        assert reader.app.called == [("leave",)]


@pytest.mark.parametrize("size", SIZES)
async def test_an_empty_folder_offers_the_guided_sample_first(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_list(tmp_path / "not-there-yet", size) as reader:
        reader.stays_inside()
        assert reader.pointed.startswith("Start with a guided sample")
        assert "qualified people come first." in " ".join(reader.text.split())
        await reader.press("enter")
        assert reader.app.called == [("sample",)]
        await reader.press("down", "enter")
        await reader.until_called("new")
        await reader.press("down")
        assert reader.pointed.startswith("Open a file")
        await reader.press("enter")
        assert reader.footer.startswith("Which file?")


async def test_drafts_are_offered(builds: Path) -> None:
    (builds / ".unnamed-1.draft").write_text(
        '{"draft": 1, "plain": {"format": 1, "name": "Kit car", "goal": {"power": "300 hp"}}}'
    )
    draft = builds / ".twins.toml.draft"
    draft.write_text(
        '{"draft": 1, "plain": {"format": 1, "goal": {"power": "300 hp"}}, "seen": "' + "x" * 600_000 + '"}'
    )
    (builds / ".half.toml.draft").write_text("not a draft")
    async with at_list(builds) as reader:
        damaged = [entry for entry in reader.screen.builds.entries if entry.is_draft and entry.fault]
        assert {entry.path.name for entry in damaged} == {".half.toml.draft", ".twins.toml.draft"}
    draft.write_text('{"draft": 1, "plain": {"format": 1, "name": "Twins", "goal": {"power": "300 hp"}}}')
    (builds / ".half.toml.draft").unlink()
    os.utime(draft, (1, 1))  # older than any file, by a clock that jumped
    async with at_list(builds) as reader:
        assert reader.pointed.startswith("Kit car draft")
        await reader.press("r")
        assert "never saved" in reader.footer
        await reader.press("/")
        await reader.type("twins")
        await reader.press("enter")
        assert "draft" in reader.pointed
        await reader.press("enter")  # the build asks for itself whether to go on with the draft
        assert reader.app.called == [("open", builds / "twins.toml")]


async def test_a_draft_without_a_file_opens_at_the_desk(builds: Path) -> None:
    (builds / ".unnamed-1.draft").write_text(
        '{"draft": 1, "plain": {"format": 1, "name": "Kit car", "goal": {"power": "300 hp"}}}'
    )
    async with at_list(builds) as reader:
        await reader.press("enter")
        await reader.until(lambda: getattr(reader.app.screen, "desk", None) is not None)
        assert isinstance(reader.app.screen, BuildScreen)
        assert reader.app.screen.desk.name == "Kit car"


async def test_hostile_texts_are_shown_as_the_letters_they_are(tmp_path: Path) -> None:
    name = "[bold]x[/] \\u001b[2J [@click=app.quit]\\u202e 日本"
    text = (
        f'format = 1\nname = "{name}"\nnotes = "[/]"\n[goal]\npower = "300 hp"\n[feed]\nchosen = "[/red]"\n'
    )
    (tmp_path / "\x1b]0;owned\x07[bold].toml").write_text(text)
    for size in SIZES:
        async with at_list(tmp_path, size) as reader:
            assert "[bold]x[/] [2J" in reader.text
            await reader.all_calculated()
            reader.stays_inside()
            assert not set(reader.text) & {"\x1b", "\x07", "\u202e"}


async def test_a_message_of_the_program_is_said_once(builds: Path) -> None:
    async with at_list(builds) as reader:
        reader.app.message = "half.toml: is not TOML"
        reader.app.show_list()
        await reader.pilot.pause()
        await reader.until(lambda: "half.toml: is not TOML" in reader.footer)
        await reader.press("down")
        assert reader.footer.startswith("Enter open")


async def test_the_pointer_is_where_it_was_when_the_list_comes_back(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("down", "down")
        reader.app.show_list()
        await reader.pilot.pause()
        assert reader.pointed.startswith("Strip sedan, twins")


async def test_resizing_keeps_everything_inside(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.press("down")
        for size in (*SIZES, (40, 10), (60, 20)):
            await reader.pilot.resize_terminal(*size)
            await reader.pilot.pause()
            reader.stays_inside()
        assert reader.pointed.startswith("Hill-climb coupe")


async def test_a_click_points_and_a_second_opens(builds: Path) -> None:
    async with at_list(builds) as reader:
        await reader.pilot.click(offset=(10, 6))
        assert reader.pointed.startswith("Strip sedan, twins")
        await reader.pilot.click(offset=(10, 6), times=2)
        assert reader.app.called == [("open", builds / "twins.toml")]
