"""What is pointed out: a stop for each limit, each warning where its cause is, in the order of gravity."""

from __future__ import annotations

from itertools import combinations

import pytest

from fuelwiz.advice import Result

from .builds import NAMES, independent, spaced, told
from .scenarios import ALL, LIMITS, REMARKS, made

# The words for what can be wrong, in their order.
WORDS = (
    "velocity", "delivery", "sag", "pump", "relief", "vapour", "inlet", "kept run", "injector pressure",
    "injectors", "return", "lift", "rating", "fuse",
)  # fmt: skip


def scenario(name: str) -> Result:
    return made(name)


def test_every_limit_is_brought_about_once() -> None:
    assert tuple(LIMITS) == WORDS


@pytest.mark.parametrize("limit", WORDS)
def test_limit_is_reached_in_its_scenario(limit: str) -> None:
    assert limit in scenario(f"limit: {limit}").figures.verdict.limits


@pytest.mark.parametrize("name", ALL)
def test_stops_are_the_limits_in_their_order(name: str) -> None:
    said = scenario(name)
    stops = tuple(finding.about for finding in said.words.findings if finding.severity == "stop")
    assert stops == said.figures.verdict.limits
    assert stops == tuple(word for word in WORDS if word in stops)


COUPE = [limit for limit, (example, _) in LIMITS.items() if example == "hill-climb-coupe"]


@pytest.mark.parametrize(("first", "second"), combinations(COUPE, 2))
def test_stops_where_two_things_are_wrong(first: str, second: str) -> None:
    said = told("hill-climb-coupe", **{**LIMITS[first][1], **LIMITS[second][1]})
    stops = [finding for finding in said.words.findings if finding.severity == "stop"]
    assert tuple(finding.about for finding in stops) == said.figures.verdict.limits
    assert len({finding.text for finding in stops}) == len(stops)


@pytest.mark.parametrize("name", NAMES)
def test_stops_of_the_examples(name: str) -> None:
    said = independent(name)
    stops = tuple(finding.about for finding in said.words.findings if finding.severity == "stop")
    assert stops == said.figures.verdict.limits


@pytest.mark.parametrize("name", ALL)
def test_stops_come_first_then_warnings_then_notes(name: str) -> None:
    severities = [finding.severity for finding in scenario(name).words.findings]
    assert severities == sorted(severities, key=("stop", "warning", "note").index)


@pytest.mark.parametrize("name", REMARKS)
def test_remark_is_made(name: str) -> None:
    _, (severity, about, words) = REMARKS[name]
    findings = made(f"remark: {name}").words.findings
    texts = [
        spaced(finding.text) for finding in findings if (finding.severity, finding.about) == (severity, about)
    ]
    assert any(words in text for text in texts), texts


# What a sound build must not be warned of.
SILENT = {
    "goal.power", "pump.curve", "pump.relief", "pump.arrangement", "pump.running_at_idle", "pump.volts",
    "inlet", "return_line", "engine.bsfc", "pressure.reference", "pressure.regulator", "tank.volume",
    "feed.chosen", "feed.run", "feed.run.hose", "feed.filter", "surge.volume", "pump.count",
}  # fmt: skip


def test_sound_build_is_told_nothing_of_these() -> None:
    findings = told("hill-climb-coupe").words.findings
    abouts = {finding.about for finding in findings if finding.severity == "warning"}
    assert not abouts & SILENT


def test_text_has_its_limit_and_what_to_do() -> None:
    for limit in WORDS:
        text = next(f.text for f in scenario(f"limit: {limit}").words.findings if f.about == limit)
        assert text.count(". ") >= 1, text


AT_A_POINT = {
    "a pull that boils": ("vapour", "At a point of the pull the fuel boils at the pump inlet."),
    "a pull near boiling outside the tank": ("vapour", "the fuel is less than 2.9 psi above boiling"),
    "a pull through a narrow suction line": (
        "inlet",
        "more than 4 ft/s in the suction line at a point of the pull.",
    ),
}


@pytest.mark.parametrize("name", AT_A_POINT)
def test_what_is_wrong_at_a_point_alone_is_not_said_with_the_figure_of_the_goal(name: str) -> None:
    said, (limit, wanted) = scenario(name), AT_A_POINT[name]
    texts = [spaced(finding.text) for finding in said.words.findings if finding.about == limit]
    assert len(texts) == 1 and wanted in texts[0], texts


def test_metric_finding() -> None:
    findings = told("twins", show_units="metric").words.findings
    text = next(spaced(finding.text) for finding in findings if finding.about == "return")
    assert (
        "backs up to 2.85 bar; the regulator should hold 2.38" in text
    )  # 284.7 kPa and 237.9 kPa of the independent solver


def test_real_bores_against_the_dash_number() -> None:
    """PTFE and tube -4 are 0.188 and 0.180 in where the dash says 0.250; tube -16 is 0.930 in where it says 1."""
    findings = made("bores by the dash").words.findings
    text = next(spaced(finding.text) for finding in findings if finding.about == "feed.run.hose")
    assert "A real line is 7 to 28 % narrower, so velocity is 16 to 93 % higher" in text


NO_HOSE = {"pressure__base": "58 psi", "pressure__reference": "atmosphere", "goal__next_power": "500 hp"}


def test_boost_of_the_next_goal_takes_from_the_injectors_without_a_manifold_hose() -> None:
    """By hand: 58 - 8 = 50 psi, and the square root of 50 / 58 is 0.928."""
    words = told("mild", **NO_HOSE, goal__next_boost="8 psi").words
    (text,) = (finding.text for finding in words.findings if finding.about == "pressure.reference")
    assert "50.0 psi of 58.0 is left across the injectors and they flow 7 % less" in spaced(text)
    assert any("50.0 psi of 58.0 is left" in spaced(sentence) for sentence in words.next_goal)


@pytest.mark.parametrize(
    "changes",
    [
        {**NO_HOSE},
        {**NO_HOSE, "goal__next_boost": "8 psi", "pressure__reference": "manifold"},
        {**NO_HOSE, "goal__next_boost": "8 psi", "engine__injection": "direct"},
    ],
)
def test_a_next_goal_that_takes_nothing_from_the_injectors_is_not_warned_of(changes: dict[str, str]) -> None:
    words = told("mild", **changes).words
    assert not [finding for finding in words.findings if finding.about == "pressure.reference"]
    assert not [sentence for sentence in words.next_goal if "across the injectors" in sentence]


PIPE_AND_HOSE = [
    {"what": "out of the tank", "hose": "rubber", "length": "1 ft", "fittings": {"straight": 2}},
    {"what": "under the floor", "hose": "tube", "length": "16 ft"},
]


def test_two_names_of_one_bore_are_one_line() -> None:
    """-6 and 3/8 in hard pipe have the same bore, the rubber at its end has not: no advice to change."""
    one = told("mild", feed__run=PIPE_AND_HOSE, feed__chosen="3/8 in")
    row, dash = one.figures.row("3/8 in"), one.figures.row("-6")
    assert row is not None and dash is not None and row.bore_m == pytest.approx(dash.bore_m, rel=0.001)
    assert one.figures.line_to_fit == "-6"
    assert not [finding for finding in one.words.findings if finding.about == "feed.chosen"]
    assert (one.words.line_to_fit or "").startswith("Your 3/8 in is the right line")
    words = one.words.explanations[one.figures.sizes.index(row)]
    assert (words.next or "").startswith("-8") and (words.smaller or "").startswith("-4")


WEAK_PUMP = [{"points": [["40 psi", "34 gal/h"], ["70 psi", "20 gal/h"]]}]


def test_a_pump_too_small_is_not_put_on_the_line() -> None:
    """Every size is refused by the pump alone: no size is one to fit, and the chosen one is not said to fail."""
    one = told("mild", feed__chosen="-6", pump__curve=WEAK_PUMP)
    assert {limit for row in one.figures.sizes[1:] for limit in row.limits} == {"pump"}
    said = spaced(one.words.line_to_fit or "")
    cause = "The line is not the cause: the pump is too small with every size."
    assert said.startswith(f"{cause} Your -6 is large enough:")
    assert "line to fit" not in said and "does not work" not in said


def test_a_little_drop_at_the_rail_asks_for_no_larger_line() -> None:
    findings = told("mild", feed__chosen="-6", feed__run=PIPE_AND_HOSE).words.findings
    (text,) = (spaced(finding.text) for finding in findings if finding.about == "pressure.regulator")
    assert "tune with the drop" in text and "larger line" not in text


@pytest.mark.parametrize(("power", "said"), [("559 hp", True), ("560 hp", False), ("561 hp", False)])
def test_a_next_goal_below_this_one_is_pointed_out_and_left_out_of_all_that_is_said(
    power: str, said: bool
) -> None:
    words = told("hill-climb-coupe", goal__next_power=power, goal__next_boost="20 psi").words
    assert any(finding.about == "goal.next_power" for finding in words.findings) == said
    further = power == "561 hp"
    assert (power in spaced(" ".join(words.answer[1:]))) == further
    assert bool(words.next_goal) == further


def test_where_no_assumed_value_moves_the_spare_none_is_said_to_matter_most() -> None:
    """Fuel use, fuel, boost and hose are all answered in this example; what is left out moves no pump."""
    assumed = independent("street-turbo").figures.assumed
    assert any(item.effect == 0.0 for item in assumed) and not any(item.effect for item in assumed)
    texts = [spaced(finding.text) for finding in independent("street-turbo").words.findings]
    assert any("values assumed: none of them moves the flow to spare." in text for text in texts)
    assert not any("matters most" in text for text in texts)
    known = [spaced(finding.text) for finding in independent("hill-climb-coupe").words.findings]
    assert any("fuel use (0.902 lb/hp·h) matters most" in text for text in known)
