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
