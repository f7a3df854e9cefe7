"""Values that were measured: taken into a build as ordinary answers, each with what measured it and when."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING

from fuelwiz.desk.plain import Plain, value_at, value_path
from fuelwiz.session import key_path_of

if TYPE_CHECKING:
    from fuelwiz.desk.state import State
    from fuelwiz.measured.figures import Proposal

STEP = "measured"
OWN_WORD = "measured:"
"""In every comment beside a measured value: a file without it needs nothing loaded that knows such comments."""


def place_of_proposal(proposal: Proposal) -> str:
    """Where the pointer is while a proposal is looked at: it is taken there, and undone from there."""
    return f"{STEP}.{proposal.key}"


def with_measured(state: State, proposal: Proposal) -> State:
    """The build with a proposal taken."""
    from fuelwiz.measured.proposals import comment_of, values_of

    today = date.today().isoformat()
    for path, value in values_of(proposal).items():
        comment = comment_of(proposal, path, state.plain, today)
        state = state.with_value(path, value)
        state = replace(state, measured={**state.measured, path: comment})
    return state


def what_measured(text: str) -> dict[str, str]:
    """What measured the values of a session file and when, by path, as the comments beside them say."""
    if OWN_WORD not in text:
        return {}
    from fuelwiz.measured import comments

    return comments.what_measured(text)


def is_measured(plain: Plain, path: str, comment: str) -> bool:
    """Whether something stands at a path of which such a comment may speak."""
    from fuelwiz.measured.proposals import OWN_COMMENT

    return OWN_COMMENT.match(comment) is not None and value_at(plain, value_path(path)) is not None


def without_what_is_typed_over(text: str, measured: Mapping[str, str]) -> str:
    """The text of a session file without the comments on values that were measured once and are no more."""
    from fuelwiz.document.comments import without_comments
    from fuelwiz.measured.proposals import OWN_COMMENT

    gone = [key_path_of(path) for path in what_measured(text) if path not in measured]
    return without_comments(text, gone, OWN_COMMENT)


def with_what_measured(text: str, measured: Mapping[str, str]) -> str:
    """The text of a session file with what measured its values beside them."""
    from fuelwiz.document.comments import with_comments
    from fuelwiz.measured.proposals import OWN_COMMENT

    return with_comments(
        text, {key_path_of(path): comment for path, comment in measured.items()}, OWN_COMMENT
    )
