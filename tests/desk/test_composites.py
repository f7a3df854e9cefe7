"""Questions that write several keys: fuel, hoses and bends, filter, pump, what is there or not."""

from __future__ import annotations

import itertools
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.desk import Desk, NoSuchField
from fuelwiz.desk.composites.pump_known import SAMPLE_PUMP
from fuelwiz.questions import catalogue

from .desks import empty, opened, told


def text(desk: Desk, path: str) -> str:
    return desk.text_in_field(path).text


@pytest.mark.parametrize(
    ("answer", "fuel"),
    [
        ("10 %", {"ethanol": "10 %"}),
        ("85 %", {"ethanol": "85 %"}),
        ("0 %", {"ethanol": "0 %"}),
        ("methanol", {"kind": "methanol"}),
        ("own", {"kind": "own"}),
    ],
)
def test_fuel_writes_kind_and_ethanol_in_one(tmp_path: Path, answer: str, fuel: dict[str, str]) -> None:
    desk = empty(tmp_path)
    desk.choose("fuel.which", answer)
    assert desk.value("fuel") == fuel
    assert text(desk, "fuel.which") == answer
    assert desk.is_given("fuel.which")


def test_another_blend_is_typed(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.choose("fuel.which", "blend")
    desk.type("fuel.ethanol", "70")
    assert text(desk, "fuel.which") == "blend"
    assert desk.value("fuel") == {"ethanol": "70 %"}
    desk.type("fuel.ethanol", "85")
    assert text(desk, "fuel.which") == "blend"
    desk.choose("fuel.which", "85 %")
    assert text(desk, "fuel.which") == "85 %"


@pytest.mark.parametrize("stood", ["85 %", "70 %", None])
def test_another_blend_begins_with_the_ethanol_that_stood_not_with_what_was_passed_by(
    tmp_path: Path, stood: str | None
) -> None:
    desk = empty(tmp_path)
    if stood:
        desk.choose("fuel.which", "blend")
        desk.type("fuel.ethanol", stood)
    desk.visit("fuel.which")
    for passed in ("0 %", "methanol", "own", "30 %", "0 %", "blend"):
        desk.choose("fuel.which", passed)
    assert text(desk, "fuel.which") == "blend"
    assert desk.text_in_field("fuel.ethanol").text == (stood or "10 %").removesuffix(" %")
    assert desk.text_in_field("fuel.ethanol").assumed == (stood is None)


def test_a_pasted_curve_stays_when_another_answer_is_picked_in_the_same_visit(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.visit("pump.known")
    desk.choose("pump.known", "curve")
    desk.set_points("pump.curve.0.points", [("40 psi", "100 gal/h"), ("60 psi", "80 gal/h")])
    desk.choose("pump.known", "none")
    desk.choose("pump.known", "curve")
    assert desk.value("pump.curve.0.points") == [["40 psi", "100 gal/h"], ["60 psi", "80 gal/h"]]


def test_a_blend_that_is_not_on_offer_is_seen_in_a_file(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    path.write_text('format = 1\n[goal]\npower = "300 hp"\n[fuel]\nethanol = "70 %"\n', encoding="utf-8")
    desk = Desk.open(path)
    assert text(desk, "fuel.which") == "blend"


def test_back_from_methanol_a_kind_that_is_there_says_blend(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.choose("fuel.which", "methanol")
    desk.choose("fuel.which", "30 %")
    assert desk.value("fuel") == {"kind": "blend", "ethanol": "30 %"}
    desk.unsure("fuel.which")
    assert not desk.value("fuel")
    assert desk.text_in_field("fuel.which").assumed


# "How many hoses?" and "how many ends are bent?" make one run: straight = 2 x hoses - bent, swept_90 = bent.
@pytest.mark.parametrize(("hoses", "bent", "straight"), [(1, 0, 2), (2, 2, 2), (3, 2, 4), (2, 4, 0)])
def test_hoses_and_bends_make_one_run(tmp_path: Path, hoses: int, bent: int, straight: int) -> None:
    for first, second in (("feed.hoses", "feed.bends"), ("feed.bends", "feed.hoses")):
        desk = empty(tmp_path)
        numbers = {"feed.hoses": str(hoses), "feed.bends": str(bent)}
        desk.type(first, numbers[first])
        desk.type(second, numbers[second])
        assert desk.value("feed.run") == [{"fittings": {"straight": straight, "swept_90": bent}}]
        assert (text(desk, "feed.hoses"), text(desk, "feed.bends")) == (str(hoses), str(bent))


def test_more_bends_than_ends_are_refused_until_there_are_hoses_enough(tmp_path: Path) -> None:
    desk = told(tmp_path, feed__hoses="2", feed__bends="1")
    desk.type("feed.bends", "5")
    assert desk.text_in_field("feed.bends").refused == "0 to 4 is wanted"
    assert desk.held == "Not updated: still using number of bent ends 1 until yours can be read."
    assert desk.value("feed.run.0.fittings") == {"straight": 3, "swept_90": 1}
    desk.type("feed.hoses", "3")
    assert desk.refused == {}
    assert desk.value("feed.run.0.fittings") == {"straight": 1, "swept_90": 5}
    desk.type("feed.hoses", "2")
    assert desk.text_in_field("feed.hoses").refused == "5 bent ends need 3 or more"


def test_bends_left_empty_are_straight_and_hoses_left_empty_are_not_counted(tmp_path: Path) -> None:
    desk = told(tmp_path, feed__hoses="2", feed__bends="2")
    assert desk.unsure("feed.bends") == "Left empty: ends count as straight until you say otherwise."
    assert desk.value("feed.run.0.fittings") == {"straight": 4}
    desk.type("feed.hoses", "")
    assert desk.value("feed.run") == [{}]


def test_several_runs_are_changed_one_by_one(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    before = desk.value("feed.run")
    for path in ("feed.length", "feed.hoses", "feed.bends", "feed.hose"):
        assert text(desk, path) == "several: see the runs"
        desk.type(path, "2")
        assert desk.text_in_field(path).refused == "several: see the runs"
        desk.unsure(path)
        desk.type(path, "")
    assert desk.refused == {}
    assert desk.value("feed.run") == before


def test_what_was_typed_for_several_runs_is_taken_once_there_is_one(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("feed.length", "9")
    desk.remove("feed.run", 1)
    assert desk.value("feed.run.0.length") == "9 ft"
    assert desk.refused == {}
    desk.undo()
    assert desk.text_in_field("feed.length").text == "9"


def test_a_run_with_other_ends_is_not_told_as_hoses(tmp_path: Path) -> None:
    desk = told(tmp_path, feed__hoses="2")
    desk.type("feed.run.0.fittings.forged_90", "1")
    assert text(desk, "feed.hoses") == "several: see the runs"
    assert text(desk, "feed.length") == "15"
    desk.type("feed.run.0.fittings.forged_90", "")
    assert text(desk, "feed.hoses") == "2"


def test_not_sure_of_the_length_makes_a_run_of_the_fallback(tmp_path: Path) -> None:
    desk = told(tmp_path)
    said = desk.unsure("feed.length")
    assert desk.value("feed.run") == [{}]
    assert said.replace("\u00a0", " ").startswith("15 ft (4.57 m) is taken: about what a rear tank")
    assert desk.result is not None
    assert {one.key for one in desk.result.figures.assumed} >= {"feed.run.0.length", "feed.run.0.hose"}


def test_no_filter_is_an_answer(tmp_path: Path) -> None:
    desk = told(tmp_path, feed__filter="120")
    assert desk.value("feed.filter") == [{"rated_flow": "120 gal/h"}]
    desk.choose("filter.have", "none")
    assert desk.value("feed.filter") == []
    desk.choose("filter.have", "known")
    assert desk.value("feed.filter") == [{"rated_flow": "120 gal/h"}], "what was put away comes back"
    desk.type("feed.filter", "120")
    desk.type("feed.filter", "")
    assert text(desk, "filter.have") == "known"
    assert desk.text_in_field("feed.filter").assumed


def test_an_emptied_filter_that_has_more_keeps_the_rest(tmp_path: Path) -> None:
    desk = told(tmp_path, feed__filter="120")
    desk.type("feed.filter.0.what", "10 micron")
    desk.type("feed.filter", "")
    assert desk.value("feed.filter") == [{"what": "10 micron"}]
    assert desk.text_in_field("feed.filter").refused is None
    assert desk.text_in_field("feed.filter").assumed
    desk.type("feed.filter", "100")
    assert desk.value("feed.filter") == [{"what": "10 micron", "rated_flow": "100 gal/h"}]


def test_a_suction_hose_wants_its_size(tmp_path: Path) -> None:
    desk = told(tmp_path, inlet__line="2")
    assert list(desk.refused) == ["inlet.run.0.size"]
    desk.type("inlet.size", "-10")
    assert desk.refused == {}
    assert desk.value("inlet.run") == [{"length": "2 ft", "size": "-10"}]
    desk.choose("inlet.line", "none")
    assert "inlet" not in desk.plain


def test_a_return_is_one_run(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.type("return.length", "13")
    desk.choose("return.hose", "rubber")
    assert desk.value("return_line") == {"run": [{"length": "13 ft", "hose": "rubber"}]}


def test_no_pump_yet_one_figure_and_a_curve(tmp_path: Path) -> None:
    desk = told(tmp_path)
    assert desk.text_in_field("pump.known").assumed
    desk.choose("pump.known", "figure")
    desk.type("pump.figure.flow", "100")
    assert list(desk.refused) == ["pump.curve.0.points.0.0"]
    desk.type("pump.figure.pressure", "58")
    assert desk.value("pump.curve") == [{"points": [["58 psi", "100 gal/h"]]}]
    assert text(desk, "pump.known") == "figure"
    desk.choose("pump.known", "curve")
    assert desk.value("pump.curve") is None
    desk.set_points("pump.curve.points", [("40 psi", "97 gal/h"), ("60 psi", "84 gal/h")])
    desk.choose("pump.known", "figure")
    assert desk.value("pump.curve") == [{"points": [["58 psi", "100 gal/h"]]}]
    desk.choose("pump.known", "curve")
    assert desk.value("pump.curve.0.points") == [["40 psi", "97 gal/h"], ["60 psi", "84 gal/h"]]


def test_what_is_told_of_a_pump_that_is_not_there_is_kept_but_not_in_the_file(tmp_path: Path) -> None:
    desk = told(tmp_path, pump__count="2", pump__name="the old one")
    desk.choose("pump.place", "surge")
    assert "pump" not in desk.plain
    assert desk.refused == {}
    assert text(desk, "pump.place") == "surge"
    saved = desk.save_as("A build")
    assert saved.left_out == "The pump is saved once it has a flow figure."
    desk.set_points("pump.curve.points", [("40 psi", "97 gal/h")])
    assert desk.plain["pump"] == {
        "count": 2,
        "name": "the old one",
        "place": "surge",
        "curve": [{"points": [["40 psi", "97 gal/h"]]}],
    }
    desk.choose("pump.known", "none")
    assert "pump" not in desk.plain
    desk.choose("pump.known", "figure")
    assert desk.plain["pump"]["curve"] == [{"points": [["40 psi", "97 gal/h"]]}]


def test_the_sample_pump_says_that_it_is_invented(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.choose("pump.known", "sample")
    assert "invented" in desk.value("pump.name")
    assert text(desk, "pump.known") == "sample"
    assert desk.session is not None
    assert desk.session.pump is not None
    desk.choose("pump.known", "none")
    assert desk.value("pump.name") is None


def test_a_surge_pot_comes_back(tmp_path: Path) -> None:
    desk = told(tmp_path)
    assert text(desk, "surge.have") == "no"
    desk.choose("surge.have", "yes")
    desk.type("surge.volume", "0.5 gal")
    before = desk.value("surge")
    desk.choose("surge.have", "no")
    assert (text(desk, "surge.have"), desk.value("surge")) == ("no", None)
    desk.choose("surge.have", "yes")
    assert desk.value("surge") == before


THREE_WAYS: dict[str, tuple[str, str, Any, Any]] = {
    "filter.have": ("feed.filter", "feed.filter", [{}], []),
    "inlet.strainer.have": ("inlet.strainer", "inlet.strainer.rated_flow", {}, False),
}


@pytest.mark.parametrize("question", THREE_WAYS)
def test_a_part_is_there_with_figures_or_without_or_not_at_all(tmp_path: Path, question: str) -> None:
    """Nothing chosen counts as there, without figures; each answer stands in the file in a form of its own."""
    section, flow, without_figures, none = THREE_WAYS[question]
    desk = told(tmp_path)
    field = desk.text_in_field(question)
    assert (field.text, field.assumed, desk.value(section)) == ("unknown", True, None)
    desk.choose(question, "unknown")
    assert (text(desk, question), desk.value(section)) == ("unknown", without_figures)
    assert not desk.text_in_field(question).assumed
    desk.choose(question, "known")
    desk.type(flow, "100")
    known = desk.value(section)
    assert "100 gal/h" in str(known)
    desk.choose(question, "none")
    assert (text(desk, question), desk.value(section)) == ("none", none)
    desk.choose(question, "known")
    assert desk.value(section) == known
    desk.choose(question, "unknown")
    assert (text(desk, question), desk.value(section)) == ("unknown", without_figures)
    desk.unsure(question)
    assert desk.text_in_field(question).assumed and desk.value(section) is None


def test_not_knowing_a_filter_is_never_better(tmp_path: Path) -> None:
    def margin(answer: str) -> float:
        desk = told(tmp_path, feed__length="14")
        desk.choose("pump.known", "sample")
        desk.choose("filter.have", answer)
        assert desk.result is not None
        found = desk.result.figures.sizes[2].margin
        assert found is not None
        return found

    assert margin("unknown") < margin("none")


def test_a_regulator_is_on_the_car_or_still_to_be_bought(tmp_path: Path) -> None:
    desk = told(tmp_path, **{"return__length": "13"})
    key = "return_line.regulator.have"
    desk.choose(key, "unknown")
    assert (text(desk, key), desk.value("fitted.has")) == ("unknown", ["regulator"])
    desk.choose(key, "known")
    desk.type("return_line.regulator.rated_flow", "150")
    desk.type("return_line.regulator.rated_loss", "4")
    desk.choose(key, "none")
    assert (text(desk, key), desk.value("fitted.has")) == ("none", None)
    assert desk.value("return_line.regulator") is None
    desk.choose(key, "known")
    assert desk.value("return_line.regulator") == {"rated_flow": "150 gal/h", "rated_loss": "4 psi"}
    assert desk.refused == {}


@pytest.mark.parametrize(
    ("question", "chosen", "word"),
    [("feed.fitted", "feed.chosen", "line"), ("return.fitted", "return_line.chosen", "return_line")],
)
def test_the_size_on_the_car_is_the_chosen_one(tmp_path: Path, question: str, chosen: str, word: str) -> None:
    desk = told(tmp_path)
    desk.type(chosen, "-8")
    assert text(desk, question) == "", "chosen to be bought, not on the car"
    desk.type(question, "AN6")
    assert (text(desk, question), desk.value(chosen), desk.value("fitted.has")) == ("-6", "-6", [word])
    desk.type(question, "5/16 pipe")
    assert desk.value(chosen) == "5/16 in"
    desk.type(question, "wide")
    assert desk.text_in_field(question).refused and desk.value(chosen) == "5/16 in"
    desk.choose(question, "none")
    assert (text(desk, question), desk.value(chosen), desk.value("fitted.has")) == ("", None, None)


def test_hoses_and_bends_of_the_return(tmp_path: Path) -> None:
    desk = told(tmp_path, **{"return__length": "4 m"})
    desk.type("return.hoses", "1")
    desk.type("return.bends", "2")
    assert desk.value("return_line.run.0.fittings") == {"straight": 0, "swept_90": 2}
    desk.type("return.bends", "3")
    assert "return.bends" in desk.refused, "one hose has two ends"
    desk.choose("return.hose", "tube")
    assert desk.refused == {}, "a pipe has as many bends as it has"
    assert desk.value("return_line.run.0.fittings") == {"swept_90": 3}


def test_every_question_of_the_catalogue_has_a_field(tmp_path: Path) -> None:
    lists = {
        "feed.run",
        "feed.filters",
        "feed.part",
        "pump.curve",
        "inlet.run",
        "return_line.run",
        "return_line.part",
        "pull",
        "bench",
        "gauge",
    }
    for key, asked in catalogue().items():
        if key in lists | {"stress.case"}:
            continue
        desk = empty(tmp_path)
        field = desk.text_in_field(key)
        for choice in asked.choices:
            if not key.endswith(".fittings"):
                desk.choose(key, choice.value)
                assert desk.text_in_field(key).refused is None
        assert field.refused is None
    with pytest.raises(NoSuchField):
        empty(tmp_path).text_in_field("feed.nothing")


@pytest.mark.parametrize(("units", "head"), [("us", ("psi", "gal/h")), ("metric", ("bar", "L/h"))])
def test_the_sample_pump_speaks_the_units_of_the_build(
    tmp_path: Path, units: str, head: tuple[str, str]
) -> None:
    desk = empty(tmp_path)
    desk.choose("units", units)
    desk.choose("pump.known", "sample")
    points = desk.value("pump.curve.0.points")
    assert {tuple(figure.split()[1] for figure in point) for point in points} == {head}
    assert (desk.unit_of_row("pump.curve.0.points.0.0"), desk.unit_of_row("pump.curve.0.points.0.1")) == head


def test_the_sample_pump_is_one_pump_in_either_units(tmp_path: Path) -> None:
    """Each metric point lies within 1 % of the line between two of the others."""
    us, metric = SAMPLE_PUMP["points"]["us"], SAMPLE_PUMP["points"]["metric"]
    psi_a_bar, liters_a_gallon = 14.5038, 3.78541
    curve = [(float(p.split()[0]), float(q.split()[0])) for p, q in us]
    for pressure, flow in metric:
        at = float(pressure.split()[0]) * psi_a_bar
        (p0, q0), (p1, q1) = next(
            (a, b) for a, b in itertools.pairwise(curve) if at <= b[0] or b is curve[-1]
        )
        between = q0 + (q1 - q0) * (at - p0) / (p1 - p0)
        assert float(flow.split()[0]) / liters_a_gallon == pytest.approx(between, rel=0.01)


@pytest.mark.parametrize(
    ("typed", "size", "hose", "named"),
    [
        ("3/8 pipe", "3/8 in", "tube", "pipe outside"),
        ("10 mm hard line", "10 mm", "tube", "pipe outside"),
        ("-6 rubber", "-6", "rubber", "rubber"),
        ("AN8 PTFE hose", "-8", "ptfe", "PTFE"),
        ("5/16 tube", "5/16 in", "tube", "pipe outside"),
    ],
)
def test_a_size_typed_with_its_kind_answers_the_kind_of_hose_too(
    tmp_path: Path, typed: str, size: str, hose: str, named: str
) -> None:
    desk = told(tmp_path, feed__length="15")
    desk.type("feed.fitted", typed)
    assert desk.plain["feed"]["chosen"] == size and desk.plain["feed"]["run"][0]["hose"] == hose
    assert not desk.text_in_field("feed.hose").assumed
    assert desk.text_in_field("feed.fitted").echo == named, "the row says what the word has made of it"


def test_a_size_with_its_kind_changes_no_run_of_several(tmp_path: Path) -> None:
    desk = told(tmp_path)
    for length in ("3 ft", "12 ft"):
        desk.add("feed.run", {"length": length})
    desk.type("feed.fitted", "3/8 pipe")
    assert desk.plain["feed"]["chosen"] == "3/8 in"
    assert all("hose" not in run for run in desk.plain["feed"]["run"])


def test_no_return_line_comes_of_its_size_alone(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.type("return.fitted", "-6 rubber")
    assert desk.plain["return_line"] == {"chosen": "-6"}
    desk.type("return.length", "12")
    desk.type("return.fitted", "-6 rubber")
    assert desk.plain["return_line"]["run"][0]["hose"] == "rubber"


@pytest.mark.parametrize(
    ("size", "hose", "said"),
    [
        ("8 mm", "ptfe", "PTFE bore"),
        ("8mm", "rubber", "rubber bore"),
        ("8 mm", "tube", "pipe outside"),
        ("5/16 in", "tube", "pipe outside"),
        ("-8", "ptfe", "PTFE"),
        ("-8", "tube", "hard pipe"),
    ],
)
def test_a_line_on_the_car_says_which_diameter_a_length_is(
    tmp_path: Path, size: str, hose: str, said: str
) -> None:
    desk = told(tmp_path, feed__length="15 ft")
    desk.choose("feed.hose", hose)
    desk.type("feed.fitted", size)
    assert desk.text_in_field("feed.fitted").echo == said
