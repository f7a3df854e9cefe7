"""The whole screen of past builds in lines: title, filter, table, a summary of one build, keys."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Literal

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.record import record
from fuelwiz.wizard.actions import LIST, Action, by_id
from fuelwiz.wizard.build_list.first_time import first_time_lines
from fuelwiz.wizard.build_list.list_help import help_lines
from fuelwiz.wizard.build_list.list_state import BuildList
from fuelwiz.wizard.build_list.list_table import table_lines
from fuelwiz.wizard.build_list.summary import summary_lines
from fuelwiz.wizard.chrome import keys_page
from fuelwiz.wizard.footer import footer_lines
from fuelwiz.wizard.paint import Area, Row, clip, pad
from fuelwiz.wizard.prompt import Prompt
from fuelwiz.wizard.screen_layout import too_small

TITLE = "Past builds"
HINT = "/ then type: filters by name, fuel, line or verdict"


@dataclass(slots=True)
class ListPage:
    """What stands on the screen. `mode` is what has the keys; `choice` is the row of an empty folder."""

    builds: BuildList
    mode: Literal["list", "keys", "help"] = "list"
    choice: int = 0
    scrolled: int = 0
    message: str = ""
    prompt: Prompt | None = None
    actions: tuple[Action, ...] = LIST

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to list."""
        return not self.builds.entries


CLOSE = Action("close", ("escape",), "", "close", "")


@record
class Heights:
    """How many lines each part takes; `above` are title, filter and the blanks between."""

    above: int
    table: int
    below: int


def heights(rows: int) -> Heights:
    """The parts of a screen with that many lines; a rule and the keys take one each."""
    above = 3 if rows >= 24 else 2
    below = 4 if rows < 28 else 6 if rows < 40 else 8
    return Heights(above, max(rows - above - below - 2, 2), below)


def page_lines(page: ListPage, today: date, area: Area) -> list[Strip]:
    """Every line of the screen."""
    words = too_small(area.width, area.rows)
    if words:
        return area.filled(area.paragraph(words, 1))
    footer = footer_lines(page.prompt, page.message, _offered(page), by_id(page.actions, "keys"), area)
    body = area.high(area.rows - len(footer))
    return [*_body(page, today, body), *footer]


def _body(page: ListPage, today: date, area: Area) -> list[Strip]:
    if page.mode == "keys":
        return keys_page(page.actions, area)
    if page.mode == "help":
        return help_lines(page.scrolled, area)
    title = _title(page.builds, area)
    if page.is_empty:
        blank = [area.row().strip()] if area.rows >= 22 else []
        rest = area.high(area.rows - 1 - len(blank))
        return [title, *blank, *first_time_lines(page.choice, folder_words(page.builds.folder), rest)]
    parts = heights(area.rows + 1)
    above = [title, _filter(page.builds, area), area.row().strip()][: parts.above]
    table = table_lines(page.builds, today, area.high(parts.table))
    return [
        *above,
        *table,
        _rule(page.builds, parts.table, area),
        *summary_lines(page.builds, today, area.high(parts.below)),
    ]


def _title(builds: BuildList, area: Area) -> Strip:
    line = Row(area.look, area.width, "bar").put(1, TITLE, bold=True)
    room = area.width - len(TITLE) - 15
    folder = folder_words(builds.folder)
    if cell_len(folder) > room:
        folder = "…" + folder[-room + 1 :]
    return line.put_right(area.width - 1, f"folder: {folder}", "muted").strip()


def folder_words(folder: Path) -> str:
    """The folder as people write it: from the current folder or from home where it lies below."""
    from fuelwiz.printable import clean

    for base, sign in ((Path.cwd, ""), (Path.home, "~/")):
        try:
            return clean(f"{sign}{folder.relative_to(base())}")
        except (ValueError, OSError, RuntimeError):
            continue
    return clean(str(folder))


def _filter(builds: BuildList, area: Area) -> Strip:
    """The filter, or how to start one."""
    line, needle = area.row(), builds.needle
    if not builds.typing and not needle.text:
        return line.put(3, clip(HINT, area.width - 4), "muted").strip()
    line.put(3, "/", "focus", True)
    room = min(area.width - 28, 40)
    if builds.typing:
        line.put_field(5, room, needle)
    else:
        shown, _ = needle.window(room)
        line.put(5, pad(area.look.fold(shown), room))
    return line.put(0, f"  {len(builds.rows)} of {len(builds.entries)}", "muted").strip()


def _rule(builds: BuildList, height: int, area: Area) -> Strip:
    """The rule below the table, which says what of it does not show, and how many builds are marked."""
    dash = area.look.mark("rule")
    window = builds.window(height - 1)
    count = len(builds.rows)
    notes = []
    if builds.marked:
        notes.append(f"{len(builds.marked)} marked")
    if len(window) < count:
        notes.append(f"{min(builds.at + 1, count)} of {count}")
    tail = "".join(f" {note} {dash}" for note in notes)
    return area.row().put(0, dash * (area.width - len(tail)) + tail, "muted").strip()


def _offered(page: ListPage) -> list[Action]:
    """The keys that matter now, the one thing to do first."""
    if page.mode == "help":
        return [CLOSE, Action("read", ("pagedown", "pageup"), "", "read on", "")]
    if page.mode != "list":
        return [CLOSE]
    if page.is_empty:
        choose = Action("choose", ("up",), "", "and Down choose", "")
        return [Action("go", ("enter",), "", "go", ""), choose, *_named(page, "new", "file", "help", "quit")]
    if page.builds.typing:
        ends = Action("ends", ("enter",), "", "keep it", "")
        return [ends, Action("clear", ("escape",), "", "show all", "")]
    if page.builds.entry is None:
        return [
            Action("go", ("enter",), "", "new build", ""),
            *_named(page, "sample", "filter", "restore", "folder"),
        ]
    if len(page.builds.marked) > 1:
        return _named(page, "compare", "mark", "open", "new")
    return _named(page, "open", "new", "copy", "rename", "delete", "mark", "filter", "folder", "help", "quit")


def _named(page: ListPage, *names: str) -> list[Action]:
    return [by_id(page.actions, name) for name in names]
