"""What of the parts on the car need not be bought: those that do the job, today and at the next goal."""

from __future__ import annotations

from collections.abc import Collection
from typing import TYPE_CHECKING

from fuelwiz.advice.changes import change_noun
from fuelwiz.advice.limits.returning import regulator_makes_most
from fuelwiz.advice.part_words import rated_below
from fuelwiz.advice.sections.purchase import BY_CHANGE, STAYS, YOURS, Purchase
from fuelwiz.advice.subject import Subject
from fuelwiz.advice.ways import steps_out, way_out
from fuelwiz.advice.wire_words import is_thick_enough, wire_area_m2
from fuelwiz.terms import ON_THE_CAR

if TYPE_CHECKING:
    from collections.abc import Sequence

    from fuelwiz.sizing.figures import Figures, NextFigures
    from fuelwiz.sizing.vocabulary import Change, Limit

BY_PART: dict[str, Change] = {part: change for change, part in BY_CHANGE.items()}
LIMITS: dict[str, frozenset[Limit]] = {
    "pump": frozenset(("pump", "relief")),
    "injectors": frozenset(("injectors",)),
    "feed line": frozenset(("velocity", "delivery", "sag", "pump")),
    "return line": frozenset(("return",)),
    "regulator": frozenset(("return",)),
    "wire": frozenset(("fuse",)),
}
"""What is wrong where a part may be to blame."""
MANY = ("injectors",)


def on_the_car(subject: Subject) -> set[str]:
    """What the builder ticked as fitted, as the list calls it."""
    return {ON_THE_CAR[name] for name in subject.session.fitted.has}


def still_to_buy(subject: Subject, rows: Sequence[Purchase]) -> list[Purchase]:
    """The rows without parts on the car that do; one that does not is to be bought in its place."""
    there = on_the_car(subject)
    found = (_beside_it(subject, item) if item.part in there else item for item in rows)
    return [item for item in found if item is not None]


def _beside_it(subject: Subject, item: Purchase) -> Purchase | None:
    """A row of a part on the car: what takes its place, or what the next goal needs; None where it is enough."""
    if fails_today(subject, item):
        it = "those" if item.part in MANY else "the one"
        return item._replace(today=f"{item.today}, in place of {it} on the car")
    if item.then and _fails_then(subject, item.part):
        return item._replace(today=STAYS)
    return None


def by_the_way_out(subject: Subject, item: Purchase) -> Purchase:
    """A row with what the way out buys, where by its own figures the part would pass or the row is silent."""
    figures, following = subject.figures, subject.next
    change = BY_PART.get(item.part)
    if change is None:
        return item
    today, then = item.today, item.then
    if item.passes:
        today = of_the_way_out(subject, change, figures) or today
    if following is not None:
        then = then or of_the_way_out(subject, change, following)
    return item._replace(today=today, then=then)


def fails_today(subject: Subject, item: Purchase) -> bool:
    """Whether a part on the car does not do for this goal, and what is to be done about it buys that part."""
    figures = subject.figures
    if item.today.startswith(YOURS):
        return False
    if item.part in {"filter", "strainer"} and BY_PART.get(item.part) not in way_out(figures):
        return rated_below(subject, item.part, figures.demand.volume_flow_m3_s)
    to_blame = _to_blame(subject, item.part, figures.verdict.limits, way_out(figures))
    if item.part in {"feed line", "return line"}:
        return to_blame and _another_size(subject, item)
    return to_blame


def _to_blame(subject: Subject, part: str, limits: Collection[Limit], way: Collection[Change]) -> bool:
    """Whether a part is what has to go: by the way out, else by what is wrong."""
    if way:
        return BY_PART.get(part) in way
    if not LIMITS.get(part, frozenset()).intersection(limits):
        return False
    if part in {"regulator", "return line"}:
        return regulator_makes_most(subject) == (part == "regulator")
    return True


def _another_size(subject: Subject, item: Purchase) -> bool:
    """Whether a row names another size of line than the one on the car."""
    line = subject.figures.return_line
    size = subject.figures.verdict.size if item.part == "feed line" else "" if line is None else line.size
    return size not in item.today.split()


def _fails_then(subject: Subject, part: str) -> bool:
    """Whether a part on the car is not enough for the next goal."""
    following = subject.next
    if following is None:
        return False
    if part == "filter":
        ratio = following.target_flow_m3_s / subject.figures.demand.target_flow_m3_s
        return rated_below(subject, part, ratio * subject.figures.demand.volume_flow_m3_s)
    if part == "feed line" and not way_out(following):
        return following.recommended not in {None, subject.figures.verdict.size} and bool(
            LIMITS[part].intersection(following.limits)
        )
    if part == "wire":
        pump = "pump" in (*following.limits, *way_out(following))
        wiring, wanted = subject.session.wiring, wire_area_m2(subject, following.wiring)
        if wiring is None or wiring.wire is None or wanted is None:
            return pump
        return pump or not is_thick_enough(wiring.wire, wanted)
    return _to_blame(subject, part, following.limits, way_out(following))


def of_the_way_out(subject: Subject, change: Change, found: Figures | NextFigures) -> str:
    """What the way out calls a change, where it has that change."""
    step = next((one for one in steps_out(found) if one.change == change), None)
    return "" if step is None else change_noun(subject, step)
