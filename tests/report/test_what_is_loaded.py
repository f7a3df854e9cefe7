"""What a command loads: neither Textual nor SciPy, Rich only for color, Jinja only for a page, pint never."""

from __future__ import annotations

import subprocess
import sys

import pytest

from .builds import EXAMPLES

BUILD = str(EXAMPLES / "full-session.toml")
HEAVY = ("textual", "rich", "scipy", "numpy", "pint", "tomlkit", "fluids.friction", "pydantic", "jinja2")
CODE = """
import io, sys
from fuelwiz.cli import main
status = main({arguments!r})
print("loaded", *[name for name in {heavy!r} if sys.modules.get(name) is not None], file=sys.stderr)
sys.exit(status)
"""


def loaded(arguments: list[str]) -> set[str]:
    """What a fresh process has loaded when a command is done."""
    code = CODE.format(arguments=arguments, heavy=HEAVY)
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode in {0, 1}, done.stderr
    last = done.stderr.splitlines()[-1].split()
    assert last[0] == "loaded"
    return set(last[1:])


@pytest.mark.parametrize("form", ["text", "markdown", "json"])
def test_a_report_loads_what_it_needs(form: str) -> None:
    assert loaded(["report", BUILD, "--format", form]) == {"fluids.friction", "pydantic"}


def test_a_page_alone_loads_the_templates() -> None:
    assert loaded(["report", BUILD, "--format", "html"]) == {"fluids.friction", "pydantic", "jinja2"}


@pytest.mark.parametrize("arguments", [["check", BUILD], ["compare", BUILD, BUILD]])
def test_so_do_the_other_commands(arguments: list[str]) -> None:
    assert loaded(arguments) == {"fluids.friction", "pydantic"}


@pytest.mark.parametrize(
    "arguments", [["completion", "bash"], ["--version"], ["--help"], ["report", "--help"]]
)
def test_what_reads_no_build_loads_none_of_it(arguments: list[str]) -> None:
    assert loaded(arguments) == set()


def test_rich_comes_with_color() -> None:
    code = (
        "import sys; from fuelwiz.report.text_look import TextLook; a = 'rich' in sys.modules;"
        " TextLook(colors='16').marked('x', 'no'); print(a, 'rich' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "True"]
