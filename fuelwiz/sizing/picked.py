"""A build at the sizes that its figures are judged at."""

from __future__ import annotations

from fuelwiz.record import record
from fuelwiz.session import Session
from fuelwiz.sizing.candidates import candidate_called
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.verdict import ReturnPick


@record
class Picked:
    """A build at its pick of feed and, where there is a return to judge, of return."""

    sized: SizedSystem
    return_pick: ReturnPick | None

    @classmethod
    def today(cls, session: Session, figures: Figures) -> Picked:
        """A session at the picks that its figures came to."""
        sized = SizedSystem(FuelSystem(session), candidate_called(session.feed, figures.verdict.size))
        line = figures.return_line
        return cls(sized, None if line is None else ReturnPick(Return(sized).candidate(line.size)))
