"""How many hoses and how many bent ends: counts that stand in the fittings of the one run."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil

from fuelwiz.desk.composites.kinds import CountQuestion
from fuelwiz.desk.composites.one_run import hose_ends
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.refusals import Refusal
from fuelwiz.desk.state import State

MOST_HOSES = 25


def _fittings(state: State) -> Mapping[str, int]:
    return value_at(state.plain, ("feed", "run", 0, "fittings")) or {}


def _with_fittings(state: State, straight: int, bent: int | None) -> State:
    fittings = {"straight": straight} if bent is None else {"straight": straight, "swept_90": bent}
    return state.with_value("feed.run.0.fittings", fittings)


def _hoses(state: State) -> int | None:
    fittings = _fittings(state)
    return hose_ends(fittings) // 2 if fittings else None


def _with_hoses(state: State, hoses: int) -> State:
    bent = _fittings(state).get("swept_90")
    if (bent or 0) > 2 * hoses:
        need = ceil((bent or 0) / 2)
        raise Refusal(
            f"{bent} bent ends need {need} or more",
            f"each hose has two ends: {bent} bent ends need {need} hoses or more. Change the number of bent ends first.",
        )
    return _with_fittings(state, 2 * hoses - (bent or 0), bent)


def _bends(state: State) -> int | None:
    return _fittings(state).get("swept_90")


def _with_bends(state: State, bent: int) -> State:
    hoses = _hoses(state)
    if hoses is None:
        hoses = max(1, ceil(bent / 2))
    if bent > 2 * hoses:
        raise Refusal(
            f"0 to {2 * hoses} is wanted", f"{hoses} hoses have {2 * hoses} ends in all: no more can be bent."
        )
    return _with_fittings(state, 2 * hoses - bent, bent)


def _without_hoses(state: State) -> State:
    return state.without("feed.run.0.fittings")


def _without_bends(state: State) -> State:
    hoses = _hoses(state)
    return state if hoses is None else _with_fittings(state, 2 * hoses, None)


HOSES = CountQuestion(_hoses, _with_hoses, _without_hoses, MOST_HOSES)
BENDS = CountQuestion(_bends, _with_bends, _without_bends, 2 * MOST_HOSES)
