"""What each size of line means: why it is refused, its velocity, its cost, and the sizes beside it."""

from __future__ import annotations

from fuelwiz.advice.phrases import limit_phrase, loss, lost, speed
from fuelwiz.advice.result import Explanation
from fuelwiz.advice.subject import LINE_LIMITS, Subject
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.vocabulary import BANDS

MEANS = {
    "easy": "the loss hardly matters",
    "good": "some loss, usually fine",
    "brisk": "the loss is real",
    "fast": "too much is lost: go up a size",
    "too fast": "most of the pump's effort goes into the line",
}
WORTH_BUYING = 0.01


def explanation(build: Subject, row: SizeFigures) -> Explanation:
    """The five sentences of one size; None where nothing is known or to be said."""
    solved = row.feed_loss_Pa is not None
    return Explanation(
        no=_refused(build, row) if row.limits else None,
        means=_means(build, row),
        costs=_costs(build, row) if solved else None,
        next=_next(build, row) if solved else None,
        smaller=_smaller(build, row) if solved else None,
    )


def reasons(build: Subject, row: SizeFigures) -> str:
    """Why a size is refused, in the two gravest of its limits; one of the line stands for all of the line."""
    told: list[str] = []
    for limit in row.limits:
        if limit in LINE_LIMITS and any(other in LINE_LIMITS for other in told):
            continue
        told.append(limit)
    return "; ".join(limit_phrase(build, row, limit) for limit in told[:2])


def _refused(build: Subject, row: SizeFigures) -> str:
    tail = [] if "velocity" in row.limits else [speed(build, row)]
    if row.feed_loss_Pa is not None and row.feed_loss_Pa >= 0.0 and "sag" not in row.limits:
        tail.append((loss(build, row) if tail else lost(build, row)) or "")
    return "; ".join(filter(None, (f"refused: {reasons(build, row)}", ", ".join(tail))))


def _means(build: Subject, row: SizeFigures) -> str:
    words = MEANS[row.band]
    band, velocity = row.full_delivery_band, row.full_delivery_velocity_m_s
    if band is None or velocity is None or BANDS.index(band) <= BANDS.index(row.band):
        return words
    figure = build.numbers.figure("velocity", velocity, *build.session.bands.feed)
    return f"{words}; {figure}, {band}, with the return flow on top"


def _costs(build: Subject, row: SizeFigures) -> str:
    if row.feed_loss_Pa is not None and row.feed_loss_Pa < 0.0:
        return f"nothing: the line runs downhill, {lost(build, row)}"
    told = loss(build, row)
    if build.at_tank:
        return f"{told}, by which the rail sags at full power"
    if row.capacity_m3_s is None or build.figures.pump is None:
        return f"{told} at full power"
    free = build.figures.pump.capacity_without_feed_loss_m3_s
    if free <= 0.0:
        return f"{told}; the pump gives nothing here even without it"
    share = build.numbers.figure("percent", 1.0 - row.capacity_m3_s / free)
    return f"{told}, so {share} of the pump's flow, or {_power_of(build, free - row.capacity_m3_s)}"


def _power_of(build: Subject, flow_m3_s: float) -> str:
    demand = build.figures.demand
    return build.numbers.figure("power", demand.crank_power_W * flow_m3_s / demand.volume_flow_m3_s)


def _next(build: Subject, row: SizeFigures) -> str | None:
    larger = build.neighbour(row, 1)
    if larger is None or larger.feed_loss_Pa is None or row.feed_loss_Pa is None:
        return None
    saves = row.feed_loss_Pa - larger.feed_loss_Pa
    verb = "saves" if saves >= 0.0 else "costs"
    told = f"{larger.size} {verb} {_pressure(build, abs(saves))}"
    if larger.max_power_W is None or row.max_power_W is None:
        return told
    gained = larger.max_power_W - row.max_power_W
    small = gained < WORTH_BUYING * build.figures.demand.crank_power_W
    needless = small and (not row.limits or bool(larger.limits))
    return f"{told} and feeds {_power(build, gained)}" + (": not worth buying" if needless else "")


def _smaller(build: Subject, row: SizeFigures) -> str | None:
    smaller = build.neighbour(row, -1)
    if smaller is None or smaller.feed_loss_Pa is None or row.feed_loss_Pa is None:
        return None
    if smaller.limits:
        return f"{smaller.size} is refused: {reasons(build, smaller)}"
    loses = smaller.feed_loss_Pa - row.feed_loss_Pa
    change = f"loses {_pressure(build, abs(loses))} {'more' if loses >= 0.0 else 'less'}"
    told = f"{smaller.size} saves money and weight, {change}"
    if smaller.max_power_W is None or row.max_power_W is None:
        return told
    return f"{told} and feeds {_power(build, smaller.max_power_W - row.max_power_W)}"


def _power(build: Subject, gained_w: float) -> str:
    """A change in the power that is fed, in words where it would be shown as nothing."""
    figure = build.numbers.figure("power", abs(gained_w))
    if figure.startswith("0\u00a0"):
        return "no more power" if gained_w >= 0.0 else "as much"
    return f"{figure} {'more' if gained_w >= 0.0 else 'less'}"


def _pressure(build: Subject, change_pa: float) -> str:
    """A change in pressure, in words where it would be shown as nothing."""
    figure = build.numbers.figure("pressure", change_pa)
    return "next to nothing" if float(figure.split("\u00a0")[0]) == 0.0 else figure
