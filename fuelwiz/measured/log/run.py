"""A log held against a build: read, zeroed, its pulls found, and what they show."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from fuelwiz.errors import LogError
from fuelwiz.measured.figures import Bin, ColumnTaken, LogFigures, Proposal, PumpKnown, Shown, Span
from fuelwiz.measured.log.bins import bins_of, lowest_of, tightest_of
from fuelwiz.measured.log.columns import columns_of
from fuelwiz.measured.log.held import Held, held, little_flow, steady_samples, top_flow
from fuelwiz.measured.log.proposals import bsfc_kg_J, log_proposals
from fuelwiz.measured.log.pulls import Means, Pull, pulls_of
from fuelwiz.measured.log.pump import MOST_LOOKED_AT, Pumps, pump_known
from fuelwiz.measured.log.sag import Shortfall, shortfall
from fuelwiz.measured.log.samples import Samples, refuse_time_that_runs_back
from fuelwiz.measured.log.signatures import line_loses_more, signatures
from fuelwiz.measured.log.table import Table, Watch, read_table
from fuelwiz.measured.log.wiring import connections_v, wiring_ohm
from fuelwiz.measured.model import Model
from fuelwiz.measured.statistics import median, straight_line
from fuelwiz.once import once
from fuelwiz.printable import clean
from fuelwiz.session import Rejected, Session, field_at, read
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.lines import FeedLine

FEWEST_SAMPLES = 20


def read_log(path: Path, session: Session, figures: Figures, watch: Watch | None = None) -> LogFigures:
    """What a log shows of a build.

    Args:
        path: of the log.
        session: the build.
        figures: what the build comes to.
        watch: told how much of the file has been read; what it raises ends the reading.

    Raises:
        LogError: in a sentence that names the file.
    """
    table = read_table(path, lambda heads: columns_of(session.log.columns, heads), watch)
    name = clean(str(path))
    refuse_time_that_runs_back(table, name)
    try:
        return Run.of(table, session, figures).figures()
    except LogError as error:
        raise LogError(f"{name}: {error}") from None


@dataclass(frozen=True)
class Run:
    """One log and the build that it is held against, its fuel as it was logged."""

    model: Model
    samples: Samples

    @classmethod
    def of(cls, table: Table, session: Session, figures: Figures) -> Run:
        """A log's columns and the build."""
        logged = session.model_copy(
            update={"fuel": session.fuel.model_copy(update=_logged_fuel(table, session))}
        )
        model = Model.of(logged, figures)
        fuel = model.system.fuel
        return cls(model, Samples(logged, table, fuel.density_kg_m3, model.system.atmosphere_pa))

    @once
    def boosts(self) -> Means:
        """Boost, evened out."""
        return Means(self.samples.time, self.samples.boost)

    @once
    def pulls(self) -> tuple[Pull, ...]:
        """The pulls.

        Raises:
            LogError: there are fewer than 20 full-load samples in them.
        """
        found = pulls_of(self.samples, self.boosts)
        count = sum(len(pull.samples) for pull in found)
        if count < FEWEST_SAMPLES:
            raise LogError(
                f"holds {count or 'no'} samples at full load in a pull of a second or more;"
                f" {FEWEST_SAMPLES} are the fewest that tell anything"
            )
        return found

    @once
    def full(self) -> tuple[int, ...]:
        """The full-load samples."""
        return tuple(at for pull in self.pulls for at in pull.samples)

    @once
    def steady(self) -> list[int]:
        """Samples with the engine running at a steady boost."""
        return steady_samples(self.samples, self.boosts)

    @once
    def top_flow(self) -> float:
        """Flow at full load."""
        return top_flow(self.samples, self.pulls)

    @once
    def little(self) -> list[int]:
        """Samples with little flow."""
        return little_flow(self.samples, self.steady, self.top_flow)

    @once
    def _slope(self) -> float:
        return 1.0 if self.model.system.follows_manifold else 0.0

    @property
    def _base_pa(self) -> float:
        return self.model.system.session.pressure.base

    @once
    def held(self) -> Held | None:
        """What the rail holds with little flow."""
        return held(self.samples, self.little, self.full, base_pa=self._base_pa, slope=self._slope)

    @once
    def tank_feed(self) -> FeedLine | None:
        """The feed whose loss the rail sees: that of a regulator at the tank."""
        model = self.model
        return model.sized.feed if model.system.at_tank and model.has_feed else None

    @once
    def short(self) -> Shortfall | None:
        """How far the rail falls short at full load; None where what it should hold is not told."""
        if self.held is None:
            return None
        return shortfall(
            self.samples,
            self.pulls,
            self.steady,
            self.held,
            base_pa=self._base_pa,
            top_flow=self.top_flow,
            feed=self.tank_feed,
        )

    @once
    def pumps(self) -> Pumps | None:
        """The build's pumps; None without pump or feed."""
        pumps = self.model.system.pumps
        if pumps is None or not self.model.has_feed:
            return None
        loses_more = self.short is not None and line_loses_more(self.short)
        scale = self.short.feed_scale if self.short is not None and loses_more else 1.0
        return Pumps(self.model, self.samples, pumps, scale)

    @once
    def regulator_slope(self) -> float | None:
        """Slope of the rail over the manifold, from samples at which the regulator works."""
        if self.held is None or not self.held.proven:
            return None
        if self.short is None or self.short.sagging or self.held.high_at_idle or self.tank_feed is not None:
            return self.held.slope
        among = [*self.little, *self.full]
        line = straight_line(
            [self.samples.boost[at] for at in among], [self.samples.rail[at] for at in among]
        )
        return self.held.slope if line is None else line.slope

    @once
    def pump(self) -> PumpKnown:
        """What the log tells of the pumps."""
        return pump_known(self.pumps, self.short, self.full)

    @once
    def bins(self) -> tuple[Bin, ...]:
        """Full load by engine speed, or by pull."""
        counts = self.short is not None and self.pump.known == "factor"
        return bins_of(
            self.samples,
            self.pulls,
            system=self.model.system,
            pumps=self.pumps,
            feed=self.tank_feed,
            sagging=frozenset(self.short.sagging if self.short is not None and counts else ()),
        )

    @once
    def bsfc_kg_J(self) -> float | None:
        """Fuel use at full load; None where the log has no power."""
        return bsfc_kg_J(self.samples, self.full, self.model.system)

    def signatures(self) -> tuple[Shown, ...]:
        """What the courses of the pressures are the signs of."""
        return tuple(
            signatures(
                self.samples,
                self.pulls,
                self.little,
                self.held,
                self.short,
                base_pa=self._base_pa,
                follows=self.model.system.follows_manifold,
            )
        )

    def proposals(self) -> tuple[Proposal, ...]:
        """The values that may be taken from the log."""
        looked_at = self.full[:: max(1, len(self.full) // MOST_LOOKED_AT)]
        return log_proposals(
            self.model.system,
            self.pump,
            self.held,
            self.bins,
            bsfc=self.bsfc_kg_J,
            connections_v=connections_v(self.samples, self.pumps, looked_at),
        )

    def figures(self) -> LogFigures:
        """All that the log shows."""
        samples, table = self.samples, self.samples.table
        return LogFigures(
            samples=len(self.full),
            rows=table.rows,
            skipped=table.skipped,
            pulls=tuple(
                Span(samples.time[one.samples[0]], samples.time[one.samples[-1]]) for one in self.pulls
            ),
            zero=samples.zero,
            bins=self.bins,
            regulator_slope=self.regulator_slope,
            bsfc_kg_J=self.bsfc_kg_J,
            wiring_ohm=wiring_ohm(samples, self.pumps, self.steady),
            pump=self.pump,
            signatures=self.signatures(),
            proposals=self.proposals(),
            columns=tuple(ColumnTaken(one.key, one.head, one.unit, one.guessed) for one in table.taken),
            metered=samples.metered,
            lowest=lowest_of(self.bins),
            tightest=tightest_of(self.bins),
        )


def _logged_fuel(table: Table, session: Session) -> dict[str, float]:
    """The fuel's temperature and ethanol as they were logged, where they lie in the range of their key."""
    found: dict[str, float] = {}
    for column, key in (("temperature", "temperature"), ("ethanol", "ethanol")):
        values = [value for value in table.columns.get(column, ()) if value - value == 0]
        if not values or (key == "ethanol" and session.fuel.kind != "blend"):
            continue
        value = median(values)
        unit = {"temperature": "K", "ethanol": "%"}[key]
        text = f"{100 * value:.6g} %" if unit == "%" else f"{value - 273.15:.6g} degC"
        try:
            found[key] = read(field_at(f"fuel.{key}"), text)
        except Rejected:
            continue
    return found
