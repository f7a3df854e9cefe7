"""A set of parts, and what it comes to."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.options.grid import PumpChoice
from fuelwiz.options.parts_file import InjectorsOnOffer, RegulatorOnOffer
from fuelwiz.session import Size
from fuelwiz.sizing.vocabulary import Limit


@dataclass(frozen=True, slots=True, eq=False)
class GridSet:
    """A set as the grid has it: what is searched over."""

    pump: PumpChoice
    count: int
    regulator: RegulatorOnOffer | None
    base_pa: float
    size: Size | None


@dataclass(frozen=True, slots=True, eq=False)
class PartSet:
    """The same with what was solved for; None keeps what the build has."""

    searched: GridSet
    return_size: Size | None
    wire_m2: float | None
    injectors: InjectorsOnOffer | None


@dataclass(frozen=True, slots=True, eq=False)
class Verdict:
    """What a set comes to: every limit that it has, and the figures of today.

    `next_works` is None where there is no next goal or the set was out before it was asked; `fuse_A` is that
    of a circuit, None without a current.
    """

    parts: PartSet
    limits: tuple[Limit, ...]
    margin: float | None
    current_A: float | None
    fuse_A: float | None
    next_works: bool | None
