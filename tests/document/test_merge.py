"""New data into an old text: comments, order and spelling survive."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from session.builds import EXAMPLES, FULL, full

from fuelwiz.document.merge import merge
from fuelwiz.session import validate

from .edits import TYPED, changed, difference

TEXT = FULL.read_text(encoding="utf-8")


def set_record(text: str, record: dict[str, Any]) -> str:
    """A file's text with another record, as a save writes it."""
    return merge(text, {**tomllib.loads(text), "record": record})


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("cut", [0, 1])
def test_unchanged_data_leave_the_text_as_it_is(mark: str, ending: str, cut: int) -> None:
    for text in (TEXT, TYPED, *(path.read_text(encoding="utf-8") for path in EXAMPLES)):
        spelled = mark + text[: len(text) - cut].replace("\n", ending)
        plain = tomllib.loads(spelled.removeprefix("\ufeff"))
        assert merge(spelled, plain) == spelled


def test_one_value_changes_one_line() -> None:
    new = changed(TYPED, lambda plain: plain["goal"].update(reserve="20 %"))
    assert difference(TYPED, new) == ["-reserve='15%'", '+reserve="20 %"']


def test_a_comment_beside_a_value_stays_in_its_column() -> None:
    new = changed(TYPED, lambda plain: plain["goal"].update(power="420 hp"))
    assert difference(TYPED, new) == [
        '-power = "  410   HP "  # dyno, May',
        '+power = "420 hp"       # dyno, May',
    ]


@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_windows_line_ends_and_the_mark_survive_a_change(mark: str) -> None:
    spelled = mark + TYPED.replace("\n", "\r\n")
    plain = tomllib.loads(TYPED)
    plain["goal"] |= {"reserve": "20 %", "power_at": "wheels"}
    plain["notes"] = "two\nlines"
    new = merge(spelled, plain)
    assert new.startswith(mark + "# My wagon")
    assert "\n" not in new.replace("\r\n", "")
    assert tomllib.loads(new.removeprefix("\ufeff")) == plain


def test_a_missing_last_line_end_stays_missing() -> None:
    text = TYPED.removesuffix("\n")
    new = changed(text, lambda plain: plain["feed"]["filter"][0].update(clogging=2.0))
    assert new == text + "\nclogging = 2.0"


def test_a_key_that_is_taken_out_leaves_its_comment() -> None:
    new = changed(TYPED, lambda plain: plain["goal"].pop("reserve"))
    assert difference(TYPED, new) == ["-reserve='15%'"]
    new = changed(TYPED, lambda plain: plain.pop("name"))
    assert difference(TYPED, new) == [
        "-name   = 'Wagon'       # as the club knows it",
        "+# as the club knows it",
    ]


def test_a_new_key_goes_where_the_model_has_it() -> None:
    new = changed(TYPED, lambda plain: plain["goal"].update(power_at="wheels", next_power="500 hp"))
    assert difference(TYPED, new) == ['+power_at = "wheels"', '+next_power = "500 hp"']
    lines = new.splitlines()
    assert lines[lines.index('power_at = "wheels"') - 1].startswith("power =")
    assert lines[lines.index('next_power = "500 hp"') - 1] == "reserve='15%'"


def test_a_new_key_at_the_top() -> None:
    new = changed(TYPED, lambda plain: plain.update(notes="n", show_units="metric"))
    assert new.splitlines()[2:5] == [
        "name   = 'Wagon'       # as the club knows it",
        'notes = "n"',
        'show_units = "metric"',
    ]


def test_new_sections_go_where_the_model_has_them() -> None:
    def more(plain: dict[str, Any]) -> None:
        plain["pressure"] = {"boost": "21 psi"}
        plain["tank"] = {"volume": "55 l"}
        plain["feed"]["sizes"] = ["-8"]
        plain["pump"] = {"count": 1, "curve": [{"points": [["40 psi", "97 gal/h"]]}]}

    new = changed(TYPED, more)
    headers = [line.split("#")[0].strip() for line in new.splitlines() if line.startswith("[")]
    assert headers == [
        *("[goal]", "[pressure]", "[pump]", "[[pump.curve]]", "[feed]", "[[feed.run]]", "[[feed.run]]"),
        *("[[feed.filter]]", "[tank]"),
    ]
    assert all(line[0] == "+" for line in difference(TYPED, new))
    assert "\n\n\n" not in new


@pytest.mark.parametrize("number", [0, 1])
def test_a_run_that_is_deleted_takes_no_comment_of_another(number: int) -> None:
    new = changed(TYPED, lambda plain: plain["feed"]["run"].pop(number))
    gone = {line[1:] for line in difference(TYPED, new) if line[0] == "-"}
    kept, lost = ("second", "first") if number == 0 else ("first", "second")
    assert f"[[feed.run]]           # {kept}" in new
    assert f"[[feed.run]]           # {lost}" in gone
    assert "# --- second half ---" in new
    assert ("# from the tank" in new) == (number == 1)
    assert "# bent by hand" in "".join(gone) or number == 0


def test_deleting_the_first_of_packed_runs_keeps_the_words_above_the_second() -> None:
    text = '[[feed.run]]\nwhat = "a"\n# the long one\n[[feed.run]]\nwhat = "b"\n'
    assert (
        changed(text, lambda plain: plain["feed"]["run"].pop(0))
        == '# the long one\n[[feed.run]]\nwhat = "b"\n'
    )
    # nothing says of which of the two it speaks, so it stays here too
    assert (
        changed(text, lambda plain: plain["feed"]["run"].pop(1))
        == '[[feed.run]]\nwhat = "a"\n# the long one\n'
    )


def test_a_run_deleted_and_another_edited_at_once() -> None:
    def both(plain: dict[str, Any]) -> None:
        del plain["feed"]["run"][0]
        plain["feed"]["run"][0]["length"] = "5 ft"

    new = changed(TYPED, both)
    assert "# second\n" in new
    assert "# bent by hand" in new
    assert "# first" not in new


def test_a_run_put_in_between() -> None:
    new = changed(TYPED, lambda plain: plain["feed"]["run"].insert(1, {"what": "valve", "length": "1 ft"}))
    assert all(line[0] == "+" for line in difference(TYPED, new))
    assert [run["what"] for run in tomllib.loads(new)["feed"]["run"]] == [
        "tank to bulkhead",
        "valve",
        "bulkhead to rail",
    ]


def test_a_fitting_changes_and_its_neighbor_keeps_its_spelling() -> None:
    new = changed(TYPED, lambda plain: plain["feed"]["run"][1]["fittings"].update(straight=4))
    assert "fittings = { straight = 4,  swept_90 = 0x1 } # bent by hand" in new


def test_comments_inside_a_list_survive() -> None:
    text = """\
[[pump.curve]]
points = [
  ["20 psi", "108 gal/h"],   # off the sheet
  ['40 psi', "97 gal/h"],    # measured
  # above this it sings
  ["60 psi", "84 gal/h"],
]
"""
    new = changed(text, lambda plain: plain["pump"]["curve"][0]["points"][1].__setitem__(1, "95 gal/h"))
    assert difference(text, new) == [
        "-  ['40 psi', \"97 gal/h\"],    # measured",
        "+  ['40 psi', \"95 gal/h\"],    # measured",
    ]
    new = changed(text, lambda plain: plain["pump"]["curve"][0]["points"].append(["80 psi", "68 gal/h"]))
    for comment in ("# off the sheet", "# measured", "# above this it sings"):
        assert comment in new


def test_sections_that_are_taken_out() -> None:
    def fewer(plain: dict[str, Any]) -> None:
        del plain["pump"], plain["feed"]["filter"], plain["surge"]

    new = changed(TEXT, fewer)
    assert all(line[0] == "-" for line in difference(TEXT, new))
    assert "[pump]" not in new
    assert (
        "# [[inlet.run]] as feed.run, for a pump outside the tank; such a run gives its size or bore" in new
    )


def test_a_new_file_from_nothing() -> None:
    plain = full()
    new = merge("", plain)
    assert tomllib.loads(new) == plain
    assert list(tomllib.loads(new)) == list(plain)
    assert new.startswith('format = 1\nname = "Gravel-rally wagon"\n')
    assert "\n\n[goal]\n" in new
    assert "\n\n\n" not in new


def test_the_record_is_put_in_and_replaced() -> None:
    first = set_record(TYPED, {"saved": "2026-05-14", "works": True})
    assert first == TYPED + '\n[record]\nsaved = "2026-05-14"\nworks = true\n'
    second = set_record(first, {"saved": "2026-05-15", "works": False})
    assert difference(first, second) == [
        *('-saved = "2026-05-14"', "-works = true", '+saved = "2026-05-15"', "+works = false"),
    ]


def test_the_record_comes_before_the_cases() -> None:
    without = TEXT[: TEXT.index("[record]")] + TEXT[TEXT.index("[[stress.case]]") :]
    new = set_record(without, {"saved": "2026-05-14"})
    assert new.index("[fitted]") < new.index("[record]") < new.index("[[stress.case]]")


def test_load_edit_save_keeps_every_comment_and_typed_unit() -> None:
    def edit(plain: dict[str, Any]) -> None:
        plain["goal"]["power"] = "430 hp"
        plain["pressure"]["boost"] = "1.5 bar"
        plain["feed"]["run"][0]["length"] = "4 m"
        plain["engine"]["cylinders"] = 6
        plain["feed"]["run"].append({"what": "along the rail", "length": "3 ft"})

    new = changed(TEXT, edit)
    validate(tomllib.loads(new))
    for line in TEXT.splitlines():
        if "#" in line:
            assert line[line.index("#") :] in new
    gone = [line for line in difference(TEXT, new) if line[0] == "-"]
    assert len(gone) == 4
