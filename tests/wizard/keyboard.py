"""A build's screen under a keyboard: opened from a file, told keys, and read as lines of text."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable, Iterable
from contextlib import asynccontextmanager, suppress
from pathlib import Path

from rich.cells import cell_len
from textual.events import Key, Paste
from textual.keys import _character_to_key
from textual.pilot import Pilot

from fuelwiz.desk import Desk
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.painted import Painted

EXAMPLES = Path(__file__).parents[1] / "examples"
MOST_WAITS = 500
MOST_ROWS = 40


class OneBuild(FuelwizApp):
    """The wizard with one build from a file on its screen, at a step of it."""

    def __init__(self, path: Path, step: str) -> None:
        super().__init__(path.parent, path, look=Look())
        self._step = step

    def on_mount(self) -> None:
        assert self.first_path is not None
        self.push_screen(BuildScreen(Desk.open(self.first_path), step=self._step))


class Keyboard:
    """What someone at the keys can do and see."""

    def __init__(self, pilot: Pilot[int]) -> None:
        self.pilot = pilot

    @property
    def screen(self) -> BuildScreen:
        screen = self.pilot.app.screen
        assert isinstance(screen, BuildScreen), f"on {screen}, not at the build"
        return screen

    @property
    def form(self) -> Form:
        return self.screen.form

    @property
    def desk(self) -> Desk:
        return self.screen.desk

    async def press(self, *keys: str) -> None:
        """Keys one after another, and wait until the screen has taken them all."""
        for key in keys:
            await self.press_soon(key)
        await self.settled()

    async def press_soon(self, key: str) -> None:
        """A key, taken but not yet drawn."""
        screen = self.pilot.app.screen
        screen.post_message(event_of(key))
        await self._when(screen.call_later)

    async def settled(self) -> None:
        """Wait until what was sent has been taken and drawn."""
        await self._when(self.pilot.app.screen.call_after_refresh)
        await self._when(self.pilot.app.screen.call_after_refresh)

    async def _when(self, called: Callable[[Callable[[], None]], object]) -> None:
        done = asyncio.Event()
        called(done.set)
        for _ in range(MOST_WAITS):
            if self.pilot.app.return_code is not None:
                return
            with suppress(TimeoutError):
                await asyncio.wait_for(done.wait(), 0.02)
                return
        raise AssertionError("the screen takes no more keys")

    async def type(self, text: str) -> None:
        await self.press(*text)

    async def paste(self, text: str) -> None:
        self.pilot.app.screen.post_message(Paste(text))
        await self.settled()

    async def go_to(self, path: str) -> None:
        """Step to the question of that path by keys: its letter, then down, into *more* too."""
        from fuelwiz.desk.steps import step_of
        from fuelwiz.questions.catalogue import STEPS

        await self.press("ctrl+g", next(step.letter for step in STEPS if step.id == step_of(path)))
        for _ in range(80):
            if self.form.path == path:
                return
            hidden = getattr(self.form.row, "act", "") == "more" and not self.form.place.more
            await self.press("enter" if hidden else "down")
        raise AssertionError(f"{path} was never reached")

    async def opened(self, path: Path) -> None:
        """Wait until the build of that file stands there with its first answer."""
        for _ in range(MOST_WAITS):
            screen = self.pilot.app.screen
            if (
                isinstance(screen, BuildScreen)
                and screen.is_mounted
                and screen.is_ready
                and screen.desk.path == path
            ):
                await self.settled()
                return
            await asyncio.sleep(0.01)
        raise AssertionError(f"{path} was never opened")

    async def down_to(self, step_key: str, path: str) -> None:
        """To a step by its key, then down to the row of a path there."""
        await self.press("ctrl+g", step_key)
        for _ in range(MOST_ROWS):
            if self.form.path == path:
                return
            await self.press("down")
        raise AssertionError(f"{path} was never reached on\n{self.text}")

    async def until(self, seen: str) -> None:
        """Wait until a text stands on the screen."""
        for _ in range(MOST_WAITS):
            if seen in self.text:
                return
            await self.pilot.pause(0.01)
        raise AssertionError(f"{seen!r} never stood on\n{self.text}")

    async def until_true(self, holds: Callable[[], bool]) -> None:
        for _ in range(MOST_WAITS):
            if holds():
                return
            await self.pilot.pause(0.01)
        raise AssertionError(f"never so on\n{self.text}")

    @property
    def lines(self) -> list[str]:
        """The screen as it is put together for the terminal."""
        return [strip.text for strip in self.pilot.app.screen._compositor.render_strips()]

    @property
    def text(self) -> str:
        return "\n".join(self.lines)

    def part(self, name: str) -> list[str]:
        """The lines of one part of the screen; none where it is not shown."""
        part = self.screen.query_one(f"#{name}", Painted)
        return [part.render_line(y).text for y in range(part.size.height)] if part.display else []

    def parts_in_sight(self) -> Iterable[Painted]:
        return [part for part in self.screen.query(Painted) if part.display]

    def says_all_within(self) -> None:
        """No part's line is wider than the part, no part leaves the screen."""
        width, height = self.screen.size
        for part in self.parts_in_sight():
            box = part.region
            assert box.x >= 0 and box.right <= width and box.bottom <= height, (part.id, box)
            for y in range(part.size.height):
                line = part.render_line(y)
                assert cell_len(line.text) <= part.size.width, (part.id, line.text)


def event_of(key: str) -> Key:
    """A key as the terminal would report it: a name, or a sign."""
    return Key(_character_to_key(key), key) if len(key) == 1 else Key(key, " " if key == "space" else None)


@asynccontextmanager
async def at_build(
    path: Path, size: tuple[int, int] = (80, 24), look: Look | None = None
) -> AsyncIterator[Keyboard]:
    """The wizard with a build open, its first answer given."""
    app = FuelwizApp(path.parent, path, look=look or Look())
    async with app.run_test(size=size) as pilot:
        keys = Keyboard(pilot)
        await keys.opened(path)
        yield keys


def copy_of(name: str, folder: Path) -> Path:
    """An example in a folder of its own."""
    path = folder / f"{name}.toml"
    path.write_text((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"), encoding="utf-8")
    return path


def flat(lines: Iterable[str]) -> str:
    """Lines as one text, without the breaks and the padding."""
    return " ".join(" ".join(lines).split())
