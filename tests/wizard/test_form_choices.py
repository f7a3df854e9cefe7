"""Every answer that a question offers can be picked in the form with an arrow, and is the one that stands then."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.desk.composites import FITTED_SIZES
from fuelwiz.desk.edits import NOTHING_WITHOUT
from fuelwiz.questions import catalogue
from fuelwiz.wizard.editor.row_painter import row_strip
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import ChoiceRow
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

NEVER_ASKED = {"fuel.kind", "show_units"}
"""What the questions about fuel and units answer along with something else."""
FIRST: dict[str, dict[str, str]] = {
    "surge.return_to": {"surge.have": "yes"},
    "pump.volts": {"pump.known": "sample"},
    "pump.place": {"pump.known": "sample"},
    "pump.kind": {"pump.known": "sample"},
    "inlet.strainer.carries": {"pump.known": "sample", "pump.count": "2"},
    "pump.arrangement": {"pump.known": "sample", "pump.count": "2"},
}
LISTS = {
    "feed.run.hose": "feed.run",
    "feed.filter.place": "feed.filter",
    "inlet.run.hose": "inlet.run",
    "return_line.run.hose": "return_line.run",
    "inlet.run.carries": "inlet.run",
    "bench.at": "bench",
}
OF_PARTS = "fitted.has"
KEYS = sorted(
    key
    for key, asked in catalogue().items()
    if asked.answers and not key.endswith(".fittings") and key not in (*NEVER_ASKED, OF_PARTS)
)


def standing(form: Form) -> set[str]:
    """What stands in the field under the pointer, without its unit and with it."""
    field = form.desk.text_in_field(form.path)
    return {field.text, f"{field.text} {field.unit}".strip()}


@pytest.mark.parametrize("key", KEYS)
def test_arrows_go_through_every_answer(tmp_path: Path, key: str) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    for question, answer in FIRST.get(key, {}).items():
        desk.type(question, answer)
    form = Form(desk)
    if key in LISTS:
        form.open_entry(LISTS[key], desk.add(LISTS[key], {}))
        place = form.pointer.find(f"{LISTS[key]}.0.{key.rpartition('.')[2]}")
        assert place is not None
        form.focus_on(*place)
    else:
        form.go_to_path(key)
    assert form.question.key == key, "the question is asked"
    answers = catalogue()[key].answers
    picked: set[str] = set()
    for _ in answers:
        assert form.key("right", None) == "edited"
        picked |= standing(form) & set(answers)
        assert not desk.text_in_field(form.path).refused
    if key in {*NOTHING_WITHOUT, *FITTED_SIZES}:
        assert not picked, "only a hose or size that is there can be read back"
    else:
        assert picked == set(answers)


def test_an_arrow_drops_no_part_of_those_on_the_car(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type(OF_PARTS, "feed line, filter")
    form = Form(desk, "summary")
    form.go_to_path(OF_PARTS)
    for key in ("right", "left", "right"):
        form.key(key, None)
    assert desk.value(OF_PARTS) == ["line", "filter"]


def _ticked(form: Form, width: int) -> str:
    """The answer that the row under the pointer shows as chosen; nothing where it is none to pick."""
    if not isinstance(form.row, ChoiceRow):
        return ""
    line = row_strip(form.row, form.desk, Area(Look(), width, 1), None).text
    shown = re.search(r"\(•\) (.+?)(?:  |$)|< (.+?) >", line)
    return "" if shown is None else shown[1] or shown[2]


@pytest.mark.parametrize("width", [60, 80, 120])
@pytest.mark.parametrize("key", [key for key in KEYS if key not in LISTS])
def test_the_first_arrow_moves_on_from_what_is_shown_as_chosen(tmp_path: Path, key: str, width: int) -> None:
    """Also where it is only taken: an arrow that took "assumed" away alone was not noticed to have done nothing."""
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    for question, answer in FIRST.get(key, {}).items():
        desk.type(question, answer)
    desk.update()
    form = Form(desk)
    form.go_to_path(key)
    before = _ticked(form, width)
    if before:
        form.key("right", None)
        assert _ticked(form, width) not in ("", before)


@pytest.mark.parametrize("typed", ["pump", ", pump", " pump", "pump, filter"])
def test_a_part_that_is_typed_is_added_to_those_on_the_car(tmp_path: Path, typed: str) -> None:
    desk = Desk.new(tmp_path)
    desk.type(OF_PARTS, "feed line, return line, regulator")
    form = Form(desk, "summary")
    form.go_to_path(OF_PARTS)
    for sign in typed:
        form.key("space" if sign == " " else sign, sign)
    added = ["pump", "filter"] if "filter" in typed else ["pump"]
    assert desk.value(OF_PARTS) == ["line", "return_line", "regulator", *added]


def test_backspace_takes_the_parts_off_one_by_one(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type(OF_PARTS, "feed line, return line, pump")
    form = Form(desk, "summary")
    form.go_to_path(OF_PARTS)
    left = []
    for _ in range(3):
        form.key("backspace", None)
        left.append(desk.value(OF_PARTS))
    assert left == [["line", "return_line"], ["line"], None]
    for sign in "wirx":
        form.key(sign, sign)
    assert desk.text_in_field(OF_PARTS).refused
    form.key("backspace", None)
    form.key("e", "e")
    assert desk.value(OF_PARTS) == ["wire"], "what cannot be read is mended letter by letter"


def test_no_two_questions_on_the_page_have_one_name() -> None:
    labels = [
        asked.label
        for asked in catalogue().values()
        if asked.key.startswith(("fitted.", "feed.fitted", "return.fitted"))
    ]
    assert len(labels) == len(set(labels))


def choice_form(folder: Path) -> Form:
    desk = Desk.new(folder)
    desk.type("goal.power", "410 hp")
    form = Form(desk)
    form.go_to_path("pressure.regulator")
    assert isinstance(form.row, ChoiceRow)
    return form


def test_a_single_wrong_letter_does_not_spoil_the_next(tmp_path: Path) -> None:
    form = choice_form(tmp_path)
    (first, *_, last) = form.question.choices
    for choice in (last, first):
        form.go_to_path("pressure.regulator")
        form.key("z", "z")
        assert form.unfit == "z"
        letter = choice.say[0]
        form.key(letter, letter)
        assert form.desk.value("pressure.regulator") == choice.value and not form.unfit


def test_a_word_that_is_no_answer_picks_none(tmp_path: Path) -> None:
    form = choice_form(tmp_path)
    stood = form.desk.value("pressure.regulator")
    letters = "zz" + form.question.choices[-1].say[0]
    for letter in letters:
        form.key(letter, letter)
    assert form.unfit == letters and form.desk.value("pressure.regulator") == stood
