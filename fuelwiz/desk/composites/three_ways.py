"""A part that there is with figures, that there is without, or that there is not: filter, strainer, regulator.

Not knowing its figures never makes the answer better: a usual loss is taken. Nothing chosen counts as that too.
"""

from __future__ import annotations

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.composites.on_the_car import is_on_car, off_the_car, on_the_car
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.desk.state import State

KNOWN, UNKNOWN, NONE = "known", "unknown", "none"


def _filter_read(state: State) -> str | None:
    filters = value_at(state.plain, ("feed", "filter"))
    picked = state.picked.get("filter.have")
    if filters is None:
        return KNOWN if picked == KNOWN else None
    if not filters:
        return NONE
    return _by_figures(filters[0], picked)


def _by_figures(part: object, picked: str | None) -> str:
    given = isinstance(part, dict) and ("rated_flow" in part or "rated_loss" in part)
    return KNOWN if given or picked == KNOWN else UNKNOWN


def _filter_put(state: State, answer: str) -> State:
    stood = value_at(state.plain, ("feed", "filter"))
    before = _filter_read(state)
    if before == answer:
        return state
    if stood and before == KNOWN:
        state = state.with_stashed("feed.filter", stood)
    state = state.with_picked("filter.have", answer)
    if answer == NONE:
        return state.with_value("feed.filter", [])
    if answer == KNOWN:
        back = state.stashed.get("feed.filter")
        if back:
            return state.with_value("feed.filter", back)
    return state.with_value("feed.filter", [_without_figures(stood)])


def _without_figures(filters: object) -> dict[str, object]:
    first = filters[0] if isinstance(filters, list) and filters else {}
    return {key: value for key, value in first.items() if key not in ("rated_flow", "rated_loss")}


def _filter_clear(state: State) -> State:
    return state.without("feed.filter").without_picked("filter.have")


def _strainer_read(state: State) -> str | None:
    strainer = value_at(state.plain, ("inlet", "strainer"))
    picked = state.picked.get("inlet.strainer.have")
    if strainer is None:
        return KNOWN if picked == KNOWN else None
    if strainer is False:
        return NONE
    return _by_figures(strainer, picked)


def _strainer_put(state: State, answer: str) -> State:
    stood = value_at(state.plain, ("inlet", "strainer"))
    before = _strainer_read(state)
    if before == answer:
        return state
    if stood and before == KNOWN:
        state = state.with_stashed("inlet.strainer", stood)
    state = state.with_picked("inlet.strainer.have", answer)
    if answer == NONE:
        return state.with_value("inlet.strainer", False)
    if answer == KNOWN:
        back = state.stashed.get("inlet.strainer")
        if back:
            return state.with_value("inlet.strainer", back)
    return state.with_value("inlet.strainer", _without_figures([stood] if isinstance(stood, dict) else []))


def _strainer_clear(state: State) -> State:
    return state.without("inlet.strainer").without_picked("inlet.strainer.have")


_REGULATOR = "return_line.regulator"


def _regulator_read(state: State) -> str | None:
    if value_at(state.plain, value_path(_REGULATOR)):
        return KNOWN
    picked = state.picked.get(f"{_REGULATOR}.have")
    if picked in (KNOWN, NONE):
        return picked
    return UNKNOWN if is_on_car(state, "regulator") else picked


def _regulator_put(state: State, answer: str) -> State:
    stood = value_at(state.plain, value_path(_REGULATOR))
    state = state.with_picked(f"{_REGULATOR}.have", answer)
    if answer == KNOWN:
        back = state.stashed.get(_REGULATOR)
        state = state.with_value(_REGULATOR, back) if back and not stood else state
        return on_the_car(state, "regulator")
    if stood:
        state = state.with_stashed(_REGULATOR, stood).without(_REGULATOR)
    return on_the_car(state, "regulator") if answer == UNKNOWN else off_the_car(state, "regulator")


def _regulator_clear(state: State) -> State:
    return off_the_car(state.without(_REGULATOR), "regulator").without_picked(f"{_REGULATOR}.have")


FILTER = ChoiceQuestion("filter.have", _filter_read, _filter_put, UNKNOWN, _filter_clear)
STRAINER = ChoiceQuestion("inlet.strainer.have", _strainer_read, _strainer_put, UNKNOWN, _strainer_clear)
REGULATOR = ChoiceQuestion(f"{_REGULATOR}.have", _regulator_read, _regulator_put, UNKNOWN, _regulator_clear)
