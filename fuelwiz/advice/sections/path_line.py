"""A line of the path: what is said of one part."""

from __future__ import annotations

from typing import Literal, NamedTuple

from fuelwiz.sizing.vocabulary import Limit

Stem = Literal["", "│", "├"]


class PathLine(NamedTuple):
    """One part: how it hangs on the way, its name, what was given, its velocity, and what comes out at the goal.

    `limits` are those that it causes; `assumed` where it rests on a value that was not given; `gap` where nothing is
    known of it yet; `short` is what was given in fewer words.
    """

    stem: Stem
    name: str
    given: str
    velocity: str = ""
    at_the_goal: str = ""
    limits: tuple[Limit, ...] = ()
    assumed: bool = False
    gap: bool = False
    short: str = ""


def gap(stem: Stem, name: str, what: str) -> PathLine:
    """A part of which nothing is known yet, with the question's name."""
    return PathLine(stem, name, f"not given yet: {what}", gap=True, short="not given yet")
