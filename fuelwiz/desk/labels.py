"""What people call the keys of a file where builds stand side by side: the words of the questions."""

from __future__ import annotations

import re

from fuelwiz.desk.field_questions import noun_of, question_of
from fuelwiz.report.differences import Wording

_ENTRY = re.compile(r"(?P<list>[a-z_.]+)\.(?P<at>\d+)(?:\.(?P<key>.+))?")
_LISTS = {
    "pull": "Point of the pull",
    "pump.curve": "Curve",
    "feed.run": "Run",
    "feed.filter": "Filter",
    "feed.part": "Part",
    "inlet.run": "Suction run",
    "return_line.run": "Return run",
    "return_line.part": "Return part",
    "bench": "Bench test",
    "gauge": "Gauge reading",
    "stress.case": "Day of your own",
}
_SECTIONS = {
    "feed": "Feed line",
    "inlet.strainer": "Strainer",
    "return_line.regulator": "Regulator's loss",
    "surge": "Surge pot",
    "tolerance": "How sure",
    "log.columns": "Columns of the log",
}
_NAMES = ("what", "name")
_LONGEST_ANSWER = 24


def label_of(path: str) -> str:
    """A key as its question calls it, behind the entry that it belongs to: "Run 2: length"."""
    entry = _ENTRY.fullmatch(path)
    if entry is not None:
        name = f"{_LISTS.get(entry['list'], _words(entry['list']))} {int(entry['at']) + 1}"
        asked = question_of(path) if entry["key"] else None
        if not entry["key"]:
            return name
        if entry["key"] in _NAMES:
            return f"{name}: name"
        return f"{name}: {_inside(asked.label if asked else _words(entry['key']))}"
    found = question_of(path)
    return found.label if found else _SECTIONS.get(path, _words(path))


def answer_of(path: str, answer: str) -> str:
    """An answer in the words that its question offers for it, where those are few."""
    asked = question_of(path)
    said = next((one.say for one in asked.choices if one.value == answer), answer) if asked else answer
    return said if answer.isalpha() and len(said) <= _LONGEST_ANSWER else answer


def _inside(label: str) -> str:
    """A label behind a colon; what begins with an abbreviation stays."""
    return label if label[1:2].isupper() else label[:1].lower() + label[1:]


def _words(path: str) -> str:
    return path.replace("_", " ").replace(".", ", ").capitalize()


WORDS_OF_THE_QUESTIONS = Wording(label_of, noun_of, answer_of)
