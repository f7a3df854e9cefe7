"""A pump's figures as people write them in a line: "0 psi 80 gph, 40 psi 62 gph; 6, 8.5 A at 40, 60 psi"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import groupby

from fuelwiz import units
from fuelwiz.record import record
from fuelwiz.unit_table import Kind

_PIECE = re.compile(r"(?P<number>\d+(?:\.\d+)?)|(?P<word>[A-Za-z]+(?:/[A-Za-z]+)?)")
_KINDS: tuple[Kind, ...] = ("pressure_change", "flow", "current", "voltage")
_JOINS = {"at", "and", "a", "by"}


@record
class _Quantity:
    number: str
    unit: str
    kind: Kind

    @property
    def text(self) -> str:
        return f"{self.number} {self.unit}"


@dataclass(slots=True)
class Spoken:
    """What a text says: flow at pressure for each voltage, in the order of being said, and current at pressure."""

    flows: dict[str | None, list[tuple[str, str]]] = field(default_factory=dict)
    current: list[tuple[str, str]] = field(default_factory=list)


_Group = dict[Kind, list[str]]


def spoken(text: str) -> Spoken:
    """The pairs in a text whose numbers have units; those that have none take them from their neighbors."""
    said = Spoken()
    volts_first = _volts_come_first(text)
    waiting: list[_Group] = []
    voltage: str | None = None
    for group in _groups(_runs(text)):
        volts = group.pop("voltage", None)
        if volts and volts_first:
            voltage = volts[0]
        if group:
            waiting.append(group)
        if volts and not volts_first:
            _take(said, waiting, volts[0])
            waiting = []
        elif volts_first:
            _take(said, waiting, voltage)
            waiting = []
    _take(said, waiting, None if volts_first else voltage)
    return said


def _volts_come_first(text: str) -> bool:
    kinds = [run[0].kind for run in _runs(text)]
    return bool(kinds) and kinds[0] == "voltage"


def _take(said: Spoken, groups: list[_Group], voltage: str | None) -> None:
    for group in groups:
        pressures = group.get("pressure_change", [])
        flows, amps = group.get("flow", []), group.get("current", [])
        if flows and pressures:
            said.flows.setdefault(voltage, []).extend(zip(pressures, flows, strict=False))
        if amps and pressures:
            said.current.extend(zip(pressures, amps, strict=False))


def _groups(runs: list[list[_Quantity]]) -> Iterator[_Group]:
    """Runs that belong together: of different kinds and equally long; volts stand for themselves."""
    group: _Group = {}
    for run in runs:
        kind, texts = run[0].kind, [one.text for one in run]
        if kind == "voltage":
            yield {**group, "voltage": texts}
            group = {}
            continue
        if kind in group or any(len(other) != len(texts) for other in group.values()):
            yield group
            group = {}
        group[kind] = texts
    if group:
        yield group


def _runs(text: str) -> list[list[_Quantity]]:
    """Quantities of one kind that follow one another."""
    return [list(run) for _, run in groupby(_quantities(text), key=lambda one: one.kind)]


def _quantities(text: str) -> list[_Quantity]:
    """Every number with its unit; a list takes the unit at its end, a lone number that of those like it before."""
    reader = _Reader()
    for piece in _PIECE.finditer(text):
        if piece["number"]:
            reader.bare.append(piece["number"])
            continue
        kind = _kind_of(piece["word"])
        if kind is not None and reader.bare:
            reader.unit(piece["word"], kind)
        elif kind is None and piece["word"].lower() not in _JOINS:
            reader.end_of_clause()
    reader.end_of_clause()
    return reader.found


class _Reader:
    """Numbers that wait for their unit, and what was found before them."""

    def __init__(self) -> None:
        self.bare: list[str] = []
        self.found: list[_Quantity] = []
        self._after: dict[Kind, _Quantity] = {}
        """What has last followed a quantity of each kind."""

    def unit(self, unit: str, kind: Kind) -> None:
        """A unit behind the numbers that wait: "4 bar, 295, 5 bar" means 295 of what followed a pressure before."""
        like = self._like()
        if like is not None and len(self.bare) == 2 and self.found[-1].kind == kind:
            self._add(self.bare.pop(0), like.unit, like.kind)
        for number in self.bare:
            self._add(number, unit, kind)
        self.bare.clear()

    def end_of_clause(self) -> None:
        """No unit comes any more: the numbers that wait are as what followed such a quantity before."""
        like = self._like()
        if like is not None:
            for number in self.bare:
                self._add(number, like.unit, like.kind)
        self.bare.clear()

    def _like(self) -> _Quantity | None:
        return self._after.get(self.found[-1].kind) if self.found else None

    def _add(self, number: str, unit: str, kind: Kind) -> None:
        one = _Quantity(number, unit, kind)
        if self.found:
            self._after[self.found[-1].kind] = one
        self.found.append(one)


def _kind_of(word: str) -> Kind | None:
    kinds = units.kinds_of(word)
    return next((kind for kind in _KINDS if kind in kinds), None)
