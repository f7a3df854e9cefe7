"""How figures are shown to people: unit, decimals, never rounded onto or across what judges them."""

from __future__ import annotations

import re
from decimal import ROUND_HALF_UP, Decimal
from math import floor, log10
from typing import Literal, get_args

from fuelwiz.printable import MINUS, NO_BREAK
from fuelwiz.record import record
from fuelwiz.session import Session
from fuelwiz.shown_units import SHOWN_UNITS, base_system, other_system, shown_system, unit_sign
from fuelwiz.units import UnitSystem, from_si, to_si

Role = Literal[
    "power", "flow", "air", "injector", "pressure", "velocity", "percent", "bore", "length", "altitude",
    "temperature", "warming", "volts", "amps", "bsfc", "seconds", "weight", "volume",
    "vacuum",
]  # fmt: skip

MOST_PLACES = 12
ROUND = (1.0, 2.0, 2.5, 5.0, 10.0)
MOST_SHOWN = 100_000
"""Beyond it a figure means nothing for a car: a file may hold absurd values, and no column is wide enough."""
_PLAIN_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")


@record
class _Shown:
    """One role in one system: the unit as shown, as `units` knows it (empty: not converted), decimals."""

    label: str
    unit: str
    places: int


_UNITS: dict[Role, tuple[str, str]] = {
    "power": SHOWN_UNITS["power"],
    "flow": SHOWN_UNITS["flow"],
    "air": ("lb/h", "kg/h"),
    "injector": ("cc/min", "cc/min"),
    "pressure": SHOWN_UNITS["pressure_change"],
    "velocity": SHOWN_UNITS["velocity"],
    "percent": SHOWN_UNITS["fraction"],
    "bore": ("in", "mm"),
    "length": SHOWN_UNITS["length"],
    "altitude": SHOWN_UNITS["length"],
    "temperature": SHOWN_UNITS["temperature"],
    "warming": SHOWN_UNITS["temperature"],
    "volts": SHOWN_UNITS["voltage"],
    "amps": SHOWN_UNITS["current"],
    "bsfc": SHOWN_UNITS["bsfc"],
    "seconds": ("s", "s"),
    "weight": SHOWN_UNITS["mass"],
    "volume": SHOWN_UNITS["volume"],
    "vacuum": ("inHg", "kPa"),
}
_PLACES: dict[Role, tuple[int, int]] = {
    "pressure": (1, 2),
    "velocity": (1, 1),
    "bore": (3, 1),
    "length": (1, 1),
    "volts": (1, 1),
    "amps": (1, 1),
    "weight": (1, 1),
    "bsfc": (3, 0),
    "volume": (1, 0),
    "vacuum": (1, 1),
}
"""Decimals, US and metric, of the roles that are not shown whole."""
_BY_THEIR_KEY: tuple[Role, ...] = ("vacuum",)
"""Roles that a value does not have by its unit: inHg and kPa are said of other pressures too."""
_NOT_CONVERTED: tuple[Role, ...] = ("percent", "warming", "volts", "amps", "seconds")


def _shown(role: Role, at: int) -> _Shown:
    unit = _UNITS[role][at]
    return _Shown(unit_sign(unit), "" if role in _NOT_CONVERTED else unit, _PLACES.get(role, (0, 0))[at])


def _in_systems(role: Role) -> dict[UnitSystem, _Shown]:
    """A role in every system; where power is shown in the unit of the other, it is shown as there."""
    us_shown, metric_shown = _shown(role, 0), _shown(role, 1)
    swapped = role == "power"
    return {
        "us": us_shown,
        "metric": metric_shown,
        "us_kw": metric_shown if swapped else us_shown,
        "metric_hp": us_shown if swapped else metric_shown,
    }


_ROLES: dict[Role, dict[UnitSystem, _Shown]] = {role: _in_systems(role) for role in get_args(Role)}


def _by_unit_of_other(system: UnitSystem) -> dict[str, Role]:
    """The roles by the unit of the other system, where this one has another; of two with one unit the first."""
    roles: dict[str, Role] = {}
    for role, shown in _ROLES.items():
        if role in _BY_THEIR_KEY:
            continue
        unit = shown[other_system(system)].unit
        if unit and unit != shown[system].unit:
            roles.setdefault(unit, role)
    return roles


_BY_UNIT_OF_OTHER: dict[UnitSystem, dict[str, Role]] = {
    system: _by_unit_of_other(system) for system in get_args(UnitSystem)
}


def half_up(value: float, places: int) -> Decimal:
    """A number rounded half up as it is written in decimals, so .3125 is 0.313 whatever its binary form."""
    return Decimal(f"{value:.12g}").quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)


def written(number: Decimal) -> str:
    """A decimal number with a true minus, and no minus before a zero."""
    text = f"{abs(number):f}"
    return f"{MINUS}{text}" if number < 0 else text


def round_step(least: float) -> float:
    """The smallest step of round figures, as between the ticks of an axis, that is that much or more."""
    power = 10.0 ** floor(log10(least))
    return next(nice * power for nice in ROUND if nice * power >= least * 0.999)


def guarded(value: float, places: int, limits: tuple[float, ...]) -> Decimal:
    """A number rounded to `places`, or to as many more as keep it on its own side of every limit."""
    for more in range(places, MOST_PLACES):
        shown = half_up(value, more)
        if all(_side(shown, limit) == _side(value, limit) for limit in limits if limit != value):
            return shown
    return half_up(value, MOST_PLACES)


def guarded_pair(value: float, limit: float, places: int, limit_places: int) -> tuple[Decimal, Decimal]:
    """A number and the limit that judges it, rounded so that the two compare as they do unrounded."""
    for more in range(places, MOST_PLACES):
        shown, against = half_up(value, more), half_up(limit, max(limit_places, more))
        truth = (value > limit) - (value < limit)
        if truth == _side(shown, against) and (truth == 0 or truth == _side(shown, limit)):
            return shown, _trimmed(against)
    return half_up(value, MOST_PLACES), half_up(limit, MOST_PLACES)


def _side(value: Decimal | float, limit: Decimal | float) -> int:
    return (value > limit) - (value < limit)


def _trimmed(number: Decimal) -> Decimal:
    """A limit without the zeros at its end: 15.0 is 15."""
    return number.quantize(Decimal(1)) if number == number.to_integral_value() else number.normalize()


@record
class Numbers:
    """Figures as text in the units that the session shows, powers the way its goal was given."""

    system: UnitSystem
    power_share: float

    @classmethod
    def of(cls, session: Session) -> Numbers:
        """The way one session wants its figures shown."""
        wheels = session.goal.power_at == "wheels"
        return cls(
            shown_system(session.show_units, session.show_power),
            1.0 - session.goal.driveline_loss if wheels else 1.0,
        )

    @property
    def other(self) -> Numbers:
        """The same figures in the other system of units."""
        return Numbers(other_system(self.system), self.power_share)

    def unit(self, role: Role) -> str:
        """The unit of a role, as it heads a column."""
        return _ROLES[role][self.system].label

    def number(self, role: Role, value: float, *limits: float) -> str:
        """A figure without its unit, with more digits where it would else fall onto or across a limit.

        Args:
            role: what it is, which decides unit and decimals.
            value: in SI units; a share for `percent`, crank power for `power`.
            limits: what it is judged by, as `value`.
        """
        places, shown = _ROLES[role][self.system].places, self._as_shown(role, value)
        if abs(shown) >= MOST_SHOWN:
            return f"under {MINUS}{MOST_SHOWN - 1}" if shown < 0 else f"over {MOST_SHOWN - 1}"
        return written(guarded(shown, places, tuple(self._as_shown(role, x) for x in limits)))

    def figure(self, role: Role, value: float, *limits: float) -> str:
        """A figure with its unit, as `number` otherwise."""
        return self._with_unit(role, self.number(role, value, *limits))

    def limit(self, role: Role, value: float) -> str:
        """A limit with its unit and without needless zeros: 15 %, 4 ft/s."""
        shown = half_up(self._as_shown(role, value), max(_ROLES[role][self.system].places, 1))
        return self._with_unit(role, written(_trimmed(shown)))

    def pair(self, role: Role, value: float, limit: float) -> tuple[str, str]:
        """A figure with its unit, and its limit as a number alone: "14.8 %", "15"."""
        places = _ROLES[role][self.system].places
        if abs(self._as_shown(role, value)) >= MOST_SHOWN:
            return self.figure(role, value), self.number(role, limit)
        shown, against = guarded_pair(
            self._as_shown(role, value), self._as_shown(role, limit), places, places
        )
        return self._with_unit(role, written(shown)), written(against)

    def about(self, role: Role, value: float, *limits: float) -> str:
        """A figure for a sentence: whole psi from 5 psi up, altitude in hundreds of feet; any other as `figure`."""
        places = {"pressure": 0, "altitude": -2}.get(role)
        shown = self._as_shown(role, value)
        small = role == "pressure" and shown < 5.0
        if places is None or base_system(self.system) != "us" or small or abs(shown) >= MOST_SHOWN:
            return self.figure(role, value, *limits)
        judged = tuple(self._as_shown(role, limit) for limit in limits)
        rounded = guarded(shown, places, judged)
        return self._with_unit(role, written(rounded.quantize(Decimal(1)) if places < 0 else rounded))

    def typed(self, text: str, role: Role | None = None) -> str:
        """A value as a file has it, a number and its unit as they are shown; a loss at a flow likewise.

        Args:
            text: the value.
            role: what it is, where its unit alone does not tell.
        """
        if " at " in text:
            return " at ".join(self.typed(part) for part in text.split(" at "))
        number, _, unit = text.rpartition(" ")
        if not _PLAIN_NUMBER.fullmatch(number):
            return text
        role = role or _BY_UNIT_OF_OTHER[self.system].get(unit)
        if role is None:
            return f"{number}{NO_BREAK}{unit_sign(unit)}"
        own = _ROLES[role][self.system]
        shown = half_up(from_si(to_si(float(number), unit), own.unit), max(own.places, 1))
        return self._with_unit(role, written(_trimmed(shown)))

    def _as_shown(self, role: Role, value: float) -> float:
        """An SI value as the number that is shown, unrounded."""
        if role == "percent":
            return value * 100.0
        if role == "power":
            value *= self.power_share
        if role == "warming":
            return value * (1.8 if base_system(self.system) == "us" else 1.0)
        unit = _ROLES[role][self.system].unit
        return from_si(value, unit) if unit else value

    def _with_unit(self, role: Role, number: str) -> str:
        return f"{number}{NO_BREAK}{self.unit(role)}"
