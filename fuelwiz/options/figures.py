"""What a search comes to, as figures, named as the JSON result is."""

from __future__ import annotations

from typing import Literal

from fuelwiz.record import record
from fuelwiz.sizing.vocabulary import Limit

Label = Literal[
    "cheapest",
    "keeps the pump",
    "least current",
    "lightest",
    "most to spare",
    "carries the next goal",
]
"""Why a set is shown, in the order in which sets are."""

WhyFailed = Limit | Literal["alcohol"]


@record
class ToBuy:
    """One line of what is to be bought: a number of pieces, or meters; None for a price that nobody knows."""

    what: str
    quantity: float
    price: float | None
    unit: Literal["each", "m"]


@record
class Tightest:
    """The bad day with the least margin."""

    case: str
    margin: float


@record
class OptionRow:
    """One set that would do; `alcohol_unknown` where nobody says that its pump may carry the fuel."""

    labels: tuple[Label, ...]
    pump: str
    count: int
    base_Pa: float
    size: str
    return_size: str | None
    wire: str | None
    injectors_rated_m3_s: float | None
    price: float | None
    unpriced: tuple[str, ...]
    weight_kg: float | None
    current_A: float | None
    margin: float | None
    tightest: Tightest | None
    next_works: bool | None
    buy: tuple[ToBuy, ...]
    alcohol_unknown: bool


@record
class Failed:
    """How many sets failed by a limit."""

    limit: WhyFailed
    sets: int


@record
class Missing:
    """The one part that would let a set in: a size, a wire, a rating, or a flow at a pressure.

    Of a pump: how many of it, what each gives across which pressure, and whose curve is shaped so. Of a regulator:
    what it loses at a flow.
    """

    part: Literal["injectors", "return", "regulator", "wire", "feed", "pump"]
    size: str | None = None
    wire: str | None = None
    rated_m3_s: float | None = None
    count: int | None = None
    flow_m3_s: float | None = None
    pressure_Pa: float | None = None
    like: str | None = None


@record
class OptionsFigures:
    """How many sets there are and how many would do, those to look at, and why the others failed."""

    tried: int
    works: int
    rows: tuple[OptionRow, ...]
    failed: tuple[Failed, ...]
    missing: Missing | None = None
