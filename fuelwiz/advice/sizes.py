"""What each size of line means: why it is refused, its velocity, its cost, and the sizes beside it."""

from __future__ import annotations

from fuelwiz.advice.answer.how_far import refused_word
from fuelwiz.advice.limits import limit_phrase
from fuelwiz.advice.numbers import Role
from fuelwiz.advice.phrases import lost, speed
from fuelwiz.advice.result import Explanation
from fuelwiz.advice.row import FULL_DELIVERY_VELOCITY, LOSS
from fuelwiz.advice.subject import Subject
from fuelwiz.printable import NO_BREAK
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.thresholds import MOST_SAG
from fuelwiz.sizing.vocabulary import BANDS, LINE_LIMITS, Band, SizeLimit

MEANS: dict[Band, str] = {
    "easy": "the loss hardly matters",
    "good": "some loss, usually fine",
    "brisk": "noticeable loss",
    "fast": "over the limit: go up a size",
    "too fast": "far over the limit: much too small",
}
WORTH_BUYING = 0.01


def explanation(subject: Subject, row: SizeFigures) -> Explanation:
    """The five sentences of one size; None where nothing is known or to be said."""
    solved = row.feed_loss_Pa is not None
    return Explanation(
        no=_refused(subject, row) if row.limits else None,
        means=_means(subject, row),
        costs=_costs(subject, row) if solved else None,
        next=_next(subject, row) if solved else None,
        smaller=_smaller(subject, row) if solved else None,
    )


def reasons(subject: Subject, row: SizeFigures) -> str:
    """Why a size is refused, in the two gravest of its limits; one of the line stands for all of the line."""
    gravest: list[SizeLimit] = []
    for limit in row.limits:
        if limit in LINE_LIMITS and any(other in LINE_LIMITS for other in gravest):
            continue
        gravest.append(limit)
    return "; ".join(limit_phrase(subject, row, limit) for limit in gravest[:2])


def _refused(subject: Subject, row: SizeFigures) -> str:
    tail = [] if "velocity" in row.limits else [speed(subject, row)]
    if row.feed_loss_Pa is not None and row.feed_loss_Pa >= 0.0 and "sag" not in row.limits:
        tail.append((LOSS.figure(subject, row) if tail else lost(subject, row)) or "")
    why = f"{refused_word(subject, row).removeprefix('is ')}: {reasons(subject, row)}"
    return "; ".join(filter(None, (why, ", ".join(tail))))


def _means(subject: Subject, row: SizeFigures) -> str:
    words = _most_drop(subject) if "sag" in row.limits else MEANS[row.band]
    band, velocity = row.full_delivery_band, row.full_delivery_velocity_m_s
    if band is None or velocity is None:
        return words
    with_return = FULL_DELIVERY_VELOCITY.figure(subject, row)
    if BANDS.index(band) <= BANDS.index(row.band):
        return f"{words}; {with_return} with the return flow on top"
    return f"{words}; {with_return}, {band}, with the return flow on top"


def _most_drop(subject: Subject) -> str:
    """Where the limit of the drop comes from: a velocity that is fine says nothing of it."""
    across = subject.numbers.figure("pressure", subject.figures.pressure.injector_Pa)
    most = subject.numbers.limit("percent", MOST_SAG)
    return f"the limit is {most} of the {across} across the injectors: a regulator at the tank does not see the drop"


def _costs(subject: Subject, row: SizeFigures) -> str:
    if row.feed_loss_Pa is not None and row.feed_loss_Pa < 0.0:
        return f"nothing: the line runs downhill, {lost(subject, row)}"
    loss = LOSS.figure(subject, row)
    if subject.at_tank:
        return f"{loss}: rail pressure drops by that at full power"
    if row.capacity_m3_s is None or subject.figures.pump is None:
        return f"{loss} at full power"
    free = subject.figures.pump.capacity_without_feed_loss_m3_s
    if free <= 0.0:
        return f"{loss}; the pump delivers nothing here even without it"
    share = subject.numbers.figure("percent", 1.0 - row.capacity_m3_s / free)
    demand = subject.figures.demand
    power_w = demand.crank_power_W * (free - row.capacity_m3_s) / demand.volume_flow_m3_s
    return f"{loss}: {share} of the pump's flow, worth {subject.numbers.figure('power', power_w)}"


def _next(subject: Subject, row: SizeFigures) -> str | None:
    larger = subject.neighbor(row, 1)
    if larger is None or larger.feed_loss_Pa is None or row.feed_loss_Pa is None:
        return None
    change = f"{larger.size} {_change(subject, row, larger)}"
    if larger.max_power_W is None or row.max_power_W is None:
        return change
    small = larger.max_power_W - row.max_power_W < WORTH_BUYING * subject.figures.demand.crank_power_W
    needless = small and (not row.limits or bool(larger.limits))
    return f"{change}: not worth it" if needless else change


def _smaller(subject: Subject, row: SizeFigures) -> str | None:
    smaller = subject.neighbor(row, -1)
    if smaller is None or smaller.feed_loss_Pa is None or row.feed_loss_Pa is None:
        return None
    if smaller.limits:
        return f"{smaller.size} {refused_word(subject, smaller)}: {reasons(subject, smaller)}"
    change = _change(subject, row, smaller)
    return f"{smaller.size} saves money and weight{' but' if change.startswith('costs') else ','} {change}"


def _change(subject: Subject, row: SizeFigures, other: SizeFigures) -> str:
    """What another size gains or costs in pressure and power: "gains 0.6 psi and 5 hp"."""
    assert row.feed_loss_Pa is not None and other.feed_loss_Pa is not None
    changes: list[tuple[Role, float, str]] = [
        ("pressure", row.feed_loss_Pa - other.feed_loss_Pa, "next to nothing in pressure")
    ]
    if other.max_power_W is not None and row.max_power_W is not None:
        changes.append(("power", other.max_power_W - row.max_power_W, "no power"))
    words: dict[str, list[str]] = {}
    for role, gain, none in changes:
        figure = subject.numbers.figure(role, abs(gain))
        words.setdefault("gains" if gain >= 0.0 else "costs", []).append(none if _is_zero(figure) else figure)
    return ", ".join(f"{verb} {' and '.join(figures)}" for verb, figures in words.items())


def _is_zero(figure: str) -> bool:
    return float(figure.split(NO_BREAK, maxsplit=1)[0]) == 0.0
