"""Proposals in a session file: taken one by one, dated, with every comment kept, and taken back again."""

from __future__ import annotations

import tomllib

import pytest

from fuelwiz.document.merge import merge
from fuelwiz.errors import SessionError
from fuelwiz.measured import measured
from fuelwiz.measured.before_after import before_after
from fuelwiz.measured.figures import Proposal
from fuelwiz.measured.proposals import accept, accepted, values_of
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .cars import Car, plain

TEXT = """\
# My car, as the sheets have it.
format = 1

[goal]
power = "400 hp"    # at the crank

[pump]
# bought used
health = "100 %"    # as sold
[[pump.curve]]
voltage = "13.5 V"
points = [["40 psi", "97 gal/h"], ["80 psi", "68 gal/h"]]

[[feed.run]]
length = "13 ft"

[[bench]]
at = "pump"
date = "2026-05-14"
pressure = "40 psi"
volts = "13.5 V"
volume = "1 gal"
time = "40 s"       # 90 gal/h
"""
HEALTH = Proposal("pump.health", "92.8 %", "tolerance.pump_flow", "2.8 %", "bench tests", "2026-05-14")
BASE = Proposal("pressure.base", "41.0 psi", None, None, "rail in the log")


def lines(text: str) -> set[str]:
    return set(text.splitlines())


def test_the_bench_of_the_file_proposes_its_share() -> None:
    """1 gal in 40 s is 90 gal/h where the sheet has 97: 92.8 %."""
    session = validate(tomllib.loads(TEXT), "car")
    (proposal,) = measured(session, quick_figures(session)).proposals
    assert (proposal.key, proposal.value, proposal.date) == ("pump.health", "92.8 %", "2026-05-14")


def test_a_value_that_is_taken_has_a_comment_and_leaves_all_others() -> None:
    taken = accept(TEXT, [HEALTH, BASE], "2026-06-01")
    found = tomllib.loads(taken)
    assert found["pump"]["health"] == "92.8 %"
    assert found["tolerance"] == {"pump_flow": "2.8 %"}
    assert found["pressure"] == {"base": "41.0 psi"}
    assert "# measured: bench tests, 2026-05-14; was 100 %" in lines(taken)
    assert 'pump_flow = "2.8 %"  # measured: bench tests, 2026-05-14' in lines(taken)
    assert 'base = "41.0 psi"  # measured: rail in the log, 2026-06-01' in lines(taken)
    for comment in (
        "# My car, as the sheets have it.",
        "# bought used",
        "# as sold",
        "# at the crank",
        "# 90 gal/h",
    ):
        assert comment in taken
    assert found["pump"]["curve"] == tomllib.loads(TEXT)["pump"]["curve"]


def test_a_later_measurement_takes_the_place_of_the_comment_before() -> None:
    later = Proposal("pump.health", "90 %", "tolerance.pump_flow", "2 %", "bench tests", "2026-08-01")
    taken = accept(accept(TEXT, [HEALTH], "2026-06-01"), [later], "2026-08-02")
    assert taken.count("# measured: bench tests") == 2
    assert "# measured: bench tests, 2026-08-01; was 92.8 %" in lines(taken)
    assert "2026-05-14;" not in taken
    assert "# bought used" in taken


def test_taken_undone_and_taken_again() -> None:
    before = tomllib.loads(TEXT)
    taken = accept(TEXT, [HEALTH], "2026-06-01")
    undone = merge(taken, before)
    assert tomllib.loads(undone) == before
    again = accept(undone, [HEALTH], "2026-06-01")
    assert tomllib.loads(again) == tomllib.loads(taken)
    assert "# measured: bench tests, 2026-05-14; was 100 %" in lines(again)
    figures = [quick_figures(validate(tomllib.loads(text), "car")) for text in (TEXT, taken, undone, again)]
    assert figures[0] == figures[2]
    assert figures[1] == figures[3]
    assert figures[0] != figures[1]


def test_windows_line_ends_and_a_byte_order_mark_stay() -> None:
    windows = "\ufeff" + TEXT.replace("\n", "\r\n")
    taken = accept(windows, [HEALTH], "2026-06-01")
    assert taken.startswith("\ufeff")
    assert taken.count("\r\n") == taken.count("\n")
    assert taken.replace("\r\n", "\n").removeprefix("\ufeff") == accept(TEXT, [HEALTH], "2026-06-01")


def test_points_of_a_pull_are_tables_under_one_comment() -> None:
    points = [
        {"rpm": 4500, "power": "330 hp", "boost": "20.0 psi"},
        {"rpm": 6500, "power": "400 hp", "boost": "19.0 psi"},
    ]
    taken = accept(TEXT, [Proposal("pull", points, None, None, "bins of the log")], "2026-06-01")
    assert tomllib.loads(taken)["pull"] == points
    assert "# measured: bins of the log, 2026-06-01\n[[pull]]" in taken


def test_before_and_after_are_the_build_and_the_build_with_it() -> None:
    """Nine tenths of the sheet's flow in the same system are less than nine tenths of the spare."""
    data = plain(Car())
    worn = Proposal("pump.health", "90 %", "tolerance.pump_flow", "2 %", "bench tests")
    found = before_after(data, [worn])
    assert data == plain(Car())
    before, after = found.before.pick.capacity_m3_s, found.after.pick.capacity_m3_s
    assert before is not None and after is not None
    assert 0.88 * before < after < 0.95 * before
    assert accepted(data, [worn])["pump"]["curve"] == data["pump"]["curve"]
    assert values_of(worn) == {"pump.health": "90 %", "tolerance.pump_flow": "2 %"}


def test_a_proposal_that_makes_no_build_is_refused_by_its_key() -> None:
    with pytest.raises(SessionError, match=r"pump\.health"):
        before_after(plain(Car()), [Proposal("pump.health", "900 %", None, None, "bench tests")])
