"""What a log shows -> text or JSON."""

from __future__ import annotations

import json
import os
import sys

from fuelwiz.advice.log_words import log_sheet
from fuelwiz.advice.subject import Subject
from fuelwiz.measured.figures import LogFigures
from fuelwiz.report.log_json import plain_log
from fuelwiz.report.output import stdout_look
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import speaks_utf8


def log_in_format(subject: Subject, log: LogFigures, form: str) -> str:
    """A logged run as "text" or "json", in the signs that standard output can hold."""
    if form == "json":
        ascii_only = not speaks_utf8(sys.stdout, os.environ)
        return json.dumps(plain_log(log), indent=1, allow_nan=False, ensure_ascii=ascii_only) + "\n"
    return text_of(log_sheet(subject, log), stdout_look())
