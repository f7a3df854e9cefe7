"""How the build's screen shows what it has: at every size, in plain signs, and whatever a file holds."""

from __future__ import annotations

import re
from pathlib import Path
from unicodedata import category

import pytest

from fuelwiz.desk.steps import step_of
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.live.rule import VIEWS
from fuelwiz.wizard.look import Look

from .keyboard import at_build, copy_of, flat


async def test_every_size_on_the_way_is_laid_out(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("goal.power")
        await keys.type("7")
        for size in [
            (160, 50),
            (60, 20),
            (59, 19),
            (30, 5),
            (120, 36),
            (76, 24),
            (109, 30),
            (110, 29),
            (80, 24),
        ]:
            await keys.pilot.resize_terminal(*size)
            await keys.pilot.pause()
            keys.says_all_within()
            if size[0] >= 60:
                assert any("▸" in line and "[7" in line for line in keys.part("form")), size
        await keys.type("60")
        assert keys.desk.plain["goal"]["power"] == "760 hp"


@pytest.mark.parametrize("size", [(60, 20), (120, 36)])
async def test_the_plain_look_is_ascii_alone(tmp_path: Path, size: tuple[int, int]) -> None:
    look = Look(unicode=False, colors="none")
    async with at_build(copy_of("hill-climb-six", tmp_path), size, look) as keys:
        for step in STEPS:
            await keys.press("ctrl+g", step.letter, "ctrl+g", "m")
            for _ in range(8):
                assert keys.text.isascii(), [line for line in keys.lines if not line.isascii()]
                await keys.press("down")
        for key in ["f5"] * len(VIEWS) + ["f1", "f1", "f6", "f6", "ctrl+g"]:
            await keys.press(key)
            assert keys.text.isascii(), [line for line in keys.lines if not line.isascii()]


def harmless(text: str) -> bool:
    """No control, no direction mark, no mark that hides: the categories of the Unicode standard, chapter 4."""
    return all(category(sign) not in ("Cc", "Cf", "Zl", "Zp", "Co") for sign in text.replace("\n", ""))


HOSTILE = "[red]x[/]\\u001b[2J\\u001b]0;t\\u0007\\u202eevil\\u202c\\u0085[@click=app.quit]go[/] \\u009b31m"


async def test_a_hostile_file_shows_harmlessly(tmp_path: Path) -> None:
    path = tmp_path / "hostile.toml"
    text = (Path(__file__).parents[1] / "examples" / "hill-climb-six.toml").read_text(encoding="utf-8")
    text = text.replace('"Hill-climb six"', f'"{HOSTILE}"').replace('"along the rail"', f'"{HOSTILE}"')
    text = text.replace('"10 micron"', f'"{HOSTILE}"').replace('"sample pump, in-tank"', f'"{HOSTILE}"')
    path.write_text(text + f'[fitted]\nline = "{HOSTILE}"\n', encoding="utf-8")
    async with at_build(path) as keys:
        assert keys.desk.result is not None
        for step in STEPS:
            await keys.press("ctrl+g", step.letter, "ctrl+g", "m")
            for _ in range(10):
                assert harmless(keys.text)
                await keys.press("tab")
        for _ in VIEWS:
            await keys.press("f5")
            assert harmless(keys.text)
        assert "[red]x[/]" in keys.part("top")[0]
        await keys.go_to("fitted.line")
        assert step_of(keys.form.path) == "summary" and "[red]x[/]" in flat(keys.part("form"))


@pytest.mark.parametrize("size", [(40, 15), (12, 5)])
async def test_a_window_that_is_too_small_from_the_start_says_so_and_takes_no_key(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        assert flat(keys.lines) == f"Needs 60 by 20; the window is {size[0]} by {size[1]}."
        await keys.type("9")
        await keys.pilot.resize_terminal(80, 24)
        await keys.settled()
        assert "Needs" not in keys.text and keys.desk.plain["goal"]["power"] == "750 hp"
        assert any("[" in line for line in keys.part("form"))


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36)])
async def test_a_table_of_points_says_where_more_of_them_stand(tmp_path: Path, size: tuple[int, int]) -> None:
    path = copy_of("hill-climb-six", tmp_path)
    plain = path.read_text(encoding="utf-8")
    points = ", ".join(f'["{10 * at} psi", "{120 - 5 * at} gal/h"]' for at in range(1, 8))
    path.write_text(re.sub(r"(?m)^points = .*$", f"points = [{points}]", plain), encoding="utf-8")
    async with at_build(path, size) as keys:
        keys.form.go_to_path("pump.curve.0.points.0.0")
        keys.screen.show_all()
        await keys.settled()
        first = next(line for line in keys.part("form") if "Pressure" in line)
        assert first.rstrip().endswith("›") and "‹" not in first
        keys.form.go_to_path("pump.curve.0.points.6.0")
        keys.screen.show_all()
        await keys.settled()
        last = next(line for line in keys.part("form") if "[70" in line)
        assert "‹" in last and not last.rstrip().endswith("›")
