"""Proposals: the values of ordinary keys that a bench comes to, and a build before and after them."""

from __future__ import annotations

import tomllib

import pytest

from fuelwiz.errors import SessionError
from fuelwiz.measured import measured
from fuelwiz.measured.before_after import before_after
from fuelwiz.measured.figures import Proposal
from fuelwiz.measured.proposals import accepted, values_of
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .benched import TEXT
from .cars import Car, plain


def test_the_bench_of_the_file_proposes_its_share() -> None:
    """1 gal in 40 s is 90 gal/h where the sheet has 97: 92.8 %."""
    session = validate(tomllib.loads(TEXT), "car")
    (proposal,) = measured(session, quick_figures(session)).proposals
    assert (proposal.key, proposal.value, proposal.date) == ("pump.health", "92.8 %", "2026-05-14")


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
