"""The figures that take hundreds of solutions: how sure the answer is, and what one change would buy; SI."""

from __future__ import annotations

from fuelwiz.record import record
from fuelwiz.sizing.vocabulary import Change, Input, Limit


@record
class MarginSpread:
    """The least margin that 5, 50 and 95 in 100 draws stay below."""

    low: float
    middle: float
    high: float


@record
class LimitShare:
    """The share of the draws that meet a limit."""

    limit: Limit
    share: float


@record
class InputFigures:
    """One input moved alone: the least margin at both ends of its tolerance, and where the build goes over.

    `breaks` is the factor, or the sum in SI, nearest to today at which it goes from no limit to one or back, `limit`
    the first on the failing side. Of the pump's kind, `low` is by turbine and `high` by displacement.
    """

    input: Input
    tolerance: float | None
    low: float
    high: float
    breaks: float | None
    limit: Limit | None

    @property
    def effect(self) -> float:
        """How far the least margin moves between the ends of the tolerance."""
        return abs(self.high - self.low)


@record
class SpreadFigures:
    """What comes of it where every input is somewhere within its tolerance.

    `chance` is the share of the draws without a limit, `short` that whose least margin is below 0.
    """

    draws: int
    chance: float
    short: float
    margin: MarginSpread
    limits: tuple[LimitShare, ...]
    inputs: tuple[InputFigures, ...]


@record
class ChangeFigures:
    """What one change alone would buy: the least margin, the limits that go and those that come.

    `max_power_W` is the lowest of the ceilings that are solved, `rated_flow_m3_s` what other injectors are rated at,
    `size` what another feed or return is, `wire_m2` the area of another wire.
    """

    change: Change
    margin: float
    works: bool
    cures: tuple[Limit, ...]
    brings: tuple[Limit, ...]
    max_power_W: float
    rated_flow_m3_s: float | None = None
    size: str | None = None
    wire_m2: float | None = None
