"""What a measurement proposes, in words: which key, which value, and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fuelwiz.session import as_text, key_path_of
from fuelwiz.terms import key_in_words

if TYPE_CHECKING:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.measured.figures import Proposal, Reason

REASONS: dict[Reason, str] = {
    "bench tests": "the bench tests give this share of the sheet's flow",
    "gauge with the hose off": "read at idle with the hose off and plugged",
    "gauge at the pump": "read at the pump at full power",
    "pressure sagged in the log": "in the log the pressure sagged with flow: there the pump sent all that it could",
    "rail in the log": "in the log the rail holds this above the manifold while little fuel is taken",
    "flow and dyno power in the log": "fuel flow over dyno power; flow from the injectors' rating, so both are in it",
    "volts in the log": "volts lost between battery and pump in the log, less those of the wire itself",
    "bins of the log": "points of the logged pull; their power is fuel flow over fuel use",
}


def proposal_text(subject: Subject, proposal: Proposal) -> str:
    """One proposal in a line: what to set, and why."""
    if isinstance(proposal.value, list):
        points = ", ".join(
            f"{point['rpm']} rpm {point['power']} {point['boost']}" for point in proposal.value
        )
        return f"further points of full power: {points}: {why(proposal)}."
    before = value_now(subject, proposal.key)
    now = f", now {before}" if before else ""
    within = f", good to {proposal.tolerance}" if proposal.tolerance else ""
    return f"{key_in_words(proposal.key)} {proposal.value}{within}{now}: {why(proposal)}."


def why(proposal: Proposal) -> str:
    """Where the value comes from, and when it was measured."""
    day = f" ({proposal.date})" if proposal.date else ""
    return f"{REASONS[proposal.reason]}{day}"


def value_now(subject: Subject, path: str) -> str:
    """What the build has at a key of a section, where that was given or has a fallback of its own."""
    section, key = key_path_of(path)
    given = getattr(subject.session, str(section))
    number = None if given is None else getattr(given, str(key))
    if number is None:
        return ""
    numbers = subject.numbers
    match path:
        case "pump.health":
            return numbers.figure("percent", number)
        case "pressure.base":
            return numbers.figure("pressure", number)
        case "engine.bsfc":
            return numbers.figure("bsfc", number)
        case "pump.volts" | "wiring.connections":
            return numbers.figure("volts", number)
        case _:
            return as_text(number)
