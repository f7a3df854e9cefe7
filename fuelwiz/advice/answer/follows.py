"""What of an answer is still to come: what to buy first and how sure it is take longest."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fuelwiz.advice.answer.lines import Forms

if TYPE_CHECKING:
    from fuelwiz.session import Session
    from fuelwiz.sizing.figures import Figures

BAD_DAYS_FOLLOW = "bad days follow"
"""Said of the least to spare until they are solved: it may be less on one of them."""


def follows(session: Session, figures: Figures) -> Forms | None:
    """The line that stands for what is still to come; None where there is all, as without a pump or a line."""
    if not session.feed.run or session.pump is None or figures.spread is not None:
        return None
    if figures.changes:
        return ("Being worked out: how sure this is.",)
    return (
        "Being worked out: what to buy first, and how sure this is.",
        "Being worked out: what to buy first, how sure this is.",
    )
