"""Lines: the runs of a session with a candidate's bore, and what they lose at a flow."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from fuelwiz.once import once
from fuelwiz.physics import line
from fuelwiz.physics.fittings import filter_terms, part_term, sum_of_fittings
from fuelwiz.record import record
from fuelwiz.session import Feed, Filter, Part, Run, Size, bore_of_m
from fuelwiz.sizing.candidates import follows, nominal_bore_m, run_bore_m, run_nominal_bore_m


def plain_run(
    run: Run,
    candidate: Size | None,
    end_ratio: float,
    *,
    measured_m: tuple[float, float] | None = None,
    fittings: float = 1.0,
) -> line.Run:
    """A run as physics takes it, with the bore that it has at a candidate.

    `measured_m`, a bore and a length, beats what the session says; what fittings lose counts `fittings` times.
    """
    bore, length = measured_m or (run_bore_m(run, candidate), run.length)
    coefficient = sum_of_fittings(run.fittings, bore_m=bore, end_ratio=end_ratio) + run.extra_k
    return line.Run(
        bore_m=bore,
        length_m=length,
        roughness_m=line.ROUGHNESS_M[run.hose],
        loss_coefficient=fittings * coefficient,
        rise_m=run.rise,
        side_by_side=run.side_by_side,
    )


@record
class FeedRun:
    """A run of the feed at one candidate; `number` is its place in the session."""

    line: line.Run
    follows: bool
    nominal_bore_m: float | None
    number: int

    def velocity_m_s(self, flow_m3_s: float) -> float:
        """Velocity at a flow."""
        run = self.line
        return line.velocity_m_s(flow_m3_s=flow_m3_s, bore_m=run.bore_m, side_by_side=run.side_by_side)

    def nominal_velocity_m_s(self, flow_m3_s: float) -> float | None:
        """The velocity that people quote, at dash/16 in; None where no dash number is in play."""
        bore = self.nominal_bore_m
        if bore is None:
            return None
        return line.velocity_m_s(flow_m3_s=flow_m3_s, bore_m=bore, side_by_side=self.line.side_by_side)


def bare_hose(size: Size, hose: str) -> FeedRun:
    """A run of no length, to speak of a size before any run is known."""
    run = line.Run(
        bore_m=bore_of_m(size, hose),
        length_m=0.0,
        roughness_m=line.ROUGHNESS_M[hose],
        loss_coefficient=0.0,
    )
    return FeedRun(run, True, nominal_bore_m(size), 0)


@dataclass(slots=True)
class FeedLoss:
    """What the feed loses at a flow, by cause; `followers_pa` is the share of the runs that follow the candidate."""

    filters_pa: float = 0.0
    friction_pa: float = 0.0
    fittings_pa: float = 0.0
    parts_pa: float = 0.0
    rise_pa: float = 0.0
    followers_pa: float = 0.0

    @property
    def total_pa(self) -> float:
        """All of the feed."""
        return self.filters_pa + self.friction_pa + self.fittings_pa + self.parts_pa + self.rise_pa


@dataclass(frozen=True)
class FeedLine:
    """The feed at one candidate: its runs, and the filters that count as its own."""

    runs: tuple[FeedRun, ...]
    filters: tuple[Filter, ...]
    parts: tuple[Part, ...]
    constant_pa: float
    density_kg_m3: float
    viscosity_m2_s: float

    def loss(self, flow_m3_s: float) -> FeedLoss:
        """What it loses at a flow."""
        linear, squared = filters_terms(self.filters)
        loss = FeedLoss(filters_pa=flow_m3_s * (linear + squared * flow_m3_s))
        loss.parts_pa = self.constant_pa + parts_term(self.parts) * flow_m3_s * flow_m3_s
        for run in self.runs:
            own = line.run_loss(
                run.line,
                flow_m3_s=flow_m3_s,
                density_kg_m3=self.density_kg_m3,
                viscosity_m2_s=self.viscosity_m2_s,
            )
            loss.friction_pa += own.friction_pa
            loss.fittings_pa += own.fittings_pa
            loss.rise_pa += own.rise_pa
            if run.follows:
                loss.followers_pa += own.total_pa
        return loss

    @once
    def _runs_at_flows(self) -> tuple[Callable[[float], float], ...]:
        """What each run loses, made ready for many flows."""
        return tuple(
            line.loss_at_flows(run, density_kg_m3=self.density_kg_m3, viscosity_m2_s=self.viscosity_m2_s)
            for run in joined([run.line for run in self.runs])
        )

    @once
    def _terms(self) -> tuple[float, float]:
        """What filters and parts lose for each m3/s, and for its square."""
        linear, squared = filters_terms(self.filters)
        return linear, squared + parts_term(self.parts)

    def loss_pa(self, flow_m3_s: float) -> float:
        """What it loses at a flow, in all."""
        loss = self.without_runs_pa(flow_m3_s)
        for run_pa in self._runs_at_flows:
            loss += run_pa(flow_m3_s)
        return loss

    def without_runs_pa(self, flow_m3_s: float) -> float:
        """What it would lose at a flow if its runs lost nothing."""
        linear, squared = self._terms
        return self.constant_pa + flow_m3_s * (linear + squared * flow_m3_s)

    def kept(self) -> tuple[FeedRun, ...]:
        """The runs with a bore of their own where others follow the candidate."""
        own = tuple(run for run in self.runs if not run.follows)
        return own if len(own) < len(self.runs) else ()

    def shown(self) -> FeedRun:
        """The fastest run of those that follow the candidate, of all where none does; the first of equals."""
        among = [run for run in self.runs if run.follows] or list(self.runs)
        return max(among, key=lambda run: 1 / (run.line.side_by_side * run.line.bore_m**2))


def feed_line(
    feed: Feed,
    candidate: Size | None,
    *,
    at_tank: bool,
    density_kg_m3: float,
    viscosity_m2_s: float,
    measured_m: Sequence[tuple[float, float]] | None = None,
    fittings: float = 1.0,
) -> FeedLine:
    """The feed of a session at a candidate; a filter ahead of a regulator at the tank is not part of it.

    `measured_m`, bore and length of each run, beats what the session says; what fittings lose counts `fittings`
    times.
    """
    measured = measured_m or (None,) * len(feed.run)
    return FeedLine(
        runs=tuple(
            FeedRun(
                plain_run(run, candidate, feed.end_ratio, measured_m=of_run, fittings=fittings),
                follows(run),
                run_nominal_bore_m(run, candidate),
                number,
            )
            for number, (run, of_run) in enumerate(zip(feed.run, measured, strict=True))
        ),
        filters=tuple(part for part in feed.filter if not (at_tank and part.place == "pump")),
        parts=feed.part,
        constant_pa=feed.constant_loss,
        density_kg_m3=density_kg_m3,
        viscosity_m2_s=viscosity_m2_s,
    )


def joined(runs: Sequence[line.Run]) -> list[line.Run]:
    """Runs of one bore as one run: the same flow runs at the same velocity in each, so what they lose adds up."""
    alike: dict[tuple[float, float, int], list[line.Run]] = {}
    for run in runs:
        alike.setdefault((run.bore_m, run.roughness_m, run.side_by_side), []).append(run)
    return [
        replace(
            same[0],
            length_m=sum(run.length_m for run in same),
            loss_coefficient=sum(run.loss_coefficient for run in same),
            rise_m=sum(run.rise_m for run in same),
        )
        for same in alike.values()
    ]


def filters_terms(filters: Sequence[Filter]) -> tuple[float, float]:
    """What filters one behind the other lose for each m3/s, and for its square."""
    terms = [
        filter_terms(rated_flow_m3_s=part.rated_flow, rated_loss_pa=part.rated_loss, clogging=part.clogging)
        for part in filters
    ]
    return sum(linear for linear, _ in terms), sum(squared for _, squared in terms)


def parts_term(parts: Sequence[Part]) -> float:
    """What parts one behind the other lose for the square of a flow."""
    return sum(part_term(rated_flow_m3_s=part.rated_flow, rated_loss_pa=part.rated_loss) for part in parts)
