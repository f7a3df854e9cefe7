"""How the live pane shares its lines out: to the answer, the table, its words and the pictures under it."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.record import record
from fuelwiz.wizard.live.explain import EXTRA_ROWS
from fuelwiz.wizard.live.sizes import header_rows
from fuelwiz.wizard.screen_layout import NARROW_BELOW

MOST_SIZES = 6
TALL = 18  # lines from which answer and explanation get more than their least
PICTURE = 10  # lines that a picture under the table wants
LADDER = 12  # lines of the ladder where the curves stand under it
WHOLE_ANSWER, NARROW_ANSWER = 4, 3
BESIDE_FROM = 76  # cells of a pane from which two pictures stand side by side
LABELS = 5  # of the explanation
MORE_WORDS = 2  # lines that the explanation gets beyond its labels before the pictures get more


@record
class Layout:
    """Lines of each part, from the top; the rule above them always has one."""

    answer: int
    table: int
    gap: int  # between the table and its words
    explanation: int
    pictures: tuple[int, ...]  # under the table: none, one, or ladder and curves
    rest: int  # from under the answer to the bottom: what a view has that takes the table's place

    @property
    def table_stays(self) -> bool:
        """Whether the table shows in every view."""
        return bool(self.pictures)

    def with_words(self, wanted: int, free: int) -> Layout:
        """The same with the lines that the explanation still wants, taken from those that nothing stands in.

        Args:
            wanted: lines that the explanation would take.
            free: lines at the end of the first picture that it leaves empty.
        """
        lack = max(wanted - self.explanation, 0)
        of_picture = min(lack, free)
        of_gap = min(lack - of_picture, self.gap)
        pictures = (self.pictures[0] - of_picture, *self.pictures[1:]) if self.pictures else ()
        words = self.explanation + of_picture + of_gap
        return replace(self, gap=self.gap - of_gap, explanation=words, pictures=pictures)


def layout_for(
    width: int, height: int, sizes: int, focused: bool, wanted: int = LABELS + MORE_WORDS
) -> Layout:
    """The parts of a pane of that many cells.

    Args:
        width: of the pane.
        height: of the pane.
        sizes: that there are to choose from.
        focused: whether the table has the keys and says more.
        wanted: lines that the explanation would take.
    """
    tall = height >= TALL + (EXTRA_ROWS if focused else 0)
    answer = NARROW_ANSWER if 60 <= width < NARROW_BELOW and not tall else WHOLE_ANSWER
    table = header_rows(width) + min(sizes, MOST_SIZES)
    rest = max(height - 1 - answer, 0)
    left = rest - table
    words = min(left, (LABELS if tall else 2) + (EXTRA_ROWS if focused else 0))
    under = left - words - 2 if tall else 0
    spread = min(max(under - LADDER, 0), max(wanted - words, 0), MORE_WORDS)
    words, under = words + spread, under - spread
    if under >= PICTURE + LADDER + 1:
        pictures: tuple[int, ...] = (LADDER, under - LADDER - 1)
    else:
        pictures = (under,) if under >= PICTURE else ()
    gap = 1 if pictures or left > words else 0
    if not pictures:
        words = max(left - gap, 0)
    return Layout(answer, table, gap, words, pictures, rest)
