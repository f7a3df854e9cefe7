"""What the actions of a build's screen do."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from fuelwiz.printable import NO_BREAK
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.sizing.vocabulary import is_fixed
from fuelwiz.wizard.actions import by_id
from fuelwiz.wizard.editor.compare_dialog import CompareDialog
from fuelwiz.wizard.editor.frame import ABOUT_THE_LOG
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.editor.line_watch import line_to_fit
from fuelwiz.wizard.editor.log_dialog import LogDialog
from fuelwiz.wizard.editor.looking import refusing_in_words
from fuelwiz.wizard.editor.options_dialog import OptionsDialog
from fuelwiz.wizard.editor.points_dialog import PointsDialog
from fuelwiz.wizard.editor.report_dialog import ReportDialog
from fuelwiz.wizard.editor.save_dialog import SaveDialog
from fuelwiz.wizard.form.bad_day import change_on_that_day
from fuelwiz.wizard.form.finding import Findable, Offer, answers_found, changeable, questions_of
from fuelwiz.wizard.form.form_rows import ADDS
from fuelwiz.wizard.live.rule import CHANGES, READ, letters_of, next_view, views_of
from fuelwiz.wizard.prompt import Prompt

WHAT_DIFFERS = Offer(
    "Differs that day", "No question has all of these words. Try one of them alone.", "pick it"
)
NOT_FOUND = ("next", "previous", "size", "keys", "find")
"""Actions that are no use from the finder."""


class BuildActions:
    """The actions, by their id."""

    def __init__(self, host: Host, saving: SaveDialog, points: PointsDialog) -> None:
        self.host = host
        self.saving = saving
        self.points = points
        self.log = LogDialog(host)
        self.handlers: dict[str, Callable[[], None]] = {
            "unsure": self.unsure,
            "own": self.own,
            "help": self.help,
            "next_step": self.next_step,
            "previous_step": self.previous_step,
            "table": self.table,
            "save": self.save,
            "save_as": self.save_as,
            "write": ReportDialog(host, self.log).write_report,
            "points": self.table_or_log,
            "undo": self.undo,
            "redo": self.redo,
            "more": self.more,
            "remove": self.remove,
            "what_if": host.try_what_if,
            "compare": CompareDialog(host).open,
            "options": OptionsDialog(host).open,
            "words": self.words,
            "builds": self.builds,
            "quit": saving.leave_program,
            "find": self.find,
            "keys": self.keys,
        }
        self.directed: dict[str, Callable[[str], None]] = {
            "next": self.next,
            "previous": self.previous,
            "size": self.size,
            "view": self.change_view,
        }
        """The actions that look at which of their keys was pressed."""

    def do(self, name: str, key: str = "") -> None:
        """Do the action of that id; OnlyLooks where it would change a build that is only looked at."""
        if name in self.directed:
            self.directed[name](key)
        else:
            self.handlers[name]()

    def next(self, key: str) -> None:
        """The next place; the arrow goes to the next row."""
        form = self.host.form
        self.host.react(form.move_row(1) if key == "down" else form.move(1))

    def previous(self, key: str) -> None:
        """The place before; the arrow goes to the row above."""
        form = self.host.form
        self.host.react(form.move_row(-1) if key == "up" else form.move(-1))

    def unsure(self) -> None:
        """Leave the question to its fallback."""
        self.host.react(self.host.form.unsure())

    def help(self) -> None:
        """Open the page on the question, or close it."""
        self.host.to_mode("form" if self.host.mode == "help" else "help")

    def size(self, key: str) -> None:
        """Highlight the size above or below; where a step has more to read of its own part, turn its page."""
        if self.host.live.part_scrolls:
            self.host.live.scroll_page(-1 if key == "pageup" else 1)
            return
        result = self.host.desk.result
        if result is None:
            return
        if not self.host.live.shows_a_size:
            self._read_on(key)
            return
        names = [row.size for row in result.figures.sizes]
        at = names.index(self.host.shown_size) + (-1 if key == "pageup" else 1)
        self.host.highlighted = names[min(max(at, 0), len(names) - 1)]

    def _read_on(self, key: str) -> None:
        """Turn the page of a view that is the same for every size."""
        if self.host.view in READ:
            self.host.live.scroll_page(-1 if key == "pageup" else 1)
        else:
            self.host.say("This view is the same for every size.")

    def change_view(self, key: str) -> None:
        """Show the next view of the live pane; without its key, the one whose letter is pressed then."""
        if key:
            self.host.view = next_view(self.host.view, views_of(self.host.desk.result, self.host.view))
        else:
            offered = letters_of(self.host.desk.result)
            views = ", ".join(f"{letter} {name}".replace(" ", NO_BREAK) for letter, name in offered.items())
            self.host.ask(Prompt(views, self._show_view, letters="".join(offered)))

    def _show_view(self, letter: str) -> None:
        self.host.view = letters_of(self.host.desk.result)[letter]

    def next_step(self) -> None:
        """To the next step."""
        number = self.host.form.step_number + 1
        if number < len(STEPS):
            self.host.form.go_to_step(STEPS[number].id)
        else:
            self.host.say("That was the last step. Ctrl+S saves the build.")

    def previous_step(self) -> None:
        """To the step before."""
        self._step_back(at_end=False)

    def last_of_previous_step(self) -> None:
        """To the last question of the step before."""
        self._step_back(at_end=True)

    def _step_back(self, *, at_end: bool) -> None:
        number = self.host.form.step_number - 1
        if number >= 0:
            self.host.form.go_to_step(STEPS[number].id, at_end=at_end)
        else:
            self.host.say("This is the first step.")

    def own(self) -> None:
        """Make what stands the builder's own."""
        if self.host.form.own():
            self.host.changed()
            self.host.say("Yours now: no longer assumed.")
        else:
            self.host.say("Nothing here is assumed.")

    def table(self) -> None:
        """Into the table of sizes, and back."""
        self.host.to_mode("form" if self.host.mode == "table" else "table")

    def table_key(self, key: str) -> bool:
        """What a key does in the table of sizes; false for one that is not the table's own."""
        way = 1 if key in ("down", "pagedown") else -1
        if key in ("up", "down") and self.host.view in READ:
            self.host.live.scroll_lines(way)
        elif key in ("pageup", "pagedown") and self.host.view in READ:
            self.host.live.scroll_page(way)
        elif key in ("up", "down", "pageup", "pagedown") and self.host.view == CHANGES:
            self.host.live.highlight_change(way)
        elif key in ("up", "down"):
            self.size("pagedown" if key == "down" else "pageup")
        elif key == "enter":
            if self.host.view == CHANGES:
                self._try_change()
            elif self.host.live.shows_sizes:
                self._choose_size()
        elif key in ("escape", "f6"):
            self.host.to_mode("form")
        else:
            return False
        return True

    def _try_change(self) -> None:
        change = self.host.live.highlighted_change
        if change is not None:
            self.host.try_what_if(change)

    def _choose_size(self) -> None:
        size = self.host.shown_size
        if not size or is_fixed(size):
            return
        desk = self.host.desk
        desk.visit("feed.chosen")
        desk.type("feed.chosen", size)
        self.host.changed()
        self.host.say(f"{size} chosen; Ctrl+Z undoes it.")

    def save(self) -> None:
        """Save the build."""
        self.saving.save()

    def save_as(self) -> None:
        """Save the build under another name."""
        self.saving.save_as()

    def undo(self) -> None:
        """Take the last question's change back."""
        self._step_in_history(self.host.desk.undo, "Undone", "Nothing to undo.")

    def redo(self) -> None:
        """Do what was taken back again."""
        self._step_in_history(self.host.desk.redo, "Done again", "Nothing to redo.")

    def _step_in_history(self, step: Callable[[], str | None], done: str, nothing: str) -> None:
        """Show the question of a change that was taken back or made again, and the line to fit where it is another."""
        desk = self.host.desk
        before, path = line_to_fit(desk), step()
        if path is None:
            self.host.say(nothing)
            return
        self.host.form.go_to_path(path)
        self.host.changed()
        now = line_to_fit(desk)
        if before is not None and now is not None and now != before:
            self.host.say(f"{done}: the line to fit is {now}; it was {before}.")

    def more(self) -> None:
        """Show or hide the step's further questions."""
        self.host.form.toggle_more()
        self.host.react("more")

    def tell_opened(self) -> None:
        """Say how the further questions are left again: whoever goes on with Enter is asked every one of them."""
        form = self.host.form
        if form.is_past_more and form.step_number + 1 < len(STEPS):
            key = by_id(self.host.program.keys.build, "next_step").shown_key
            self.host.say(f"None of these must be answered: {key} goes to the next step.")

    def remove(self) -> None:
        """Take the row of a list out."""
        if self.host.form.remove_entry():
            self.host.changed()
            self.host.say("Removed. Ctrl+Z undoes it.")
        else:
            self.host.say("Put the pointer on a row of a list first: a run, a filter, a part.")

    def take(self) -> None:
        """Take what was measured, as an ordinary answer."""
        from fuelwiz.wizard.form.taking import take

        taken = take(self.host.form)
        if taken:
            self.host.changed()
            self.log.read()
            self.host.say(f"Taken: {taken}. Ctrl+Z undoes it.")

    def table_or_log(self) -> None:
        """Open the page that takes a table; where the log is asked for, what that takes."""
        if self.host.form.question.key.startswith(ABOUT_THE_LOG):
            self.log.open()
        else:
            self.points.open_here()

    def words(self) -> None:
        """The page of words, in the units of the build."""
        self.host.program.show_words(self.host.desk.system)

    def builds(self) -> None:
        """Close what is open, else go back to the past builds."""
        form = self.host.form
        if self.log.stop():
            return
        if self.host.mode != "form":
            self.host.to_mode("form")
        elif form.place.in_entry:
            form.close_entry()
        else:
            self.saving.leave_for_list()

    def find(self) -> None:
        """Find a question or an action by words of it."""
        actions = [
            Findable("action", action.id, action.text, action.shown_key, (action.say, action.text))
            for action in self.host.program.keys.build
            if action.id not in NOT_FOUND
        ]
        self.host.program.find([*questions_of(self.host.desk), *actions, *answers_found()], self._take_found)

    def _take_found(self, hit: Findable) -> None:
        if hit.kind == "question":
            self.host.to_mode("form")
            self.host.form.go_to_question(hit.id)
        else:
            with refusing_in_words(self.host):
                self.do(hit.id)
        self.host.show_all()

    def keys(self) -> None:
        """The page of all keys."""
        self.host.to_mode("keys")

    def ask_change(self) -> None:
        """Pick the question that has another answer on that bad day, from the list of the build's own."""
        letter = self.host.form.begun
        offer = replace(WHAT_DIFFERS, begun=letter, opened_by="" if letter else ADDS)
        self.host.program.find(changeable(self.host.desk), self._add_change, offer)

    def _add_change(self, picked: Findable) -> None:
        with refusing_in_words(self.host):
            self._change_on_that_day(picked)

    def _change_on_that_day(self, picked: Findable) -> None:
        change_on_that_day(self.host.form, picked.id)
        self.host.changed()
