"""What the sheets show of gauge, wire and injectors is what the JSON says."""

from __future__ import annotations

import json
from typing import Any

import pytest

from fuelwiz.advice.blocks import Table
from fuelwiz.advice.sections.gauge import STATES, gauge_pressures
from fuelwiz.advice.subject import Subject
from fuelwiz.report.json_form import json_text

from .builds import NAMES, example

PSI = 6894.757293168  # Pa (NIST SP 811)


def in_json(name: str) -> dict[str, Any]:
    """The result of an example as scripts read it."""
    found: dict[str, Any] = json.loads(json_text(example(name)))
    return found


@pytest.mark.parametrize("name", NAMES)
def test_the_gauge_on_the_sheet_is_that_of_the_json(name: str) -> None:
    result = example(name)
    blocks = gauge_pressures(Subject(result.session, result.figures), result.words)
    (table,) = (block for block in blocks if isinstance(block, Table))
    readings = in_json(name)["gauge"]
    assert [row[0].text for row in table.rows] == [STATES[reading["when"]] for reading in readings]
    for row, reading in zip(table.rows, readings, strict=True):
        for cell, pressure in zip(row[1:], (reading["rail_Pa"], reading["pump_Pa"]), strict=True):
            if pressure is None:
                assert cell.text == "–"
            else:
                unit = PSI if result.session.show_units == "us" else 1e3
                assert float(cell.text) == pytest.approx(pressure / unit, abs=0.51 if unit == 1e3 else 0.051)


@pytest.mark.parametrize("name", NAMES)
def test_the_smallest_wire_of_the_sheet_is_the_first_choice_that_does(name: str) -> None:
    found = in_json(name)
    does = [choice["gauge"] for choice in found["wire_choices"] if choice["does"]]
    smallest = found["wiring"] and found["wiring"]["smallest_wire"]
    assert smallest == (f"{does[0]} AWG" if does else None)


@pytest.mark.parametrize("name", NAMES)
def test_the_smallest_injector_of_the_sheet_parts_the_choices(name: str) -> None:
    found = in_json(name)
    choices = found["injector_choices"]
    assert bool(choices) == bool(found["injectors"] and found["injectors"]["duty"] is not None)
    for choice in choices:
        assert choice["does"] == (choice["rating_m3_s"] >= found["injectors"]["smallest_rating_m3_s"])
