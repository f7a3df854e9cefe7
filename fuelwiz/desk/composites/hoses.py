"""How many hoses and how many bent ends: counts that stand in the fittings of the one run, feed or return."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil

from fuelwiz.desk.composites.kinds import CountQuestion
from fuelwiz.desk.composites.one_run import hose_ends
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.desk.refusals import Refusal
from fuelwiz.desk.state import State
from fuelwiz.record import record
from fuelwiz.terms import Hose

MOST_HOSES = 25
PIPE: Hose = "tube"
"""What has bends of its own, and no hose ends."""


@record
class _Ends:
    """The hose ends on the first run of a list."""

    run: str

    @property
    def _path(self) -> str:
        return f"{self.run}.0.fittings"

    def _fittings(self, state: State) -> Mapping[str, int]:
        return value_at(state.plain, value_path(self._path)) or {}

    def _with(self, state: State, straight: int | None, bent: int | None) -> State:
        others = {
            name: number
            for name, number in self._fittings(state).items()
            if name not in ("straight", "swept_90")
        }
        ends = {"straight": straight, "swept_90": bent}
        return state.with_value(
            self._path,
            {**{name: number for name, number in ends.items() if number is not None}, **others},
        )

    def hoses(self, state: State) -> int | None:
        """How many hoses have that many ends."""
        fittings = self._fittings(state)
        return hose_ends(fittings) // 2 if fittings else None

    def with_hoses(self, state: State, hoses: int) -> State:
        """The build with a number of hoses; Refusal where they have too few ends for the bent ones."""
        bent = self._fittings(state).get("swept_90")
        if (bent or 0) > 2 * hoses:
            need = ceil((bent or 0) / 2)
            raise Refusal(
                f"{bent} bent ends need {need} or more",
                f"each hose has two ends: {bent} bent ends need {need} hoses or more. "
                "Change the number of bent ends first.",
            )
        return self._with(state, 2 * hoses - (bent or 0), bent)

    def bends(self, state: State) -> int | None:
        """How many ends are bent."""
        return self._fittings(state).get("swept_90")

    def with_bends(self, state: State, bent: int) -> State:
        """The build with a number of bent ends, or bends of a pipe; Refusal where its hoses have fewer ends."""
        if value_at(state.plain, value_path(f"{self.run}.0.hose")) == PIPE:
            return self._with(state, None, bent)
        hoses = self.hoses(state)
        if hoses is None:
            hoses = max(1, ceil(bent / 2))
        if bent > 2 * hoses:
            raise Refusal(
                f"0 to {2 * hoses} is wanted",
                f"{hoses} hoses have {2 * hoses} ends in all: no more can be bent.",
            )
        return self._with(state, 2 * hoses - bent, bent)

    def without_hoses(self, state: State) -> State:
        """The build with no ends told."""
        return state.without(self._path)

    def without_bends(self, state: State) -> State:
        """The build with all ends straight."""
        if value_at(state.plain, value_path(f"{self.run}.0.hose")) == PIPE:
            return self.without_hoses(state)
        hoses = self.hoses(state)
        return state if hoses is None else self._with(state, 2 * hoses, None)

    def questions(self) -> tuple[CountQuestion, CountQuestion]:
        """How many hoses, and how many bent ends."""
        return (
            CountQuestion(self.hoses, self.with_hoses, self.without_hoses, MOST_HOSES),
            CountQuestion(self.bends, self.with_bends, self.without_bends, 2 * MOST_HOSES),
        )


HOSES, BENDS = _Ends("feed.run").questions()
RETURN_HOSES, RETURN_BENDS = _Ends("return_line.run").questions()
