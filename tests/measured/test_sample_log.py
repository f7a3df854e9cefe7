"""The log that is shipped to try things with: invented, said to be, and small."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.document.file import load
from fuelwiz.measured.log.run import read_log
from fuelwiz.sizing import quick_figures

SAMPLES = Path(__file__).parents[2] / "saved_sessions"
LOG = SAMPLES / "gravel-four-pull.csv"
WORN_TO = 0.64
"""What the pump of that car was made to send, of its sheet, when the log was made up."""


def test_it_says_that_it_is_invented_and_is_small() -> None:
    assert LOG.read_text(encoding="utf-8").startswith("# Invented: ")
    assert LOG.stat().st_size < 20_000


def test_it_shows_what_was_put_into_it() -> None:
    _, session = load(SAMPLES / "gravel-four.toml")
    log = read_log(LOG, session, quick_figures(session))
    assert log.pump.known == "factor"
    assert log.pump.factor is not None and log.pump.tolerance is not None
    assert abs(log.pump.factor / WORN_TO - 1) <= log.pump.tolerance
    assert [shown.name for shown in log.signatures] == ["falls with flow"]
    assert (log.skipped, len(log.pulls)) == (0, 3)
    assert any(one.sags for one in log.bins) and not all(one.sags for one in log.bins)
