"""Line by line: the same questions, refusals and answer as at the wizard's desk."""

from __future__ import annotations

import json
import os
import pty
import select
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from desk.desks import empty

from fuelwiz.ask.conversation import Conversation
from fuelwiz.desk import Desk
from fuelwiz.desk.steps import step_of
from fuelwiz.questions.catalogue import STEPS, step_questions
from fuelwiz.wizard.form.form_rows import DoRow, path_of, takes_focus
from fuelwiz.wizard.form.plan import Place, rows_of

SAMPLE = Path(__file__).parents[2] / "saved_sessions" / "winter-project.toml"


def told(desk: Desk, *lines: str) -> list[str]:
    """What is said from the first question on."""
    said: list[str] = []
    conversation = Conversation(desk, said.append)
    conversation.begin()
    for line in lines:
        conversation.take(line)
    return said


def to_the(desk: Desk, path: str) -> list[str]:
    """The empty lines that lead from the first question of a step, or from the power, to another."""
    rows = [
        row
        for row in rows_of(desk, Place(step_of(path)), "")
        if takes_focus(row) and not isinstance(row, DoRow)
    ]
    paths = [path_of(row) for row in rows]
    return [""] * (paths.index(path) - (paths.index("goal.power") + 1 if "goal.power" in paths else 0))


def test_power_is_taken_and_answered_in_a_line(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "600")
    assert desk.plain["goal"]["power"] == "600 hp"
    assert desk.result is not None
    assert any(desk.result.words.answer[0] in line for line in said)


def test_what_is_refused_is_said_and_asked_again(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "6oo")
    assert said[-2] == f"Not taken: {desk.refused['goal.power']}"
    assert said[-1].startswith("Power wanted")
    assert "goal" not in desk.plain


def test_an_empty_line_gets_past_what_is_refused(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "6oo", "")
    assert not said[-1].startswith("Power wanted")


@pytest.mark.parametrize("pick", ["2", "wheels", "whe"])
def test_a_choice_is_picked_by_number_words_or_their_beginning(tmp_path: Path, pick: str) -> None:
    desk = empty(tmp_path)
    told(desk, "", "600", *to_the(desk, "goal.power_at"), pick)
    assert desk.plain["goal"]["power_at"] == "wheels"


def test_no_answer_is_picked_by_a_word_that_is_none(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "600", *to_the(desk, "goal.power_at"), "flywheel")
    assert "is none of the answers" in said[-2]
    assert "power_at" not in desk.plain["goal"]


def test_not_sure_says_what_is_taken_and_goes_on(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "/skip lines", *to_the(desk, "feed.length"), "?")
    assert any("is taken" in line for line in said[-3:])
    assert desk.text_in_field("feed.length").assumed


def test_help_and_why_are_those_of_the_question(tmp_path: Path) -> None:
    question = next(q for q in step_questions("goal") if q.key == "goal.power")
    said = told(empty(tmp_path), "", "/why", "/help")
    assert question.why in said
    assert question.help.what in said
    assert question.help.unsure in said


def test_back_more_and_skip_go_where_they_say(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    assert told(desk, "", "/back")[-1].startswith("Units")
    assert told(desk, "/skip fuel", "/back")[-2].startswith("Step 1 of")
    for step in STEPS:
        assert any(step.name in line for line in told(desk, f"/skip {step.name}")[-2:])
    assert "There is no step" in told(desk, "/skip kitchen")[-2]
    hidden = [q.label for q in step_questions("goal") if q.more]
    assert any(told(desk, "/more")[-1].startswith(label) for label in hidden)


def test_empty_lines_lead_through_every_step_to_the_end(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "600", *[""] * 150)
    assert [line for line in said if line.startswith("Step ")] == [
        f"Step {number} of {len(STEPS)}: {step.name}." for number, step in enumerate(STEPS, 1)
    ]
    assert desk.plain == {"format": 1, "goal": {"power": "600 hp"}}, "an empty line tells nothing"


def test_a_pumps_points_are_told_one_after_the_other(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    told(desk, "", "600", "/skip pump", "its curve", "", "40", "97", "", "80", "68", "", "", "/skip lines")
    assert desk.plain["pump"]["curve"][0]["points"] == [["40 psi", "97 gal/h"], ["80 psi", "68 gal/h"]]


def test_an_unknown_command_is_said(tmp_path: Path) -> None:
    assert any("There is no /dance" in line for line in told(empty(tmp_path), "/dance"))


def test_saved_under_a_name_and_never_over_another(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    told(desk, "", "600", "/save first one")
    (file,) = tmp_path.glob("*.toml")
    assert tomllib.loads(file.read_text(encoding="utf-8"))["goal"]["power"] == "600 hp"
    other = empty(tmp_path)
    said = told(other, "", "700", "/save first one")
    assert "already exists" in said[-2]
    assert tomllib.loads(file.read_text(encoding="utf-8"))["goal"]["power"] == "600 hp"


def through_a_pipe(file: Path, lines: str, **environ: str) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "fuelwiz", "ask", str(file)],
        input=lines.encode(), capture_output=True, timeout=60, check=False, cwd=file.parent,
        env={"PATH": os.environ["PATH"], "HOME": str(file.parent), "LANG": "C.UTF-8", **environ},
    )  # fmt: skip


def test_through_a_pipe_a_draft_is_kept_and_the_answer_printed(tmp_path: Path) -> None:
    file = tmp_path / "piped.toml"
    done = through_a_pipe(file, "\n600\n")
    assert done.returncode == 0, done.stderr
    assert b"\x1b" not in done.stdout
    assert b"kept as a draft" in done.stdout
    (draft,) = tmp_path.glob(".*.draft")
    assert Desk.from_draft(draft).plain["goal"]["power"] == "600 hp"
    assert not file.exists()


def test_what_is_saved_through_a_pipe_is_what_report_says(tmp_path: Path) -> None:
    file = tmp_path / "piped.toml"
    steps = "\n" * len(to_the(empty(tmp_path), "feed.length"))
    done = through_a_pipe(file, f"\n600\n/skip lines\n{steps}14 ft\n/save\n")
    report = subprocess.run(
        [sys.executable, "-m", "fuelwiz", "report", str(file), "--format", "json"],
        capture_output=True, text=True, timeout=60, check=True,
    )  # fmt: skip
    answer = json.loads(report.stdout)["verdict"]["answer"]
    said = done.stdout.decode().replace("\N{NO-BREAK SPACE}", " ")
    assert answer[0].replace("\N{NO-BREAK SPACE}", " ") in said
    assert not list(tmp_path.glob(".*.draft"))


def test_in_a_c_locale_every_line_is_ascii(tmp_path: Path) -> None:
    done = through_a_pipe(tmp_path / "c.toml", "\n600\n/skip fuel\n/help\n", LANG="C")
    assert done.stdout.isascii()


def test_a_terminal_that_only_prints_is_asked_line_by_line(tmp_path: Path) -> None:
    pid, fd = pty.fork()
    if pid == 0:
        os.chdir(tmp_path)
        os.environ["TERM"] = "dumb"
        os.execv(sys.executable, [sys.executable, "-m", "fuelwiz", "dumb.toml"])
    os.write(fd, b"/quit\n")
    seen = b""
    while select.select([fd], [], [], 20)[0]:
        try:
            chunk = os.read(fd, 65536)
        except OSError:
            break
        seen += chunk
    assert os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]) == 0
    assert b"line by line" in seen
    assert b"\x1b" not in seen


def test_a_bad_day_of_ones_own_is_told_by_words_of_its_questions(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(
        desk, "", "600", "/skip stress", "y", "track day", "y", "zzz", "temperature", "fuel temperature", "60 C"
    )  # fmt: skip
    (case,) = desk.plain["stress"]["case"]
    assert case == {"name": "track day", "change": {"fuel.temperature": "60 C"}}
    assert any("has these words: zzz" in line for line in said)
    assert any("Fuel temperature" in line and "type the number of one" in line for line in said)
    assert said[-1].startswith("Pick another answer that differs?")
    more = told(desk, "/skip stress", "y", "", "", "y", "temperature", "1", "61 C", "")
    assert "differs that day" in " ".join(more)


def test_what_is_typed_where_only_a_yes_is_wanted_is_not_lost_in_silence(tmp_path: Path) -> None:
    said = told(empty(tmp_path), "", "600", "/skip stress", "track day")
    assert said[-2].startswith("track day is no answer here")
    assert said[-1].startswith("Add a bad day of your own?")
    on = told(empty(tmp_path), "", "600", "/skip stress", "no")
    assert not on[-1].startswith("Add a bad day")


def test_an_answer_of_several_words_is_told_by_numbers_or_names(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "600", "/skip summary", "1, return line, Filter")
    assert any("Any of: 1 feed line, 2 return line" in line for line in said)
    assert desk.plain["fitted"]["has"] == ["line", "return_line", "filter"]


def test_a_list_stands_while_more_is_typed_and_goes_part_by_part(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "600", "/skip summary", "1, filter", "/back")
    assert said[-1].startswith(
        "On the car: feed line, filter. What you type is added, with - before it taken out."
    )
    told(desk, "/skip summary", "return line, 1")
    assert desk.plain["fitted"]["has"] == ["line", "filter", "return_line"]
    told(desk, "/skip summary", "-6, wire, - feed line")
    assert desk.plain["fitted"]["has"] == ["return_line", "wire"]
    said = told(desk, "/skip summary", "bumper", "3")
    assert any(line.startswith("Not taken: ") for line in said)
    assert desk.plain["fitted"]["has"] == ["return_line", "wire", "pump"]
    told(desk, "/skip summary", "-2, -3, -8")
    assert "has" not in desk.plain.get("fitted", {})


def test_half_a_point_is_asked_on_without_a_word_about_what_it_holds_up(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "600", "/skip pump", "its curve", "", "40 psi", "110", "9 A", "60", "90")
    assert not any("Not updated" in line for line in said)
    assert any(line.startswith("Current, point 1, A") for line in said)
    assert desk.plain["pump"]["curve"][0]["points"] == [["40 psi", "110 gal/h"], ["60 psi", "90 gal/h"]]


def test_a_field_that_takes_figures_offers_its_words_without_numbers(tmp_path: Path) -> None:
    """A number would be a figure there: 1 is a foot of hose, not the first of the answers."""
    said = told(empty(tmp_path), "", "600", "/skip inlet", "", "")
    assert said[-1] == "Suction hose, ft: empty. Or: none."


def test_an_entry_is_told_without_its_short_form(tmp_path: Path) -> None:
    desk = Desk.open(SAMPLE)
    said = told(desk, "/skip lines")
    assert said[-1].endswith("2 straight, 2 swept 90\N{DEGREE SIGN}. y opens it.")


def test_answers_with_a_comma_in_them_are_told_apart(tmp_path: Path) -> None:
    said = told(empty(tmp_path))
    assert said[-1].endswith("One of: 1 US; 2 metric, kW; 3 metric, hp.")


def test_a_blend_is_told_by_its_name(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "410", "/skip fuel", "E70")
    assert desk.plain["fuel"] == {"ethanol": "70 %"}
    assert any("or E70 for a blend" in line for line in said)
    assert told(desk, "/skip fuel", "E700")[-2] == "E700 is none of the answers."
    assert desk.plain["fuel"] == {"ethanol": "70 %"}


@pytest.mark.parametrize(
    ("step", "passed", "lines", "wanted", "next_one"),
    [
        (
            "wiring",
            "Supply voltage, V: empty.",
            ("", "12 AWG"),
            "Supply voltage, V: needed.",
            "Wire length, ft",
        ),
        (
            "injectors",
            "Injector flow, cc/min: empty.",
            ("", "58"),
            "Injector flow, cc/min: needed.",
            "Injectors: 4",
        ),
    ],
)
def test_what_was_passed_over_and_is_needed_now_is_asked_in_the_same_breath(
    tmp_path: Path, step: str, passed: str, lines: tuple[str, ...], wanted: str, next_one: str
) -> None:
    desk = empty(tmp_path)
    said = told(desk, "", "600", f"/skip {step}", *lines)
    assert any(line.startswith(passed) for line in said)
    assert said[-1].startswith(wanted)
    assert any("what it belongs to is left out until then" in line for line in said)
    on = told(desk, f"/skip {step}", *lines, "13.8" if step == "wiring" else "1000")
    assert on[-1].startswith(next_one)
    assert not desk.refused


def test_what_is_needed_may_be_left_until_another_answer_needs_it(tmp_path: Path) -> None:
    said = told(empty(tmp_path), "", "600", "/skip wiring", "", "12 AWG", "", "")
    assert said[-1].startswith("Wire length, ft")
