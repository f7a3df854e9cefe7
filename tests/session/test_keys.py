"""What is declared about each key, for forms: type, range, fallback, choices, units."""

from __future__ import annotations

import subprocess
import sys

import pytest

from fuelwiz import units
from fuelwiz.session import field_at, key_path_of, leaf_paths, order_of

from .builds import FULL

# A number typed without a unit takes the unit shown in its row, by `show_units`.
SHOWN = {
    "goal.power": ("hp", "kW"),
    "goal.reserve": ("%", "%"),
    "engine.bsfc": ("lb/(hp*h)", "g/kWh"),
    "engine.idle_fuel": ("gal/h", "L/h"),
    "fuel.temperature": ("degF", "degC"),
    "fuel.reid_pressure": ("psi", "bar"),
    "pressure.base": ("psi", "bar"),
    "pressure.boost": ("psi", "bar"),
    "pressure.idle_vacuum": ("inHg", "kPa"),
    "pressure.altitude": ("ft", "m"),
    "pump.relief": ("psi", "bar"),
    "pump.volts": ("V", "V"),
    "wiring.wire": ("AWG", "mm^2"),
    "wiring.length": ("ft", "m"),
    "wiring.temperature": ("degF", "degC"),
    "feed.run.length": ("ft", "m"),
    "feed.run.rise": ("ft", "m"),
    "feed.run.bore": ("in", "mm"),
    "feed.chosen": ("in", "mm"),
    "feed.filter.rated_flow": ("gal/h", "L/h"),
    "tank.volume": ("gal", "l"),
    "injectors.rated_flow": ("cc/min", "cc/min"),
    "injectors.rated_pressure": ("psi", "bar"),
}


@pytest.mark.parametrize("path", SHOWN)
def test_shown_units(path: str) -> None:
    spec = field_at(path)
    assert (spec.us_unit, spec.metric_unit) == SHOWN[path]


def test_a_number_takes_a_unit_of_its_own_kind() -> None:
    for path in leaf_paths():
        spec = field_at(path)
        for column in (spec, *spec.parts):
            if column.type == "quantity":
                assert column.kind is not None
                for unit in (column.us_unit, column.metric_unit):
                    assert column.kind in units.kinds_of(unit or ""), (path, unit)


def test_paths_have_no_numbers_and_are_each_there_once() -> None:
    paths = leaf_paths()
    assert len(set(paths)) == len(paths)
    assert {
        "goal.power",
        "engine.lambda",
        "feed.run.length",
        "pump.curve.voltage",
        "inlet.strainer.clogging",
    } <= set(paths)
    assert not any(part.isdecimal() for path in paths for part in path.split("."))


def test_numbers_in_a_path_are_passed_over() -> None:
    assert field_at("feed.run.3.length") is field_at("feed.run.length")
    with pytest.raises(KeyError):
        field_at("feed.run.lenght")


def test_choices_and_needs() -> None:
    assert field_at("pressure.regulator").choices == ("rail", "tank", "none")
    assert field_at("feed.run.fittings").choices == (
        *("straight", "swept_45", "swept_90", "swept_180", "forged_90"),
        *("tee_run", "tee_branch", "entrance", "exit"),
    )
    needed = {path for path in leaf_paths() if field_at(path).required}
    assert needed == {
        *("format", "goal.power", "pump.curve.points", "wiring.supply"),
        *("pull.power", "pull.boost", "bench.pressure", "bench.volts", "bench.time"),
        *("feed.part.rated_flow", "feed.part.rated_loss"),
        *("return_line.part.rated_flow", "return_line.part.rated_loss", "return_line.regulator.rated_flow"),
        *("return_line.regulator.rated_loss", "injectors.rated_flow", "stress.case.change"),
    }


def test_the_order_is_that_of_the_file_format() -> None:
    words = [
        "format",
        "goal.power",
        "goal.next_boost",
        "engine",
        "pump.curve.0",
        "pump.curve.1.points",
        "wiring",
    ]
    words += [
        "feed.chosen",
        "feed.run.2.what",
        "feed.run.10.what",
        "feed.filter",
        "record",
        "stress",
        "unheard",
    ]
    orders = [order_of(key_path_of(word)) for word in words]
    assert orders == sorted(orders)


def modules_after(program: str) -> list[str]:
    """What a fresh process has loaded, as the program prints it."""
    command = [sys.executable, "-c", program]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout.split()


@pytest.mark.parametrize("module", ["session", "document.file", "document.merge"])
def test_heavy_libraries_wait_until_they_are_needed(module: str) -> None:
    program = f"import sys, fuelwiz.{module}; print(*sys.modules)"
    loaded = modules_after(program)
    assert f"fuelwiz.{module}" in loaded
    assert not {"pint", "tomlkit", "textual", "rich", "scipy", "numpy", "fluids"} & set(loaded)


def test_reading_a_file_needs_no_tomlkit() -> None:
    program = (
        "import sys, pathlib; from fuelwiz.document.file import load; from fuelwiz.document.merge import merge;"
        f"document, _ = load(pathlib.Path({str(FULL)!r})); document.plain['goal']['power'] = '420 hp';"
        "merge(document.text, document.plain); print(*sys.modules)"
    )
    loaded = modules_after(program)
    assert "tomlkit" not in loaded
