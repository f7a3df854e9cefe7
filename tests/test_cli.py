"""The commands as a script meets them: output, faults in plain lines, exit status."""

from __future__ import annotations

import gc
import json
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from fuelwiz import __version__, cli
from fuelwiz.cli import RUN, main
from fuelwiz.usage import COMMANDS, command_parser, wizard_parser

EXAMPLES = Path(__file__).parent / "examples"
WORKS, LIMITED, NO_PUMP = (
    str(EXAMPLES / f"{name}.toml") for name in ("full-session", "twins", "no-pump-yet")
)


@pytest.fixture(autouse=True)
def _garbage_collected() -> Iterator[None]:
    """A command switches the collector off, as it ends right after; here it does not."""
    yield
    gc.enable()


def test_report_prints_the_report(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["report", WORKS]) == 0
    out, err = capsys.readouterr()
    assert out.startswith("Gravel-rally wagon\n=====") and "\x1b" not in out and err == ""
    assert max(map(len, out.splitlines())) <= 80


@pytest.mark.parametrize(
    ("form", "begins"),
    [
        ("text", "Gravel-rally wagon\n"),
        ("markdown", "# Gravel"),
        ("html", "<!DOCTYPE html>"),
        ("json", "{\n"),
    ],
)
def test_report_writes_every_form_to_a_file(
    form: str, begins: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "sheet.out"
    assert main(["report", WORKS, "--format", form, "--output", str(path)]) == 0
    written = path.read_text(encoding="utf-8")
    assert written.startswith(begins) and written.endswith("\n")
    assert capsys.readouterr() == ("", "")
    assert os.listdir(tmp_path) == ["sheet.out"]
    assert main(["report", WORKS, "--format", form]) == 0
    assert capsys.readouterr().out == written


def test_report_as_json_is_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["report", WORKS, "--format", "json"]) == 0
    assert json.loads(capsys.readouterr().out)["version"] == __version__


def test_a_report_over_an_old_one_leaves_no_rest_of_it(tmp_path: Path) -> None:
    path = tmp_path / "sheet.txt"
    path.write_text("x" * 100_000)
    assert main(["report", NO_PUMP, "--output", str(path)]) == 0
    assert "xxxx" not in path.read_text(encoding="utf-8")


def test_a_link_is_followed(tmp_path: Path) -> None:
    target, link = tmp_path / "target.txt", tmp_path / "link.txt"
    target.write_text("old")
    link.symlink_to(target)
    assert main(["report", NO_PUMP, "--output", str(link)]) == 0
    assert link.is_symlink() and target.read_text(encoding="utf-8").startswith("Hill-climb")


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("nowhere/sheet.txt", "there is no folder"),
        ("", "it is a folder"),
        ("build.toml", "a name that ends in .toml is a build's"),
        ("copy", "is the build's own file"),
    ],
)
def test_an_output_that_cannot_be_written_is_said(
    name: str, words: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    build = tmp_path / "copy"
    build.write_bytes(Path(NO_PUMP).read_bytes())
    assert main(["report", str(build), "--output", str(tmp_path / name)]) == 2
    out, err = capsys.readouterr()
    assert out == "" and words in err and err.count("\n") == 1 and str(tmp_path) in err
    assert build.read_bytes() == Path(NO_PUMP).read_bytes()


def test_check_prints_two_lines_a_file(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", WORKS, str(EXAMPLES / "mild.toml")]) == 0
    out, err = capsys.readouterr()
    lines = out.splitlines()
    assert [": Good for " in line for line in lines] == [True, False, True, False] and err == ""
    assert lines[0] == f"{WORKS}: Good for 442 hp of the 410 wanted: the injectors are the limit."
    assert lines[1].startswith("Least to spare: 16 % on low volts")


@pytest.mark.parametrize(
    ("files", "status", "words"),
    [
        ([WORKS], 0, ["Good for"]),
        ([LIMITED], 1, ["Full power is fine, idle is not"]),
        ([NO_PUMP, WORKS], 1, ["No pump yet:", "Good for"]),
        ([LIMITED, "nowhere.toml", WORKS], 2, ["Full power", "cannot be read, 1 error", "Good for"]),
        ([str(EXAMPLES / "goal-alone.toml")], 1, ["750 hp on E10"]),
    ],
)
def test_check_says_the_worst_by_its_status(
    files: list[str], status: int, words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", *files]) == status
    lines = [line for line in capsys.readouterr().out.splitlines() if ".toml: " in line]
    assert len(lines) == len(files)
    for line, file, word in zip(lines, files, words, strict=True):
        assert line.startswith(f"{file}: {word}")


def test_every_fault_is_one_line_that_names_file_and_key(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text('format = 1\n[goal]\npower = "50 gal/h"\n[pressure]\nboots = "20 psi"\nbase = "NaN psi"\n')
    for command in (["report", str(bad)], ["check", str(bad)], ["compare", WORKS, str(bad)]):
        assert main(command) == 2
        lines = capsys.readouterr().err.splitlines()
        assert len(lines) == 3
        assert all(str(bad) in line for line in lines)
        assert [
            any(key in line for line in lines) for key in ("`goal.power`", "boots", "`pressure.base`")
        ] == [True] * 3


def test_faults_of_all_files_are_said_before_a_comparison_gives_up(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["compare", "nowhere.toml", WORKS, "neither.toml"]) == 2
    out, err = capsys.readouterr()
    assert out == "" and "nowhere.toml" in err and "neither.toml" in err


def test_compare_puts_builds_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", WORKS, LIMITED]) == 0
    out = capsys.readouterr().out
    assert "Power wanted" in out and "410 hp" in out and "(better)" in out
    assert max(map(len, out.splitlines())) <= 80


def test_schema_is_a_json_schema(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    schema = json.loads(capsys.readouterr().out)
    assert schema["$schema"].startswith("https://json-schema.org/") and "goal" in schema["properties"]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["report"], "FILE"),
        (["report", WORKS, "--format", "pdf"], "pdf"),
        (["report", WORKS, LIMITED], "takes one file; `fuelwiz compare` takes several"),
        (["report", WORKS, "--formatt", "html"], "unrecognized"),
        (["compare", WORKS], "two files or more"),
        (["check"], "FILE"),
        (["completion", "tcsh"], "tcsh"),
        (["repot", WORKS], "did you mean `fuelwiz report`?"),
        (["--nonsense"], "--nonsense"),
        (["--sessions"], "--sessions"),
        (["schema", "x\x1b[2J"], "unrecognized"),
    ],
)
def test_bad_usage_is_one_plain_line(
    arguments: list[str], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(arguments) == 2
    out, err = capsys.readouterr()
    assert out == "" and words in err and err.count("\n") == 1 and "\x1b" not in err and "--help)" in err


def test_every_command_has_help_with_an_example(capsys: pytest.CaptureFixture[str]) -> None:
    assert RUN.keys() == COMMANDS.keys()
    for name, command in COMMANDS.items():
        assert main([name, "--help"]) == 0
        out = capsys.readouterr().out
        assert f"example:\n  {command.example}" in out and command.about in " ".join(out.split())
        assert max(map(len, out.splitlines())) <= 80
    assert main(["--help"]) == 0
    out = capsys.readouterr().out
    assert all(f"  {name} " in out for name in COMMANDS) and "fuelwiz ./report" in out and "US gallons" in out
    assert max(map(len, out.splitlines())) <= 80


def test_the_examples_of_the_help_can_be_parsed() -> None:
    for name, command in COMMANDS.items():
        if name in {"report", "check", "compare"}:
            command_parser(name).parse_args(command.example.split()[2:])
    assert wizard_parser().parse_args(["./report"]).file == "./report"


@pytest.mark.parametrize("flag", ["--version", "-V"])
def test_version(flag: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([flag]) == 0
    assert capsys.readouterr().out == f"fuelwiz {__version__}\n"


@pytest.mark.parametrize("words", [(), *((name,) for name in COMMANDS)], ids=str)
def test_help_says_what_the_command_itself_says(
    words: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["help", *words]) == 0
    asked = capsys.readouterr().out
    assert main([*words, "--help"]) == 0
    assert asked == capsys.readouterr().out
    assert asked.startswith("usage: fuelwiz")


def test_the_wizard_needs_a_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([WORKS]) == 2
    assert "needs a terminal" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "environ", "called"),
    [
        ([], {}, (None, None, True)),
        (["--no-mouse"], {}, (None, None, False)),
        (["./report"], {}, (Path("report"), None, True)),
        (["new build.toml", "--sessions", "mine"], {}, (Path("new build.toml"), Path("mine"), True)),
        (["--sessions", "mine"], {"FUELWIZ_SESSIONS": "theirs"}, (None, Path("mine"), True)),
        ([], {"FUELWIZ_SESSIONS": "theirs"}, (None, Path("theirs"), True)),
        (["--", "schema"], {}, (Path("schema"), None, True)),
    ],
)
def test_the_wizard_is_told_file_folder_and_mouse(
    arguments: list[str],
    environ: dict[str, str],
    called: tuple[Path | None, Path | None, bool],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    seen: list[tuple[Path | None, Path | None, bool]] = []

    def stand_in(path: Path | None, sessions: Path | None, mouse: bool) -> int:
        seen.append((path, sessions, mouse))
        return 129

    monkeypatch.delenv("FUELWIZ_SESSIONS", raising=False)
    for name, value in environ.items():
        monkeypatch.setenv(name, value)
    for stream in ("stdin", "stdout"):
        monkeypatch.setattr(f"sys.{stream}.isatty", lambda: True)
    monkeypatch.setattr("fuelwiz.wizard.app.run", stand_in)
    assert main(arguments) == 129
    assert seen == [called]


def test_a_bug_is_one_line_and_a_traceback_only_where_asked(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken(_path: Path, **_how: bool) -> None:
        raise KeyError("secret")

    monkeypatch.setattr(cli, "_judged", broken)
    monkeypatch.delenv("FUELWIZ_DEBUG", raising=False)
    assert main(["report", WORKS]) == 2
    err = capsys.readouterr().err
    assert err.count("\n") == 1 and "KeyError" in err and "report it" in err and "FUELWIZ_DEBUG" in err
    monkeypatch.setenv("FUELWIZ_DEBUG", "1")
    with pytest.raises(KeyError):
        main(["report", WORKS])


def test_an_interrupt_leaves_quietly(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(_path: Path, **_how: bool) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(cli, "_judged", interrupted)
    assert main(["report", WORKS]) == 130
    assert capsys.readouterr() == ("", "")


def test_a_report_reads_standard_input() -> None:
    text = (EXAMPLES / "hill-climb-six.toml").read_text(encoding="utf-8")
    command = [sys.executable, "-m", "fuelwiz", "report"]
    piped = subprocess.run([*command, "-"], input=text, capture_output=True, text=True, check=True)
    filed = subprocess.run(
        [*command, str(EXAMPLES / "hill-climb-six.toml")], capture_output=True, text=True, check=True
    )
    assert piped.stdout == filed.stdout


@pytest.mark.parametrize(
    ("content", "words"),
    [("format = 1\n", "`goal.power` is missing"), ("", "is empty"), ("x" * 70_000, "is larger than 64 KiB")],
)
def test_what_is_wrong_on_standard_input_is_said(content: str, words: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "fuelwiz", "report", "-"],
        input=content,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert done.stderr.startswith("fuelwiz: standard input: ") and words in done.stderr
