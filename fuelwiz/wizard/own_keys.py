"""Keys of one's own: `keys.toml` in the user's configuration folder, read once at the start.

Under `[build]` and `[list]` stands what can be done, by its id or by its words on the page of keys with `_` for
blanks, and the keys that are to do it: `save = ["ctrl+s", "f10"]`. What cannot be is said with its line, and the
default holds.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any, Literal

from fuelwiz.file_limits import MOST_BYTES
from fuelwiz.files import read_start
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.wizard.actions import BUILD, LIST, Action, key_name

FILE = "keys.toml"
FIXED = ("next", "previous", "size")
"""Actions that look at which of their keys was pressed."""
SWALLOWED = ("ctrl+m", "ctrl+i", "ctrl+h", "ctrl+j", "ctrl+b", "ctrl+a", "f11")
"""Keys that terminals and multiplexers keep, or send as another."""
_NAMED = {
    "pgdn": "pagedown",
    "pgup": "pageup",
    "esc": "escape",
    "?": "question_mark",
    "/": "slash",
    "insert": "insert",
    "space": "space",
    "tab": "tab",
}
_KEY = re.compile(r"ctrl\+[a-z]|f(?:[1-9]|1[0-2])")

Actions = tuple[Action, ...]
Header = Literal["build", "list", ""]
Faulty = tuple[int, str]
"""The line of what is wrong, 0 where it is not found, and the sentence on it."""
Wanted = dict[str, tuple[str, ...]]


@record
class KeyTable:
    """What can be done with the keys that do it, on a build and in the list; `faults` are what was not taken."""

    build: Actions = BUILD
    list: Actions = LIST
    faults: tuple[str, ...] = ()


def keys_file() -> Path:
    """Where keys of one's own stand."""
    from platformdirs import user_config_path

    return user_config_path("fuelwiz", appauthor=False) / FILE


def read_keys(path: Path) -> KeyTable:
    """The keys that hold with a file of one's own; the defaults where there is none."""
    try:
        text = read_start(path, MOST_BYTES).decode("utf-8-sig")
        plain = tomllib.loads(text)
    except OSError:
        return KeyTable()
    except (ValueError, RecursionError) as error:
        return KeyTable(faults=(f"{FILE}: cannot be read: {clean(str(error))}. The usual keys hold.",))
    return key_table(plain, text)


def key_table(plain: Mapping[str, Any], text: str) -> KeyTable:
    """The keys that hold with what a file says."""
    found = [
        _at(text, "", name, "is no part of the keys: there are [build] and [list]")
        for name in plain
        if name not in ("build", "list")
    ]
    tables: dict[str, Actions] = {}
    both: tuple[tuple[Header, Actions], ...] = (("build", BUILD), ("list", LIST))
    for name, usual in both:
        part = plain.get(name, {})
        if not isinstance(part, dict):
            found.append(_at(text, "", name, "holds no keys"))
            part = {}
        tables[name], faults = _with_own(usual, part, text, name)
        found += faults
    return KeyTable(tables["build"], tables["list"], tuple(words for _, words in sorted(found)))


def _with_own(
    usual: Actions, part: Mapping[str, Any], text: str, header: Header
) -> tuple[Actions, list[Faulty]]:
    """The actions with the keys that may be had, and what is said of the others."""
    faults: list[Faulty] = []
    own: Wanted = {}
    written: dict[str, str] = {}
    for name, value in part.items():
        action = next((one for one in usual if name in (one.id, one.say.replace(" ", "_"))), None)
        keys = _keys_of(value, header == "list")
        if action is None or action.id in FIXED:
            why = (
                "is nothing that can be done here" if action is None else "is on keys that cannot be changed"
            )
            faults.append(_at(text, header, name, why))
        elif isinstance(keys, str):
            faults.append(_at(text, header, name, f"{keys}; {_usual(action)}"))
        elif action.id in own:
            faults.append(_at(text, header, name, f"is the same as {written[action.id]}, which holds"))
        else:
            own[action.id], written[action.id] = keys, name
    for refused, other in _twice(usual, own):
        action = next(one for one in usual if one.id == refused)
        faults.append(_at(text, header, written[refused], f"is on a key of `{other.say}`; {_usual(action)}"))
    return tuple(replace(one, keys=own.get(one.id, one.keys)) for one in usual), faults


def _usual(action: Action) -> str:
    return f"it stays on {action.shown_key}"


def _twice(usual: Actions, own: Wanted) -> Iterator[tuple[str, Action]]:
    """Own keys that something else has too, taken out again until none has; the first one written stays."""
    again = True
    while again:
        again = False
        for name in reversed(list(own)):
            others = [one for one in usual if one.id != name]
            rival = next(
                (one for one in others if set(own.get(one.id, one.keys)) & set(own[name])),
                None,
            )
            if rival is not None:
                del own[name]
                yield name, rival
                again = True
                break


def _keys_of(value: Any, letters: bool) -> tuple[str, ...] | str:
    """The keys that a value names, as they are called here; why it does not, where it does not."""
    named = [value] if isinstance(value, str) else value
    if not isinstance(named, list) or not named or not all(isinstance(one, str) for one in named):
        return 'wants keys, such as ["ctrl+s", "f10"]'
    keys = []
    for name in named:
        key = _NAMED.get(name.lower(), name.lower() if len(name) > 1 else name)
        if key in SWALLOWED:
            return f"wants {key_name(key)}, which does not reach the program from every terminal"
        is_letter = letters and len(key) == 1 and key.isalnum()
        if not (_KEY.fullmatch(key) or key in _NAMED.values() or is_letter):
            return f"wants {clean(name)}, which is no key: Ctrl and a letter, F1 to F12, PgUp, PgDn, Esc"
        keys.append(key)
    return tuple(keys)


def _at(text: str, header: Header, name: str, what: str) -> Faulty:
    """What is wrong with a key under a header of the file, behind its line; that of a header has none above it."""
    below = _found(text, header, 0) if header else 0
    at = _found(text, name, max(below, 0))
    if at < 0:
        return 0, f"{FILE}: {clean(name)} {what}."
    line = text.count("\n", 0, at) + 1
    return line, f"{FILE}, line {line}: {clean(name)} {what}."


def _found(text: str, name: str, start: int) -> int:
    """Where the name of a key or a header ends, from there on; -1 where it is written otherwise."""
    pattern = re.compile(rf"""^\s*(?:\[\s*)?["']?{re.escape(name)}["']?\s*(?:=|\])""", re.MULTILINE)
    found = pattern.search(text, start)
    return found.end() if found else -1
