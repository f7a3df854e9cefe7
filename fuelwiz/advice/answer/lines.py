"""A line of the answer in several forms, so that a small screen can say it too."""

from __future__ import annotations

from collections.abc import Sequence

SHORT_COLUMNS = 56

Forms = tuple[str, ...]
"""The same said ever shorter; the last takes 56 columns at most."""


def line(*forms: str) -> Forms:
    """A line from its forms, the fullest first; where none is short enough, a last one that is cut between words."""
    shorter = [forms[0]]
    shorter += [form for at, form in enumerate(forms) if at and len(form) < min(map(len, forms[:at]))]
    if len(shorter[-1]) <= SHORT_COLUMNS:
        return tuple(shorter)
    cut = shorter[-1][: SHORT_COLUMNS - 1].rpartition(" ")[0].rstrip(",;:")
    return (*shorter, f"{cut}…")


def fitting(forms: Sequence[str], columns: int) -> str:
    """The fullest form that takes so many columns; the shortest where none does."""
    return next((form for form in forms if len(form) <= columns), forms[-1])
