"""What was read on the car against the figures: bench tests, gauge readings, logs, and the keys that they propose."""

from __future__ import annotations

from collections.abc import Mapping

from fuelwiz.measured.bench import bench_figures, bench_proposals, expected
from fuelwiz.measured.figures import LoggedRun, Measured
from fuelwiz.measured.model import Model
from fuelwiz.measured.proposals import taken
from fuelwiz.measured.readings import gauge_differences, gauge_proposals
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures

__all__ = ["Measured", "measured"]


def measured(
    session: Session,
    figures: Figures,
    log: LoggedRun | None = None,
    comments: Mapping[str, str] | None = None,
) -> Measured:
    """What was measured of a build, and what a test of it should show.

    Args:
        session: the build.
        figures: what it comes to.
        log: what its log shows; it is read apart, as the disk is slow.
        comments: what measured its values, by key, as the comments of its file say.
    """
    model = Model.of(session, figures)
    bench = bench_figures(model)
    return Measured(
        bench=bench,
        expected=expected(model, figures.pick.pump_volts_V),
        gauge=gauge_differences(session, figures),
        proposals=(*bench_proposals(model, bench), *gauge_proposals(session, figures)),
        log=log,
        taken=taken(comments or {}),
    )
