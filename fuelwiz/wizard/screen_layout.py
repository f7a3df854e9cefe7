"""Where everything stands on a screen of a given size."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.record import record

SMALLEST = (60, 20)
NARROW_BELOW = 76
SIDE_BY_SIDE_FROM = 110
STEPS_COLUMN_FROM = 120
WIDE_FROM = 150
HELP_BELOW_FROM_ROWS = 30
FULL_TABLE_ROWS = 14  # rule, four of answer, header, six sizes, two of explanation

PAGES = {"keys": "sheet", "points": "points"}
"""The parts that take the place of questions and answer, by the mode that shows them."""


def too_small(width: int, height: int) -> str:
    """What a window says that has no room for a screen; empty where it has."""
    if width >= SMALLEST[0] and height >= SMALLEST[1]:
        return ""
    return f"Needs {SMALLEST[0]} by {SMALLEST[1]}; the window is {width} by {height}."


@record
class Box:
    """A rectangle of the screen; nothing is drawn in one without width or height."""

    x: int = 0
    y: int = 0
    width: int = 0
    height: int = 0

    @property
    def is_shown(self) -> bool:
        """Whether there is anything of it."""
        return self.width > 0 and self.height > 0


@record
class ScreenLayout:
    """The boxes of a build's screen, in reading order."""

    top: Box
    steps: Box
    form: Box
    why_rows: int
    help: Box
    live: Box
    footer: Box
    steps_in_column: bool = False

    @property
    def is_stacked(self) -> bool:
        """Whether the answer stands under the questions, and not beside them."""
        return self.live.width == self.footer.width

    def hidden_by_help(self, mode: str) -> bool:
        """Whether the page on a question stands in place of the rows and the answer."""
        return mode == "help" and not self.help.is_shown

    def parts(self, mode: str, strip_rows: int, footer_rows: int = 1) -> dict[str, Box]:
        """The box of each part, by its name, in a mode of the screen.

        Args:
            mode: what has the keys.
            strip_rows: stand above the footer.
            footer_rows: of the footer; where they are more than one it covers the end of what stands above.
        """
        boxes = self._parts(mode, strip_rows)
        footer = boxes["footer"]
        start = footer.y - (footer_rows - 1)
        cut = {
            name: replace(box, height=max(min(box.y + box.height, start) - box.y, 0))
            for name, box in boxes.items()
        }
        return {**cut, "footer": replace(footer, y=start, height=footer_rows)}

    def _parts(self, mode: str, strip_rows: int) -> dict[str, Box]:
        width, start = self.footer.width, self.form.y
        end = self.footer.y + strip_rows
        whole = Box(0, start, width, self.footer.y - start)
        page = PAGES.get(mode, "")
        if page:
            boxes = {"form": Box(), "help": Box(), "live": Box()}
        elif self.hidden_by_help(mode):
            body = Box(0, start + 1, width, whole.height - 1)
            boxes = {"form": replace(self.form, height=1), "help": body, "live": Box()}
        else:
            boxes = {"form": self.form, "help": self.help, "live": self.live}
        return {
            "top": self.top,
            "steps": self.steps,
            **boxes,
            **{name: whole if name == page else Box() for name in PAGES.values()},
            "strip": Box(0, end - strip_rows, width, strip_rows),
            "footer": Box(0, end, width, 1),
        }


def layout_for(width: int, height: int, *, table_focused: bool = False) -> ScreenLayout:
    """The layout of a screen; with the table in focus the questions of a stacked screen fold away."""
    footer = Box(0, height - 1, width, 1)
    if width < SIDE_BY_SIDE_FROM:
        return _stacked(width, height, footer, table_focused)
    return _side_by_side(width, height, footer)


def _stacked(width: int, height: int, footer: Box, table_focused: bool) -> ScreenLayout:
    narrow = width < NARROW_BELOW
    top = Box(0, 0, width, 0 if narrow else 1)
    steps = Box(0, top.height, width, 1)
    start = steps.y + steps.height
    room = height - 1 - start
    why_rows = 1 if narrow else 2
    live_rows = FULL_TABLE_ROWS - (1 if narrow else 0)
    form_rows = max(min(5, room - 6), room - live_rows) if not table_focused else 1
    form = Box(0, start, width, form_rows)
    live = Box(0, start + form_rows, width, room - form_rows)
    return ScreenLayout(top, steps, form, 0 if table_focused else why_rows, Box(), live, footer)


def _side_by_side(width: int, height: int, footer: Box) -> ScreenLayout:
    top = Box(0, 0, width, 1)
    column = width >= STEPS_COLUMN_FROM
    live_width = 80 if width >= WIDE_FROM else 59
    steps_width = (24 if width >= WIDE_FROM else 15) if column else 0
    steps = Box(0, 2, steps_width, height - 3) if column else Box(0, 1, width, 1)
    start = 2
    room = height - 1 - start
    form_width = width - live_width - steps_width - 1
    has_help = height >= HELP_BELOW_FROM_ROWS
    form_height = min(room, 15) if has_help else room
    form = Box(steps_width, start, form_width, form_height)
    page = Box(steps_width, start + form_height, form_width, room - form_height) if has_help else Box()
    live = Box(width - live_width, 1 if column else 2, live_width, height - (2 if column else 3))
    return ScreenLayout(top, steps, form, 4, page, live, footer, steps_in_column=column)
