"""What a set costs and weighs, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.options.figures import OptionRow

from .files import BEGINNING, build, found, pump

FOOT = 0.3048  # exact

BUILT = build(
    goal={"power": "300 hp"},
    pump=None,
    stress=None,
    wiring={"supply": "13.8 V", "length": "10 ft"},
    feed={
        "sizes": ["-8"],
        "run": [
            {"hose": "ptfe", "length": "14 ft", "fittings": {"straight": 2, "swept_90": 1, "tee_run": 1}}
        ],
    },
    return_line={
        "sizes": ["-6"],
        "run": [
            {"hose": "ptfe", "length": "10 ft", "side_by_side": 2, "fittings": {"straight": 2, "exit": 1}}
        ],
    },
    injectors=None,
    fitted=None,
)
"""Nothing on it has been bought."""

PARTS: dict[str, Any] = {
    **BEGINNING,
    "currency": "USD",
    "pump": [pump(120, name="pump A", price=150, most=1, weight="0.5 kg", current=[["40 psi", "8 A"]])],
    "hose": [
        {"hose": "ptfe", "size": "-8", "price": 9, "per": "1 ft", "end": 30, "weight": "0.1 kg"},
        {"hose": "ptfe", "size": "-6", "price": 20, "per": "1 m", "end": 25, "weight": "0.2 kg"},
    ],
    "wire": [{"wire": "10 AWG", "price": 1.2, "per": "1 ft"}],
    "injectors": [{"rated_flow": "1200 cc/min", "price": 95}],
    "regulator": [{"name": "regulator B", "rated_flow": "150 gal/h", "rated_loss": "2 psi", "price": 110}],
}


def only_row(parts: dict[str, Any], **sections: Any) -> OptionRow:
    figures = found({**BUILT, **sections}, parts)
    (row,) = figures.rows
    return row


def bought(row: OptionRow) -> dict[str, tuple[float, float | None]]:
    return {line.what: (line.quantity, line.price) for line in row.buy}


def test_the_price_of_a_set_worked_by_hand() -> None:
    """Pump 150; regulator 110; -8: 14 ft at 9 and 3 ends at 30; -6: 2 x 10 ft at 20 a meter and 2 x 2 ends at 25;
    wire out and back, 20 ft at 1.2; four injectors at 95. A tee and the exit are no ends."""
    row = only_row(PARTS)
    lines = bought(row)
    assert lines["pump A"] == (1, 150)
    assert lines["regulator B"] == (1, 110)
    length, cost = lines["-8 PTFE hose"]
    assert length == pytest.approx(14 * FOOT) and cost == pytest.approx(126)
    assert lines["end for -8 PTFE hose"] == (3, 90)
    length, cost = lines["-6 PTFE hose"]
    assert length == pytest.approx(20 * FOOT) and cost == pytest.approx(20 * FOOT * 20)
    assert lines["end for -6 PTFE hose"] == (4, 100)
    length, cost = lines["10 AWG wire"]
    assert length == pytest.approx(20 * FOOT) and cost == pytest.approx(24)
    assert lines["1200 cc/min injectors"] == (4, 380)
    assert lines["relay"] == (1, None) and lines["10 A fuse"] == (1, None)
    assert row.price == pytest.approx(150 + 110 + 126 + 90 + 121.92 + 100 + 24 + 380)
    assert not row.unpriced
    assert row.weight_kg == pytest.approx(0.5 + 14 * 0.1 + 20 * FOOT * 0.2)


def test_a_missing_price_is_unknown_and_never_zero() -> None:
    pumps = [{key: value for key, value in PARTS["pump"][0].items() if key != "price"}]
    row = only_row({**PARTS, "pump": pumps})
    assert row.price is None and row.unpriced == ("pump A",)
    assert "cheapest" not in row.labels and row.labels
    hoses = [{key: value for key, value in hose.items() if key != "end"} for hose in PARTS["hose"]]
    row = only_row({**PARTS, "hose": hoses})
    assert row.price is None and row.unpriced == ("end for -8 PTFE hose", "end for -6 PTFE hose")


def test_what_is_owned_costs_nothing_and_is_not_bought() -> None:
    owned = {
        kind: [{**part, "owned": True} for part in PARTS[kind]] for kind in ("pump", "wire", "regulator")
    }
    row = only_row({**PARTS, **owned})
    assert not {"pump A", "regulator B", "10 AWG wire"} & bought(row).keys()
    assert row.price == pytest.approx(126 + 90 + 121.92 + 100 + 380)


def test_a_kind_that_the_file_does_not_have_is_not_priced() -> None:
    row = only_row({key: value for key, value in PARTS.items() if key not in {"hose", "wire"}})
    assert row.price == pytest.approx(150 + 110 + 380)
    assert not row.unpriced


def test_what_the_build_has_today_costs_nothing() -> None:
    """Pump, both hoses, wire and injectors; the regulator of the file stands for the build's own and is bought."""
    row = only_row(
        PARTS,
        pump={**PARTS_PUMP, "name": "pump A"},
        wiring={**BUILT["wiring"], "wire": "10 AWG"},
        feed={**BUILT["feed"], "chosen": "-8"},
        return_line={**BUILT["return_line"], "chosen": "-6"},
        injectors={"rated_flow": "1200 cc/min"},
    )
    assert bought(row).keys() == {"regulator B"}
    assert row.price == 110 and "keeps the pump" in row.labels


PARTS_PUMP = {key: PARTS["pump"][0][key] for key in ("curve", "current")}


def test_one_more_of_the_pump_on_the_car_is_bought_once() -> None:
    figures = found(
        {**BUILT, "pump": {**PARTS_PUMP, "name": "Pump  a"}, "wiring": None},
        {**PARTS, "pump": [{**PARTS["pump"][0], "most": 2}]},
    )
    two = next(row for row in figures.rows if row.count == 2)
    assert bought(two)["Pump  a"] == (1, 150)


def test_where_the_file_says_what_is_on_the_car_the_rest_is_bought() -> None:
    row = only_row(
        {key: value for key, value in PARTS.items() if key != "regulator"},
        pump={**PARTS_PUMP, "name": "pump A"},
        feed={**BUILT["feed"], "chosen": "-8"},
        fitted={"has": ["line"]},
    )
    lines = bought(row)
    assert lines["pump A"] == (1, 150) and "-8 PTFE hose" not in lines and "-6 PTFE hose" in lines
