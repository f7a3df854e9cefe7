"""What the desk refuses, in a sentence."""

from __future__ import annotations

from typing import Literal

from fuelwiz.errors import FuelwizError

Reason = Literal["refused", "name", "exists", "changed", "owner", "held"]


class NoSuchField(FuelwizError):  # noqa: N818  named for what it says
    """A path leads to no field of this build."""


class SaveRefused(FuelwizError):  # noqa: N818  named for what it says
    """A build is not written; `reason` tells a form what to offer, `path` the field that stands in the way.

    `differences` are those of the file that would be written over, in a line each.
    """

    def __init__(
        self, reason: Reason, sentence: str, path: str | None = None, differences: tuple[str, ...] = ()
    ) -> None:
        self.reason: Reason = reason
        self.path = path
        self.differences = differences
        super().__init__(sentence)


class OnlyLooks(FuelwizError):  # noqa: N818  named for what it says
    """Nothing of a build is changed: somebody else has it open, and it is only looked at."""


class DraftError(FuelwizError):
    """A draft cannot be read or written."""
