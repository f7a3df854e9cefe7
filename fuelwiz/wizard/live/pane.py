"""The live pane: the answer, the table and the pictures of one Result, always in sight."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.sections.captions import PART_CAPTIONS
from fuelwiz.wizard.live.answer import answer_lines, held_lines
from fuelwiz.wizard.live.explain import explanation_lines, rows_wanted
from fuelwiz.wizard.live.layout import BESIDE_FROM, Layout, layout_for
from fuelwiz.wizard.live.looked_at import looked_at
from fuelwiz.wizard.live.parts import part_lines
from fuelwiz.wizard.live.rule import (
    CEILINGS,
    CHANGES,
    CURVES,
    HOW_SURE,
    LADDER,
    LOG,
    OF_A_SIZE,
    PATH,
    SIZES,
    rule_line,
    views_of,
)
from fuelwiz.wizard.live.sizes import size_lines
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import Plot
    from fuelwiz.sizing.part_figures import PathPart
    from fuelwiz.sizing.vocabulary import Change
    from fuelwiz.wizard.look import Look

CurveSource = Callable[["Result", str], "Plot | None"]
WaySource = Callable[["Result", str], "tuple[PathPart, ...]"]
NOTHING_YET = "Type the power that you want: the answer starts with it."
MORE_BELOW = "more below: the arrows"
MORE_BEHIND_F6 = "more below: F6, then the arrows"
MORE_OF_PART = "more below: PgDn"


class LivePane(Painted):
    """Draws a Result line by line, and sends the terminal only the cells that changed."""

    DEFAULT_CSS = "LivePane { width: 1fr; height: 1fr; }"

    def __init__(
        self,
        look: Look,
        curves: CurveSource | None = None,
        ways: WaySource | None = None,
        *,
        id: str | None = None,
    ) -> None:
        super().__init__(look, id=id)
        self.then: Result | None = None  # what a what-if is tried against
        self.view = SIZES
        self.highlighted = ""
        self.notes: tuple[str, ...] = ()
        self.table_focused = False
        self.scrolled = 0
        self._room = 1  # lines of a view that is read, as last painted
        self.about = ""
        self._read = (SIZES, "")  # view and step that have been scrolled
        self.change = 0  # which of the changes is highlighted
        self.all_names = False
        self.shows_sizes = self._shows_part = False
        self.part_scrolls = False  # whether there is more to read of a step's own part
        self._curves = curves
        self._ways = ways
        self._result: Result | None = None
        self._held: str | None = None

    def show(
        self, result: Result | None, highlighted: str, *, held: str | None = None, view: str = SIZES
    ) -> None:
        """Show a result; `held` says why the answer stands still, where it does."""
        if (view, self.about) != self._read:
            self.scrolled, self._read, self.part_scrolls = 0, (view, self.about), False
        self._result, self._held = result, held
        self.highlighted, self.view = highlighted, view
        self.repaint()

    def note(self, *notes: str) -> None:
        """Put these at the right end of the rule, as far as they fit."""
        self.notes = notes
        self.repaint()

    def scroll_lines(self, lines: int) -> None:
        """Move a view that has more lines than fit."""
        self.scrolled = max(self.scrolled + lines, 0)
        self.repaint()

    def scroll_page(self, way: int) -> None:
        """Move such a view by what fits, less a line to go on from."""
        self.scroll_lines(max(self._room - 1, 1) * way)

    @property
    def highlighted_change(self) -> Change | None:
        """The change that is highlighted among those that could be made."""
        offered = self._offered_changes()
        return offered[min(self.change, len(offered) - 1)] if offered else None

    def _offered_changes(self) -> tuple[Change, ...]:
        if self._result is None:
            return ()
        from fuelwiz.wizard.live.changes import offered_changes

        return offered_changes(self._result)

    def highlight_change(self, step: int) -> None:
        """Highlight a change further down, or up."""
        offered = self._offered_changes()
        self.change = min(max(self.change + step, 0), max(len(offered) - 1, 0))
        self.repaint()

    def painted(self, area: Area) -> list[Strip]:
        """All lines of the view as it stands."""
        self._shows_part = self.part_scrolls = False
        if self._result is None:
            why = held_lines(self._held, area) if self._held else area.paragraph(NOTHING_YET)
            return area.filled([self._rule(area), *why])
        result = self._result
        sizes, focused = len(result.figures.sizes), self._sizes_focused
        wanted = rows_wanted(result, self.highlighted, area, focused)
        layout = layout_for(area.width, area.rows, sizes, focused, wanted)
        look = self.look.grayed if self._held is not None else self.look
        answer = answer_lines(result, area.high(layout.answer), self._held)
        body = self._body(result, layout, wanted, Area(look, area.width, layout.rest))
        return area.filled([self._rule(area), *answer, *body])

    def _rule(self, area: Area) -> Strip:
        """The line above it all; what it says is shown goes by what is."""
        caption = PART_CAPTIONS[self.about] if self._shows_part else ""
        views = views_of(self._result, self.view)
        return rule_line(
            self.view,
            self.notes,
            area,
            views,
            all_names=self.all_names,
            caption=caption,
            looked_at=looked_at(self._result, self.highlighted) if self._result and self.shows_a_size else "",
        )

    @property
    def shows_a_size(self) -> bool:
        """Whether what is shown goes by the highlighted size: the table of sizes is there, or a picture of one."""
        return self.view in OF_A_SIZE or (self.shows_sizes and not self._shows_part)

    @property
    def _sizes_focused(self) -> bool:
        """Whether the keys go to the table of sizes, and not to the view beside it."""
        return self.table_focused and self.view != CHANGES

    def _body(self, result: Result, layout: Layout, wanted: int, area: Area) -> list[Strip]:
        self.shows_sizes = self.view == SIZES or layout.table_stays
        if not self.shows_sizes:
            return self._picture(self.view, result, area)
        own = part_lines(self.about, result, area) if self.view == SIZES and not self.table_focused else None
        self._shows_part = own is not None and not layout.table_stays
        if own is not None and not layout.table_stays:
            return self._part(own, area)
        names, heights = self._pictures(layout), self._heights(layout)
        if own is not None and heights and len(own) > heights[0]:
            names, heights = names[:1], (sum(heights) + len(heights) - 1,)
        pictures = [
            self._part(own, area.high(rows))
            if own is not None and name == names[0]
            else self._picture(name, result, area.high(rows))
            for name, rows in zip(names, heights, strict=True)
        ]
        free = heights[0] - len(pictures[0]) if pictures else 0
        layout = replace(layout, pictures=heights).with_words(wanted, max(free, 0))
        table = size_lines(result, self.highlighted, area.high(layout.table), self._sizes_focused)
        room = area.high(layout.explanation)
        words = explanation_lines(result, self.highlighted, room, self._sizes_focused)
        blank = area.row().strip()
        lines = [*table, *[blank] * layout.gap, *room.filled(words)]
        for rows, picture in zip(layout.pictures, pictures, strict=True):
            lines += [blank, *area.high(rows).filled(picture)]
        return lines

    def _part(self, lines: list[Strip], area: Area) -> list[Strip]:
        """What a step shows of its part, scrolled where it is longer than its room."""
        self.part_scrolls = len(lines) > area.rows
        return self._scrolled(lines, area, MORE_OF_PART)

    def _pictures(self, layout: Layout) -> tuple[str, ...]:
        """The pictures under the table: that of the view, or ladder and curves where both fit."""
        if not layout.pictures:
            return ()
        if self.view not in (SIZES, LADDER, CURVES):
            return (self.view,)
        if len(layout.pictures) == 2:
            return (LADDER, CURVES)
        return (LADDER if self.view == SIZES else self.view,)

    def _heights(self, layout: Layout) -> tuple[int, ...]:
        if len(self._pictures(layout)) == len(layout.pictures):
            return layout.pictures
        return (sum(layout.pictures) + len(layout.pictures) - 1,)

    def _picture(self, view: str, result: Result, area: Area) -> list[Strip]:
        """The lines of a view, scrolled where it has more of them than fit; loaded when it is first looked at."""
        if view == LADDER:
            from fuelwiz.wizard.live.ladder import ladder_lines

            return ladder_lines(result, self.highlighted, area)
        if view == CURVES:
            from fuelwiz.wizard.live.curves import curve_lines

            data = self._curves(result, self.highlighted) if self._curves else None
            return curve_lines(data, result, self.highlighted, area)
        if view == CEILINGS:
            from fuelwiz.wizard.live.ceilings import ceiling_lines

            return ceiling_lines(result, area)
        if view == CHANGES:
            from fuelwiz.wizard.live.changes import change_lines

            return change_lines(result, self.change, area, self.table_focused, can_try=self.then is None)
        if view == HOW_SURE:
            from fuelwiz.wizard.live.how_sure import sure_lines

            return self._scrolled(sure_lines(result, area), area)
        if view == LOG:
            from fuelwiz.wizard.live.log_curves import log_lines

            return self._scrolled(log_lines(result, area), area)
        if view == PATH:
            return self._path(result, area)
        from fuelwiz.wizard.live.reading import read_lines

        return self._scrolled(read_lines(view, result, area, whole=self.table_focused), area)

    def _path(self, result: Result, area: Area) -> list[Strip]:
        """The way at the highlighted size; beside the one that it is tried against, where there is room for both."""
        from fuelwiz.wizard.live.path import both_ways, way_lines

        parts = self._ways(result, self.highlighted) if self._ways else result.figures.path
        if self.then is not None and area.width >= BESIDE_FROM:
            then = self.then, self.then.figures.path
            return self._scrolled(both_ways(then, (result, parts), self.highlighted, area), area)
        whole = self.table_focused
        return self._scrolled(way_lines(result, self.highlighted, parts, area, whole=whole), area)

    def _scrolled(self, lines: list[Strip], area: Area, behind: str = MORE_BEHIND_F6) -> list[Strip]:
        self._room = area.rows - 1  # the last one may say that there is more
        self.scrolled = min(self.scrolled, max(len(lines) - area.rows, 0))
        shown = lines[self.scrolled : self.scrolled + area.rows]
        if self.scrolled + area.rows < len(lines):
            hint = MORE_BELOW if self.table_focused else behind
            shown[-1] = area.row().put(3, hint, "muted").strip()
        return shown
