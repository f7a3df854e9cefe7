"""The further points of full power, each at the pick."""

from __future__ import annotations

from fuelwiz.sizing.figures import PullFigures
from fuelwiz.sizing.injection import injector_figures
from fuelwiz.sizing.size_rows import size_limits
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.verdict import point_limits


def pull_figures(sized: SizedSystem) -> tuple[PullFigures, ...]:
    """What each point comes to; without a pump or a feed what is known of it."""
    pulls = zip(sized.system.session.pull, sized.points, strict=True)
    return tuple(_point(point, pull.rpm) for pull, point in pulls)


def _point(point: SizedSystem, rpm: int | None) -> PullFigures:
    system = point.system
    injectors = injector_figures(point)
    of_build = tuple(point_limits(point)) if system.session.feed.run else ()
    return PullFigures(
        rpm=rpm,
        crank_power_W=system.demand.crank_power_W,
        boost_Pa=system.session.pressure.boost,
        rail_Pa=system.pressure.rail_Pa,
        flow_m3_s=system.flow_m3_s,
        capacity_m3_s=point.capacity if point.system.solvable else None,
        margin=point.margin,
        duty=None if injectors is None else injectors.duty,
        limits=(*size_limits(point), *of_build),
    )
