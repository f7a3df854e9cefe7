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
