"""Where to go on in a build that is not finished: a line for the wizard, which can say on which step."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject


def next_step(subject: Subject) -> str:
    """The step that moves the result most, while line or pump are missing; nothing once both are there."""
    if not subject.has_runs:
        return _before_lines(subject)
    if subject.session.pump is None:
        return "Next: enter a pump from its data sheet, or go on and choose one later."
    return ""


def _before_lines(subject: Subject) -> str:
    if "fuel.ethanol" in subject.assumed:
        return "Next: finish this step, then Fuel; it changes the result most."
    if "pressure.base" in subject.assumed or "pressure.boost" in subject.assumed:
        return "Next: Pressure, then Pump and Lines."
    if subject.session.pump is None:
        return "Next: Pump, from its data sheet; or go on to Lines and choose a pump later."
    return "Next: Lines, how far it is from tank to rail and in which hose."
