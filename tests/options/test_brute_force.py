"""The search held to brute force: each set made as a build's file, read and judged from the beginning, all of them."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from typing import Any

import pytest

from fuelwiz.options.as_build import as_build
from fuelwiz.options.grid import BASES
from fuelwiz.options.search import Asked, Search
from fuelwiz.options.set_of_parts import Verdict
from fuelwiz.session import validate
from fuelwiz.sizing import first_figures, with_slower_parts
from fuelwiz.sizing.figures import Figures

from .files import any_parts, build, search

FILES = 300
SMALL_FEED = ["-6", "-8", "-10"]
PSI = 6894.757293168361  # NIST SP 811, table B.8


def any_build(pick: random.Random) -> dict[str, Any]:
    """A sample build with a few things changed."""
    told = build(pick.choice(["gravel-four", "strip-twins", "winter-project", "slalom-methanol"]))
    told["goal"] = {
        **told["goal"],
        "power": f"{pick.randint(250, 900)} hp",
        "next_power": f"{pick.randint(400, 1000)} hp",
    }
    told["feed"] = {**told["feed"], "sizes": SMALL_FEED}
    told["feed"].pop("chosen", None)
    if pick.random() < 0.5:
        told["feed"]["chosen"] = pick.choice(SMALL_FEED)
    if pick.random() < 0.5:
        told["pressure"] = {**told["pressure"], "base": pick.choice(["3 bar", "40 psi", "58 psi"])}
    if pick.random() < 0.5:
        told["wiring"] = {"supply": "13.8 V", "length": "14 ft", **pick.choice([{}, {"wire": "12 AWG"}])}
        told.get("pump", {}).pop("volts", None)
    if pick.random() < 0.3:
        told.pop("pump", None)
        told.pop("bench", None)
    told["fitted"] = {}
    return told


@dataclass(frozen=True)
class Judged:
    """A set as brute force has it."""

    key: tuple[Any, ...]
    limits: frozenset[str]
    margin: float


def asked_limits(figures: Figures, asked: Asked) -> frozenset[str]:
    """The limits of today; where there are none, those at the next goal and on the bad days, where asked."""
    limits = set(figures.verdict.limits)
    if limits:
        return frozenset(limits)
    if asked.next_goal and figures.next is not None:
        limits |= set(figures.next.limits)
    if asked.bad_days:
        limits |= {limit for case in figures.stress for limit in case.limits}
    return frozenset(limits)


def judged_from_its_file(
    looked: Search, verdict: Verdict, built: dict[str, Any], parts: dict[str, Any]
) -> Judged:
    """A set, solved parts and all, typed into the build's file and judged as a file is, as far as is asked."""
    session = validate(as_build(built, looked.session, parts, looked.parts, verdict.parts), "a set")
    figures = first_figures(session)
    if not figures.verdict.limits and (looked.asked.next_goal or looked.asked.bad_days):
        figures = with_slower_parts(session, figures)
    row = figures.row(figures.verdict.size)
    assert row is not None and row.least is not None
    return Judged(key_of(verdict), asked_limits(figures, looked.asked), row.least.margin)


def key_of(verdict: Verdict) -> tuple[Any, ...]:
    searched = verdict.parts.searched
    size = None if searched.size is None else searched.size.text
    return searched.pump.name, searched.count, round(searched.base_pa), size


def grid_by_hand(built: dict[str, Any], parts: dict[str, Any]) -> Iterator[tuple[Any, ...]]:
    """Every pump in every number, base pressure and size, by the text of both files alone."""
    session = validate(built, "a build")
    regulator = (parts.get("regulator") or [{}])[0]
    bases = [session.pressure.base]
    if "set_range" in regulator:
        low, high = (float(end.split()[0]) * PSI for end in regulator["set_range"])
        for base in BASES:
            if low <= base <= high and all(abs(base - other) > 0.1 * PSI for other in bases):
                bases.append(base)
    own = built.get("pump")
    pumps = [(own.get("name") or "the pump you have", max(2, own.get("count", 1)))] if own else []
    pumps += [
        (each["name"], each.get("most", 2)) for each in parts["pump"] if each.get("alcohol") is not False
    ]
    pumps_and_counts = [(name, count) for name, most in pumps for count in range(1, most + 1)]
    had = {hose["size"] for hose in parts["hose"]}
    for (name, count), base, size in product(pumps_and_counts, bases, SMALL_FEED):
        if size in had:
            yield name, count, round(base), size


def test_every_set_is_looked_at_and_judged_as_its_file_is() -> None:
    """300 small files with any of the asked: the same sets, the same limits, the same margins."""
    pick = random.Random(2201)
    seen = Counter[str]()
    for _ in range(FILES):
        built, parts = any_build(pick), any_parts(pick)
        asked = Asked(pick.random() < 0.4, pick.random() < 0.4)
        looked = search(built, parts, asked)
        verdicts = [verdict for some in looked.verdicts() for verdict in some]
        by_hand = list(grid_by_hand(built, parts))
        refused = [pump for pump in parts["pump"] if pump.get("alcohol") is False]
        if not looked.refused:
            by_hand += [
                key
                for key in grid_by_hand(
                    built, {**parts, "pump": [{**pump, "alcohol": True} for pump in refused]}
                )
                if key[0] in {pump["name"] for pump in refused}
            ]
        assert sorted(map(key_of, verdicts), key=str) == sorted(by_hand, key=str)
        for verdict in pick.sample(verdicts, min(4, len(verdicts))):
            judged = judged_from_its_file(looked, verdict, built, parts)
            assert set(verdict.limits) == judged.limits
            assert verdict.margin == pytest.approx(judged.margin, abs=1e-9)
            seen["works" if not verdict.limits else "fails"] += 1
            seen.update(verdict.limits)
    assert min(seen["works"], seen["fails"]) > 150 and len(seen) > 5
