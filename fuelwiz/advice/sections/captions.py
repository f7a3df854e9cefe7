"""What each view of a build has to show, in a few words, by its name."""

from __future__ import annotations

CAPTIONS = {
    "path": "the fuel's way at the goal",
    "sizes": "each size at the goal",
    "changes": "what one change buys",
    "how sure": "what each guess moves",
    "bad days": "what fails on which day",
    "ladder": "what the pressure is made of",
    "curves": "the pump against its line",
    "ceilings": "how far each part goes",
    "findings": "the gravest first",
    "log": "what the run shows",
}
PART_CAPTIONS = {
    "inlet": "each return at idle",
    "wiring": "each size of wire",
    "injectors": "injectors at the goal",
    "summary": "what to buy",
}
"""The same of what a step shows for its part in place of the sizes."""
