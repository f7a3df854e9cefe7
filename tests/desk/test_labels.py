"""Keys as people call them where builds stand side by side."""

from __future__ import annotations

import pytest

from fuelwiz.desk.labels import answer_of, label_of
from fuelwiz.session import Node, list_key_paths, path_of, tree

NOT_SHOWN = {"format", "name", "notes", "show_units", "fitted", "record"}


def every_path(node: Node, before: tuple[str | int, ...] = ()) -> list[str]:
    """The key of every value, section and list entry that may differ."""
    found = []
    for key, below in node.keys.items():
        if not before and key in NOT_SHOWN:
            continue
        at = (*before, key)
        if below.spec is None:
            at = (*at, 0) if below.tables is not None else at
            found += every_path(below, at)
        found.append(path_of(at))
    return found


@pytest.mark.parametrize("path", every_path(tree()))
def test_every_key_is_said_in_words(path: str) -> None:
    label = label_of(path)
    assert label[0].isupper() and len(label) <= 40
    assert "_" not in label and "." not in label.replace("rpm.", "")


def test_entries_are_counted_as_people_count() -> None:
    assert label_of("feed.run.1.length") == "Run 2: length"
    assert label_of("feed.filter.0.what") == "Filter 1: name"
    assert label_of("inlet.run.0") == "Suction run 1"
    assert label_of("goal.power") == "Power wanted"
    for path in list_key_paths():
        assert label_of(f"{path_of(path)}.0").endswith(" 1")


def test_an_answer_is_said_as_its_question_offers_it() -> None:
    assert answer_of("feed.run.0.hose", "tube") == "hard pipe"
    assert answer_of("pump.place", "tank") == "in the tank"
    assert answer_of("pump.volts", "13.5 V") == "13.5 V"
