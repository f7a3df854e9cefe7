"""One row of what to buy, as it is made and as it is changed by what is on the car."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from fuelwiz.sizing.vocabulary import Change

YOURS = "yours: "
"""Begins the row of a part that is entered and passes."""
ENOUGH = "yours is enough"
"""Of a part that is entered and does for the next goal too."""
STAYS = "on the car, does"
"""Stands in place of what a part has to be, where the one on the car is enough for this goal."""
BY_CHANGE: dict[Change, str] = {
    "pump": "pump",
    "injectors": "injectors",
    "feed": "feed line",
    "return": "return line",
    "regulator": "regulator",
    "wire": "wire",
    "filters": "filter",
}
"""The row of the list that a change buys."""


class Purchase(NamedTuple):
    """One row: the part, what it must be for this goal, and for the next."""

    part: str
    today: str
    then: str = ""

    @property
    def passes(self) -> bool:
        """Whether the part is there and does for this goal."""
        return self.today.startswith(YOURS) or self.today == STAYS
