"""What was left out, counted and named: values that are assumed, and whole sections that are not there."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.sizing.figures import Assumption
from fuelwiz.terms import key_in_words

MOVES_MOST = (
    "fuel.ethanol",
    "engine.induction",
    "pressure.boost",
    "pump.volts",
    "engine.bsfc",
    "pressure.base",
    "pressure.regulator",
    "feed.run.0.length",
    "fuel.temperature",
    "goal.reserve",
)
MOVES_NOTHING = {("pressure.boost", "0 psi"), ("pressure.idle_vacuum", "0 psi")}
"""What follows from an answer of the builder's own: no boost without a charger, no vacuum at an open regulator."""


def values_assumed(left_out: Sequence[Assumption]) -> list[str]:
    """The keys of the values that are assumed."""
    return [item.key for item in left_out if not item.is_section]


def by_effect(left_out: Sequence[Assumption]) -> list[Assumption]:
    """What was left out, what moves the result most first; what is not known to move it last, as it stood."""
    return sorted(left_out, key=lambda item: (item.effect is None, -(item.effect or 0.0)))


def count_in_words(left_out: Sequence[Assumption]) -> str:
    """How much was left out, without a full stop: "8 values assumed, 4 sections left out"."""
    values = len(values_assumed(left_out))
    sections = len(left_out) - values
    counts = ((values, "value", "assumed"), (sections, "section", "left out"))
    return ", ".join(f"{count} {noun}{'s'[: count != 1]} {verb}" for count, noun, verb in counts if count)


def matters_most(left_out: Sequence[Assumption]) -> str | None:
    """The assumed value that moves the result most, by its key; None where none is assumed."""
    known = [item for item in by_effect(left_out) if item.effect is not None and not item.is_section]
    if known:
        return known[0].key
    keys = [
        item.key for item in left_out if not item.is_section and (item.key, item.value) not in MOVES_NOTHING
    ]
    return next((key for key in MOVES_MOST if key in keys), keys[0] if keys else None)


def moves_spare(left_out: Sequence[Assumption], key: str) -> bool:
    """Whether an assumed value moves what is to spare, or nobody has looked yet."""
    return next((item.effect is None or item.effect > 0.0 for item in left_out if item.key == key), False)


def most_in_words(left_out: Sequence[Assumption]) -> str:
    """The same as a noun; nothing where none is assumed."""
    key = matters_most(left_out)
    return "" if key is None else key_in_words(key)
