"""A pump's figure said in one sentence at one of its fields: "250 L/h at 40 psi at 13.5 V"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fuelwiz.desk.composites import field_of
from fuelwiz.desk.field_specs import cell_of
from fuelwiz.session import Rejected, field_at, read

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk

_CURVE = ("pump", "curve")


def take_spoken_point(desk: Desk, path: str, text: str) -> str:
    """Put flow, pressure and volts of such a sentence into the point of a place; says how it was understood.

    Nothing is changed, and nothing said, where the place is none of a pump's points, where the text is no such
    sentence, or where a figure of it is beyond its range.
    """
    point = _point_at(path)
    said = _said_in(text) if point else None
    if point is None or said is None:
        return ""
    curve, number = point
    pressure, flow, volts = said
    if path.endswith(".voltage") and not volts:
        return ""
    from fuelwiz.desk.points.paste import Points

    rows = [(str(at), str(of)) for at, of in desk.value(f"{curve}.points") or ()]
    rows[number : number + 1] = [(pressure, flow)]
    desk.set_points(path, Points(tuple(rows), volts or None, ()))
    at_volts = f", {volts}" if volts else ""
    return f"Understood: {flow} at {pressure}{at_volts}. Ctrl+Z undoes it."


def _point_at(path: str) -> tuple[str, int] | None:
    """The curve that a place belongs to, and the number of its point; the volts go with the first."""
    path = field_of(path)
    keys = path.split(".")
    if tuple(keys[:2]) != _CURVE or len(keys) < 4:
        return None
    curve, cell = ".".join(keys[:3]), cell_of(path)
    if cell is not None:
        return curve, cell[1]
    return (curve, 0) if keys[3:] == ["voltage"] else None


def _said_in(text: str) -> tuple[str, str, str] | None:
    """Pressure, flow and volts, if any, of a text that says one point of a pump and nothing else."""
    if sum(sign.isdigit() for sign in text) < len(("flow", "pressure")):
        return None
    from fuelwiz.desk.points.spoken import spoken

    said = spoken(text)
    found = [(pair, volts or "") for volts, pairs in said.flows.items() for pair in pairs]
    if len(found) != 1 or said.current:
        return None
    (pressure, flow), volts = found[0]
    points, voltage = field_at("pump.curve.points"), field_at("pump.curve.voltage")
    try:
        for spec, figure in zip(points.parts, (pressure, flow), strict=True):
            read(spec, figure)
        if volts:
            read(voltage, volts)
    except Rejected:
        return None
    return pressure, flow, volts
