"""A set of parts as a build of its own: the build's file with the parts of the set in it."""

from __future__ import annotations

from typing import Any

from fuelwiz.options.grid import base_text
from fuelwiz.options.parts_file import InjectorsOnOffer, Parts, PumpOnOffer, RegulatorOnOffer
from fuelwiz.options.prices import wire_text
from fuelwiz.options.set_of_parts import PartSet
from fuelwiz.physics.wire import is_same_area
from fuelwiz.session import Session

OF_A_PUMP = ("name", "place", "kind", "relief", "current", "curve")
OF_INJECTORS = ("rated_flow", "rated_pressure")
OF_A_REGULATOR = ("rated_flow", "rated_loss")


def as_build(
    plain: dict[str, Any], session: Session, parts_plain: dict[str, Any], parts: Parts, chosen: PartSet
) -> dict[str, Any]:
    """Plain data of the build with a set on it, each value as the builder typed it in either file.

    Args:
        plain: what the build's file holds; left as it is.
        session: the same, read.
        parts_plain: what the parts file holds.
        parts: the same, read.
        chosen: the set.
    """
    searched = chosen.searched
    built = dict(plain)
    built["pump"] = _pump(plain, session, parts_plain, parts, chosen)
    if searched.base_pa != session.pressure.base:
        built["pressure"] = {**plain.get("pressure", {}), "base": base_text(searched.base_pa)}
    if searched.size is not None:
        built["feed"] = {**plain.get("feed", {}), "chosen": searched.size.text}
    _return_line(built, parts_plain, parts, chosen)
    wiring = session.wiring
    if wiring is not None and chosen.wire_m2 is not None and not _same(chosen.wire_m2, wiring.wire):
        built["wiring"] = {**plain["wiring"], "wire": wire_text(chosen.wire_m2)}
    circuits = built.get("wiring", {}).get("circuits")
    if circuits is not None and circuits > searched.count:
        built["wiring"] = {**built["wiring"], "circuits": searched.count}
    if chosen.injectors is not None:
        table = _table_of(parts_plain, "injectors", parts.injectors, chosen.injectors)
        values = {key: table[key] for key in OF_INJECTORS if key in table}
        kept = {key: value for key, value in plain.get("injectors", {}).items() if key not in OF_INJECTORS}
        built["injectors"] = {**kept, **values}
    return built


def _pump(
    plain: dict[str, Any],
    session: Session,
    parts_plain: dict[str, Any],
    parts: Parts,
    chosen: PartSet,
) -> dict[str, Any]:
    choice, count = chosen.searched.pump, chosen.searched.count
    before: dict[str, Any] = plain.get("pump", {})
    if choice.own:
        pump = dict(before)
        if session.pump is not None and session.pump.count != count:
            pump.pop("volts", None)
    else:
        table = _table_of(parts_plain, "pump", parts.pump, choice.offer)
        pump = {key: table[key] for key in OF_A_PUMP if key in table}
        pump |= {key: before[key] for key in ("arrangement", "running_at_idle") if key in before}
    pump["count"] = count
    if "running_at_idle" in pump:
        pump["running_at_idle"] = min(count, pump["running_at_idle"])
    return pump


def _return_line(built: dict[str, Any], parts_plain: dict[str, Any], parts: Parts, chosen: PartSet) -> None:
    """The return with its size and the regulator of the file."""
    line = built.get("return_line")
    if line is None:
        return
    if chosen.return_size is not None:
        line = {**line, "chosen": chosen.return_size.text}
    regulator = chosen.searched.regulator
    if regulator is not None:
        table = _table_of(parts_plain, "regulator", parts.regulator, regulator)
        line = {**line, "regulator": {key: table[key] for key in OF_A_REGULATOR}}
    built["return_line"] = line


Offer = PumpOnOffer | InjectorsOnOffer | RegulatorOnOffer


def _table_of(
    parts_plain: dict[str, Any], key: str, offers: tuple[Any, ...], offer: Offer | None
) -> dict[str, Any]:
    """The table of the parts file that a part comes from."""
    number = next(number for number, each in enumerate(offers) if each is offer)
    table: dict[str, Any] = parts_plain[key][number]
    return table


def _same(first: float, second: float | None) -> bool:
    return second is not None and is_same_area(first, second)
