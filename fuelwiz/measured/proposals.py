"""Proposals: values of ordinary keys that were measured, and how they get into a session file."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any, cast, get_args

from fuelwiz.measured.figures import Proposal, Reason, Taken
from fuelwiz.printable import clean
from fuelwiz.session import as_text, key_path_of, value_at
from fuelwiz.units import UnitSystem, from_si

OWN_COMMENT = re.compile(rf"measured: ({'|'.join(get_args(Reason))}), ")
"""How the comment beside a measured value begins; it goes with the value."""

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
    return clean(f"measured: {proposal.reason}{day}{was}")


def taken(comments: Mapping[str, str]) -> tuple[Taken, ...]:
    """The values that were measured, by the comments beside them: what each says, tolerances apart."""
    found = ((key, OWN_COMMENT.match(text), text) for key, text in comments.items() if not _is_tolerance(key))
    return tuple(
        Taken(key, cast("Reason", own[1]), text[own.end() :]) for key, own, text in found if own is not None
    )


def _is_tolerance(key: str) -> bool:
    return key.startswith("tolerance.")
