"""Bad days in words: what changes, what fails first, and what would cure it."""

from __future__ import annotations

import re
from typing import Any

from fuelwiz.advice.numbers import NO_BREAK, Role
from fuelwiz.advice.phrases import vapour_need, vapour_phrase
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import StressFigures
from fuelwiz.sizing.thresholds import HIGH_ALTITUDE_M, HOT_FUEL_K, OTHER_ETHANOL, WEAK_SUPPLY_V
from fuelwiz.units import UnitSystem, to_si

FAILS = {
    "velocity": ("the line is too small for the flow", "a larger line"),
    "delivery": ("the line is too small for all the pump gives", "a larger line"),
    "sag": ("the rail sags too far", "a larger line or a regulator at the rail"),
    "relief": ("the pump's relief opens", "a pump whose relief opens higher"),
    "vapour": ("the fuel boils at the pump", "cooler fuel or a flooded inlet"),
    "inlet": ("the suction line runs too fast", "a larger suction line"),
    "kept run": ("a run kept at its own size is too small", "a larger size there"),
    "injector pressure": (
        "no pressure is left across the injectors",
        "a regulator that follows the manifold",
    ),
    "injectors": ("the injectors are open too long", "larger injectors"),
    "return": ("the return cannot let go of the idle flow", "a larger return"),
    "lift": ("the lift pump cannot keep the pot full", "a larger lift pump"),
    "rating": ("dead head is above a part's rating", "parts that are rated higher"),
    "fuse": ("the wire is too thin for its fuse", "thicker wire"),
}
OF_OTHER_SYSTEM: dict[UnitSystem, dict[str, Role]] = {
    "metric": {
        "hp": "power",
        "psi": "pressure",
        "gal/h": "flow",
        "ft": "length",
        "ft/s": "velocity",
        "degF": "temperature",
    },
    "us": {
        "kW": "power",
        "bar": "pressure",
        "L/h": "flow",
        "m": "length",
        "m/s": "velocity",
        "degC": "temperature",
    },
}
PLAIN_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")
PUMP_CURES = {
    "low volts": "heavier wire or more pump",
    "dirty filters": "clean filters or more pump",
    "boost spike": "a boost cut or more pump",
    "worn pump": "a pump changed in time, or more of it",
    "more ethanol": "more pump, or less power on that fuel",
    "one pump dead": "a pressure cut, or pumps that do it with one fewer",
    "bad day": "heavier wire, clean filters and more pump",
}


def stress_words(build: Subject) -> tuple[str, ...]:
    """One text a case, the builder's own last, as they are solved."""
    cases, own = build.figures.stress, build.session.stress.case
    standard = cases[: len(cases) - len(own)]
    told = [_sentence(build, case, _STANDARD[case.case].format(**_values(build))) for case in standard]
    mine = zip(cases[len(standard) :], own, strict=True)
    return (*told, *(_sentence(build, case, _own_change(build, said.change)) for case, said in mine))


def _sentence(build: Subject, case: StressFigures, changes: str) -> str:
    said, cures = [], []
    if case.limits:
        failed, cure = _failed(build, case)
        said.append(failed)
        cures.append(cure)
    else:
        said.append(f"still works, {_spare(build, case)}")
    if case.vapour_margin_Pa is not None and case.vapour_margin_Pa < vapour_need(build):
        said.append(vapour_phrase(build, case.vapour_margin_Pa))
        cures.append(FAILS["vapour"][1])
    cure = f" Cure: {'; '.join(dict.fromkeys(cures))}." if cures else ""
    return f"{changes}: {'; '.join(said)}.{cure}"


def _failed(build: Subject, case: StressFigures) -> tuple[str, str]:
    first = case.limits[0]
    if first != "pump":
        failed, cure = FAILS[first]
        known = "as today, " if first in build.figures.verdict.limits else ""
        return f"{known}{failed}; {_spare(build, case)}", cure
    word = build.pump_word
    less = build.numbers.figure("percent", -(case.margin or 0.0), 0.0)
    verb = "give" if word == "pumps" else "gives"
    return f"the {word} {verb} {less} less than is burnt", PUMP_CURES.get(case.case, "more pump")


def _spare(build: Subject, case: StressFigures) -> str:
    margin = case.margin or 0.0
    figure = build.numbers.figure("percent", abs(margin), 0.0)
    return f"{figure} to spare" if margin >= 0.0 else f"{build.pump_word} {figure} short"


def _own_change(build: Subject, change: dict[str, Any]) -> str:
    if not change:
        return "Nothing changes"
    return f"With {', '.join(f'{key} {_told(build, value)}' for key, value in change.items())}"


def _told(build: Subject, value: Any) -> str:
    """A changed value as it was typed, or in the units shown where it was typed in the other system's."""
    if isinstance(value, list):
        return "/".join(_told(build, item) for item in value)
    if not isinstance(value, str):
        return str(value)
    typed, _, unit = value.rpartition(" ")
    role = OF_OTHER_SYSTEM[build.numbers.system].get(unit)
    if role is None or not PLAIN_NUMBER.fullmatch(typed):
        return value.replace(" ", NO_BREAK)
    return build.numbers.limit(role, to_si(float(typed), unit))


def _values(build: Subject) -> dict[str, str]:
    session, numbers = build.session, build.numbers
    return {
        "volts": numbers.figure("volts", WEAK_SUPPLY_V),
        "hot": numbers.figure("temperature", max(session.fuel.temperature, HOT_FUEL_K)),
        "spike": numbers.limit("pressure", to_si(3.0, "psi")),
        "more": numbers.limit("percent", min(session.fuel.ethanol + OTHER_ETHANOL, 1.0)),
        "less": numbers.limit("percent", max(session.fuel.ethanol - OTHER_ETHANOL, 0.0)),
        "high": numbers.figure("altitude", max(session.pressure.altitude, HIGH_ALTITUDE_M)),
    }


_STANDARD = {
    "low volts": "No more than {volts} from the alternator",
    "hot fuel": "Fuel at {hot}",
    "dirty filters": "Filters and strainer twice as clogged",
    "boost spike": "Boost {spike} up",
    "worn pump": "A worn pump, a tenth less flow",
    "more ethanol": "Ethanol at {more}",
    "less ethanol": "Ethanol at {less}",
    "altitude": "{high} up",
    "one pump dead": "One pump stands still",
    "bad day": "Low volts, dirty filters and a worn pump at once",
}
