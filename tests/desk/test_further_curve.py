"""A further curve of the pump begins with no voltage, and wants one of its own."""

from __future__ import annotations

from pathlib import Path

from .desks import opened


def test_a_new_curve_asks_for_its_voltage(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    number = desk.add("pump.curve")
    at = f"pump.curve.{number}.voltage"
    field = desk.text_in_field(at)
    assert number > 0 and field.text == "" and not field.assumed
    assert field.refused is not None and field.refused.endswith("is wanted")
    assert desk.refused[at].startswith("Enter the voltage")
    first = desk.text_in_field("pump.curve.0.voltage")
    desk.visit(at)
    desk.type(at, f"{first.text} V")
    assert desk.refused[at].endswith(f"{first.text} V is that of the first curve.")
    desk.type(at, "9.5 V")
    assert at not in desk.refused
