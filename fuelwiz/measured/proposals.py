"""Proposals: values of ordinary keys that were measured, and how they get into a session file."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from typing import Any

from fuelwiz.document.comments import with_comment
from fuelwiz.document.merge import merge
from fuelwiz.files import BYTE_ORDER_MARK
from fuelwiz.measured.figures import Proposal
from fuelwiz.session import as_text, key_path_of, value_at
from fuelwiz.units import UnitSystem, from_si

MARK = "measured:"
"""What the comment beside a measured value begins with: the next measurement takes its place."""

Plain = dict[str, Any]


def percent(share: float) -> str:
    """A share as a session file says it: "94.2 %"."""
    return f"{100 * share:.3g} %"


def pressure_text(pressure_pa: float, system: UnitSystem) -> str:
    """A pressure as a session file says it, in the unit that the build shows."""
    if system == "us":
        return f"{from_si(pressure_pa, 'psi'):.1f} psi"
    return f"{from_si(pressure_pa, 'bar'):.2f} bar"


def values_of(proposal: Proposal) -> Plain:
    """What a proposal writes, by the path of each key: its value, and its tolerance where it has one."""
    values = {proposal.key: proposal.value}
    if proposal.tolerance_key is not None and proposal.tolerance is not None:
        values[proposal.tolerance_key] = proposal.tolerance
    return values


def accepted(plain: Plain, proposals: Iterable[Proposal]) -> Plain:
    """A copy of plain session data with proposals taken."""
    changed = dict(plain)
    for proposal in proposals:
        for path, value in values_of(proposal).items():
            *above, last = path.split(".")
            at = changed
            for part in above:
                at[part] = dict(at.get(part, {}))
                at = at[part]
            at[last] = value
    return changed


def comment_of(proposal: Proposal, path: str, plain: Plain, today: str) -> str:
    """The comment beside a value that was taken: what measured it, when, and what stood there before."""
    before = value_at(plain, key_path_of(path))
    day = f", {proposal.date or today}"
    was = (
        f"; was {as_text(before)}" if isinstance(before, str) and before != values_of(proposal)[path] else ""
    )
    return f"{MARK} {proposal.reason}{day}{was}"


def accept(text: str, proposals: Iterable[Proposal], today: str) -> str:
    """The text of a session file with proposals taken, each with a comment that says what measured it.

    Args:
        text: what stands in the file; its comments, order and spellings survive.
        proposals: those that the builder takes.
        today: the day of one whose measurement has none, such as "2026-05-14".

    Returns:
        The new text; the comment of an earlier measurement of the same key gives way to the new one.
    """
    for proposal in proposals:
        plain = tomllib.loads(text.removeprefix(BYTE_ORDER_MARK))
        text = merge(text, accepted(plain, [proposal]))
        for path in values_of(proposal):
            comment = comment_of(proposal, path, plain, today)
            text = with_comment(text, key_path_of(path), comment, takes_place_of=MARK)
    return text
