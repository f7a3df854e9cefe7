"""Return, wire and injectors, which are solved for: none that comes before in their order would do."""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import dataclass, replace
from typing import Any

from fuelwiz.options.as_build import as_build
from fuelwiz.options.outcome import in_steps
from fuelwiz.options.parts_file import InjectorsOnOffer
from fuelwiz.options.search import Asked, Search
from fuelwiz.options.set_of_parts import Verdict
from fuelwiz.session import validate
from fuelwiz.sizing import first_figures
from fuelwiz.sizing.figures import Figures

from .files import any_parts, build, search
from .test_brute_force import any_build

FILES = 60
MOST_LOSS_V = 0.5  # common practice, no source


@dataclass(frozen=True)
class Solved:
    """A set, with both files."""

    looked: Search
    built: dict[str, Any]
    parts: dict[str, Any]
    verdict: Verdict

    def figures(self, **other: Any) -> Figures:
        """What its build comes to today, with another part in its place."""
        chosen = replace(self.verdict.parts, **other)
        plain = as_build(self.built, self.looked.session, self.parts, self.looked.parts, chosen)
        return first_figures(validate(plain, "a set"))

    def has_its_return(self) -> bool:
        """Whether a return was solved for; it is the first at ease, else that holds: the car's, then by size."""
        line, back = self.looked.session.return_line, self.figures().return_line
        if line is None or back is None or back.size == "fixed":
            return False
        had = {hose.size.text for hose in self.looked.parts.hose}
        on_the_car = None if line.chosen is None else line.chosen.text
        sizes = [size for size in back.sizes if size.size in had] or list(back.sizes)
        sizes = [size for size in back.sizes if size.size == on_the_car] + [
            size for size in sizes if size.size != on_the_car
        ]
        first = next((size for size in sizes if size.at_ease), None)
        first = first or next((size for size in sizes if size.holds), sizes[-1])
        assert first.size == self.verdict.parts.return_size.text
        return True

    def has_its_wire(self) -> bool:
        """Whether a wire was; it is the first that does: the car's, then by area, else the thickest."""
        wiring, figures = self.looked.session.wiring, self.figures().wiring
        if wiring is None or wiring.length is None or figures is None or figures.current_A is None:
            return False
        tried = [wiring.wire] if wiring.wire is not None else []
        tried += sorted(offer.wire for offer in self.looked.parts.wire)
        first = next((area for area in tried if self._does(area, 2 * wiring.length)), max(tried))
        assert abs(self.verdict.parts.wire_m2 / first - 1) < 1e-6
        return True

    def _does(self, area_m2: float, loop_m: float) -> bool:
        """Whether a wire loses half a volt at most and carries its fuse, by the figures of its build.

        Copper at 40 degC: 1.72e-8 ohm m at 20 degC and 0.393 % more for each K (IACS).
        """
        wiring = self.figures(wire_m2=area_m2).wiring
        ohms = 1.72e-8 * (1 + 0.00393 * 20) * loop_m / area_m2
        carries = wiring.fuse_A is not None and wiring.fuse_A <= wiring.ampacity_A
        return carries and wiring.current_A * ohms <= MOST_LOSS_V

    def has_its_injectors(self) -> bool:
        """Whether injectors were; they are the car's where they do, else the cheapest that do."""
        offers = sorted(self.looked.parts.injectors, key=lambda offer: (*price(offer), offer.rated_flow))
        if not offers:
            return False
        if self.looked.session.injectors is not None and self._pass(None):
            assert self.verdict.parts.injectors is None
            return True
        first = next((offer for offer in offers if self._pass(offer)), None)
        assert self.verdict.parts.injectors is first or "injectors" in self.verdict.limits
        return True

    def _pass(self, injectors: InjectorsOnOffer | None) -> bool:
        return "injectors" not in self.figures(injectors=injectors).verdict.limits


def price(offer: InjectorsOnOffer) -> tuple[bool, float]:
    """Owned is free, and what has no price comes last."""
    return (False, 0.0) if offer.owned else (offer.price is None, offer.price or 0.0)


def test_what_is_solved_for_is_the_first_that_does() -> None:
    pick = random.Random(2202)
    seen = Counter[str]()
    for _ in range(FILES):
        built, parts = any_build(pick), any_parts(pick)
        looked = search(built, parts)
        verdicts = [verdict for some in looked.verdicts() for verdict in some]
        for verdict in pick.sample(verdicts, min(3, len(verdicts))):
            solved = Solved(looked, built, parts, verdict)
            seen["return"] += solved.has_its_return()
            seen["wire"] += solved.has_its_wire()
            seen["injectors"] += solved.has_its_injectors()
    assert min(seen["return"], seen["wire"], seen["injectors"]) > 20


def test_on_a_bad_day_they_do_too() -> None:
    """A return that is at ease today alone gives way to one that is at ease on the bad days as well."""
    pick = random.Random(2203)
    other = 0
    for _ in range(FILES):
        built, parts = any_build(pick), any_parts(pick)
        *_, today = in_steps(search(built, parts))
        *_, bad = in_steps(search(built, parts, Asked(bad_days=True)))
        assert bad.found.works <= today.found.works
        assert bad.sets == today.sets
        other += bad.found.works < today.found.works
    assert other > 10


def test_what_is_on_the_car_stays_where_it_does() -> None:
    """A thinner wire and a smaller return would do, and would have to be bought."""
    *_, progress = in_steps(search(build(), {"format": 1, "kind": "parts", "wire": [{"wire": "14 AWG"}]}))
    assert {shown.row.wire for shown in progress.shown()} == {"10 AWG"}
    assert {shown.row.return_size for shown in progress.shown()} == {"-6"}
