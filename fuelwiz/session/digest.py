"""A short digest of all that a build is computed from: tells a changed build from a changed program."""

from __future__ import annotations

from typing import Any

from fuelwiz.session.sections import Session

DIGITS = 16
_CHANGE_NO_FIGURE = {"notes", "show_units", "fitted", "record", "bench", "gauge", "log"}
_WORDS = {"name", "what"}


def inputs_digest(session: Session) -> str:
    """The digest of what the file gave: 16 hexadecimal digits.

    A value typed in another unit is the same value; names move no figure; a fallback is the program's.
    """
    import hashlib  # and nothing of it for a check, which asks for no digest
    import json

    given = session.model_dump(exclude_unset=True, exclude=_CHANGE_NO_FIGURE, warnings=False)
    text = json.dumps(_figures(given), sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:DIGITS]


def _figures(value: Any) -> Any:
    """The value without names, and with floats to twelve figures: the unit that was typed leaves no trace."""
    if isinstance(value, dict):
        return {str(key): _figures(item) for key, item in value.items() if key not in _WORDS}
    if isinstance(value, list | tuple):
        return [_figures(item) for item in value]
    return f"{value:.12g}" if isinstance(value, float) else value
