"""The standing cautions, those that apply to a build: an aid to design, never an approval."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.pure_fuels import PURE_FUELS
from fuelwiz.advice.subject import Subject

ALCOHOL_ABOVE = 0.10  # of the volume: what ordinary pump fuel may hold

RATED = "hoses, seals, filter media and strainers must be rated for it."
GAUGE = (
    "Relieve the pressure before you fit a gauge. No gauge and no line that holds fuel belongs in the cabin."
)


def cautions(subject: Subject) -> tuple[str, ...]:
    """One sentence each, in the order in which one meets them at the car."""
    pump = subject.session.pump
    has_pot = (pump is not None and pump.place == "surge") or subject.session.surge is not None
    vented = "tank and surge pot" if has_pot else "the tank"
    return (
        "Relieve the pressure before you open a line, and work on a cold engine in a ventilated space, a"
        " fuel-rated extinguisher at hand. Never block a line under pressure, nor run a pump into an open can.",
        GAUGE,
        "A hose has a rated pressure and a rated temperature: stay within both, at its ends too.",
        "No soft line near the exhaust, the turbo or anything that moves or rubs.",
        "Hose ends and adapters that meet must have the same thread form: near ones go together and leak.",
        *_of_fuel(subject),
        "Wire the pump through a relay and a fuse that is weaker than its wire.",
        "A cut-off must stop the pump in a crash, when the engine stops, when oil or rail pressure is lost.",
        "Bond tank, filler and pump with ground straps: flowing fuel makes static.",
        f"Vent {vented} as the rules and local law require, with a roll-over valve, away from heat.",
        "Measure volts and pressures at full load on a dyno, away from fuel vapor.",
        "This is an aid to design, not an approval: the parts makers' ratings, local codes, the sanctioning"
        " body's rules, licensed practice and qualified people (licensed mechanics and inspectors) come first.",
    )


def alcohol_may_be_in(subject: Subject) -> bool:
    """Whether the fuel holds more alcohol than ordinary pump fuel, or may: a fuel of the builder's own."""
    fuel = subject.session.fuel
    return fuel.kind != "blend" or fuel.ethanol > ALCOHOL_ABOVE


def rubber_with_alcohol(subject: Subject) -> list[str]:
    """The lines with rubber hose in them, where alcohol may be in the fuel."""
    session = subject.session
    lines = {
        "feed": session.feed.run,
        "return": session.return_line.run if session.return_line is not None else (),
        "suction": session.inlet.run if session.inlet is not None else (),
    }
    found = [name for name, runs in lines.items() if any(run.hose == "rubber" for run in runs)]
    return found if alcohol_may_be_in(subject) else []


def _of_fuel(subject: Subject) -> Iterator[str]:
    """What alcohol asks for; a fuel of the builder's own may hold any."""
    fuel = subject.session.fuel
    if fuel.kind == "own":
        yield f"If your fuel holds alcohol: {RATED}"
        danger = PURE_FUELS["methanol"].danger
        yield f"If it holds methanol: {danger[:1].lower()}{danger[1:]}"
        return
    if alcohol_may_be_in(subject):
        yield f"Alcohol in the fuel: {RATED}"
    if fuel.kind != "blend":
        yield PURE_FUELS[fuel.kind].danger
