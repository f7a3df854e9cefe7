"""A size that is highlighted and is not the one that the build has: said wherever figures of it show."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result


def looked_at(result: Result, highlighted: str) -> str:
    """That a size is only looked at, and which one is not; nothing where it is the one of the answer."""
    verdict = result.figures.verdict
    if highlighted == verdict.size or result.figures.row(highlighted) is None:
        return ""
    stands = f"{verdict.size} is chosen" if result.figures.chosen is not None else f"judged at {verdict.size}"
    return f"{highlighted}, looked at; {stands}"
