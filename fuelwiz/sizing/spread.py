"""How sure the answer is: every input somewhere within its tolerance, drawn again and again."""

from __future__ import annotations

import math
from collections.abc import Generator, Sequence

from fuelwiz.physics.additive import AdditiveModel, Effect, percentile_of
from fuelwiz.physics.normal_points import normal_points
from fuelwiz.sizing.moved import Movable
from fuelwiz.sizing.one_at_a_time import END, AtMove, MovedInput, judged_at, moved_alone
from fuelwiz.sizing.picked import Picked
from fuelwiz.sizing.slow_figures import LimitShare, MarginSpread, SpreadFigures
from fuelwiz.sizing.tolerances import tolerances
from fuelwiz.sizing.vocabulary import LIMITS

DRAWS = 1024  # a power of 2
SLICE = 4  # draws between two pauses
LOW, MIDDLE, HIGH = 0.05, 0.5, 0.95
LEAST_MARGIN_OF_MODEL = -0.9
"""Below it, pumps that send next to nothing make the logarithm of what they send too wild to add up."""


def spread_in_steps(today: Picked) -> Generator[None, None, SpreadFigures | None]:
    """The spread, with a pause after each little piece of work; None without a pump or a feed.

    JCGM 101 (2008) is the method, with points that fill the space evenly in place of random ones.
    """
    if not today.sized.system.solvable:
        return None
    build = Movable(today.sized, today.return_pick, tolerances(today.sized))
    middle = judged_at(build, {})
    moved: list[MovedInput] = []
    for tolerance in build.known:
        moved.append((yield from moved_alone(build, tolerance, middle)))
    moved.sort(key=lambda one: one.rank)
    names = [one.tolerance.input for one in moved]
    points = list(normal_points(DRAWS, len(names)))
    drawn: list[AtMove] = []
    for number, point in enumerate(points):
        drawn.append(judged_at(build, dict(zip(names, point, strict=True))))
        if number % SLICE == 0:
            yield
    return _figures(drawn, _margins(drawn, points, moved, middle), moved)


def _figures(drawn: Sequence[AtMove], margins: MarginSpread, moved: Sequence[MovedInput]) -> SpreadFigures:
    """The shares of the draws, and the inputs."""
    count = len(drawn)
    met = [limit for draw in drawn for limit in draw.limits]
    return SpreadFigures(
        draws=count,
        chance=sum(not draw.limits for draw in drawn) / count,
        short=sum(draw.margin < 0 for draw in drawn) / count,
        margin=margins,
        limits=tuple(LimitShare(limit, met.count(limit) / count) for limit in LIMITS if limit in met),
        inputs=tuple(one.figures for one in moved),
    )


def _margins(
    drawn: Sequence[AtMove], points: Sequence[Sequence[float]], moved: Sequence[MovedInput], middle: AtMove
) -> MarginSpread:
    """The percentiles of the least margin.

    Inputs act nearly one by one on the logarithm of what the pumps can send. So the percentiles of that sum, which
    are known without drawing, are taken, and the draws say how far the truth is off them (a control variate).
    """
    margins = [draw.margin for draw in drawn]
    seen = [middle.margin, *margins, *(end for one in moved for end in (one.low, one.high))]
    if min(seen) <= LEAST_MARGIN_OF_MODEL:
        margins.sort()
        return MarginSpread(*(percentile_of(margins, share) for share in (LOW, MIDDLE, HIGH)))
    model = _model(moved, middle)
    found = sorted(math.log1p(margin) for margin in margins)
    summed = sorted(model.at(point) for point in points)

    def margin_at(share: float) -> float:
        off = percentile_of(found, share) - percentile_of(summed, share)
        return math.expm1(model.percentile(share) + off)

    return MarginSpread(margin_at(LOW), margin_at(MIDDLE), margin_at(HIGH))


def _model(moved: Sequence[MovedInput], middle: AtMove) -> AdditiveModel:
    """The logarithm of capacity over demand as a sum of what each input does alone."""
    start = math.log1p(middle.margin)
    effects, shift = [], 0.0
    for one in moved:
        low, high = math.log1p(one.low) - start, math.log1p(one.high) - start
        if one.tolerance.input == "pump_kind":
            effects.append(Effect(step=(high - low) / 2))
            shift += (high + low) / 2
        else:
            effects.append(Effect(slope=(high - low) / (2 * END), bend=(high + low) / (2 * END * END)))
    return AdditiveModel(start + shift, tuple(effects))
