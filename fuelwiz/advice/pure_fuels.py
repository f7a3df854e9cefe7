"""What each pure fuel asks of whoever handles it, and of the parts: one record a fuel."""

from __future__ import annotations

from typing import NamedTuple

from fuelwiz.terms import PureFuel


class PureFuelWords(NamedTuple):
    """What is said of a fuel among the cautions, and of what it does to parts."""

    danger: str
    """A sentence among the cautions."""
    in_brief: str
    """The same on one page."""
    harms: str
    """What it does to parts, a finding."""


PURE_FUELS: dict[PureFuel, PureFuelWords] = {
    "methanol": PureFuelWords(
        "Methanol burns with a flame that you cannot see, and is poisonous, also through the skin and as a vapor:"
        " wear gloves and eye protection, and keep an extinguisher rated for alcohol fires at hand.",
        "its flame is invisible, and it is poisonous, also through the skin.",
        "Methanol corrodes aluminum, attacks some rubbers and glues, and draws water.",
    ),
}
