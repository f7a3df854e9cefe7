"""What a log shows -> text or JSON."""

from __future__ import annotations

import json
import os
import sys
from dataclasses import asdict

from fuelwiz.advice.log_words import log_sheet, signature_text
from fuelwiz.advice.proposal_words import why
from fuelwiz.advice.subject import Subject
from fuelwiz.measured.figures import LogFigures
from fuelwiz.report.json_form import Plain, plain_value
from fuelwiz.report.output import stdout_look
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import speaks_utf8


def log_in_format(subject: Subject, log: LogFigures, form: str) -> str:
    """A logged run as "text" or "json", in the signs that standard output can hold."""
    if form == "json":
        ascii_only = not speaks_utf8(sys.stdout, os.environ)
        return json.dumps(plain_log(log), indent=1, allow_nan=False, ensure_ascii=ascii_only) + "\n"
    return text_of(log_sheet(subject, log), stdout_look())


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
