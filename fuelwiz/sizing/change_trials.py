"""A build with changes made: what one alone comes to, and whether several together leave nothing wrong."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.sizing.ceilings import solved_ceiling_w
from fuelwiz.sizing.single_changes import SingleChange, Variant
from fuelwiz.sizing.size_rows import least, limits_at_any_point
from fuelwiz.sizing.slow_figures import ChangeFigures
from fuelwiz.sizing.verdict import BuildVerdict, judge_sized
from fuelwiz.sizing.vocabulary import LIMITS, Change, Limit

FIRST: tuple[Change, ...] = ("pump",)
LAST: tuple[Change, ...] = ("circuits",)
"""In a set the pump comes before what is picked or counted by it."""


def change_figures(single: SingleChange, today: Variant, limits: tuple[Limit, ...]) -> ChangeFigures:
    """What a change alone comes to, against the limits of today."""
    variant = single.made(today)
    sized = variant.sized()
    judgment = judge_sized(sized, variant.return_pick)
    ceiling = solved_ceiling_w(sized)
    assert judgment.margin is not None and ceiling is not None
    return ChangeFigures(
        change=single.change,
        margin=judgment.margin,
        works=not judgment.limits,
        cures=tuple(limit for limit in LIMITS if limit in limits and limit not in judgment.limits),
        brings=tuple(limit for limit in LIMITS if limit in judgment.limits and limit not in limits),
        max_power_W=ceiling,
        rated_flow_m3_s=single.rated_flow_m3_s,
        size=single.size,
        wire_m2=single.wire_m2,
    )


def with_all(today: Variant, together: Sequence[SingleChange]) -> Variant:
    """A build with several changes made."""
    order = sorted(together, key=lambda single: (single.change not in FIRST, single.change in LAST))
    for single in order:
        today = single.made(today)
    return today


def margin_if_it_works(variant: Variant) -> float | None:
    """The least margin of a build that has no limit; None for one that has, found out as soon as may be."""
    sized = variant.sized()
    verdict = BuildVerdict(sized)
    if next(verdict.each_limit(variant.return_pick), None) is not None or limits_at_any_point(sized):
        return None
    found = least(sized)
    return None if found is None else found.margin
