"""Values that were measured: taken into a build as ordinary answers, each with what measured it and when."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from fuelwiz.desk.state import State
from fuelwiz.document.comments import with_comment
from fuelwiz.measured.figures import Proposal
from fuelwiz.measured.proposals import MARK, comment_of, values_of
from fuelwiz.session import key_path_of

STEP = "measured"


def place_of_proposal(proposal: Proposal) -> str:
    """Where the pointer is while a proposal is looked at: it is taken there, and undone from there."""
    return f"{STEP}.{proposal.key}"


def with_measured(state: State, proposal: Proposal) -> State:
    """The build with a proposal taken."""
    today = date.today().isoformat()
    for path, value in values_of(proposal).items():
        comment = comment_of(proposal, path, state.plain, today)
        state = state.with_value(path, value)
        state = replace(state, measured={**state.measured, path: comment})
    return state


def with_comments(text: str, measured: Mapping[str, str]) -> str:
    """The text of a session file with what measured its values beside them."""
    for path, comment in measured.items():
        text = with_comment(text, key_path_of(path), comment, takes_place_of=MARK)
    return text
