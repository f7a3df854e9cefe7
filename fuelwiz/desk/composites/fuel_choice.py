"""Which fuel: one answer for its kind and its share of ethanol."""

from __future__ import annotations

import re
from typing import get_args

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.field_questions import answers_to
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.state import State
from fuelwiz.terms import USUAL_ETHANOL, FuelKind

KEY = "fuel.which"
BLEND: FuelKind = "blend"
"""Gasoline with a share of ethanol; every other kind of fuel is an answer by itself."""

_SHARE = re.compile(
    r"(?:e\s*([0-9]{1,3}(?:\.[0-9]{1,2})?)\s*%?|([0-9]{1,3}(?:\.[0-9]{1,2})?)\s*%)", re.IGNORECASE
)
"""A blend by its name or its share of ethanol: E70, 70 %."""
_WHOLE = 100


def _is_kind(answer: str) -> bool:
    """Whether an answer names a kind of fuel; else it is a share of ethanol in gasoline."""
    return answer in get_args(FuelKind)


def _read(state: State) -> str | None:
    """The answer that stands: "blend" where the share of ethanol is none of those on offer, or is to be typed."""
    kind = value_at(state.plain, ("fuel", "kind"))
    if kind is not None and kind != BLEND and _is_kind(kind):
        return str(kind)
    return _blend(state, is_said=kind == BLEND)


def _blend(state: State, is_said: bool) -> str | None:
    ethanol = value_at(state.plain, ("fuel", "ethanol"))
    if state.picked.get(KEY) == BLEND or "fuel.ethanol" in state.raw:
        return BLEND
    if ethanol is None:
        return USUAL_ETHANOL if is_said else None
    return next((share for share in answers_to(KEY) if _same_share(ethanol, share)), BLEND)


def _same_share(ethanol: str, share: str) -> bool:
    return ethanol.replace(" ", "") == share.replace(" ", "")


def _put(state: State, answer: str) -> State:
    state = state.without_picked(KEY).without_raw("fuel.ethanol")
    if not _is_kind(answer):
        return _with_kind_blend(state).with_value("fuel.ethanol", answer)
    if answer == BLEND:
        return _with_kind_blend(state).with_picked(KEY, answer)
    return state.with_value("fuel.kind", answer).without("fuel.ethanol")


def _put_typed(state: State, text: str) -> State | None:
    """The build with a blend that is typed; None where the text names none."""
    share = share_of(text)
    return None if share is None else _put(state, share)


def share_of(text: str) -> str | None:
    """The share of ethanol that a blend is called by, as a file has it: "70 %" of E70; None where a text names none."""
    named = _SHARE.fullmatch(text.strip())
    share = float(named[1] or named[2]) if named else _WHOLE + 1
    return f"{share:g} %" if share <= _WHOLE else None


def _with_kind_blend(state: State) -> State:
    """A kind that the file names is named anew; one that it leaves out stays out."""
    return state if value_at(state.plain, ("fuel", "kind")) is None else state.with_value("fuel.kind", BLEND)


def _clear(state: State) -> State:
    """The build with the usual fuel, and none named."""
    return state.without("fuel.kind").without("fuel.ethanol").without_picked(KEY)


FUEL = ChoiceQuestion(
    KEY, _read, _put, USUAL_ETHANOL, _clear, put_typed=_put_typed, also="E70 for a blend with 70 % ethanol"
)
