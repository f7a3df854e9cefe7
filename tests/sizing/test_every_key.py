"""Every key of a session file moves a figure, or is listed as one that moves none."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from dataclasses import asdict
from typing import Any

import pytest

from fuelwiz.errors import SessionError
from fuelwiz.session import FieldSpec, field_at, leaf_paths

from .builds import build, figures

MOVES_NOTHING = {
    "format": "the file's own",
    "name": "words",
    "notes": "words",
    "show_units": "how figures are shown",
    "show_power": "how powers are shown",
    "pump.name": "words",
    **{f"{section}.what": "words" for section in ("feed.run", "feed.filter", "feed.part")},
    **{f"{section}.what": "words" for section in ("inlet.run", "return_line.run", "return_line.part")},
    **{
        f"fitted.{part}": "words"
        for part in ("line", "return_line", "pump", "regulator", "injectors", "filter", "has")
    },
    **{f"record.{part}": "kept" for part in ("inputs", "saved", "version", "works", "margin", "answer")},
    "stress.case.name": "words",
    **{path: "how sure it is" for path in leaf_paths() if path.startswith("tolerance.")},
    **{
        path: "held against the figures"
        for path in leaf_paths()
        if path.startswith(("bench.", "gauge.", "log."))
    },
    "inlet.run.pressure_rating": "no dead head reaches a suction line",
    "return_line.run.pressure_rating": "no dead head reaches a return",
}
LISTS = (
    "feed.run",
    "feed.filter",
    "feed.part",
    "inlet.run",
    "return_line.run",
    "return_line.part",
    "pump.curve",
    "pull",
    "bench",
    "gauge",
)
ANSWERS: dict[str, list[Any]] = {
    "text": ["other words"],
    "note": ["other words"],
    "kept": ["other words"],
    "flag": [False, True],
    "wire": ["6 AWG", "18 AWG"],
    "rated_flow": ["900 cc/min", "60 lb/h"],
    "size": ["-4", "-12"],
    "sizes": [["-6", "-10"]],
    "points": [[["30 psi", "200 gal/h"], ["90 psi", "5 gal/h"]], [["30 psi", "5 A"], ["90 psi", "22 A"]]],
    "velocities": [["1 ft/s", "1.1 ft/s", "1.2 ft/s", "1.3 ft/s"]],
    "fittings": [{"straight": 9}],
    "change": [{"goal.power": "200 hp"}],
    "format": [1],
    "words": [["filter"]],
    "column": ["Head"],
}
WORDS = {"text", "note", "kept", "flag"}
PIPE = {"what": "pick-up", "size": "-10"}
OTHERS: tuple[dict[str, Any], ...] = (
    {},
    {"goal.power_at": "wheels"},
    {"fuel": {"kind": "own", "density": "780 kg/m^3", "viscosity": "0.6 mm^2/s", "lhv": "30 MJ/kg"}},
    {
        "fuel": {
            "kind": "own",
            "density": "780 kg/m^3",
            "viscosity": "0.6 mm^2/s",
            "lhv": "30 MJ/kg",
            "stoich": 9,
        }
    },
    {"pressure.regulator": "tank", "surge.return_to": "tank"},
    {"pump.volts": None, "pump.count": 2},
    {"pump.volts": None, "pump.count": 2, "pump.running_at_idle": 2},
    {"inlet.run": [PIPE], "pump.place": "outside"},
    {"return_line.chosen": None, "return_line.part": [{"rated_flow": "100 gal/h", "rated_loss": "1 psi"}]},
    {"engine.bsfc": None, "injectors.count": None, "feed.chosen": None, "return_line.chosen": None},
    {"fuel.temperature": "53 degC"},
    {"feed.sizes": ["3/8 in", "1/2 in"], "feed.run": [{"hose": "tube"}]},
    {"inlet.run": [{**PIPE, "hose": "tube"}], "return_line.run": [{"hose": "tube", "size": "-6"}]},
    {"pump.place": "surge", "surge.pressure": "1 psi"},
    {"pump.count": 2, "inlet.run": [PIPE]},
    {"feed.run": [{"what": "kept", "size": "-4"}, {"length": "3 ft"}]},
)


def answers(spec: FieldSpec) -> Iterator[Any]:
    """Values that the key may take: its ends, some between, what its kind of key is told here."""
    if spec.type == "choice":
        yield from spec.choices
    elif spec.type in ("quantity", "count", "ratio"):
        assert spec.low is not None and spec.high is not None
        low, high = spec.low.partition(" "), spec.high.partition(" ")
        for share in (0.0, 0.1, 0.6):
            value = float(low[0]) + share * (float(high[0]) - float(low[0]))
            if spec.type == "count":
                yield round(value)
            else:
                yield f"{value:.6g} {high[2]}" if spec.type == "quantity" else value
    else:
        yield from ANSWERS[spec.type]


def numbered(path: str) -> str:
    """The path into the first of a list."""
    for each in (*LISTS, "stress.case"):
        if path.startswith(f"{each}."):
            return f"{each}.0.{path.removeprefix(each + '.')}"
    return path


def what_is_computed(plain: dict[str, Any]) -> list[object]:
    """All figures, without what is assumed and what cases are called."""
    found = asdict(figures(plain))
    del found["assumed"]
    for case in found["stress"]:
        del case["case"]
    return list(found.values())


def changed(plain: dict[str, Any], path: str, value: Any) -> dict[str, Any]:
    """The data with one more value, sections and items put in where they are missing."""
    plain = copy.deepcopy(plain)
    at: Any = plain
    *above, last = numbered(path).split(".")
    for part, below in zip(above, [*above, last][1:], strict=True):
        if part.isdigit():
            at += [{}] * (int(part) + 1 - len(at))
            at = at[int(part)]
        else:
            at = at.setdefault(part, [] if below.isdigit() else {})
    at[last] = value
    return plain


BUILDS = [build("full-session", other) for other in OTHERS]


@pytest.fixture(scope="module")
def computed() -> list[list[object]]:
    return [what_is_computed(plain) for plain in BUILDS]


def moves(path: str, computed: list[list[object]]) -> bool:
    """Whether an answer to a key changes the figures of one of the builds."""
    spec = field_at(path)
    tried = 1 if spec.type in WORDS else len(BUILDS)
    for plain, before in zip(BUILDS[:tried], computed[:tried], strict=True):
        for answer in answers(spec):
            try:
                if what_is_computed(changed(plain, path, answer)) != before:
                    return True
            except SessionError:
                continue
    return False


@pytest.mark.parametrize("path", leaf_paths())
def test_every_key_moves_a_figure_or_is_listed(path: str, computed: list[list[object]]) -> None:
    assert moves(path, computed) != (path in MOVES_NOTHING)


def test_what_is_listed_is_a_key() -> None:
    assert set(MOVES_NOTHING) <= set(leaf_paths())
