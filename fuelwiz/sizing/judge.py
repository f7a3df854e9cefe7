"""The verdict on a build at one size of feed and one of return."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.session import Size
from fuelwiz.sizing.build import Build
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.rows import margin, shown_run, size_limits, vapour_margin_pa
from fuelwiz.sizing.system import System
from fuelwiz.sizing.whole import Whole


@dataclass(frozen=True, slots=True)
class Judgement:
    """Margins and limits of a build at given sizes, size and build together."""

    margin: float | None
    vapour_margin_pa: float | None
    limits: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ReturnPick:
    """The size of return that is judged; `size` None stands for runs that all keep a bore of their own."""

    size: Size | None


def judge(build: Build, pick: Size | None, return_pick: ReturnPick | None) -> Judgement:
    """A build at a pick of feed and return; without a return pick, the build's own."""
    system = System(build, pick)
    whole = Whole(system)
    behind = Return(system)
    returning = None
    if behind.applies:
        returning = whole.return_line if return_pick is None else behind.size_figures(return_pick.size)
    limits = (*size_limits(system, shown_run(system)), *whole.limits(returning))
    solved = whole.solved
    return Judgement(
        margin(system) if solved else None,
        vapour_margin_pa(system) if solved else None,
        limits,
    )
