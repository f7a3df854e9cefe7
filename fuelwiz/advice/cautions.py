"""The standing cautions, those that apply to a build: an aid to design, never an approval."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject


def cautions(build: Subject) -> tuple[str, ...]:
    """One sentence each, in the order in which one meets them at the car."""
    fuel, pump = build.session.fuel, build.session.pump
    told = [
        "Relieve the pressure before a line is opened, and work on a cold engine in a ventilated space,"
        " a fuel-rated extinguisher at hand.",
        "A hose has a rated pressure and a rated temperature: keep within both, at its ends too.",
        "No soft line near the exhaust, the turbo or anything that moves or rubs.",
        "Hose ends and adapters that meet must be of one thread form: near ones go together and leak.",
    ]
    if fuel.kind == "methanol" or (fuel.kind == "blend" and fuel.ethanol > 0.10):
        told.append("Alcohol in the fuel: hoses, seals, filter media and strainers must be rated for it.")
    told.append("Wire the pump through a relay and a fuse, sized for its peak current.")
    told.append(
        "A cut-off must stop the pump in a crash, when the engine stops, when oil or rail pressure is lost."
    )
    told.append("Ground straps on tank, filler and pump: fuel that flows makes static.")
    told.append(_venting((pump is not None and pump.place == "surge") or build.session.surge is not None))
    told.append(
        "This is an aid to design, not an approval: the parts makers' ratings, local codes, the sanctioning"
        " body's rules and qualified people come first."
    )
    return tuple(told)


def _venting(pot: bool) -> str:
    vented = "tank and surge pot" if pot else "the tank"
    return f"Vent {vented} to the open air, with a roll-over valve, away from heat."
