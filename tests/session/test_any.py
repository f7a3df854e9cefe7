"""Whatever plain data or bytes come, there is a session or a fault in words; no edit loses data."""

from __future__ import annotations

import copy
import tomllib
from pathlib import Path
from typing import Any

from hypothesis import example, given, settings
from hypothesis import strategies as st

from fuelwiz.document.file import Document, load, read
from fuelwiz.document.merge import merge
from fuelwiz.document.toml_text import same
from fuelwiz.errors import SessionError
from fuelwiz.session import Session, apply_change, leaf_paths, list_key_paths, path_of, tree, validate

from .builds import EXAMPLES, FULL, full, with_value

WORDS = sorted(
    {part for path in leaf_paths() for part in path.split(".")}
    | {
        "-8",
        "410 hp",
        "21 psi",
        "15 %",
        "40 degC",
        "97 gal/h",
        "8 mm",
        "12 AWG",
        "own",
        "tank",
        "ptfe",
        "",
        "nan psi",
    }
)
SCALARS = st.one_of(
    st.sampled_from(WORDS),
    st.text(max_size=20),
    st.integers(),
    st.floats(),
    st.booleans(),
    st.dates(),
    st.datetimes(),
    st.times(),
)
KEYS = st.sampled_from(WORDS) | st.text(max_size=8)
PLAIN = st.recursive(
    SCALARS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS, inner, max_size=5),
    max_leaves=12,
)
SECTIONS = st.dictionaries(st.sampled_from(list(tree().keys)) | KEYS, PLAIN, max_size=8)
PATHS = st.sampled_from(
    [
        *(
            path.replace("run.", "run.0.").replace("case.", "case.0.").replace("curve.", "curve.0.")
            for path in leaf_paths()
        )
    ]
    + [path_of(key_path) for key_path in list_key_paths()]
)


def session_or_faults(plain: dict[str, Any]) -> Session | SessionError:
    """A session, or faults that can be shown."""
    try:
        return validate(plain, "any")
    except SessionError as error:
        assert error.faults
        for fault in error.faults:
            assert fault.text
            assert "\n" not in fault.sentence("any")
        return error


@given(SECTIONS)
@settings(max_examples=300, deadline=None)
def test_any_plain_data_give_a_session_or_faults(plain: dict[str, Any]) -> None:
    session_or_faults(plain)


@given(st.lists(st.tuples(PATHS, PLAIN), min_size=1, max_size=4))
@settings(max_examples=300, deadline=None)
def test_a_full_build_with_anything_in_it(changes: list[tuple[str, Any]]) -> None:
    plain = full()
    for path, value in changes:
        try:
            with_value(plain, path, value)
        except (TypeError, AttributeError, KeyError, IndexError):
            continue
    before = copy.deepcopy(plain)
    session_or_faults(plain)
    assert same(plain, before)


@given(st.dictionaries(PATHS | st.text(max_size=20), PLAIN, max_size=3))
@settings(max_examples=300, deadline=None)
def test_any_stress_case(change: dict[str, Any]) -> None:
    plain = full()
    try:
        apply_change(plain, change)
    except SessionError as error:
        assert error.faults
    assert plain == full()
    session_or_faults(full() | {"stress": {"case": [{"change": change}]}})


@given(st.text(max_size=300) | st.text("[]{}=.,\"'#\n\\ ab1", max_size=60) | st.binary(max_size=200))
@example("[" * 3000)
@example('x = """' + "\\" * 3000)
@settings(max_examples=400, deadline=None)
def test_any_file_gives_a_document_or_a_fault(tmp_path_factory: Any, content: str | bytes) -> None:
    path: Path = tmp_path_factory.getbasetemp() / "any.toml"
    path.write_bytes(content.encode("utf-8", "surrogatepass") if isinstance(content, str) else content)
    try:
        assert isinstance(read(path), Document)
        load(path)
    except SessionError as error:
        assert all(fault.text for fault in error.faults)


@given(st.sampled_from([FULL, *EXAMPLES]), st.data())
@settings(max_examples=150, deadline=None)
def test_a_file_cut_or_scrambled(tmp_path_factory: Any, source: Path, data: st.DataObject) -> None:
    content = source.read_bytes()
    start = data.draw(st.integers(0, len(content)))
    end = data.draw(st.integers(start, min(start + 40, len(content))))
    path: Path = tmp_path_factory.getbasetemp() / "cut.toml"
    path.write_bytes(content[:start] + data.draw(st.binary(max_size=5)) + content[end:])
    try:
        load(path)
    except SessionError as error:
        assert error.faults


@given(st.sampled_from([FULL, *EXAMPLES]), st.lists(st.tuples(PATHS, PLAIN), max_size=3), st.data())
@settings(max_examples=300, deadline=None)
def test_what_is_merged_is_what_the_text_then_holds(
    source: Path, changes: list[tuple[str, Any]], data: st.DataObject
) -> None:
    text = source.read_text(encoding="utf-8")
    plain = tomllib.loads(text)
    for path, value in changes:
        try:
            with_value(plain, path, value)
        except (TypeError, AttributeError, KeyError, IndexError):
            continue
    for section in data.draw(st.lists(st.sampled_from(list(plain)), max_size=2)):
        plain.pop(section, None)
    new = merge(text, plain)
    assert same(tomllib.loads(new), plain)
    assert not text.startswith("#") or new.startswith(text.splitlines()[0])
    assert merge(new, plain) == new
    assert same(tomllib.loads(merge(new, tomllib.loads(text))), tomllib.loads(text))


@given(SECTIONS)
@settings(max_examples=200, deadline=None)
def test_any_data_can_be_written_from_nothing(plain: dict[str, Any]) -> None:
    assert same(tomllib.loads(merge("", plain)), plain)


@given(SECTIONS, SECTIONS)
@settings(max_examples=200, deadline=None)
def test_any_data_can_be_turned_into_any_other(one: dict[str, Any], other: dict[str, Any]) -> None:
    text = "# mine\n\n" + merge("", one)
    new = merge(text, other)
    assert same(tomllib.loads(new), other)
    assert new.startswith("# mine\n")
