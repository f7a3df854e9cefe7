"""What a field is called where its question has a name of its own for it: a pump's one figure is no point of many."""

from __future__ import annotations

from fuelwiz.desk.composites import CHOICE_QUESTIONS
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.state import State

_ON_THE_BOX = {
    "pump.curve.0.points.0.0": "pump.figure.pressure",
    "pump.curve.0.points.0.1": "pump.figure.flow",
}


def noun_here(state: State, path: str) -> str:
    """What a field is called inside a sentence, by the question that the build is asked for it."""
    asked = _ON_THE_BOX.get(path)
    if asked is not None and CHOICE_QUESTIONS["pump.known"].read(state) == "figure":
        return noun_of(asked)
    return noun_of(path)
