"""What the sections are called."""

from __future__ import annotations

PATH = "Path"
SIZES = "Sizes"
CHANGES = "Changes"
HOW_SURE = "How sure"
BAD_DAYS = "Bad days"
FINDINGS = "Findings"
LADDER = "Ladder"
CEILINGS = "Ceilings"
GAUGE_PRESSURES = "Gauge pressures"
LOG_OF_A_RUN = "Log of a run"
PULL = "Pull"
WHAT_TO_BUY = "What to buy"
