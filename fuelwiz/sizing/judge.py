"""The verdict on a build at one size of feed and one of return."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.session import Size
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.size_rows import margin, shown_run, size_limits, vapour_margin_pa
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.verdict import BuildVerdict
from fuelwiz.sizing.vocabulary import Limit


@dataclass(frozen=True, slots=True)
class Judgement:
    """Margins and limits of a build at given sizes, size and build together."""

    margin: float | None
    vapour_margin_pa: float | None
    limits: tuple[Limit, ...]


@dataclass(frozen=True, slots=True)
class ReturnPick:
    """The size of return that is judged; `size` None stands for runs that all keep a bore of their own."""

    size: Size | None


def judge(system: FuelSystem, pick: Size | None, return_pick: ReturnPick | None) -> Judgement:
    """A build at a pick of feed and return; without a return pick, the build's own."""
    sized = SizedSystem(system, pick)
    verdict = BuildVerdict(sized)
    behind = Return(sized)
    returning = None
    if behind.applies:
        returning = verdict.return_line if return_pick is None else behind.size_figures(return_pick.size)
    limits = (*size_limits(sized, shown_run(sized)), *verdict.limits(returning))
    solved = verdict.solved
    return Judgement(
        margin(sized) if solved else None,
        vapour_margin_pa(sized) if solved else None,
        limits,
    )
