"""The one line on what to do next: the most urgent finding, else the next thing."""

from __future__ import annotations

from fuelwiz.advice.remark import Remark, one_line
from fuelwiz.advice.subject import Subject


def to_do(build: Subject, remarks: list[Remark]) -> str:
    """One line of 76 columns or less."""
    if not build.has_runs:
        return _next_step(build)
    chosen, line = build.figures.row(build.figures.chosen), build.line
    if chosen is not None and chosen.limits and line is not None and line.bore_m > chosen.bore_m:
        return f"Settle on {line.size} in place of {chosen.size}."
    stops = [remark for remark in remarks if remark.severity == "stop"]
    if stops:
        return one_line(stops[0].do, stops[0].what)
    warnings = [remark for remark in remarks if remark.severity == "warning"]
    if warnings:
        return one_line(warnings[0].what, warnings[0].do)
    if not build.has_pump:
        return "Next: type what a pump's sheet says, or go on and choose one later."
    return _comfortable(build) or _not_yet_known(build)


def _next_step(build: Subject) -> str:
    if "fuel.ethanol" in build.assumed:
        return "Next: the other questions here, then Fuel, which moves this most."
    if "pressure.base" in build.assumed or "pressure.boost" in build.assumed:
        return "Next: Pressure, then Pump and Lines."
    if build.session.pump is None:
        return "Next: type what a pump's sheet says, or go on to Lines and choose one later."
    return "Next: Lines, how far it is from tank to rail and in which hose."


def _comfortable(build: Subject) -> str:
    row = build.figures.row(build.figures.comfortable)
    if row is None or row.fixed or row.bore_m <= build.pick.bore_m:
        return ""
    edges = build.session.bands.feed
    if row.full_delivery_band is None:
        return (
            f"{row.size} would be comfortable: under {build.numbers.limit('velocity', edges[0])} at the goal"
        )
    edge = edges[0] if row.full_delivery_band == "easy" else edges[1]
    under = build.numbers.limit("velocity", edge)
    return f"{row.size} would be comfortable: under {under} with all the pump gives"


def _not_yet_known(build: Subject) -> str:
    session = build.session
    missing = [
        name
        for name, known in (
            ("inlet", session.inlet is not None),
            ("return line", session.return_line is not None or not build.at_rail),
            ("wiring", session.wiring is not None),
            ("injectors", session.injectors is not None),
        )
        if not known
    ]
    if missing:
        return f"Not looked at yet: {', '.join(missing)}."
    return "Nothing presses: read the notes, then print the sheet."
