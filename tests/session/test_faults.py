"""Each thing that can be wrong in a session file is said in one clear sentence, and all of them at once."""

from __future__ import annotations

import re
from typing import Any

import pytest

from fuelwiz.errors import SessionError
from fuelwiz.session import leaf_paths, validate

from .builds import fault_list, faults, full, smallest, with_value

ONE_BY_ONE: list[tuple[str, Any, str, str]] = [
    ("pressure.bost", "21 psi", "pressure.bost", "is not a key here; did you mean `boost`?"),
    ("boost", "21 psi", "boost", "is not a key here; did you mean `pressure.boost`?"),
    ("presure", {}, "presure", "is not a key here; did you mean `pressure`?"),
    ("engine.lambda_", 0.8, "engine.lambda_", "is not a key here; did you mean `lambda`?"),
    ("feed.run.0.lenght", "3 ft", "feed.run.0.lenght", "is not a key here; did you mean `length`?"),
    ("surge.xyzzy", 1, "surge.xyzzy", "is not a key here; known are volume, lift_flow, pressure, return_to"),
    (
        "feed.run.0.fittings.swept90",
        2,
        "feed.run.0.fittings.swept90",
        "is not a fitting here; did you mean `swept_90`?",
    ),
    ("pressure.boost", "5 gal/h", "pressure.boost", "wants a pressure, got gal/h"),
    (
        "pressure.boost",
        21,
        "pressure.boost",
        'wants a pressure in quotes with its unit, such as "21 psi", got 21',
    ),
    (
        "engine.cylinders",
        "4",
        "engine.cylinders",
        'wants a whole number from 1 to 24, without quotes, got "4"',
    ),
    (
        "engine.cylinders",
        4.0,
        "engine.cylinders",
        "wants a whole number from 1 to 24, without quotes, got 4.0",
    ),
    (
        "engine.cylinders",
        True,
        "engine.cylinders",
        "wants a whole number from 1 to 24, without quotes, got true",
    ),
    (
        "engine.lambda",
        "0.8",
        "engine.lambda",
        'wants a bare number from 0.4 to 2, no unit and no quotes, got "0.8"',
    ),
    (
        "engine.induction",
        "Turbo",
        "engine.induction",
        'wants "none", "supercharger" or "turbo", got "Turbo"; did you mean "turbo"?',
    ),
    ("fuel.kind", 3, "fuel.kind", 'wants "blend", "methanol" or "own", got 3'),
    ("name", 5, "name", "wants a text in quotes, got 5"),
    ("goal", [], "goal", "wants a table of keys, got an empty list"),
    ("inlet.strainer", "none", "inlet.strainer", 'wants a table of keys, or false for none, got "none"'),
    (
        "feed.run",
        {"length": "3 ft"},
        "feed.run",
        "wants tables, each headed [[feed.run]] in double brackets, got a table",
    ),
    ("feed.run", [3], "feed.run.0", "wants a table of keys, got 3"),
    (
        "feed.run.0.fittings",
        "two",
        "feed.run.0.fittings",
        'wants a table such as { straight = 2, exit = 1 }, got "two"',
    ),
    (
        "feed.chosen",
        "eight",
        "feed.chosen",
        'wants a dash size such as "-8" or "AN8", or a length such as "8 mm" or "3/8 in", got "eight"',
    ),
    ("feed.sizes", "-8", "feed.sizes", 'wants a list of dash sizes or bores, such as ["-6", "-8"], got "-8"'),
    ("feed.chosen", "-33", "feed.chosen", "wants a dash size from -2 to -32, got -33"),
    ("wiring.supply", None, "wiring.supply", 'is missing: wants a voltage such as "13.8 V"'),
    (
        "injectors.rated_flow",
        "3 bar",
        "injectors.rated_flow",
        'wants a flow such as "1200 cc/min", or by mass such as "110 lb/h", got "3 bar"',
    ),
    ("injectors.count", 4, "injectors.rated_flow", 'is missing: wants a flow such as "1200 cc/min"'),
    ("pump.count", 1, "pump.curve", "is missing: wants at least one [[pump.curve]]"),
    (
        "pump.curve",
        [{"voltage": "12 V"}],
        "pump.curve.0.points",
        'is missing: wants one point or more, such as [["40 psi", "97 gal/h"], ["60 psi", "84 gal/h"]]',
    ),
    ("inlet.strainer", True, "inlet.strainer", "wants a table of keys, or false for none, got true"),
    ("feed.part", [{}], "feed.part.0.rated_flow", 'is missing: wants a flow such as "120 gal/h"'),
    ("pull", [{"power": "330 hp"}], "pull.0.boost", 'is missing: wants a pressure such as "24 psi"'),
    (
        "fitted.has",
        "line",
        "fitted.has",
        'wants a list of words, such as ["line", "return_line"], got "line"',
    ),
    (
        "fitted.has",
        ["line", "fliter"],
        "fitted.has.1",
        'is not a word here, got "fliter"; did you mean filter?',
    ),
    (
        "feed.run",
        [{"hose": "tube", "size": "1/8 in", "wall": "1.5 mm"}],
        "feed.run.0.size",
        "wants a tube of 1 mm bore or more: the walls of 1/8 in leave less",
    ),
    (
        "return_line.regulator",
        {},
        "return_line.regulator.rated_loss",
        'is missing: wants a pressure such as "0.8 psi"',
    ),
    (
        "inlet.run",
        [{"length": "1 ft"}],
        "inlet.run.0",
        'wants a size or a bore of its own, such as size = "-10"',
    ),
    ("fuel.kind", "own", "fuel.lhv", 'is missing: a fuel of kind "own" needs it, such as "43.4 MJ/kg"'),
    ("bands.feed", ["4 ft/s"], "bands.feed", "wants 4 entries, got 1"),
    (
        "bands.feed",
        ["4 ft/s", "3 ft/s", "8 ft/s", "10 ft/s"],
        "bands.feed.1",
        "must lie above 4 ft/s before it, got 3 ft/s",
    ),
    (
        "stress.case",
        [{"name": "hot"}],
        "stress.case.0.change",
        'is missing: wants keys by their path, such as { "fuel.temperature" = "55 degC" }',
    ),
]


@pytest.mark.parametrize(("path", "value", "key", "words"), ONE_BY_ONE)
def test_a_fault_is_said_at_its_key(path: str, value: Any, key: str, words: str) -> None:
    plain = with_value(smallest(), path, value)
    if value is None:
        del plain["wiring"]["supply"]
    assert faults(plain)[key] == words


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (None, "is missing: a session file begins with format = 1"),
        ("1", 'wants the whole number 1, without quotes, got "1"'),
        (1.0, "wants the whole number 1, without quotes, got 1.0"),
        (True, "wants the whole number 1, without quotes, got true"),
        (0, "wants the whole number 1, without quotes, got 0"),
    ],
)
def test_the_format_is_1(found: Any, words: str) -> None:
    plain = smallest() | {"format": found}
    if found is None:
        del plain["format"]
    assert faults(plain) == {"format": words}


def test_a_newer_format_is_the_only_thing_said() -> None:
    plain = {"format": 2, "unheard": {"of": 1}, "goal": {"power": "none"}}
    assert faults(plain) == {"format": "is a newer format (2); this program writes 1 and will not open it"}


def test_the_goal_is_needed_by_its_power() -> None:
    wanted = {"goal.power": 'is missing: wants a power such as "410 hp"'}
    assert faults({"format": 1}) == faults({"format": 1, "goal": {}}) == wanted


def test_all_faults_come_at_once_in_the_order_of_the_file() -> None:
    plain: dict[str, Any] = {
        "goal": {"reserve": "300 %"},
        "fuel": {"kind": "own", "temprature": "40 degC"},
        "pressure": {"boost": "5 gal/h", "base": 3},
        "pump": {"count": 1, "running_at_idle": 2, "curve": [{"points": [["9 psi", "1 A"]]}, {"points": []}]},
        "feed": {"sizes": ["-7", "abc"], "run": [{"length": "x"}, 3]},
        "inlet": {"run": [{}]},
        "stress": {"case": [{"change": {"fuel.temperature": "200 degC", "x.y": 1}}]},
        "extra": 1,
    }
    assert [fault.key for fault in fault_list(plain)] == [
        "format",
        "goal.power",
        "goal.reserve",
        "fuel.density",
        "fuel.viscosity",
        "fuel.lhv",
        "fuel.temprature",
        "pressure.base",
        "pressure.boost",
        "pump.running_at_idle",
        "pump.curve.0.points.0.1",
        "pump.curve.1.voltage",
        "pump.curve.1.points",
        "feed.sizes.0",
        "feed.sizes.1",
        "feed.run.0.length",
        "feed.run.1",
        "inlet.run.0",
        "stress.case.0.change.x.y",
        "extra",
    ]


PYDANTIC_WORDS = re.compile(
    r"pydantic|[Ii]nput should|[Ff]ield required|[Ee]xtra inputs|type=|Traceback|object at 0x"
)


@pytest.mark.parametrize("value", [3, "x", True, 2.5, [], {}, [[]], [{}], {"x": 1}], ids=repr)
def test_no_wording_but_ours_reaches_the_reader(value: Any) -> None:
    for path in (*leaf_paths(), "goal", "pump", "feed.run", "pump.curve", "stress", "record"):
        numbered = re.sub(r"\b(run|filter|part|curve|case|pull|bench|gauge)\.", r"\1.0.", path)
        for fault in fault_list(with_value(full(), numbered, value)):
            assert not PYDANTIC_WORDS.search(fault.text), fault
            assert "\n" not in fault.text, fault
            assert re.match(r"(wants|is|must|has|holds|cannot|leads|makes) ", fault.text), fault


def test_what_is_said_back_is_short_and_safe_to_print() -> None:
    nasty = "\x1b[31m" + "\u202e" + "x" * 5000
    plain = full() | {nasty: 1}
    for path in ("pressure.boost", "engine.induction", "feed.chosen", "wiring.wire", "injectors.rated_flow"):
        with_value(plain, path, nasty)
    with_value(plain, f"feed.run.0.fittings.{nasty}", 1)
    found = fault_list(plain)
    assert len(found) == 7
    for fault in found:
        assert len(fault.key) < 120
        assert len(fault.text) < 250
        assert (fault.key + fault.text).isprintable()


def test_the_error_reads_as_one_line_a_fault() -> None:
    with pytest.raises(SessionError) as caught:
        validate(smallest() | {"engine": {"cylinders": 0}, "bost": 1}, "my build")
    assert str(caught.value).splitlines() == [
        "my build: `engine.cylinders` wants 1 to 24, got 0",
        "my build: `bost` is not a key here; did you mean `pressure.boost`?",
    ]
