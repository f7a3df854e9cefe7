"""A parts file: what may stand in it, what is refused and in which words, its schema, and the sample."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from fuelwiz.cli import main
from fuelwiz.errors import SessionError
from fuelwiz.options.parts_check import load_parts, parts_schema, validate_parts
from fuelwiz.store.folder import entries

from .files import BEGINNING, SAMPLE_PARTS, SAMPLES, plain, pump

GPH = 3.785411784e-3 / 3600  # m3/s, NIST SP 811, table B.8


def faults(**kinds: Any) -> dict[str, str]:
    """Key and words of every fault of a file with these parts."""
    try:
        validate_parts({**BEGINNING, **kinds})
    except SessionError as error:
        return {fault.key: fault.text for fault in error.faults}
    return {}


def test_the_sample_is_read_and_says_that_it_is_invented() -> None:
    parts = load_parts(SAMPLE_PARTS)
    assert parts.pump and parts.hose and parts.wire and parts.injectors and parts.regulator
    assert "invented" in SAMPLE_PARTS.read_text(encoding="utf-8").splitlines()[0]
    assert SAMPLE_PARTS.name not in {entry.path.name for entry in entries(SAMPLES)}


def test_what_is_left_out_has_its_fallback() -> None:
    parts = validate_parts({**BEGINNING, "pump": [pump(100)], "hose": [{"hose": "ptfe", "size": "8"}]})
    (told,), (hose,) = parts.pump, parts.hose
    assert (told.most, told.owned, told.place) == (2, False, "tank")
    assert told.price is None and told.weight is None and told.kind is None and told.alcohol is True
    assert told.curve[0].points[0][1] == pytest.approx(100 * GPH) and told.curve[0].voltage == 13.5
    assert hose.size.text == "-8" and hose.per == pytest.approx(0.3048) and hose.end is None
    assert validate_parts({**BEGINNING, "pump": [pump(100, alcohol=False)]}).pump[0].alcohol is False


def test_every_fault_is_found_at_once() -> None:
    found = faults(
        kidn="parts",
        pump=[{"prise": 3, "most": 9, "owned": "yes", "curve": []}, {"price": -1, "curve": [{"points": []}]}],
        hose=[{"hose": "ptfe"}, {"size": "-7", "hose": "ptfe"}],
        wire=[{}],
        regulator=[{"rated_flow": "100 gal/h", "rated_loss": "5 V", "set_range": ["70 psi", "30 psi"]}],
    )
    assert list(found) == [
        "pump.0.owned", "pump.0.most", "pump.0.curve", "pump.0.prise", "pump.1.price", "pump.1.curve.0.points",
        "hose.0.size", "hose.1.size", "wire.0.wire", "regulator.0.rated_loss", "regulator.0.set_range.1", "kidn",
    ]  # fmt: skip
    assert found["pump.0.prise"] == "is not a key here; did you mean `price`?"
    assert found["kidn"] == "is not a key here; did you mean `kind`?"
    assert found["pump.0.most"] == "wants 1 to 6, got 9"
    assert found["pump.0.owned"] == 'wants true or false, without quotes, got "yes"'
    assert found["pump.1.price"] == "wants 0 to 100000, got -1"
    assert "-6" in found["hose.1.size"]


@pytest.mark.parametrize(
    ("told", "key", "words"),
    [
        ({"kind": "parts"}, "format", "is missing: a parts file begins with format = 1"),
        ({"format": 1}, "kind", 'is missing: wants "parts"'),
        ({"format": 1, "kind": "build"}, "kind", 'wants "parts"'),
        ({"format": 2, "kind": "parts"}, "format", "is a newer format"),
        ({**BEGINNING, "pump": {"name": "x"}}, "pump", "wants tables, each headed [[pump]]"),
        ({**BEGINNING, "pump": [pump(100, price=float("nan"))]}, "pump.0.price", "wants 0 to 100000"),
        ({**BEGINNING, "pump": [pump(100, price="140")]}, "pump.0.price", "wants a bare number"),
        ({**BEGINNING, "pump": [pump(100, weight="3 ft")]}, "pump.0.weight", "wants"),
        ({**BEGINNING, "hose": [{"hose": "silk", "size": "-6"}]}, "hose.0.hose", "wants"),
        ({**BEGINNING, "injectors": [{}]}, "injectors.0.rated_flow", "is missing"),
    ],
)
def test_a_fault_says_what_is_wanted(told: dict[str, Any], key: str, words: str) -> None:
    with pytest.raises(SessionError) as refused:
        validate_parts(told)
    assert {fault.key: fault.text for fault in refused.value.faults}[key].startswith(words)


def test_two_curves_of_one_voltage_are_refused_and_too_many_parts() -> None:
    twice = pump(100)["curve"] * 2
    assert "voltage of its own" in faults(pump=[{"curve": twice}])["pump.0.curve.1.voltage"]
    assert "wants 0 to 200 tables" in faults(wire=[{"wire": "12 AWG"}] * 201)["wire"]


def test_a_file_names_itself_and_the_line_of_each_fault(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text('format = 1\nkind = "parts"\n\n[[wire]]\nwyre = "12 AWG"\n', encoding="utf-8")
    with pytest.raises(SessionError) as refused:
        load_parts(path)
    assert f"{path}, line 5: `wire.0.wyre` is not a key here; did you mean `wire`?" in str(refused.value)
    path.write_text("", encoding="utf-8")
    with pytest.raises(SessionError, match="a parts file begins with format = 1"):
        load_parts(path)


def test_the_schema_takes_the_sample_and_refuses_what_the_reader_does(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["schema", "--parts"]) == 0
    schema = json.loads(capsys.readouterr().out)
    assert schema == parts_schema() and schema["title"] == "fuelwiz parts file, format 1"
    jsonschema.Draft202012Validator.check_schema(schema)
    taker = jsonschema.Draft202012Validator(schema)
    assert taker.is_valid(plain(SAMPLE_PARTS))
    for wrong in ({"format": 1}, {**BEGINNING, "pumps": []}, {**BEGINNING, "pump": [{"curve": []}]}):
        assert not taker.is_valid(wrong)
