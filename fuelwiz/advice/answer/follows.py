"""What of an answer is still to come: what to buy first and how sure it is take longest."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fuelwiz.advice.answer.lines import Forms

if TYPE_CHECKING:
    from fuelwiz.session import Session
    from fuelwiz.sizing.figures import Figures

BAD_DAYS_FOLLOW = "bad days follow"
"""Said of the least to spare until they are solved: it may be less on one of them."""
FOLLOWS: Forms = (
    "Being worked out: what to buy first, and how sure this is.",
    "Being worked out: what to buy first, how sure this is.",
)


def is_worked_out(session: Session, figures: Figures) -> bool:
    """Whether the figures have all that there is of a build; one without a pump or a line has no more."""
    return not session.feed.run or session.pump is None or figures.spread is not None
