"""What a log shows, as plain dictionaries and lists."""

from __future__ import annotations

from dataclasses import asdict

from fuelwiz.advice.log_words import signature_text
from fuelwiz.advice.proposal_words import why
from fuelwiz.measured.figures import LogFigures, LoggedRun
from fuelwiz.report.plain import Plain, plain_value


def plain_run(run: LoggedRun | None) -> Plain | None:
    """The log that a build names: its file, its day, why it shows nothing, else what it shows; None without one."""
    if run is None:
        return None
    shown = {} if run.figures is None else plain_log(run.figures)
    return {"file": run.file, "day": run.day, "refused": plain_value(run.refused) or None, **shown}


def plain_log(log: LogFigures) -> Plain:
    """A logged run as plain dictionaries, lists, numbers and texts; what is not known is None."""
    found: Plain = plain_value(asdict(log))
    signatures = [
        {**plain_value(asdict(shown)), "text": plain_value(signature_text(shown))} for shown in log.signatures
    ]
    proposals = [
        {"key": one.key, "value": one.value, "tolerance": one.tolerance, "why": why(one)}
        for one in log.proposals
    ]
    return {
        "samples": found["samples"],
        "pulls": found["pulls"],
        "zero": found["zero"],
        "bins": found["bins"],
        "regulator_slope": found["regulator_slope"],
        "bsfc_kg_J": found["bsfc_kg_J"],
        "wiring_ohm": found["wiring_ohm"],
        "pump": found["pump"],
        "signatures": signatures,
        "proposals": proposals,
        "rows": found["rows"],
        "skipped": found["skipped"],
        "columns": found["columns"],
    }
