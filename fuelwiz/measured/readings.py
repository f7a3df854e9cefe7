"""Gauge readings beside what was predicted, each difference with its likely cause."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fuelwiz.measured.figures import GaugeCause, GaugeDifference, GaugeItem, Proposal
from fuelwiz.measured.proposals import pressure_text
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.session import Gauge, Session
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.vocabulary import GaugeState

# What a gauge, a meter and a clamp are good to, 95 times in 100: common practice, no source.
GAUGE_PA = 1.5 * PSI_PA
METER_V = 0.3
CLAMP = 0.15

_Cause = Callable[[float, float], GaugeCause]
"""The likely cause of a reading, given what was predicted."""


def gauge_differences(session: Session, figures: Figures) -> tuple[GaugeDifference, ...]:
    """Every reading of a session beside its prediction."""
    return tuple(
        difference
        for number, gauge in enumerate(session.gauge)
        for difference in _Reading(session, figures, gauge, number).differences()
    )


class _Reading:
    """What gauges showed on one day, and what should have been there."""

    def __init__(self, session: Session, figures: Figures, gauge: Gauge, number: int) -> None:
        self.session, self.figures, self.gauge, self.number = session, figures, gauge, number

    def differences(self) -> Iterator[GaugeDifference]:
        """Each value that was read, in the order of the file."""
        gauge, pick = self.gauge, self.figures.pick
        yield from self._one("hose off", gauge.hose_off, self._rail("hose off"), self._hose_off)
        yield from self._one("idle", gauge.idle, self._rail("idle"), self._idle)
        yield from self._one("full power", gauge.full_power, self._rail("full power"), self._full_power)
        yield from self._one("volts", gauge.volts, pick.pump_volts_V, self._volts)
        yield from self._one("current", gauge.current, pick.pump_current_A, self._current)

    def _one(
        self, item: GaugeItem, read: float | None, predicted: float | None, cause: _Cause
    ) -> Iterator[GaugeDifference]:
        if read is not None:
            why = None if predicted is None else cause(read, predicted)
            yield GaugeDifference(self.number, item, read, predicted, why)

    def _rail(self, when: GaugeState) -> float | None:
        return next((one.rail_Pa for one in self.figures.gauge if one.when == when), None)

    def _set_off(self) -> float:
        """How far the regulator is set off, as read with the hose off; 0 where that was not read."""
        predicted = self._rail("hose off")
        if self.gauge.hose_off is None or predicted is None:
            return 0.0
        return self.gauge.hose_off - predicted

    def _hose_off(self, read: float, predicted: float) -> GaugeCause:
        return _as_set(read - predicted)

    def _idle(self, read: float, predicted: float) -> GaugeCause:
        off = read - predicted
        if abs(off - self._set_off()) <= GAUGE_PA:
            return _as_set(off)
        if self._follows_not(read):
            return "does not follow"
        return "return too small" if off > self._set_off() else "other vacuum"

    def _follows_not(self, idle: float) -> bool:
        """Whether taking the hose off changed nothing where it should have."""
        with_hose, without = self._rail("idle"), self._rail("hose off")
        if self.gauge.hose_off is None or with_hose is None or without is None:
            return False
        return without - with_hose > 2 * GAUGE_PA and abs(self.gauge.hose_off - idle) <= GAUGE_PA

    def _full_power(self, read: float, predicted: float) -> GaugeCause:
        off = read - predicted
        if abs(off - self._set_off()) <= GAUGE_PA:
            return _as_set(off)
        if off > self._set_off():
            return "other boost"
        if self.gauge.idle is not None and self._follows_not(self.gauge.idle):
            return "does not follow"
        volts = self.figures.pick.pump_volts_V
        if self.gauge.volts is not None and volts is not None and self.gauge.volts < volts - METER_V:
            return "volts low"
        return "line or pump short" if self.session.pressure.regulator == "tank" else "pump short"

    def _volts(self, read: float, predicted: float) -> GaugeCause:
        if abs(read - predicted) <= METER_V:
            return "as expected"
        return "wires lose more" if read < predicted else "wires lose less"

    def _current(self, read: float, predicted: float) -> GaugeCause:
        if abs(read - predicted) <= CLAMP * predicted:
            return "as expected"
        return "draws more" if read > predicted else "draws less"


def _as_set(off_pa: float) -> GaugeCause:
    """What a pressure says of the setting alone."""
    if abs(off_pa) <= GAUGE_PA:
        return "as expected"
    return "set low" if off_pa < 0 else "set high"


def gauge_proposals(session: Session, figures: Figures) -> tuple[Proposal, ...]:
    """What the last readings propose: the pressure that the regulator is set to, and the volts at the pump."""
    return (*_base(session, figures), *_volts_at_the_pump(session))


def _base(session: Session, figures: Figures) -> Iterator[Proposal]:
    last = next((gauge for gauge in reversed(session.gauge) if gauge.hose_off is not None), None)
    predicted = next((one.rail_Pa for one in figures.gauge if one.when == "hose off"), None)
    if last is None or last.hose_off is None or predicted is None:
        return
    base = session.pressure.base + last.hose_off - predicted
    if abs(last.hose_off - predicted) > GAUGE_PA:
        system = session.show_units
        yield Proposal(
            "pressure.base",
            pressure_text(base, system),
            "tolerance.base",
            pressure_text(PSI_PA, system),
            "gauge with the hose off",
            last.date,
        )


def _volts_at_the_pump(session: Session) -> Iterator[Proposal]:
    last = next((gauge for gauge in reversed(session.gauge) if gauge.volts is not None), None)
    if last is None or session.pump is None or last.volts == session.pump.volts:
        return
    yield Proposal(
        "pump.volts", f"{last.volts:.3g} V", "tolerance.voltage", "0.1 V", "gauge at the pump", last.date
    )
