"""Which sets are shown, by brute force; and what more parts, or dearer ones, do to them."""

from __future__ import annotations

import random
from collections.abc import Sequence
from functools import cache
from math import inf
from typing import Any

import pytest

from fuelwiz.options.figures import OptionRow, OptionsFigures
from fuelwiz.options.outcome import in_steps
from fuelwiz.options.prices import Bill
from fuelwiz.options.search import Asked
from fuelwiz.options.set_of_parts import Verdict

from .files import BEGINNING, any_parts, build, found, pump, search
from .test_brute_force import any_build

FILES = 100
Set = tuple[Verdict, Bill]


def goals(one: Set) -> tuple[float, ...]:
    """Price, amps, weight, spare and the next goal, all to be small; what is not known is worst."""
    verdict, bill = one
    return (
        0.0 if bill.price is None else bill.price,
        inf if verdict.current_A is None else verdict.current_A,
        inf if bill.weight_kg is None else bill.weight_kg,
        -(verdict.margin if verdict.margin is not None else -inf),
        float(verdict.next_works is not True),
    )


def unbeaten(sets: Sequence[Set]) -> list[tuple[float, ...]]:
    """The front of the priced and that of the others."""
    fronts = []
    for priced in (True, False):
        among = {goals(one) for one in sets if (one[1].price is not None) is priced}
        fronts += [
            mine
            for mine in among
            if not any(
                other != mine and all(o <= m for o, m in zip(other, mine, strict=True)) for other in among
            )
        ]
    return fronts


def test_the_labels_and_the_front_are_those_of_brute_force() -> None:
    pick = random.Random(2204)
    rows = 0
    for _ in range(FILES):
        looked = search(any_build(pick), any_parts(pick), Asked())
        sets = [
            (verdict, looked.prices.bill(verdict))
            for some in looked.verdicts()
            for verdict in some
            if not verdict.limits
        ]
        *_, progress = in_steps(looked)
        shown = progress.figures().rows
        assert progress.found.works == len(sets) and len(shown) <= 7
        by_label = {label: row for row in shown for label in row.labels}
        priced = [bill.price for _, bill in sets if bill.price is not None]
        assert ("cheapest" in by_label) is bool(priced)
        if priced:
            assert by_label["cheapest"].price == min(priced)
        amps = [verdict.current_A for verdict, _ in sets if verdict.current_A is not None]
        if amps:
            assert by_label["least current"].current_A == min(amps)
        weights = [bill.weight_kg for _, bill in sets if bill.weight_kg is not None]
        if weights:
            assert by_label["lightest"].weight_kg == min(weights)
        if sets:
            assert by_label["most to spare"].margin == max(
                verdict.margin for verdict, _ in sets if verdict.margin is not None
            )
        carried = [bill for verdict, bill in sets if verdict.next_works]
        assert ("carries the next goal" in by_label) is bool(carried)
        own = [verdict for verdict, _ in sets if verdict.parts.searched.pump.own]
        assert ("keeps the pump" in by_label) is bool(own)
        front = unbeaten(sets)
        for shown_set in progress.shown():
            if not shown_set.row.labels:
                assert goals(next(one for one in sets if same(one, shown_set.row))) in front
        if len(shown) < 7:
            assert {goals(one) for one in sets if any(same(one, row) for row in shown)} >= set(front)
        rows += len(shown)
    assert rows > FILES


def same(one: Set, row: OptionRow) -> bool:
    """Whether a row is that set."""
    searched = one[0].parts.searched
    size = "fixed" if searched.size is None else searched.size.text
    told = (searched.pump.name, searched.count, searched.base_pa, size)
    return told == (row.pump, row.count, row.base_Pa, size if row.size == "fixed" else row.size)


def best(figures: OptionsFigures) -> tuple[float, float, float]:
    """The lowest price, the most to spare and the least current of all that is shown."""
    prices = [row.price for row in figures.rows if row.price is not None]
    margins = [row.margin for row in figures.rows if row.margin is not None]
    amps = [row.current_A for row in figures.rows if row.current_A is not None]
    return min(prices, default=inf), -max(margins, default=-inf), min(amps, default=inf)


def test_a_dearer_part_never_enters_the_cheapest() -> None:
    pick = random.Random(2205)
    compared = 0
    for _ in range(FILES):
        built, parts = any_build(pick), any_parts(pick)
        dearer = [
            {**pump, "name": f"dear {pump['name']}", "price": pump["price"] + 25, "owned": False}
            for pump in parts["pump"]
            if "price" in pump
        ]
        before, after = found(built, parts), found(built, {**parts, "pump": [*parts["pump"], *dearer]})
        cheapest = [row for row in after.rows if "cheapest" in row.labels]
        if cheapest:
            assert not cheapest[0].pump.startswith("dear ")
            assert cheapest[0].price == best(before)[0]
            compared += 1
    assert compared > 30


@cache
def without_more() -> list[tuple[dict[str, Any], dict[str, Any], dict[str, Any], OptionsFigures]]:
    """A build, its parts file, another to take more parts from, and what it comes to without them."""
    pick = random.Random(2206)
    told = [(any_build(pick), any_parts(pick), any_parts(pick)) for _ in range(FILES)]
    return [(built, parts, more, found(built, parts)) for built, parts, more in told]


def another(kind: str, parts: dict[str, Any], more: dict[str, Any]) -> list[dict[str, Any]]:
    """The parts of a kind of a file, and those of another that it does not have yet."""
    if kind == "pump":
        return [*parts[kind], *({**pump, "name": f"more {pump['name']}"} for pump in more[kind])]
    if kind == "hose":
        had = {hose["size"] for hose in parts[kind]}
        return [*parts[kind], *(hose for hose in more[kind] if hose["size"] not in had)]
    return [*parts[kind], *more.get(kind, ())]


@pytest.mark.parametrize(
    ("kind", "files", "often"),
    [("pump", FILES, 10), ("regulator", 80, 3), ("injectors", 80, 3), ("hose", FILES, 10)],
)
def test_one_more_part_never_makes_the_best_worse(kind: str, files: int, often: int) -> None:
    """Pumps, regulators and feed hose are searched, and of the injectors that do the cheapest is taken: more of them
    leave every set that there was, or make it cheaper. A kind of which the file has none is another matter: its first
    part makes the kind one that is bought.

    A hose may be one for the return too, and the smallest that is at ease is taken there, whatever it costs: so the
    lowest price is held only where the cheapest set goes home in the same size. Of wire the thinnest that does is
    taken, so one more may take spare away: the next test.
    """
    better = 0
    for built, parts, more, before in without_more()[:files]:
        if not parts.get(kind):
            continue
        after = found(built, {**parts, kind: another(kind, parts, more)})
        price, *rest = (now <= then for now, then in zip(best(after), best(before), strict=True))
        assert all(rest)
        assert price or (kind == "hose" and other_return(before, after))
        assert after.works >= before.works and after.tried >= before.tried
        better += best(after) < best(before)
    assert better >= often


def other_return(before: OptionsFigures, after: OptionsFigures) -> bool:
    """Whether the set that was the cheapest goes home in another size now, or is shown no more."""
    (cheapest,) = (row for row in before.rows if "cheapest" in row.labels)
    return all(row.return_size != cheapest.return_size or not same_set(row, cheapest) for row in after.rows)


def same_set(row: OptionRow, other: OptionRow) -> bool:
    return (row.pump, row.count, row.base_Pa, row.size) == (
        other.pump,
        other.count,
        other.base_Pa,
        other.size,
    )


def test_one_more_wire_may_take_spare_away() -> None:
    """The thinnest that loses half a volt at most and carries the fuse is the one to buy: it loses more than a thicker
    one that was the only one before."""
    built = build(wiring={"supply": "13.8 V", "length": "14 ft"})
    thick, thin = {"wire": "8 AWG", "price": 2}, {"wire": "10 AWG", "price": 1}
    pumps = [pump(100, name="pump A", price=100, current=[["40 psi", "9 A"], ["80 psi", "15 A"]], most=1)]
    parts = {**BEGINNING, "pump": pumps}
    one, two = (found(built, {**parts, "wire": wires}) for wires in ([thick], [thick, thin]))
    assert {row.wire for row in one.rows} == {"8 AWG"} and {row.wire for row in two.rows} == {"10 AWG"}
    assert best(two)[1] > best(one)[1]
