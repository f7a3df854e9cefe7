"""Which fuel: one answer for its kind and its share of ethanol."""

from __future__ import annotations

from typing import assert_never, cast, get_args

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.field_questions import answers_to
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.state import State
from fuelwiz.terms import USUAL_ETHANOL, FuelKind

KEY = "fuel.which"


def _as_kind(answer: str) -> FuelKind | None:
    """The kind of fuel that an answer names; None for a share of ethanol."""
    return cast(FuelKind, answer) if answer in get_args(FuelKind) else None


def _read(state: State) -> str | None:
    """The answer that stands: "blend" where the share of ethanol is none of those on offer, or is to be typed."""
    given = value_at(state.plain, ("fuel", "kind"))
    kind = _as_kind(given or "blend")
    match kind:
        case "methanol" | "own":
            return kind
        case "blend" | None:
            return _blend(state, is_said=given == "blend")
        case _:
            assert_never(kind)


def _blend(state: State, is_said: bool) -> str | None:
    ethanol = value_at(state.plain, ("fuel", "ethanol"))
    if state.picked.get(KEY) == "blend" or "fuel.ethanol" in state.raw:
        return "blend"
    if ethanol is None:
        return USUAL_ETHANOL if is_said else None
    return next((share for share in answers_to(KEY) if _same_share(ethanol, share)), "blend")


def _same_share(ethanol: str, share: str) -> bool:
    return ethanol.replace(" ", "") == share.replace(" ", "")


def _put(state: State, answer: str) -> State:
    state = state.without_picked(KEY).without_raw("fuel.ethanol")
    kind = _as_kind(answer)
    match kind:
        case "methanol" | "own":
            return state.with_value("fuel.kind", kind).without("fuel.ethanol")
        case "blend":
            return _with_kind_blend(state).with_picked(KEY, answer)
        case None:
            return _with_kind_blend(state).with_value("fuel.ethanol", answer)
        case _:
            assert_never(kind)


def _with_kind_blend(state: State) -> State:
    """A kind that the file names is named anew; one that it leaves out stays out."""
    return (
        state if value_at(state.plain, ("fuel", "kind")) is None else state.with_value("fuel.kind", "blend")
    )


def _clear(state: State) -> State:
    """The build with the usual fuel, and none named."""
    return state.without("fuel.kind").without("fuel.ethanol").without_picked(KEY)


FUEL = ChoiceQuestion(KEY, _read, _put, USUAL_ETHANOL, _clear)
