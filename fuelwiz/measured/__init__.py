"""What was read on the car against the figures: bench tests, gauge readings, logs, and the keys that they propose."""

from __future__ import annotations

from fuelwiz.measured.bench import bench_figures, bench_proposals, expected
from fuelwiz.measured.figures import LoggedRun, Measured
from fuelwiz.measured.model import Model
from fuelwiz.measured.readings import gauge_differences, gauge_proposals
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures

__all__ = ["Measured", "measured"]


def measured(session: Session, figures: Figures, log: LoggedRun | None = None) -> Measured:
    """What was measured of a build, and what a test of it should show; its log is read apart, as the disk is slow."""
    model = Model.of(session, figures)
    bench = bench_figures(model)
    return Measured(
        bench=bench,
        expected=expected(model, figures.pick.pump_volts_V),
        gauge=gauge_differences(session, figures),
        proposals=(*bench_proposals(model, bench), *gauge_proposals(session, figures)),
        log=log,
    )
