"""The house in order: what a module loads, what its docstrings say, how long it is, and what is packed."""

from __future__ import annotations

import ast
import re
import shutil
import subprocess
import sys
import tokenize
import tomllib
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest

import fuelwiz
from fuelwiz.document.file import load

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "fuelwiz"
MODULES = sorted(PACKAGE.rglob("*.py"))
LONGEST = 350
UNFINISHED = re.compile(r"\b(TODO|FIXME|XXX|HACK|later|for now|temporar\w*)\b", re.IGNORECASE)
PLACES = re.compile(r"/work/|/tmp/|/home/|https?://|\.\./shared")

SCREEN = {"textual"}
SLOW = {"pint", "scipy", "numpy", "fluids", "textual", "rich", "tomlkit"}
SOLVERS = ("optimize", "interpolate", "integrate", "linalg", "special", "sparse")
LOADS_NONE_OF = {
    "fuelwiz.errors": SLOW | {"pydantic"},
    "fuelwiz.units": SLOW | {"pydantic"},
    "fuelwiz.facts": SLOW | {"pydantic"},
    "fuelwiz.physics": SLOW | {"pydantic"},
    "fuelwiz.printable": SLOW | {"pydantic"},
    "fuelwiz.terminal": SLOW | {"pydantic"},
    "fuelwiz.terms": SLOW | {"pydantic"},
    "fuelwiz.files": SLOW | {"pydantic"},
    "fuelwiz.record": SLOW | {"pydantic"},
    "fuelwiz.session": {"pint", "scipy", "textual", "rich", "tomlkit"},
    "fuelwiz.document": {"pint", "scipy", "textual", "rich", "tomlkit"},
    "fuelwiz.store": SLOW | {"pydantic"},
    "fuelwiz.sizing": {"pint", "scipy", "textual", "rich", "tomlkit"},
    "fuelwiz.options": {"pint", "scipy", "textual", "rich", "tomlkit"},
    "fuelwiz.measured": {"pint", "scipy", "textual", "rich", "tomlkit"},
    "fuelwiz.advice": {"pint", "scipy", "textual", "rich", "tomlkit"},
    "fuelwiz.questions": {"pint", "scipy", "textual", "rich", "tomlkit"},
    "fuelwiz.report": SCREEN | {"scipy"},
    "fuelwiz.desk": SCREEN | {"scipy"},
    "fuelwiz.cli": SLOW | {"pydantic"},
}


def named(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def module_name(path: Path) -> str:
    return named(path).removesuffix(".py").removesuffix("/__init__").replace("/", ".")


def modules_of(room: str) -> list[str]:
    """The module, or the room's modules."""
    names = [module_name(path) for path in MODULES]
    return [name for name in names if name == room or name.startswith(f"{room}.")]


def loaded_by(names: list[str]) -> set[str]:
    """The packages that stand loaded after these modules were imported in a fresh process."""
    code = (
        "import sys, importlib\nfor name in sys.argv[1:]: importlib.import_module(name)\nprint(*sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *names], capture_output=True, text=True, check=True, cwd=ROOT
    )
    return {name.partition(".")[0] for name in done.stdout.split()}


@cache
def tree_of(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


Function = ast.FunctionDef | ast.AsyncFunctionDef


def public(body: list[ast.stmt]) -> Iterator[Function | ast.ClassDef]:
    """The public functions and classes of a body, and those of its public classes."""
    for node in body:
        if isinstance(node, Function | ast.ClassDef) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from public(node.body)


def functions(path: Path) -> Iterator[Function]:
    return (node for node in ast.walk(tree_of(path)) if isinstance(node, Function))


def arguments_of(function: Function) -> set[str]:
    given = function.args
    plain = [*given.posonlyargs, *given.args, *given.kwonlyargs]
    return {argument.arg for argument in (*plain, given.vararg, given.kwarg) if argument is not None}


def documented(docstring: str) -> list[str]:
    """The names under Args."""
    section = re.search(r"^Args:\n((?:[ \t]+.*\n?|\n)+)", docstring, re.MULTILINE)
    return re.findall(r"^    (\w+):", section[1], re.MULTILINE) if section else []


def comments(path: Path) -> Iterator[tuple[int, str]]:
    with path.open("rb") as file:
        for token in tokenize.tokenize(file.readline):
            if token.type == tokenize.COMMENT:
                yield token.start[0], token.string


@pytest.mark.parametrize("room", LOADS_NONE_OF)
def test_loads_no_more_than_it_needs(room: str) -> None:
    names = modules_of(room)
    assert names, f"no module {room}"
    assert not loaded_by(names) & LOADS_NONE_OF[room]


def imported_by(path: Path) -> set[str]:
    """The modules that a file imports names from, or as a whole."""
    nodes = list(ast.walk(tree_of(path)))
    return {node.module or "" for node in nodes if isinstance(node, ast.ImportFrom)} | {
        alias.name for node in nodes if isinstance(node, ast.Import) for alias in node.names
    }


def test_other_rooms_use_the_face_of_the_session() -> None:
    past_it = [
        f"{named(path)}: {name}"
        for path in MODULES
        if not named(path).startswith("fuelwiz/session/")
        for name in imported_by(path)
        if name.startswith("fuelwiz.session.")
    ]
    assert not past_it


def test_a_report_as_text_needs_no_screen_and_no_solver() -> None:
    """Pint itself looks whether SciPy is there, so it is SciPy's own parts that must not be loaded."""
    code = (
        "import sys\nfrom fuelwiz.cli import main\n"
        "main(['report', 'saved_sessions/gravel-four.toml'])\nprint(*sys.modules, file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    loaded = set(done.stderr.split())
    assert "Ceilings" in done.stdout
    assert not loaded & {"textual", *(f"scipy.{part}" for part in SOLVERS)}


def test_reads_in_a_sitting() -> None:
    lengths = {named(path): len(path.read_text(encoding="utf-8").splitlines()) for path in MODULES}
    assert not {name: length for name, length in lengths.items() if length > LONGEST}


def test_everything_public_says_what_it_is() -> None:
    silent = []
    for path in MODULES:
        tree = tree_of(path)
        silent += [named(path)] if tree.body and not ast.get_docstring(tree) else []
        silent += [f"{named(path)}: {node.name}" for node in public(tree.body) if not ast.get_docstring(node)]
    assert not silent


def test_documented_arguments_are_those_of_the_signature() -> None:
    wrong = []
    for path, function in [(file, each) for file in MODULES for each in functions(file)]:
        names = documented(ast.get_docstring(function) or "")
        where = f"{named(path)}: {function.name}"
        wrong += [f"{where}: {name}" for name in names if name not in arguments_of(function)]
        left_out = arguments_of(function) - {"self", "cls", *names} if names else set()
        wrong += [f"{where}: not {name}" for name in left_out]
    assert not wrong


def test_no_comment_puts_anything_off() -> None:
    put_off = [
        f"{named(path)}, line {line}: {text}"
        for path in (*MODULES, *sorted((ROOT / "tests").rglob("*.py")))
        for line, text in comments(path)
        if UNFINISHED.search(text)
    ]
    assert not put_off


def test_names_no_place_of_one_machine() -> None:
    texts = {
        named(path): path.read_text(encoding="utf-8").replace("https://json-schema.org", "")
        for path in MODULES
    }
    assert not {name: PLACES.findall(text) for name, text in texts.items() if PLACES.search(text)}


def test_physics_formats_nothing() -> None:
    formatting = [
        f"{named(path)}: {ast.unparse(node)}"
        for path in MODULES
        if path.is_relative_to(PACKAGE / "physics")
        for node in ast.walk(tree_of(path))
        if isinstance(node, ast.FormattedValue) and node.format_spec is not None
    ]
    assert not formatting


def test_top_level_holds_no_more_than_this() -> None:
    known = {"README.md", "DEVELOPERS.md", "pyproject.toml", "fuelwiz", "tests", "saved_sessions"}
    listed = subprocess.run(["git", "ls-files"], check=False, capture_output=True, text=True, cwd=ROOT)
    if listed.returncode:
        pytest.skip("not a git checkout")
    tops = {line.partition("/")[0] for line in listed.stdout.splitlines()}
    assert {top for top in tops if not top.startswith(".")} <= known


def test_what_is_not_python_is_packed_too(tmp_path: Path) -> None:
    """The build that fills a wheel, on a copy, so that this tree stays as it is."""
    shutil.copytree(PACKAGE, tmp_path / "src/fuelwiz", ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md"):
        shutil.copy(ROOT / name, tmp_path / "src")
    command = "import setuptools; setuptools.setup()"
    subprocess.run(
        [sys.executable, "-c", command, "-q", "build_py", "--build-lib", str(tmp_path / "built")],
        cwd=tmp_path / "src",
        check=True,
        capture_output=True,
    )
    wanted = {
        path.relative_to(PACKAGE)
        for path in PACKAGE.rglob("*")
        if path.is_file() and path.suffix in {".toml", ".tcss", ".jinja", ".py", ".typed"}
    }
    packed = {path.relative_to(tmp_path / "built/fuelwiz") for path in (tmp_path / "built").rglob("*")}
    assert not wanted - packed
    assert Path("facts/bores.toml") in packed


@pytest.mark.parametrize("name", ["fuels", "bores", "wire", "units"])
def test_facts_are_read_from_the_installed_package(name: str) -> None:
    assert tomllib.loads((files(fuelwiz) / "facts" / f"{name}.toml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("path", sorted((ROOT / "saved_sessions").glob("*.toml")), ids=lambda path: path.stem)
def test_sample_loads_and_says_that_it_is_invented(path: Path) -> None:
    document, session = load(path)
    assert "invented" in session.notes.lower()
    assert "invented" in document.text.splitlines()[0].lower()


def test_there_are_five_samples() -> None:
    assert len(list((ROOT / "saved_sessions").glob("*.toml"))) >= 5
