"""What bore a size is: by the table of its hose, or, in a tube, its outside diameter less two walls."""

from __future__ import annotations

from fuelwiz.errors import FactError
from fuelwiz.facts import INCH_M, bore_m
from fuelwiz.physics.line import WALL_INCH_M, WALL_METRIC_M, tube_bore_m
from fuelwiz.session.compounds import Size

LEAST_BORE_M = 1e-3


def bore_of_m(size: Size, hose: str, wall_m: float | None = None) -> float:
    """The bore in m of a size in a hose; zero or less in a tube whose walls leave nothing.

    Args:
        size: a dash size, or a length: the bore of a hose, the outside diameter of a tube.
        hose: the kind of hose.
        wall_m: the wall of a tube; None for the one that goes with its size.

    Raises:
        FactError: the hose has no such dash size.
    """
    if hose != "tube":
        return size.length_m if size.length_m is not None else bore_m(hose, size.dash or 0)
    if size.length_m is None:
        assert size.dash is not None
        listed = bore_m(hose, size.dash)
        return listed if wall_m is None else tube_bore_m(outside_m=size.dash / 16 * INCH_M, wall_m=wall_m)
    usual = WALL_INCH_M if size.inches else WALL_METRIC_M
    return tube_bore_m(outside_m=size.length_m, wall_m=usual if wall_m is None else wall_m)


def bore_fault(size: Size, hose: str, wall_m: float | None = None) -> str:
    """What is wrong with a size in a hose: the hose does not have it, or its walls leave no bore; empty if nothing."""
    try:
        bore = bore_of_m(size, hose, wall_m)
    except FactError as error:
        return f"wants a size that its hose has: {error}"
    if bore < LEAST_BORE_M:
        return f"wants a tube of 1 mm bore or more: the walls of {size.text} leave less"
    return ""
