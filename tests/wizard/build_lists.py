"""The list of past builds under a keyboard: a folder with builds of every kind, told keys, read as lines of text."""

from __future__ import annotations

import os
from collections.abc import AsyncIterator, Callable, Sequence
from contextlib import asynccontextmanager
from pathlib import Path

from rich.cells import cell_len
from textual.events import Key, Paste
from textual.pilot import Pilot

from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.build_list.list_screen import BuildListScreen
from fuelwiz.wizard.look import Look

EXAMPLES = Path(__file__).parents[1] / "examples"
SIZES = ((60, 20), (80, 24), (120, 36), (160, 50))
MOST_WAITS = 800
BROKEN = 'format = 1\nname = "Winter project"\n[goal]\npower = "500 hp"\n[pressure]\nbase = "22 gal/h"\n'


class ListApp(FuelwizApp):
    """The program, with what leads away from the list written down in place of done."""

    def __init__(self, folder: Path, look: Look | None = None) -> None:
        super().__init__(folder, look=look or Look())
        self.called: list[tuple[object, ...]] = []

    def open_build(self, path: Path, keys: Sequence[Key | Paste] = ()) -> None:
        self.called.append(("open", path))

    def new_build(self, keys: Sequence[Key | Paste] = (), opened_by: str = "") -> None:
        self.called.append(("new",))

    def open_sample(self) -> None:
        self.called.append(("sample",))

    def compare(self, paths: Sequence[object]) -> None:
        self.called.append(("compare", *paths))

    def leave(self, status: int = 0) -> None:
        self.called.append(("leave",))


class Reader:
    """What someone in front of the list can do and see."""

    def __init__(self, pilot: Pilot[int], app: ListApp) -> None:
        self.pilot = pilot
        self.app = app

    @property
    def screen(self) -> BuildListScreen:
        screen = self.app.screen
        assert isinstance(screen, BuildListScreen)
        return screen

    async def press(self, *keys: str) -> None:
        await self.pilot.press(*keys)
        await self.pilot.pause()

    async def until_called(self, *call: object) -> None:
        """Wait until the list leads to something."""
        for _ in range(MOST_WAITS):
            if self.app.called and self.app.called[-1] == call:
                return
            await self.pilot.pause(0.01)
        raise AssertionError(f"{call} was never called, but {self.app.called}")

    async def type(self, text: str) -> None:
        await self.press(*text)

    async def paste(self, text: str) -> None:
        self.app.screen.post_message(Paste(text))
        await self.pilot.pause()

    @property
    def lines(self) -> list[str]:
        """The screen as it is put together for the terminal."""
        return [strip.text for strip in self.app.screen._compositor.render_strips()]

    @property
    def text(self) -> str:
        return "\n".join(self.lines)

    @property
    def footer(self) -> str:
        """The last row; where it is the box of a question that takes more rows, with what is asked above it."""
        above, last = (line.strip() for line in self.lines[-2:])
        return f"{above} {last}" if last.startswith("[") else last

    @property
    def pointed(self) -> str:
        """The row under the pointer, from the name on."""
        rows = [line for line in self.lines if line[1:2] in ("▸", ">")]
        assert len(rows) == 1, self.text
        return rows[0][3:]

    @property
    def names(self) -> list[str]:
        """The names of all builds that the list holds, whether in sight or not."""
        return [entry.name for entry in self.screen.builds.rows]

    async def until(self, holds: Callable[[], bool]) -> None:
        for _ in range(MOST_WAITS):
            if holds():
                await self.pilot.pause()
                return
            await self.pilot.pause(0.01)
        raise AssertionError(f"never so on\n{self.text}")

    async def all_calculated(self) -> None:
        """Wait until every build is calculated."""
        builds = self.screen.builds
        await self.until(lambda: builds.next_unknown(1) is None)

    def stays_inside(self) -> None:
        """Every line is exactly as wide as the screen, and there are as many as it has."""
        width, height = self.screen.size
        lines = self.lines
        assert len(lines) == height
        assert [cell_len(line) for line in lines] == [width] * height


@asynccontextmanager
async def at_list(
    folder: Path, size: tuple[int, int] = (80, 24), look: Look | None = None
) -> AsyncIterator[Reader]:
    """The program at its list."""
    BuildListScreen.last_at.clear()
    app = ListApp(folder, look)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        yield Reader(pilot, app)


def folder_of_builds(folder: Path) -> Path:
    """A folder with builds that work and do not, an unfinished one, and files that are broken in two ways."""
    days = {"hill-climb-six": 1, "hill-climb-coupe": 20, "twins": 30, "no-pump-yet": 40, "goal-alone": 50}
    for name, age in days.items():
        _aged(folder / f"{name}.toml", (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"), age)
    _aged(folder / "winter-project.toml", BROKEN, 60)
    _aged(folder / "half.toml", 'format = 1\nname = "half\n', 70)
    return folder


def _aged(path: Path, text: str, days: int) -> None:
    path.write_text(text, encoding="utf-8")
    changed = 1_750_000_000 - days * 86_400
    os.utime(path, (changed, changed))
