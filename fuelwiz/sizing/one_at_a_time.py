"""Each input moved alone: what it does to the least margin, and where the build goes over."""

from __future__ import annotations

import math
from collections.abc import Generator

from fuelwiz.record import record
from fuelwiz.sizing.moved import Movable
from fuelwiz.sizing.slow_figures import InputFigures
from fuelwiz.sizing.tolerances import Tolerance
from fuelwiz.sizing.verdict import judge_sized, limits_on_a_bad_day
from fuelwiz.sizing.vocabulary import Input, Limit

END, FARTHEST, STEP = 2.0, 4.0, 0.5  # standard deviations
HALVINGS = 24  # of a step, to a break
SAME_EFFECT = 9  # decimals


@record
class AtMove:
    """A build with inputs moved: its least margin and its limits."""

    margin: float
    limits: tuple[Limit, ...]


@record
class Break:
    """Where an input takes a build from no limit to one or back: so many standard deviations off, and the limit."""

    z: float
    limit: Limit


@record
class MovedInput:
    """One input moved alone: the margins at its ends, and its break where it has one."""

    tolerance: Tolerance
    low: float
    high: float
    breaks: Break | None

    @property
    def rank(self) -> tuple[bool, float]:
        """What puts inputs in order: those that break within their tolerance first, then by effect."""
        near = self.breaks is not None and abs(self.breaks.z) <= END
        return not near, -round(abs(self.high - self.low), SAME_EFFECT)

    @property
    def figures(self) -> InputFigures:
        """The input as the result shows it."""
        found = self.breaks
        return InputFigures(
            input=self.tolerance.input,
            tolerance=self.tolerance.widest,
            low=self.low,
            high=self.high,
            breaks=None if found is None else self.tolerance.moved(found.z),
            limit=None if found is None else found.limit,
        )


def judged_at(build: Movable, moves: dict[Input, float]) -> AtMove:
    """A build with inputs moved."""
    judgment = judge_sized(build.at(moves), build.return_pick)
    assert judgment.margin is not None
    return AtMove(judgment.margin, limits_on_a_bad_day(judgment))


def moved_alone(build: Movable, tolerance: Tolerance, today: AtMove) -> Generator[None, None, MovedInput]:
    """What one input does, with pauses; the kind of the pump is one law or the other and breaks nothing."""
    path = _Path(build, tolerance.input, {0.0: today})
    low, high = path.at(-END).margin, path.at(END).margin
    found = None
    if tolerance.input != "pump_kind":
        found = yield from path.nearest_break()
    return MovedInput(tolerance, low, high, found)


@record
class _Path:
    """One input on its way from today, and what was seen there."""

    build: Movable
    name: Input
    seen: dict[float, AtMove]

    def at(self, z: float) -> AtMove:
        """The build with the input moved so far."""
        if z not in self.seen:
            self.seen[z] = judged_at(self.build, {self.name: z})
        return self.seen[z]

    def as_today(self, z: float) -> bool:
        """Whether it still fails, or does not, as it does today."""
        return bool(self.at(z).limits) == bool(self.seen[0.0].limits)

    def nearest_break(self) -> Generator[None, None, Break | None]:
        """The break nearest to today, looked for step by step to both sides."""
        for step in range(1, round(FARTHEST / STEP) + 1):
            ends = [z for z in (-step * STEP, step * STEP) if not self.as_today(z)]
            yield
            found = []
            for z in ends:
                found.append((yield from self._break_before(z)))
            if found:
                return min(found, key=lambda one: abs(one.z))
        return None

    def _break_before(self, z: float) -> Generator[None, None, Break]:
        """The break in the last step before `z`."""
        near, far = z - math.copysign(STEP, z), z
        for _ in range(HALVINGS):
            middle = (near + far) / 2
            if self.as_today(middle):
                near = middle
            else:
                far = middle
            yield
        limits = self.at(far).limits or self.at(near).limits
        return Break((near + far) / 2, limits[0])
