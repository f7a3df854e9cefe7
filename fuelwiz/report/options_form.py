"""Sets of parts that would do -> text or JSON."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Sequence
from dataclasses import asdict

from fuelwiz.advice.option_words import options_sheet
from fuelwiz.advice.subject import Subject
from fuelwiz.options.figures import OptionsFigures
from fuelwiz.report.output import stdout_look
from fuelwiz.report.plain import plain_value
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import speaks_utf8


def options_in_format(
    subject: Subject, figures: OptionsFigures, asked: Sequence[str], currency: str, form: str
) -> str:
    """What a search came to as "text" or "json", in the signs that standard output can hold.

    Args:
        subject: the build.
        figures: what the search came to.
        asked: what the sets had to pass besides today, in words.
        currency: the parts file's own word for its prices.
        form: "text" or "json".
    """
    if form == "json":
        ascii_only = not speaks_utf8(sys.stdout, os.environ)
        return (
            json.dumps(plain_value(asdict(figures)), indent=1, allow_nan=False, ensure_ascii=ascii_only)
            + "\n"
        )
    return text_of(options_sheet(subject, figures, asked, currency), stdout_look())
