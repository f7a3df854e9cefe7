"""Questions that stand for several keys, or for a part of one: how each is read off a build and written into it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import ceil
from types import MappingProxyType

from fuelwiz.desk.plain import value_at
from fuelwiz.desk.refusals import Refusal
from fuelwiz.desk.state import State

MOST_HOSES = 25
SEVERAL = "several: see the runs"

SAMPLE_PUMP = MappingProxyType(
    {
        "name": "sample pump, invented",
        "voltage": "13.5 V",
        "points": (
            ("20 psi", "151 gal/h"),
            ("40 psi", "142 gal/h"),
            ("60 psi", "131 gal/h"),
            ("80 psi", "117 gal/h"),
            ("100 psi", "98 gal/h"),
        ),
    }
)
"""An invented pump to learn with."""

_LISTS = (
    "feed.run",
    "feed.filter",
    "feed.part",
    "inlet.run",
    "return_line.run",
    "return_line.part",
    "pump.curve",
    "stress.case",
)
_ONE_RUN = {
    "feed.length": "feed.run",
    "feed.hose": "feed.run",
    "feed.hoses": "feed.run",
    "feed.bends": "feed.run",
    "inlet.line": "inlet.run",
    "inlet.size": "inlet.run",
    "return.length": "return_line.run",
    "return.hose": "return_line.run",
}
_FIELDS = {
    "feed.length": "feed.run.0.length",
    "feed.hose": "feed.run.0.hose",
    "feed.filter": "feed.filter.0.rated_flow",
    "inlet.line": "inlet.run.0.length",
    "inlet.size": "inlet.run.0.size",
    "return.length": "return_line.run.0.length",
    "return.hose": "return_line.run.0.hose",
    "pump.figure.flow": "pump.curve.0.points.0.1",
    "pump.figure.pressure": "pump.curve.0.points.0.0",
}


@dataclass(frozen=True, slots=True)
class ChoiceQuestion:
    """A question answered in words: which answer stands, how each is written, and what `?` leaves."""

    read: Callable[[State], str | None]
    write: Callable[[State, str], State]
    fallback: str


@dataclass(frozen=True, slots=True)
class CountQuestion:
    """A question answered with a count that several keys hold."""

    read: Callable[[State], int | None]
    write: Callable[[State, int], State]
    clear: Callable[[State], State]
    most: int


def field_of(path: str) -> str:
    """The field that a question is answered in: that of the first run, filter or curve where it names none."""
    if path in _FIELDS:
        return _FIELDS[path]
    for section in _LISTS:
        if (
            path.startswith(f"{section}.")
            and not path[len(section) + 1 :].split(".", maxsplit=1)[0].isdecimal()
        ):
            return f"{section}.0.{path[len(section) + 1 :]}"
    return path


def has_several_runs(state: State, path: str) -> bool:
    """Whether a question about one run meets more than one, or one with other ends than it can tell."""
    if path not in _ONE_RUN:
        return False
    runs = value_at(state.plain, tuple(_ONE_RUN[path].split("."))) or []
    if len(runs) > 1:
        return True
    return (
        bool(runs) and path in {"feed.hoses", "feed.bends"} and not _is_simple(runs[0].get("fittings") or {})
    )


def _is_simple(fittings: Mapping[str, int]) -> bool:
    others = any(number for name, number in fittings.items() if name not in {"straight", "swept_90"})
    return not others and _ends(fittings) % 2 == 0


def _ends(fittings: Mapping[str, int]) -> int:
    return fittings.get("straight", 0) + fittings.get("swept_90", 0)


def _fittings(state: State) -> Mapping[str, int]:
    return value_at(state.plain, ("feed", "run", 0, "fittings")) or {}


def _with_fittings(state: State, straight: int, bent: int | None) -> State:
    fittings = {"straight": straight} if bent is None else {"straight": straight, "swept_90": bent}
    return state.with_value("feed.run.0.fittings", fittings)


def _hoses(state: State) -> int | None:
    fittings = _fittings(state)
    return _ends(fittings) // 2 if fittings else None


def _with_hoses(state: State, hoses: int) -> State:
    bent = _fittings(state).get("swept_90")
    if (bent or 0) > 2 * hoses:
        need = ceil((bent or 0) / 2)
        raise Refusal(
            f"{bent} bent ends want {need} or more",
            f"each hose has two ends: {bent} bent ones want {need} hoses or more. Say first how many ends are bent.",
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


def _fuel(state: State) -> str | None:
    """The answer that stands: "blend" where the share of ethanol is none of those on offer, or is to be typed."""
    kind, ethanol = value_at(state.plain, ("fuel", "kind")), value_at(state.plain, ("fuel", "ethanol"))
    if kind in {"methanol", "own"}:
        return str(kind)
    if state.picked.get("fuel.which") == "blend" or "fuel.ethanol" in state.raw:
        return "blend"
    if ethanol is None:
        return "10 %" if kind == "blend" else None
    return next((share for share in ("10 %", "30 %", "85 %", "0 %") if _same_share(ethanol, share)), "blend")


def _same_share(ethanol: str, share: str) -> bool:
    return ethanol.replace(" ", "") == share.replace(" ", "")


def _with_fuel(state: State, answer: str) -> State:
    state = state.without_picked("fuel.which").without_raw("fuel.ethanol")
    if answer in {"methanol", "own"}:
        return state.with_value("fuel.kind", answer).without("fuel.ethanol")
    if value_at(state.plain, ("fuel", "kind")) is not None:
        state = state.with_value("fuel.kind", "blend")
    if answer == "blend":
        return state.with_picked("fuel.which", answer)
    return state.with_value("fuel.ethanol", answer)


def _known(state: State) -> str | None:
    """What is known of the pump: none, one figure, or a curve, by its points where it has any."""
    curves = value_at(state.plain, ("pump", "curve")) or ()
    points = max((len(curve.get("points") or ()) for curve in curves), default=0)
    picked = state.picked.get("pump.known")
    if points > 1 or len(curves) > 1:
        return "sample" if _is_sample(state) else "curve"
    if points == 1:
        return picked if picked in {"figure", "curve"} else "figure"
    return picked


def _is_sample(state: State) -> bool:
    return (
        value_at(state.plain, ("pump", "name")) == SAMPLE_PUMP["name"]
        and state.picked.get("pump.known") == "sample"
    )


def _with_known(state: State, answer: str) -> State:
    """The curve that stood is put aside under its answer, and what was put aside under the new one comes back."""
    before = _known(state)
    if before == answer:
        return state
    curves = value_at(state.plain, ("pump", "curve"))
    if curves and before:
        state = state.with_stashed(f"pump.{before}", curves)
    if value_at(state.plain, ("pump", "name")) == SAMPLE_PUMP["name"]:
        state = state.without("pump.name")
    state = state.without("pump.curve").with_picked("pump.known", answer)
    if answer == "sample":
        return _with_sample(state)
    back = state.stashed.get(f"pump.{answer}")
    return state.with_value("pump.curve", back) if back else state


def _with_sample(state: State) -> State:
    points = [list(point) for point in SAMPLE_PUMP["points"]]
    state = state.with_value("pump.curve", [{"voltage": SAMPLE_PUMP["voltage"], "points": points}])
    return state.with_value("pump.name", SAMPLE_PUMP["name"])


def _has(section: str) -> Callable[[State], str | None]:
    def read(state: State) -> str | None:
        if value_at(state.plain, tuple(section.split("."))) is not None:
            return "yes"
        return state.picked.get(f"{section}.have")

    return read


def _with(section: str, empty_stands: bool) -> Callable[[State, str], State]:
    """A section that is there or not; what it held is put aside with no, and comes back with yes."""
    at = tuple(section.split("."))

    def write(state: State, answer: str) -> State:
        held = value_at(state.plain, at)
        if answer == "no":
            if held:
                state = state.with_stashed(section, held)
            return state.without(section).with_picked(f"{section}.have", answer)
        state = state.with_picked(f"{section}.have", answer)
        if held is not None:
            return state
        back = state.stashed.get(section) or ({} if empty_stands else None)
        return state if back is None else state.with_value(section, back)

    return write


COUNT_QUESTIONS: Mapping[str, CountQuestion] = MappingProxyType(
    {
        "feed.hoses": CountQuestion(_hoses, _with_hoses, _without_hoses, MOST_HOSES),
        "feed.bends": CountQuestion(_bends, _with_bends, _without_bends, 2 * MOST_HOSES),
    }
)
CHOICE_QUESTIONS: Mapping[str, ChoiceQuestion] = MappingProxyType(
    {
        "fuel.which": ChoiceQuestion(_fuel, _with_fuel, "10 %"),
        "pump.known": ChoiceQuestion(_known, _with_known, "none"),
        "inlet.strainer.have": ChoiceQuestion(_has("inlet.strainer"), _with("inlet.strainer", False), "no"),
        "surge.have": ChoiceQuestion(_has("surge"), _with("surge", True), "no"),
    }
)


def without_item(state: State, path: str) -> State:
    """The build without the run or filter that a question is about: its answer is "none"."""
    section, _, _ = field_of(path).partition(".0.")
    return state.without(section)
