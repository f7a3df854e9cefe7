"""Known cars, and what benches and loggers would show of them: physics of their own, none of it the program's.

All is in psi, gal/h, volts, amperes and seconds; pumps' sheets are straight lines, so that nothing hangs on how a
curve is drawn through points. Cars and parts are invented.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

GAL_H_M3_S = 231 * 0.0254**3 / 3600  # 231 cubic inches (NIST SP 811)
PSI_PA = 6894.757293168361  # NIST SP 811, to 16 digits
OUTSIDE_PSI = 14.7
DENSITY, TEST_FLUID = 740.0, 684.0
CC_MIN_GAL_H = 1e-6 / 60 / GAL_H_M3_S


@dataclass(frozen=True)
class Car:
    """A car as it is; the program is told its sheet values alone."""

    factor: float = 1.0  # of the pump, over its sheet
    base: float = 43.5  # what the regulator is really set to
    slope: float = 1.0  # of the rail over the manifold
    boost_slope: float = 1.0  # what is left of the slope in boost alone: a hose that opens only when pushed
    creep: float = 0.0  # what a return that is too small holds the rail up to at least, at little flow
    loss: float = 3.0  # of the feed at 100 gal/h, over the square of the flow
    ohm: float = 0.05  # of the loop
    connections: float = 0.2
    battery: float = 13.8
    at_tank: bool = False
    sheet_scale: float = 1.0
    fades: float = 0.0  # what the pump loses in each pull after the first

    def pump(self, pressure: float, volts: float, *, factor: float | None = None) -> float:
        """What it sends: 110 gal/h at 12 V and 130 at 14 V without pressure, less 0.6 for each psi."""
        sheet = self.sheet_scale * (110 + 10 * (volts - 12) - 0.6 * pressure)
        return (self.factor if factor is None else factor) * max(0.0, sheet)

    def volts(self, pressure: float) -> float:
        """At the pump, which draws 6 A and 0.1 A more for each psi."""
        return self.battery - self.connections - self.ohm * (6 + 0.1 * pressure)

    def feed(self, flow: float) -> float:
        """Loss of the feed."""
        return self.loss * (flow / 100) ** 2

    def injected(self, across: float, duty: float) -> float:
        """Four injectors of 1200 cc/min at 43.5113 psi (3 bar) on n-heptane."""
        if across <= 0:
            return 0.0
        return 4 * 1200 * CC_MIN_GAL_H * math.sqrt(TEST_FLUID / DENSITY * across / 43.51132) * max(0.0, duty)

    def rail(self, boost: float, duty: float, factor: float) -> float:
        """What the rail holds: the regulator's pressure, or where pump and injectors agree below it."""
        wanted = self.base + self.slope * boost * (self.boost_slope if boost > 2 else 1.0)
        if self._kept(wanted, boost, duty, factor):
            if self.at_tank:
                return self._behind_the_feed(wanted, boost, duty)
            return max(wanted, self.creep) if duty < 0.3 else wanted
        low, high = boost, wanted
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if self._kept(middle, boost, duty, factor) else (low, middle)
        return self._behind_the_feed(low, boost, duty) if self.at_tank else low

    def _kept(self, rail: float, boost: float, duty: float, factor: float) -> bool:
        """Whether the pump sends what the injectors take at a rail pressure; at the tank it is the pressure there."""
        if self.at_tank:
            flow = self.injected(self._behind_the_feed(rail, boost, duty) - boost, duty)
            return self.pump(rail, self.volts(rail), factor=factor) >= flow
        flow = self.injected(rail - boost, duty)
        pressure = rail + self.feed(flow)
        return self.pump(pressure, self.volts(pressure), factor=factor) >= flow

    def _behind_the_feed(self, start: float, boost: float, duty: float) -> float:
        low, high = boost, start
        for _ in range(60):
            middle = (low + high) / 2
            fits = middle + self.feed(self.injected(middle - boost, duty)) <= start
            low, high = (middle, high) if fits else (low, middle)
        return low

    def delivered_pressure(self, rail: float) -> float:
        """Pressure at the pump with all that it sends going through the feed."""
        low, high = rail, rail + 60
        for _ in range(60):
            middle = (low + high) / 2
            sent = self.pump(middle, self.volts(middle), factor=1.0)
            low, high = (middle, high) if rail + self.feed(sent) > middle else (low, middle)
        return low


def plain(car: Car, **more: Any) -> dict[str, Any]:
    """The build as its owner would type it from the sheets: nothing of what is wrong with the car."""
    sheet = replace(Car(), sheet_scale=car.sheet_scale)
    curves = [
        {
            "voltage": f"{volts} V",
            "points": [[f"{psi} psi", f"{sheet.pump(psi, volts):.6f} gal/h"] for psi in (20, 60, 100)],
        }
        for volts in (12, 14)
    ]
    build: dict[str, Any] = {
        "format": 1,
        "goal": {"power": "500 hp"},
        "fuel": {"kind": "own", "density": "740 kg/m^3", "viscosity": "0.6 mm^2/s", "lhv": "42 MJ/kg"},
        "pressure": {"base": "43.5 psi", "boost": "20 psi", "regulator": "tank" if car.at_tank else "rail"},
        "pump": {"current": [["20 psi", "8 A"], ["100 psi", "16 A"]], "curve": curves},
        "wiring": {"supply": "13.8 V", "connections": "0.2 V"},
        "feed": {
            "sizes": ["-8"],
            "run": [{"length": "0 ft"}],
            "part": [{"rated_flow": "100 gal/h", "rated_loss": "3 psi"}],
            "filter": [],
        },
        "injectors": {"count": 4, "rated_flow": "1200 cc/min", "rated_pressure": "3 bar"},
    }
    if car.at_tank:
        build["pressure"]["reference"] = "manifold"
    return build | more


@dataclass(frozen=True)
class Logger:
    """What writes the log, and how well it measures."""

    hz: int = 50
    seed: int = 1
    noise: float = 1.0
    rail_off: float = 0.0
    manifold_off: float = 0.0
    pulls: int = 3
    pull_s: float = 4.0
    key_off_s: float = 2.0
    driving_s: float = 12.0
    peak_psi: float = 20.0
    comma: bool = False
    units_row: bool = False
    again_every: int = 0
    gaps: bool = False


HEADS = ("Time (s)", "Engine speed (rpm)", "Fuel pressure (psi)", "MAP (kPa)", "Injector duty (%)")
MORE_HEADS = ("Pump volts (V)", "Battery (V)", "Power (hp)")
BSFC = 0.6  # lb for each hp and hour


@dataclass
class _State:
    time: float
    rpm: float
    boost: float
    duty: float
    factor: float
    off: bool = False


def _course(logger: Logger, car: Car) -> list[_State]:
    """Key off, idle, driving, then pulls with driving between them."""
    states: list[_State] = []
    clock = 0.0
    dice = random.Random(logger.seed)

    def run(seconds: float, at: Any) -> None:
        nonlocal clock
        for number in range(round(seconds * logger.hz)):
            share = number / (seconds * logger.hz)
            states.append(_State(clock, *at(share)))
            clock += 1 / logger.hz

    def driving(share: float) -> tuple[float, float, float, float]:
        slow = math.sin(2 * math.pi * share)
        return 2500 + 500 * slow, -3.5 + 5 * slow, 0.08 + 0.03 * slow, car.factor

    run(logger.key_off_s, lambda _share: (0.0, 0.0, 0.0, car.factor, True))
    run(3.0, lambda _share: (900.0, -9.0, 0.03, car.factor))
    run(logger.driving_s, driving)
    for number in range(logger.pulls):
        peak = logger.peak_psi * (1 + 0.01 * dice.uniform(-1, 1))
        factor = car.factor * (1 - car.fades * number)

        def pull(
            share: float, peak: float = peak, factor: float = factor
        ) -> tuple[float, float, float, float]:
            boost = peak * min(1.0, share / 0.2)
            rpm = 3000 + 4500 * share
            return (
                rpm,
                boost,
                0.9 * (rpm / 7500) * (OUTSIDE_PSI + boost) / (OUTSIDE_PSI + logger.peak_psi),
                factor,
            )

        run(logger.pull_s, pull)
        run(3.0, driving)
    return states


def write_log(path: Path, car: Car, logger: Logger, *, more: bool = True) -> Path:
    """The log of a course that the car drove."""
    dice = random.Random(logger.seed)

    def noise(size: float) -> float:
        return dice.gauss(0, size * logger.noise)

    lines = [_heads(logger, more)]
    if logger.units_row:
        units = ["s", "rpm", "psi", "kPa", "%", *(["V", "V", "hp"] if more else [])]
        lines.append((";" if logger.comma else ",").join(units))
    for number, state in enumerate(_course(logger, car)):
        if logger.gaps and dice.random() < 0.02:
            continue
        if logger.again_every and number and number % logger.again_every == 0:
            lines.append(lines[0])
        rail = 0.0 if state.off else car.rail(state.boost, state.duty, state.factor)
        flow = car.injected(rail - state.boost, state.duty)
        full = car.at_tank or state.duty > 0.3
        pressure = rail + car.feed(flow) if full else car.delivered_pressure(rail)
        power = flow * GAL_H_M3_S * DENSITY * 3600 / 0.45359237 / BSFC
        row = [
            state.time,
            0.0 if state.off else state.rpm + noise(5),
            rail + logger.rail_off + noise(0.3),
            (OUTSIDE_PSI + state.boost) * PSI_PA / 1000 + logger.manifold_off + noise(0.5),
            max(0.0, 100 * state.duty + (0.0 if state.off else noise(0.3))),
        ]
        if more:
            volts = car.battery if state.off else car.volts(pressure)
            battery = noise(0.02)
            row += [volts + battery + noise(0.01), car.battery + battery, power * (1 + noise(0.01))]
        text = [f"{value:.3f}" for value in row]
        if logger.gaps and dice.random() < 0.02:
            text[dice.randrange(1, len(text))] = dice.choice(["", "NaN", "---"])
        lines.append(";".join(text).replace(".", ",") if logger.comma else ",".join(text))
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def _heads(logger: Logger, more: bool) -> str:
    heads = [*HEADS, *(MORE_HEADS if more else ())]
    if logger.units_row:
        heads = [head.rpartition(" (")[0] for head in heads]
    return (";" if logger.comma else ",").join(heads)
