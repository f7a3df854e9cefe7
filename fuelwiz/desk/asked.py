"""Which questions a build is asked: some only make sense after the answer to another."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Protocol

from fuelwiz.desk.composites.one_run import question_of
from fuelwiz.desk.field_text import FieldText
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.points.amps import beside_no_point

_WITH_PUMP = (
    "pump.count",
    "pump.volts",
    "pump.name",
    "pump.place",
    "pump.kind",
    "pump.health",
    "pump.relief",
)

_ASKED_BY_ANOTHER = ("fuel.kind", "show_units")
"""Keys that a question of another name answers."""


class Answers(Protocol):
    """The answers of a build, as far as it decides what is asked."""

    @property
    def plain(self) -> Plain:
        """What a save would write."""

    def text_in_field(self, path: str) -> FieldText:
        """What stands in a field, its fallback where nothing is given."""

    def is_given(self, path: str) -> bool:
        """Whether the builder has said something there."""


def says(desk: Answers, path: str) -> str:
    """What stands at a path, the fallback where nothing is given."""
    return desk.text_in_field(path).text


def _own_fuel(desk: Answers) -> bool:
    return says(desk, "fuel.which") == "own"


def _pump_is(*known: str) -> Callable[[Answers], bool]:
    return lambda desk: says(desk, "pump.known") in known


def _has_pump(desk: Answers) -> bool:
    return says(desk, "pump.known") != "none"


def _several_pumps(desk: Answers) -> bool:
    return _has_pump(desk) and says(desk, "pump.count") not in ("", "1")


def _has_strainer(desk: Answers) -> bool:
    return says(desk, "inlet.strainer.have") != "none"


def _strainer_known(desk: Answers) -> bool:
    return says(desk, "inlet.strainer.have") == "known"


def _filter_known(desk: Answers) -> bool:
    return says(desk, "filter.have") == "known"


def _regulator_known(desk: Answers) -> bool:
    return _has_return(desk) and says(desk, "return_line.regulator.have") == "known"


def _has_pot(desk: Answers) -> bool:
    return says(desk, "surge.have") == "yes"


def _returns(desk: Answers) -> bool:
    """Whether fuel may go back through a line: from a regulator at the rail, or one near the tank."""
    return says(desk, "pressure.regulator") != "none"


def _has_return(desk: Answers) -> bool:
    """Whether there is a return to ask about: one at the tank is the short way in until its length is told."""
    return _returns(desk) and (says(desk, "pressure.regulator") == "rail" or "return_line" in desk.plain)


_ASKED_IF: dict[str, Callable[[Answers], bool]] = {
    "goal.driveline_loss": lambda desk: says(desk, "goal.power_at") == "wheels",
    "goal.next_boost": lambda desk: desk.is_given("goal.next_power"),
    "fuel.ethanol": lambda desk: says(desk, "fuel.which") == "blend",
    "fuel.kind": lambda desk: False,
    "show_units": lambda desk: False,
    "fuel.density": _own_fuel,
    "fuel.viscosity": _own_fuel,
    "fuel.lhv": _own_fuel,
    "fuel.stoich": _own_fuel,
    "pressure.idle_vacuum": lambda desk: says(desk, "pressure.reference") == "manifold",
    "pressure.boost": lambda desk: (
        says(desk, "engine.induction") != "none" or desk.is_given("pressure.boost")
    ),
    "pump.figure.flow": _pump_is("figure"),
    "pump.figure.pressure": _pump_is("figure"),
    "pump.curve.voltage": _pump_is("curve", "sample", "figure"),
    "pump.curve.points": _pump_is("curve", "sample"),
    "pump.curve": _pump_is("curve", "sample", "figure"),
    "pump.arrangement": _several_pumps,
    "pump.running_at_idle": _several_pumps,
    "pump.amps": _pump_is("figure"),
    "pump.current": lambda desk: _has_pump(desk) and beside_no_point(desk.plain),
    **dict.fromkeys(_WITH_PUMP, _has_pump),
    "filter.loss": _filter_known,
    "feed.filter": _filter_known,
    "inlet.strainer.rated_flow": _strainer_known,
    "inlet.strainer.rated_loss": _strainer_known,
    "inlet.strainer.clogging": _has_strainer,
    "inlet.strainer.carries": lambda desk: _has_strainer(desk) and _several_pumps(desk),
    "inlet.size": lambda desk: desk.is_given("inlet.line"),
    "return.length": _returns,
    "return.hose": _has_return,
    "return.fitted": _has_return,
    "return.hoses": lambda desk: _has_return(desk) and says(desk, "return.hose") != "tube",
    "return.bends": _has_return,
    "return_line.regulator.have": _has_return,
    "return_line.regulator.rated_flow": _regulator_known,
    "return_line.regulator.rated_loss": _regulator_known,
    "return_line.sizes": _has_return,
    "return_line.chosen": _has_return,
    "return_line.run": _has_return,
    "return_line.part": _has_return,
    "surge.volume": _has_pot,
    "surge.lift_flow": _has_pot,
    "surge.return_to": _has_pot,
    "feed.length": lambda desk: not is_run_by_run(desk),
    "feed.hose": lambda desk: not is_run_by_run(desk),
    "feed.hoses": lambda desk: not is_run_by_run(desk) and says(desk, "feed.hose") != "tube",
    "feed.bends": lambda desk: not is_run_by_run(desk),
}


def is_run_by_run(desk: Answers) -> bool:
    """Whether the feed is given run by run, so that one length and one count of bends do not describe it."""
    return len(desk.plain.get("feed", {}).get("run", ())) > 1


def is_asked(desk: Answers, key: str) -> bool:
    """Whether a question makes sense for what the build says so far."""
    asked = _ASKED_IF.get(key)
    return asked is None or asked(desk)


def texts_not_asked(desk: Answers, raw: Mapping[str, str], typed_in: str) -> Mapping[str, str]:
    """Refused texts whose question is not asked for now: they hold nothing up, and stand there if it is again."""
    return {at: text for at, text in raw.items() if at != typed_in and not _is_asked_at(desk, at)}


def _is_asked_at(desk: Answers, path: str) -> bool:
    """Whether a question that a path answers makes sense: one of another name, or its own and each list above it."""
    question = question_of(path)
    return (question != path and is_asked(desk, question)) or all(
        key in _ASKED_BY_ANOTHER or is_asked(desk, key) for key in _keys_down_to(path)
    )


def _keys_down_to(path: str) -> Iterator[str]:
    """The key of a path without the numbers in it, and those above it."""
    parts = [part for part in path.split(".") if not part.isdecimal()]
    return (".".join(parts[:length]) for length in range(1, len(parts) + 1))
