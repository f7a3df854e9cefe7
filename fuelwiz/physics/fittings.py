"""Fittings, filters and parts: what they lose."""

from __future__ import annotations

from functools import lru_cache

from fuelwiz.physics.relations import from_fluids

KINDS = (
    "straight",
    "swept_45",
    "swept_90",
    "swept_180",
    "forged_90",
    "tee_run",
    "tee_branch",
    "entrance",
    "exit",
)
SWEPT_DEGREES = {"swept_45": 45.0, "swept_90": 90.0, "swept_180": 180.0}
BEND_DIAMETERS = 3


@lru_cache(maxsize=4096)
def loss_coefficient(kind: str, bore_m: float, end_ratio: float) -> float:
    """Loss coefficient of a fitting on the bore of its run.

    A hose end narrows to `end_ratio` times the bore of its hose, so a coefficient on the narrow bore counts
    `end_ratio**-4` times on the wide one. Sharp contraction, and the forged elbow as a sharp mitre, after
    Rennels (Pipe Flow, 2012); sharp expansion after Borda and Carnot; rounded bends and tees after TP-410;
    all as fluids has them; an entrance and an exit with sharp edges, TP-410. Bore in m. Valid for turbulent flow
    and an end ratio up to 1. Raises KeyError for a kind that is not one of KINDS.

    >>> loss_coefficient("exit", 0.01, 0.85)
    1.0
    >>> round(loss_coefficient("straight", 0.01, 1.0), 9)
    0.0
    """
    if kind in ("entrance", "exit"):
        return {"entrance": 0.5, "exit": 1.0}[kind]
    fluids = from_fluids("fittings")
    narrow_m = end_ratio * bore_m
    scale = end_ratio**-4
    straight = fluids.contraction_sharp(bore_m, narrow_m) + fluids.diffuser_sharp(narrow_m, bore_m)
    if kind == "straight":
        own = straight
    elif kind in SWEPT_DEGREES:
        angle = SWEPT_DEGREES[kind]
        own = straight + fluids.bend_rounded_Crane(Di=narrow_m, angle=angle, bend_diameters=BEND_DIAMETERS)
    elif kind == "forged_90":
        own = straight + fluids.bend_miter(90, method="Rennels")
    else:
        own = {"tee_run": 20, "tee_branch": 60}[kind] * fluids.ft_Crane(narrow_m)
    return float(scale * own)


def sum_of_fittings(counts: dict[str, int], *, bore_m: float, end_ratio: float) -> float:
    """Loss coefficients of all the fittings of a run, added up, on its bore in m.

    Valid where fittings stand far enough apart not to feel each other (TP-410 assumes the same).

    >>> sum_of_fittings({"entrance": 1, "exit": 1}, bore_m=0.01, end_ratio=0.85)
    1.5
    """
    return sum(count * loss_coefficient(kind, bore_m, end_ratio) for kind, count in counts.items() if count)


def filter_loss_pa(
    *, flow_m3_s: float, rated_flow_m3_s: float, rated_loss_pa: float, clogging: float
) -> float:
    """Loss in Pa of a filter or strainer at a flow in m3/s: half viscous (the medium), half inertial (the ports).

    Common practice, no source. `clogging` 1 is a clean one; valid for a rated flow above zero.

    >>> filter_loss_pa(flow_m3_s=1e-4, rated_flow_m3_s=1e-4, rated_loss_pa=1e4, clogging=2.0)
    20000.0
    """
    linear, squared = filter_terms(
        rated_flow_m3_s=rated_flow_m3_s, rated_loss_pa=rated_loss_pa, clogging=clogging
    )
    return flow_m3_s * (linear + squared * flow_m3_s)


def filter_terms(*, rated_flow_m3_s: float, rated_loss_pa: float, clogging: float) -> tuple[float, float]:
    """The same loss as its two terms, Pa for each m3/s and for its square, to be asked at many flows.

    >>> linear, squared = filter_terms(rated_flow_m3_s=1e-4, rated_loss_pa=1e4, clogging=1.0)
    >>> round(linear * 1e-4), round(squared * 1e-8)
    (5000, 5000)
    """
    half = clogging * rated_loss_pa / 2 / rated_flow_m3_s
    return half, half / rated_flow_m3_s


def part_loss_pa(*, flow_m3_s: float, rated_flow_m3_s: float, rated_loss_pa: float) -> float:
    """Loss in Pa of a sensor, check valve, block, cooler or open regulator: with the square of the flow in m3/s.

    An orifice's law (TP-410); valid for turbulent flow and a rated flow above zero.

    >>> part_loss_pa(flow_m3_s=2e-4, rated_flow_m3_s=1e-4, rated_loss_pa=1e4)
    40000.0
    """
    return part_term(rated_flow_m3_s=rated_flow_m3_s, rated_loss_pa=rated_loss_pa) * flow_m3_s * flow_m3_s


def part_term(*, rated_flow_m3_s: float, rated_loss_pa: float) -> float:
    """The same loss in Pa for the square of a flow in m3/s, to be asked at many flows.

    >>> round(part_term(rated_flow_m3_s=1e-4, rated_loss_pa=1e4) * 2e-4**2)
    40000
    """
    return rated_loss_pa / (rated_flow_m3_s * rated_flow_m3_s)
