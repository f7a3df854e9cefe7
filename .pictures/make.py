"""The pictures in README, made from the running wizard: `.venv/bin/python .pictures/make.py` writes them anew."""

from __future__ import annotations

import asyncio
import math
import re
import shutil
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple

from textual.pilot import Pilot

from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.look import Look

HERE = Path(__file__).parent
SAMPLES = HERE.parent / "saved_sessions"
MOST_WAITS = 500


class Scene(NamedTuple):
    """What a picture shows: a sample, the keys pressed in it, and the size of the terminal."""

    sample: str
    keys: tuple[str, ...]
    size: tuple[int, int]


SCENES = {
    "answer": Scene("gravel-four", ("ctrl+g", "4"), (110, 30)),
    "return": Scene("strip-twins", (), (80, 30)),
}


def picture_of(scene: Scene) -> str:
    """A scene as SVG, with nothing in it that is fetched from elsewhere."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / f"{scene.sample}.toml"
        shutil.copy(SAMPLES / path.name, path)
        return asyncio.run(_played(path, scene))


async def _played(path: Path, scene: Scene) -> str:
    app = FuelwizApp(path.parent, path, look=Look())
    async with app.run_test(size=scene.size) as pilot:
        screen = await _opened(app, pilot)
        for key in scene.keys:
            await pilot.press(key)
        for _ in range(MOST_WAITS):
            screen.desk.fill_in(math.inf)
            screen.show_all()
            await pilot.pause(0.01)
            result = screen.desk.result
            if result is not None and result.figures.spread is not None:
                break
        screen.show_all()
        await pilot.pause()
        drawn = app.export_screenshot(title=f"fuelwiz, {scene.sample}")
        app.exit(0)
    return _alone(drawn)


async def _opened(app: FuelwizApp, pilot: Pilot[int]) -> BuildScreen:
    """The build's screen, once its first answer stands there."""
    for _ in range(MOST_WAITS):
        await pilot.pause(0.01)
        if isinstance(app.screen, BuildScreen) and app.screen.is_mounted and app.screen.is_ready:
            return app.screen
    raise SystemExit("the build was never opened")


def _alone(svg: str) -> str:
    """The picture without the fonts that it would fetch, and with names that are the same each time."""
    svg = re.sub(r"@font-face \{.*?\}|<!--.*?-->", "", svg, flags=re.S)
    return re.sub(r"terminal-\d+", "terminal", svg)


def main() -> None:
    """Write the pictures that are named, or all."""
    for name in sys.argv[1:] or SCENES:
        (HERE / f"{name}.svg").write_text(picture_of(SCENES[name]), encoding="utf-8")
        print(HERE / f"{name}.svg")


if __name__ == "__main__":
    main()
