"""Candidate sizes of a line: what bore each gives its runs, in which order, and which are the same."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.facts import INCH_M, NEAR
from fuelwiz.session import Feed, Run, Size, bore_of_m
from fuelwiz.sizing.vocabulary import FIXED

FIXED_LINE = (None,)
"""The rows of a line whose every run keeps a bore of its own."""


def nominal_bore_m(size: Size) -> float | None:
    """The bore that people quote, dash/16 in; None for a size that is a length."""
    return None if size.dash is None else size.dash / 16 * INCH_M


def follows(run: Run) -> bool:
    """Whether a run takes its bore from the candidate."""
    return run.size is None and run.bore is None


def run_bore_m(run: Run, candidate: Size | None) -> float:
    """The bore of a run: its own, that of its own size, or the candidate's."""
    if run.bore is not None:
        return run.bore
    size = run.size or candidate
    assert size is not None
    return bore_of_m(size, run.hose, run.wall)


def run_nominal_bore_m(run: Run, candidate: Size | None) -> float | None:
    """dash/16 in of a run's size; None where it gives its bore, or its size is a length."""
    size = run.size or candidate
    return None if run.bore is not None or size is None else nominal_bore_m(size)


def candidates(sizes: Sequence[Size], chosen: Size | None, runs: Sequence[Run]) -> tuple[Size | None, ...]:
    """The rows: by bore, smallest first, the chosen size among them, one for each bore.

    Where no run follows there is one row, None.
    """
    first = next((run for run in runs if follows(run)), None)
    return FIXED_LINE if first is None else candidates_in_hose(sizes, chosen, first.hose, first.wall)


def candidates_in_hose(
    sizes: Sequence[Size], chosen: Size | None, hose: str, wall_m: float | None = None
) -> tuple[Size, ...]:
    """The same in one kind of hose, the wall that of a tube."""
    asked = [*sizes, *([chosen] if chosen else [])]
    rows: list[tuple[float, Size]] = []
    for size in asked:
        bore = bore_of_m(size, hose, wall_m)
        twin = next((i for i, (other, _) in enumerate(rows) if abs(other - bore) <= NEAR * bore), None)
        if twin is None:
            rows.append((bore, size))
        elif size is chosen:
            rows[twin] = (bore, size)
    return tuple(size for _, size in sorted(rows, key=lambda row: row[0]))


def spelled(candidate: Size | None) -> str:
    """What a row is called."""
    return FIXED if candidate is None else candidate.text


def candidate_called(feed: Feed, size: str) -> Size | None:
    """The candidate of the feed whose row is called that."""
    return next(row for row in feed_candidates(feed) if spelled(row) == size)


def feed_candidates(feed: Feed) -> tuple[Size | None, ...]:
    """The rows of the feed; before any run is known a PTFE hose is meant."""
    if not feed.run:
        return candidates_in_hose(feed.sizes, feed.chosen, "ptfe")
    return candidates(feed.sizes, feed.chosen, feed.run)
