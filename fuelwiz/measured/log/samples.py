"""A log as samples: gauge pressures with the sensors set to zero, fuel flow, volts; SI, one array each."""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import isnan, sqrt

from fuelwiz.errors import LogError
from fuelwiz.measured.figures import Zero
from fuelwiz.measured.log.table import Table
from fuelwiz.measured.statistics import median
from fuelwiz.once import once
from fuelwiz.physics.injector import TEST_FLUID_KG_M3
from fuelwiz.session import Session
from fuelwiz.units import kinds_of

NO_FUEL_PRESSURE_PA = 5e4
"""A rail below this has no pump running: then its sensor may be set to zero."""
NEAR_OUTSIDE_PA = 2e4
"""So near to the outside air a manifold is that of an engine that stands."""
STANDS_BELOW_RPM = 50.0
FEWEST_FOR_ZERO = 5
SECONDS_A_MINUTE, TURNS_A_CYCLE = 60.0, 2.0


@dataclass(frozen=True)
class Samples:
    """Every row of a log; pressures gauge, zeroed."""

    session: Session
    table: Table
    density_kg_m3: float
    atmosphere_pa: float

    @property
    def time(self) -> array[float]:
        """Seconds."""
        return self.table.columns["time"]

    @property
    def rpm(self) -> array[float] | None:
        """Engine speed."""
        return self.table.columns.get("rpm")

    @once
    def barometer_pa(self) -> float:
        """Outside air: as logged, as the session says, else by its altitude."""
        logged = self._known("barometer")
        given = self.session.log.columns.barometer
        if logged:
            return median(logged)
        return self.atmosphere_pa if given is None or given.value is None else given.value

    def _known(self, key: str, among: Sequence[int] | None = None) -> list[float]:
        """The values of a column that say something, of some samples or all; none without the column."""
        column = self.table.columns.get(key)
        if column is None:
            return []
        return [
            value for value in (column if among is None else (column[i] for i in among)) if not isnan(value)
        ]

    def median_of(self, key: str, among: Sequence[int]) -> float | None:
        """The median of a column over some samples, None where it says nothing there."""
        known = self._known(key, among)
        return median(known) if known else None

    @once
    def _raw_rail(self) -> array[float]:
        """Rail pressure, gauge, as the sensor has it."""
        rail = self.table.columns["rail"]
        unit = next(one.unit for one in self.table.taken if one.key == "rail")
        if "gauge_pressure" not in kinds_of(unit):
            return array("d", [value - self.barometer_pa for value in rail])
        return rail

    @once
    def _raw_boost(self) -> array[float]:
        """Boost, gauge, as the sensor has it."""
        boost = self.table.columns.get("boost")
        if boost is not None:
            return boost
        outside = self.barometer_pa
        return array("d", [value - outside for value in self.table.columns["manifold"]])

    @once
    def _opening(self) -> array[float]:
        """What tells that no fuel is asked for: flow, duty or pulse width."""
        return next(
            self.table.columns[key] for key in ("flow", "duty", "pulse_width") if key in self.table.columns
        )

    @once
    def zero(self) -> Zero:
        """What the sensors show with the engine stopped and no pressure in the line; 0 where no such samples are."""
        stands: Sequence[float] = self.rpm if self.rpm is not None else self._opening
        limit = STANDS_BELOW_RPM if self.rpm is not None else 1e-9
        rail, boost = self._raw_rail, self._raw_boost
        still = [
            i
            for i, speed in enumerate(stands)
            if speed < limit and abs(rail[i]) < NO_FUEL_PRESSURE_PA and abs(boost[i]) < NEAR_OUTSIDE_PA
        ]
        if len(still) < FEWEST_FOR_ZERO:
            return Zero(0.0, 0.0)
        return Zero(median([rail[i] for i in still]), median([boost[i] for i in still]))

    @once
    def rail(self) -> array[float]:
        """Rail pressure, gauge."""
        off = self.zero.rail_Pa
        return array("d", [value - off for value in self._raw_rail]) if off else self._raw_rail

    @once
    def boost(self) -> array[float]:
        """Boost, gauge."""
        off = self.zero.manifold_Pa
        return array("d", [value - off for value in self._raw_boost]) if off else self._raw_boost

    @once
    def metered(self) -> bool:
        """Whether the flow is that of a column of its own."""
        return "flow" in self.table.columns

    @once
    def duty(self) -> array[float]:
        """Share of the time that the injectors flow, the time that they take to open taken off.

        Raises:
            LogError: the session has no injectors to calculate by.
        """
        injectors = self.session.injectors
        if injectors is None:
            raise LogError("gives no fuel flow, and the build has no injectors to calculate it from the duty")
        columns, rpm = self.table.columns, self.rpm
        dead = injectors.dead_time or 0.0
        cycles = 1 / (SECONDS_A_MINUTE * TURNS_A_CYCLE)
        if "duty" in columns:
            duties = columns["duty"]
            if rpm is None or not dead:
                return duties
            return array(
                "d", [max(0.0, duty - dead * speed * cycles) for duty, speed in zip(duties, rpm, strict=True)]
            )
        assert rpm is not None
        widths = columns["pulse_width"]
        return array(
            "d", [max(0.0, width - dead) * speed * cycles for width, speed in zip(widths, rpm, strict=True)]
        )

    @once
    def opening(self) -> array[float]:
        """What the engine asks for: the injectors' duty, else the flow itself."""
        return self.flow if self.metered else self.duty

    @once
    def flow(self) -> array[float]:
        """Fuel that the engine burns, m3/s."""
        if self.metered:
            by_mass = next(one.by_mass for one in self.table.taken if one.key == "flow")
            flow = self.table.columns["flow"]
            return array("d", [value / self.density_kg_m3 for value in flow]) if by_mass else flow
        injectors = self.session.injectors
        duty = self.duty
        assert injectors is not None
        times = injectors.count * injectors.rated_flow
        law = TEST_FLUID_KG_M3 / self.density_kg_m3 / injectors.rated_pressure
        return array(
            "d",
            [
                times * share * sqrt(law * (rail - boost)) if rail > boost else 0.0
                for share, rail, boost in zip(duty, self.rail, self.boost, strict=True)
            ],
        )


def refuse_time_that_runs_back(table: Table, name: str) -> None:
    """Refuses a log whose time falls from one row to the next.

    Raises:
        LogError: in a sentence that names the file and the row.
    """
    for number, (before, after) in enumerate(pairwise(table.columns["time"]), 2):
        if after < before:
            raise LogError(
                f"{name}: time runs back, from {before:g} s to {after:g} s at row {number} of numbers:"
                " give each run a file of its own"
            )
