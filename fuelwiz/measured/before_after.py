"""What a build comes to before proposals are taken, and after: side by side, before anybody decides."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from fuelwiz.measured.figures import Proposal
from fuelwiz.measured.proposals import accepted
from fuelwiz.record import record
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures
from fuelwiz.sizing.figures import Figures


@record
class BeforeAfter:
    """The figures of a build as it is typed, and with proposals taken."""

    before: Figures
    after: Figures


def before_after(plain: dict[str, Any], proposals: Iterable[Proposal]) -> BeforeAfter:
    """Both, for plain session data that hold no fault.

    Args:
        plain: what the session file holds; left as it is.
        proposals: those that might be taken.

    Raises:
        SessionError: the data, or the data with the proposals taken, make no build.
    """
    changed = accepted(plain, proposals)
    return BeforeAfter(quick_figures(validate(plain)), quick_figures(validate(changed)))
