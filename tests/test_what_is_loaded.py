"""What is not loaded, and which questions are not read, before a first question, a first answer and a check."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).parents[1]
BUILD = ROOT / "tests/examples/hill-climb-six.toml"
WATCHED = """
import asyncio, json, sys
from pathlib import Path
read = []
sys.addaudithook(lambda event, told: read.append(str(told[0])) if event == "open" else None)

from fuelwiz.cli import main  # what every start loads
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.loading import LoadingScreen

def tell(moment):
    files = [Path(name).stem for name in read if name.endswith(".toml") and "questions" in name]
    print(json.dumps({"moment": moment, "modules": sorted(sys.modules), "questions": files}))

class Watched(FuelwizApp):
    def _open(self, path, keys):
        tell("first question")
        super()._open(path, keys)
        from fuelwiz.wizard.editor.build_screen import BuildScreen
        BuildScreen.look_over = lambda screen: self.told_answer(screen)

    def told_answer(self, screen):
        assert screen.desk.result is not None
        tell("first answer")
        self.exit()

async def start():
    app = Watched(Path(sys.argv[1]).parent, Path(sys.argv[1]))
    async with app.run_test(size=(80, 24)) as pilot:
        for _ in range(2000):
            if not app.is_running or app._exit:
                break
            await asyncio.sleep(0.01)

asyncio.run(start())
"""
CHECKED = """
import json, sys
from fuelwiz.cli import main
status = main(["check", sys.argv[1]])
print(json.dumps({"moment": "check", "modules": sorted(sys.modules), "questions": [], "status": status}))
"""
NEVER = (
    "pint",
    "jinja2",
    "scipy",
    "numpy",
    "tomlkit",
    "rich.markdown",
    "importlib.metadata",
    "zipfile",
    "email.message",
    "fluids.geometry",
)
AFTER_A_QUESTION = (
    *NEVER,
    "importlib.readers",
    "fuelwiz.store.folder",
    "pydantic",
    "fluids",
    "fuelwiz.session",
    "fuelwiz.physics",
    "fuelwiz.document",
    "fuelwiz.sizing",
    "fuelwiz.advice",
    "fuelwiz.report",
    "fuelwiz.desk",
    "fuelwiz.wizard.form",
    "fuelwiz.wizard.live",
    "fuelwiz.wizard.editor",
    "fuelwiz.wizard.build_list",
)
AFTER_AN_ANSWER = (
    *NEVER,
    "fuelwiz.measured",
    "fuelwiz.options",
    "fuelwiz.document.merge",
    "fuelwiz.document.comments",
    "fuelwiz.store.history",
    "fuelwiz.desk.change_words",
    "fuelwiz.desk.points.paste",
    "fuelwiz.sizing.spread",
    "fuelwiz.sizing.changes",
    "fuelwiz.advice.sections.path",
    "fuelwiz.advice.sections.shopping",
    "fuelwiz.report.text",
    "fuelwiz.report.compose",
    "fuelwiz.report.page",
    "fuelwiz.wizard.live.changes",
    "fuelwiz.wizard.live.curves",
    "fuelwiz.wizard.live.how_sure",
    "fuelwiz.wizard.live.log_curves",
    "fuelwiz.wizard.live.path",
    "fuelwiz.wizard.form.found_rows",
    "fuelwiz.wizard.build_list",
)
NOT_FOR_A_CHECK = (
    *NEVER,
    "rich",
    "textual",
    "fuelwiz.questions",
    "fuelwiz.desk",
    "fuelwiz.wizard",
    "fuelwiz.store.folder",
    "fuelwiz.store.drafts",
    "fuelwiz.store.history",
    "fuelwiz.store.lock",
    "fuelwiz.measured",
    "fuelwiz.options",
    "fuelwiz.advice.sections",
    "fuelwiz.document.merge",
    "fuelwiz.sizing.spread",
    "fuelwiz.sizing.changes",
    "fuelwiz.report.compose",
    "fuelwiz.report.page",
)


class Moment(NamedTuple):
    """What stood loaded at one moment, and whose questions had been read by then."""

    modules: set[str]
    questions: list[str]

    def loaded(self, names: tuple[str, ...]) -> set[str]:
        """Which of these stood there, parts of theirs among them."""
        return {name for name in names if any(f"{each}.".startswith(f"{name}.") for each in self.modules)}


def moments(code: str, build: Path) -> dict[str, Moment]:
    """What the program tells of itself in a fresh process."""
    done = subprocess.run(
        [sys.executable, "-c", code, str(build)], capture_output=True, text=True, cwd=ROOT, check=False
    )
    told = [json.loads(line) for line in done.stdout.splitlines() if line.startswith('{"moment"')]
    assert told, done.stderr
    return {each["moment"]: Moment(set(each["modules"]), each["questions"]) for each in told}


@pytest.fixture(scope="module")
def start(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Moment]:
    """A start of the wizard with a build, at its first question and at its first answer."""
    build = tmp_path_factory.mktemp("start") / "six.toml"
    build.write_text(BUILD.read_text(encoding="utf-8"), encoding="utf-8")
    return moments(WATCHED, build)


def test_a_first_question_waits_for_nothing_that_calculates(start: dict[str, Moment]) -> None:
    first = start["first question"]
    assert "textual" in first.modules
    assert not first.loaded(AFTER_A_QUESTION)
    assert set(first.questions) <= {"goal", "goal_more"}


def test_a_first_answer_waits_for_what_it_says_and_no_more(start: dict[str, Moment]) -> None:
    answer = start["first answer"]
    assert {"fuelwiz.sizing.assess", "fuelwiz.wizard.live.pane"} <= answer.modules
    assert not answer.loaded(AFTER_AN_ANSWER)


def test_a_first_answer_reads_the_questions_of_two_steps(start: dict[str, Moment]) -> None:
    """Those of the first step, and of the one that it opens at: the lines of this build fall short."""
    read = start["first answer"].questions
    assert len(read) == len(set(read))
    assert set(read) == {"goal", "goal_more", "lines", "lines_runs", "lines_more"}


def test_a_check_loads_no_screen_no_questions_and_nothing_that_writes() -> None:
    check = moments(CHECKED, BUILD)["check"]
    assert "fuelwiz.sizing.assess" in check.modules
    assert not check.loaded(NOT_FOR_A_CHECK)
