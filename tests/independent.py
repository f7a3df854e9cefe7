"""The figures of an independent solver for the examples, as the program's own classes hold them."""

from __future__ import annotations

import json
import types
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any, Union, get_args, get_origin, get_type_hints

from fuelwiz.session import Session
from fuelwiz.sizing import quick_figures
from fuelwiz.sizing.figures import Figures

EXAMPLES = Path(__file__).parent / "examples"
NOT_SOLVED_BUT_SAID = (
    "gauge",
    "wire_choices",
    "injector_choices",
    "one_volt",
    "path",
    "return_check",
    "metric_wire_choices",
)
NOT_SOLVED = (*NOT_SOLVED_BUT_SAID, "long_way", "in_place_of_pump")
"""What the solver does not give: here it is the program's own."""


def independent_figures(name: str, session: Session) -> Figures:
    """The figures in tests/examples/NAME.json, and for what they leave out those of the session."""
    own = quick_figures(session)
    plain = json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8"))
    known = {key: getattr(own, key) for key in NOT_SOLVED}
    hints = get_type_hints(Figures)
    solved = {key: built(hints[key], plain[key]) for key in hints if key not in NOT_SOLVED}
    return Figures(**solved, **known)


def built(kind: Any, value: Any) -> Any:
    """A frozen dataclass from parsed JSON, lists as tuples."""
    if value is None:
        return None
    if get_origin(kind) in (Union, types.UnionType):
        kind = next(arm for arm in get_args(kind) if arm is not type(None))
    if get_origin(kind) is tuple:
        return tuple(built(get_args(kind)[0], item) for item in value)
    if not is_dataclass(kind):
        return value
    hints = get_type_hints(kind)
    known = (field.name for field in fields(kind) if field.name in value)
    return kind(**{name: built(hints[name], value[name]) for name in known})
