"""What can be done, once: footer, key page and finder all read this list."""

from __future__ import annotations

from fuelwiz.record import record


@record
class Action:
    """One thing that can be done.

    `keys` are the keys that do it at once, `letter` the one that does it behind Ctrl+G, `also` another that does,
    `say` its two or three words in the footer and `text` its line on the key page.
    """

    id: str
    keys: tuple[str, ...]
    letter: str
    say: str
    text: str
    also: str = ""

    @property
    def shown_key(self) -> str:
        """The first key as people write it; behind Ctrl+G where there is no other."""
        return key_name(self.keys[0]) if self.keys else f"Ctrl+G {self.letter}"


_NAMES = {
    "pagedown": "PgDn",
    "pageup": "PgUp",
    "escape": "Esc",
    "question_mark": "?",
    "enter": "Enter",
    "space": "Space",
    "slash": "/",
    "tab": "Tab",
    "shift+tab": "Shift+Tab",
    "down": "Down",
    "up": "Up",
    "right": "Right",
}


def key_name(key: str) -> str:
    """A key as people write it."""
    if key.startswith("ctrl+"):
        return f"Ctrl+{key[5:].upper()}"
    return _NAMES.get(key, key.upper() if len(key) > 1 and key[0] == "f" and key[1:].isdigit() else key)


BUILD = (
    Action("next", ("enter", "tab", "down"), "", "next", "next question; a list row opens"),
    Action("previous", ("up", "shift+tab"), "", "back", "previous question"),
    Action(
        "unsure",
        ("question_mark", "f2"),
        "?",
        "not sure",
        "not sure: use the usual value, marked as assumed",
    ),
    Action("own", (), "y", "mine", "yes, this is so: what is assumed becomes your own answer"),
    Action("help", ("f1",), "h", "help", "help on this question; you can keep typing"),
    Action("size", ("pagedown", "pageup"), "", "size", "highlight another size while you type"),
    Action("view", ("f5",), "v", "view", "views; Ctrl+G v: p s w o b l c e f"),
    Action("next_step", ("f4",), "n", "step", "next step; Ctrl+G and 1 to 0 goes to a step by number"),
    Action("previous_step", ("f3",), "p", "step back", "previous step"),
    Action("table", ("f6",), "t", "table", "move into the size table (Enter chooses one); again to leave"),
    Action("save", ("ctrl+s",), "s", "save", "save the build"),
    Action("save_as", (), "a", "save as", "save under another name"),
    Action("write", ("f7",), "w", "write report", "write the report to a text file"),
    Action("points", ("f8",), "i", "paste or CSV", "paste a pump's table or a CSV file"),
    Action("undo", ("ctrl+z",), "u", "undo", "undo the last question's change"),
    Action("redo", ("ctrl+y",), "r", "redo", "redo what was undone"),
    Action("more", (), "m", "more", "show or hide the step's further questions"),
    Action("remove", (), "d", "remove row", "remove the highlighted row of a list"),
    Action("what_if", (), "x", "what if", "try changes on a scratch copy, then and now side by side"),
    Action("compare", (), "c", "compare", "put it beside itself as saved, or beside another build"),
    Action("options", (), "o", "options", "which parts of a price list of your own do the job"),
    Action("words", (), "g", "words", "what the words mean: dash size, base pressure, duty …"),
    Action("builds", ("escape",), "b", "past builds", "close what is open, or go back to the past builds"),
    Action(
        "quit", ("ctrl+q", "ctrl+c"), "q", "leave", "leave the program (asks if there are unsaved changes)"
    ),
    Action("find", ("ctrl+p",), "k", "find", "find a question or a key by words of it", also="f"),
    Action("keys", ("ctrl+g", "f9"), "", "all keys", "all keys: then press a letter"),
)

LIST = (
    Action("open", ("enter", "right"), "e", "open", "open the highlighted build"),
    Action("new", ("n",), "n", "new", "start a new build"),
    Action("sample", ("g",), "g", "guided sample", "start from an invented build"),
    Action("copy", ("c",), "c", "copy", "copy it into the same folder"),
    Action("rename", ("r",), "r", "rename", "give it and its file another name"),
    Action("delete", ("d",), "d", "delete", "move it to the bin; u restores it"),
    Action("restore", ("u",), "u", "undelete", "restore the last one from the bin"),
    Action("mark", ("space",), "m", "mark", "mark a build to compare"),
    Action("compare", ("x",), "x", "compare", "compare the marked builds"),
    Action("filter", ("slash",), "/", "filter", "show only matching builds"),
    Action("file", ("o",), "o", "open a file", "open a build from another place"),
    Action("folder", ("f",), "f", "folder", "another folder of builds"),
    Action("help", ("f1",), "h", "help", "what columns, marks and words mean"),
    Action("quit", ("escape", "ctrl+q"), "q", "leave", "leave the program"),
    Action("keys", ("ctrl+g", "f9"), "", "all keys", "all keys: then press a letter"),
)


def by_key(actions: tuple[Action, ...], key: str) -> Action | None:
    """The action that a key does at once."""
    return next((action for action in actions if key in action.keys), None)


def by_letter(actions: tuple[Action, ...], letter: str) -> Action | None:
    """The action that a letter does behind Ctrl+G."""
    return next((action for action in actions if letter and letter in (action.letter, action.also)), None)


def by_id(actions: tuple[Action, ...], name: str) -> Action:
    """The action of that id; KeyError where there is none."""
    for action in actions:
        if action.id == name:
            return action
    raise KeyError(name)
