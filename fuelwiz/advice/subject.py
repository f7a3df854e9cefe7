"""One build as the words need it: session, figures and numbers, and the lookups that topics share."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from fuelwiz.advice.numbers import Numbers
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures, NextFigures, SizeFigures, StressFigures
from fuelwiz.sizing.vocabulary import LINE_LIMITS, Case, is_fixed
from fuelwiz.terms import fuel_name

if TYPE_CHECKING:
    from fuelwiz.measured.figures import Measured
    from fuelwiz.options.part_prices import PartPrices

ONE_LINE_WITHIN = 0.01
"""Two sizes whose bores differ by no more than this share are the same line under two names."""


@dataclass(frozen=True)
class Subject:
    """A session, its figures, what was measured of it and what its parts cost, asked in the trade's words."""

    session: Session
    figures: Figures
    measured: Measured | None = None
    prices: PartPrices | None = None

    @cached_property
    def numbers(self) -> Numbers:
        """How this build's figures are shown."""
        return Numbers.of(self.session)

    @cached_property
    def assumed(self) -> dict[str, str]:
        """Keys that were left out, and what is taken for them."""
        return {item.key: item.value for item in self.figures.assumed}

    @property
    def has_runs(self) -> bool:
        """Whether the feed line is known."""
        return bool(self.session.feed.run)

    @property
    def has_pump(self) -> bool:
        """Whether a pump is known and could be solved."""
        return self.figures.pump is not None

    @cached_property
    def pick(self) -> SizeFigures:
        """The row that the build is judged at."""
        return self.figures.pick

    @cached_property
    def line(self) -> SizeFigures | None:
        """The row of the line to fit: the chosen one where that has the same bore and does as well."""
        line, chosen = self.figures.row(self.figures.line_to_fit), self.figures.row(self.figures.chosen)
        if line is None or chosen is None or chosen.limits != line.limits:
            return line
        return chosen if _same_bore(chosen, line) else line

    @property
    def next(self) -> NextFigures | None:
        """The next goal; one below this goal, or that goal itself, is none to speak of."""
        return None if self.next_is_below or self.next_is_this else self.figures.next

    @property
    def next_is_this(self) -> bool:
        """Whether the next goal has become this one: the same power, boost and induction."""
        goal, then = self.session.goal, self.figures.next
        if then is None or goal.next_power != goal.power:
            return False
        same_boost = abs(then.boost_Pa - self.session.pressure.boost) < 1.0
        return same_boost and goal.next_induction in (None, self.session.engine.induction)

    @property
    def next_is_below(self) -> bool:
        """Whether the next goal asks for less power than this one."""
        goal = self.session.goal
        return goal.next_power is not None and goal.next_power < goal.power

    @property
    def standard_cases(self) -> tuple[StressFigures, ...]:
        """The bad days that the program asks for by itself; the builder's own stand behind them."""
        solved = self.figures.stress
        return solved[: len(solved) - len(self.session.stress.case)] if solved else ()

    def case(self, name: Case) -> StressFigures | None:
        """One of the program's own bad days; None where it does not apply or is not solved yet."""
        return next((case for case in self.standard_cases if case.case == name), None)

    @property
    def at_rail(self) -> bool:
        """Whether the feed carries all that the pump gives."""
        return self.session.pressure.regulator == "rail"

    @property
    def at_tank(self) -> bool:
        """Whether the regulator sits before the feed line."""
        return self.session.pressure.regulator == "tank"

    @property
    def pump_word(self) -> str:
        """The pump or pumps, as a subject."""
        return "pumps" if self.session.pump is not None and self.session.pump.count > 1 else "pump"

    @property
    def one_point(self) -> bool:
        """Whether a curve of the pump is one figure alone, the rest of it guessed."""
        pump = self.session.pump
        return pump is not None and any(len(curve.points) == 1 for curve in pump.curve)

    @property
    def volts_assumed(self) -> bool:
        """Whether the volts at the pump are the fallback."""
        return "pump.volts" in self.assumed

    @cached_property
    def fuel(self) -> str:
        """The fuel by the name that people use."""
        return fuel_name(self.session.fuel.kind, self.session.fuel.ethanol)

    def neighbor(self, row: SizeFigures, step: int) -> SizeFigures | None:
        """The next size up (1) or down (-1) that is another bore, None at the end of the list."""
        at = self.figures.sizes.index(row)
        beyond = self.figures.sizes[at + 1 :] if step > 0 else self.figures.sizes[:at][::-1]
        return next((other for other in beyond if not _same_bore(other, row)), None)

    def is_too_small(self, row: SizeFigures) -> bool:
        """Whether a size is refused and a larger line would cure it: its line fails, or a larger size works."""
        if not row.limits:
            return False
        if set(LINE_LIMITS).intersection(row.limits):
            return True
        return any(other.bore_m > row.bore_m and not other.limits for other in self.figures.sizes)

    def smallest_with_working_line(self) -> SizeFigures | None:
        """The smallest size whose line works."""
        return next((row for row in self.figures.sizes if row.line_works), None)


def _same_bore(row: SizeFigures, other: SizeFigures) -> bool:
    """Whether two sizes are one line under two names."""
    return abs(row.bore_m - other.bore_m) <= ONE_LINE_WITHIN * other.bore_m


def size_label(size: str) -> str:
    """A size as the subject of a sentence; the one row of a line that no candidate changes is the line on the car."""
    return "the line you have" if is_fixed(size) else size


def with_article(size: str) -> str:
    """A size after "a" or "an", as it is read aloud: a -6, an 8 mm."""
    return f"an {size}" if size.startswith(("8", "11", "18")) else f"a {size}"


def capitalized(sentence: str) -> str:
    """A sentence with its first letter large."""
    return sentence[:1].upper() + sentence[1:]


def listed(words: list[str]) -> str:
    """Words in a row: "a, b and c"."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
