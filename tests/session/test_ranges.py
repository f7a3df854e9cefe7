"""Every range of a session file: both ends are allowed, and just outside is refused with the range."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.session import field_at, leaf_paths

from .builds import faults, full, with_value

FLOW = ("0.99 gal/h", "1 gal/h", "5000 gal/h", "5001 gal/h")
LOSS = ("-0.01 psi", "0 psi", "100 psi", "100.01 psi")
RATING = ("0.99 psi", "1 psi", "10000 psi", "10001 psi")
CLOGGING = (0.0999, 0.1, 20, 20.01)
LENGTH = ("-0.01 ft", "0 ft", "300 ft", "300.1 ft")
RISE = ("-10.01 m", "-10 m", "10 m", "10.01 m")
BORE = ("0.99 mm", "1 mm", "60 mm", "60.1 mm")
VOLTS = ("4.99 V", "5 V", "24 V", "24.01 V")
LIFT = ("-0.1 gal/h", "0 gal/h", "2000 gal/h", "2000.1 gal/h")
POWER = ("9.99 hp", "10 hp", "5000 hp", "5001 hp")
BOOST = ("-0.01 psi", "0 psi", "100 psi", "100.01 psi")
READING = ("-0.1 psi", "0 psi", "300 psi", "300.1 psi")
RPM = (499, 500, 20000, 20001)
SHARE = ("-0.1 %", "0 %", "200 %", "200.1 %")
SHARES = (
    *("fuel_use", "pump_flow", "feed_bore", "fittings", "length", "filters", "vapour"),
    *("injector_flow", "return_regulator", "return_bore"),
)

RANGES: dict[str, tuple[Any, Any, Any, Any]] = {
    "goal.power": POWER,
    "goal.next_power": POWER,
    "goal.next_boost": BOOST,
    "engine.rpm": RPM,
    "pull.0.rpm": RPM,
    "pull.0.power": POWER,
    "pull.0.boost": BOOST,
    "bench.0.pressure": READING,
    "bench.0.volts": VOLTS,
    "bench.0.pumps": (0, 1, 1, 2),
    "bench.0.volume": ("0.09 l", "0.1 l", "200 l", "200.1 l"),
    "bench.1.mass": ("0.09 kg", "0.1 kg", "200 kg", "200.1 kg"),
    "bench.0.time": ("0.9 s", "1 s", "3600 s", "3601 s"),
    **{f"gauge.0.{key}": READING for key in ("hose_off", "idle", "full_power")},
    "gauge.0.volts": VOLTS,
    "gauge.0.current": ("-0.1 A", "0 A", "200 A", "200.1 A"),
    "pump.health": ("19.9 %", "20 %", "150 %", "150.1 %"),
    "feed.run.0.wall": ("0.19 mm", "0.2 mm", "5 mm", "5.01 mm"),
    "surge.pressure": ("-5.01 psi", "-5 psi", "15 psi", "15.01 psi"),
    "injectors.dead_time": ("-0.01 ms", "0 ms", "5 ms", "5.01 ms"),
    **{f"tolerance.{key}": SHARE for key in SHARES},
    **{f"tolerance.{key}": ("-0.1 %", "0 %", "50 %", "50.1 %") for key in ("driveline", "ethanol")},
    **{f"tolerance.{key}": ("-0.1 psi", "0 psi", "50 psi", "50.1 psi") for key in ("boost", "base")},
    "tolerance.temperature": ("-0.1 K", "0 K", "60 K", "60.1 K"),
    "tolerance.voltage": ("-0.1 V", "0 V", "5 V", "5.1 V"),
    "goal.driveline_loss": ("-0.1 %", "0 %", "50 %", "50.1 %"),
    "goal.reserve": ("-0.1 %", "0 %", "200 %", "200.1 %"),
    "engine.cylinders": (0, 1, 24, 25),
    "engine.bsfc": ("0.049 lb/(hp*h)", "0.05 lb/(hp*h)", "5 lb/(hp*h)", "5.01 lb/(hp*h)"),
    "engine.lambda": (0.399, 0.4, 2, 2.01),
    "engine.idle_fuel": LIFT,
    "fuel.ethanol": ("-0.1 %", "0 %", "100 %", "100.1 %"),
    "fuel.temperature": ("-40.1 degC", "-40 degC", "90 degC", "90.1 degC"),
    "fuel.reid_pressure": ("0.099 psi", "0.1 psi", "20 psi", "20.1 psi"),
    "fuel.density": ("499 kg/m^3", "500 kg/m^3", "1500 kg/m^3", "1501 kg/m^3"),
    "fuel.viscosity": ("0.049 mm^2/s", "0.05 mm^2/s", "20 mm^2/s", "20.1 mm^2/s"),
    "fuel.lhv": ("4.99 MJ/kg", "5 MJ/kg", "60 MJ/kg", "60.1 MJ/kg"),
    "fuel.stoich": (0.99, 1, 40, 40.1),
    "pressure.base": ("4.99 psi", "5 psi", "150 psi", "150.1 psi"),
    "pressure.boost": BOOST,
    "pressure.idle_vacuum": ("-0.01 psi", "0 psi", "14.5 psi", "14.51 psi"),
    "pressure.altitude": ("-501 m", "-500 m", "6000 m", "6001 m"),
    "pump.count": (0, 1, 6, 7),
    "pump.volts": VOLTS,
    "pump.relief": ("4.99 psi", "5 psi", "500 psi", "501 psi"),
    "pump.current.0.1": ("-0.1 A", "0 A", "200 A", "200.1 A"),
    "pump.current.1.0": ("40 psi", "40.1 psi", "500 psi", "500.1 psi"),
    "pump.curve.0.voltage": VOLTS,
    "pump.curve.0.points.0.0": ("-0.1 psi", "0 psi", "500 psi", "500.1 psi"),
    "pump.curve.0.points.4.0": ("80 psi", "80.1 psi", "500 psi", "500.1 psi"),
    "pump.curve.0.points.0.1": ("-0.1 gal/h", "0 gal/h", "2000 gal/h", "2001 gal/h"),
    "pump.curve.0.points.4.1": ("-0.1 gal/h", "0 gal/h", "68 gal/h", "68.1 gal/h"),
    "wiring.supply": VOLTS,
    "wiring.connections": ("-0.01 V", "0 V", "5 V", "5.01 V"),
    "wiring.length": ("-0.1 ft", "0 ft", "100 ft", "100.1 ft"),
    "wiring.temperature": ("-40.1 degC", "-40 degC", "150 degC", "150.1 degC"),
    "feed.end_ratio": (0.299, 0.3, 1, 1.01),
    "feed.constant_loss": LOSS,
    "feed.run.0.length": LENGTH,
    "feed.run.0.fittings.exit": (-1, 0, 50, 51),
    "feed.run.0.extra_k": (-0.1, 0, 1000, 1000.1),
    "feed.run.0.rise": RISE,
    "feed.run.0.side_by_side": (0, 1, 8, 9),
    "feed.run.0.pressure_rating": RATING,
    "feed.run.0.bore": BORE,
    "feed.filter.0.rated_flow": FLOW,
    "feed.filter.0.rated_loss": LOSS,
    "feed.filter.0.clogging": CLOGGING,
    "feed.filter.0.pressure_rating": RATING,
    "feed.part.0.rated_flow": FLOW,
    "feed.part.0.rated_loss": LOSS,
    "feed.sizes.0": BORE,
    "feed.chosen": BORE,
    "inlet.fuel_head": ("-5.01 m", "-5 m", "5 m", "5.01 m"),
    "inlet.strainer.rated_flow": FLOW,
    "inlet.strainer.rated_loss": LOSS,
    "inlet.strainer.clogging": CLOGGING,
    "return_line.run.0.length": LENGTH,
    "return_line.run.0.rise": RISE,
    "return_line.run.0.bore": BORE,
    "return_line.sizes.1": BORE,
    "return_line.regulator.rated_flow": FLOW,
    "return_line.regulator.rated_loss": LOSS,
    "tank.volume": ("0.49 l", "0.5 l", "2000 l", "2001 l"),
    "tank.fill": ("0.9 %", "1 %", "100 %", "100.1 %"),
    "tank.pressure": ("-5.01 psi", "-5 psi", "15 psi", "15.01 psi"),
    "surge.volume": ("0.09 l", "0.1 l", "50 l", "50.1 l"),
    "surge.lift_flow": LIFT,
    "injectors.count": (0, 1, 48, 49),  # two a cylinder, of 24 at most
    "injectors.rated_pressure": ("4.99 psi", "5 psi", "300 psi", "300.1 psi"),
    "injectors.duty_limit": ("0.9 %", "1 %", "100 %", "100.1 %"),
    "bands.feed.0": ("0.09 ft/s", "0.1 ft/s", "200 ft/s", "200.1 ft/s"),
    "bands.inlet.3": ("4 ft/s", "4.1 ft/s", "200 ft/s", "200.1 ft/s"),
}

SEVERAL: list[tuple[str, Any, Any, Any, Any]] = [
    ("wiring.wire", "-1 AWG", "0 AWG", "24 AWG", "25 AWG"),
    ("wiring.wire", "0.09 mm^2", "0.1 mm^2", "100 mm^2", "100.1 mm^2"),
    ("injectors.rated_flow", "9.9 cc/min", "10 cc/min", "10000 cc/min", "10001 cc/min"),
    ("injectors.rated_flow", "0.99 lb/h", "1 lb/h", "1000 lb/h", "1001 lb/h"),
    ("feed.chosen", "-3", "-4", "-16", "-17"),
]

LEANS_ON_NEIGHBORS = ("pump.curve.0.points", "pump.current", "bands")
"""Entries that must rise or fall: an end of the range may leave the next entry wrong."""

CASES = [(path, *values) for path, values in RANGES.items()] + SEVERAL


def built_with(path: str, value: Any) -> dict[str, str]:
    return faults(with_value(full(), path, value))


@pytest.mark.parametrize(("path", "below", "low", "high", "above"), CASES)
def test_both_ends_are_allowed_and_no_more(path: str, below: Any, low: Any, high: Any, above: Any) -> None:
    for value in (low, high):
        found = built_with(path, value)
        assert path not in found
        assert not found or path.startswith(LEANS_ON_NEIGHBORS)
    for value in (below, above):
        assert path in built_with(path, value)


def test_no_range_goes_untested() -> None:
    """Runs, parts and their like are of one kind wherever they stand."""
    tested = {".".join(part for part in path.split(".") if not part.isdecimal()) for path, *_ in CASES}
    tested |= {
        "feed.run.size",
        "feed.run.fittings",
        "feed.run.what",
        "pump.running_at_idle",
        "wiring.circuits",
    }
    for path in leaf_paths():
        alike = path.replace("inlet.run", "feed.run").replace("return_line.", "feed.")
        kind = field_at(path).type
        if kind in {
            "quantity",
            "count",
            "ratio",
            "wire",
            "rated_flow",
            "size",
            "sizes",
            "fittings",
            "velocities",
            "points",
        }:
            assert alike in tested or path in tested, path


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("pressure.boost", "250 psi", "wants 0 to 100 psi, got 250 psi"),
        ("pressure.boost", "20 bar", "wants 0 to 100 psi, got 20 bar"),
        ("fuel.temperature", "400 degF", "wants -40 to 90 degC, got 400 degF"),
        ("engine.cylinders", 25, "wants 1 to 24, got 25"),
        ("engine.lambda", 9.5, "wants 0.4 to 2, got 9.5"),
        ("feed.run.0.fittings.exit", 99, "wants 0 to 50, got 99"),
        (
            "wiring.wire",
            "30 AWG",
            'wants a gauge of 0 to 24 AWG, or an area of 0.1 to 100 mm^2, got "30 AWG"',
        ),
        ("injectors.rated_flow", "5000 lb/h", "wants 1 to 1000 lb/h, got 5000 lb/h"),
        ("injectors.rated_flow", "1 cc/min", "wants 10 to 10000 cc/min, got 1 cc/min"),
    ],
)
def test_the_range_is_said(path: str, value: Any, words: str) -> None:
    assert built_with(path, value) == {path: words}


@pytest.mark.parametrize(
    ("path", "edge"),
    [
        ("pressure.base", "34.473786465841843 kPa"),
        ("goal.power", "7.456998715822702 kW"),
        ("fuel.temperature", "-40 degF"),
        ("feed.run.0.length", "91.44 m"),
        ("tank.volume", "528.3441047162969 gal"),
    ],
)
def test_an_end_typed_in_another_unit_is_still_the_end(path: str, edge: str) -> None:
    """The same ends by the definitions of the units (NIST SP 811): 5 psi, 10 hp, -40 degC, 300 ft, 2000 l."""
    assert built_with(path, edge) == {}


@pytest.mark.parametrize("value", ["nan psi", "inf psi", "-inf psi", "1e999 psi", "NaN", ""])
@pytest.mark.parametrize("path", ["pressure.boost", "tank.pressure"])
def test_what_is_no_number_is_refused(path: str, value: str) -> None:
    assert list(built_with(path, value)) == [path]


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf"), True, "1", 10**400])
@pytest.mark.parametrize("path", ["engine.lambda", "feed.run.0.extra_k", "feed.filter.0.clogging"])
def test_a_ratio_is_a_bare_finite_number(path: str, value: Any) -> None:
    assert list(built_with(path, value)) == [path]


@pytest.mark.parametrize(
    ("path", "least", "most", "item"),
    [
        ("feed.sizes", 1, 24, "-8"),
        ("return_line.sizes", 1, 24, "9 mm"),
        ("feed.run", 0, 40, {}),
        ("feed.filter", 0, 40, {"rated_flow": "120 gal/h"}),
        ("pull", 0, 40, {"power": "330 hp", "boost": "24 psi"}),
        ("bench", 0, 40, {"pressure": "40 psi", "volts": "13 V", "volume": "4 l", "time": "52 s"}),
        ("gauge", 0, 40, {"idle": "35 psi"}),
        ("feed.part", 0, 40, {"rated_flow": "120 gal/h", "rated_loss": "1 psi"}),
        ("inlet.run", 0, 40, {"size": "-10"}),
        ("return_line.run", 0, 40, {}),
        ("return_line.part", 0, 40, {"rated_flow": "120 gal/h", "rated_loss": "1 psi"}),
        ("stress.case", 0, 40, {"change": {"fuel.temperature": "50 degC"}}),
    ],
)
def test_lists_have_a_length(path: str, least: int, most: int, item: Any) -> None:
    assert built_with(path, [item] * least) == {}
    assert built_with(path, [item] * most) == {}
    too_many = built_with(path, [item] * (most + 1))
    assert list(too_many) == [path]
    assert f"{least} to {most}" in too_many[path]
    if least:
        assert list(built_with(path, [])) == [path]


def test_a_pump_has_one_to_eight_curves_of_one_to_two_hundred_points() -> None:
    curves = [{"voltage": f"{8 + volts} V", "points": [["40 psi", "97 gal/h"]]} for volts in range(9)]
    points = [[f"{psi} psi", "90 gal/h"] for psi in range(201)]
    assert built_with("pump.curve", curves[:8]) == {}
    assert list(built_with("pump.curve", curves)) == ["pump.curve"]
    assert list(built_with("pump.curve", [])) == ["pump.curve"]
    assert built_with("pump.curve.0.points", points[:200]) == {}
    assert list(built_with("pump.curve.0.points", points)) == ["pump.curve.0.points"]
    assert list(built_with("pump.curve.0.points", [])) == ["pump.curve.0.points"]


@pytest.mark.parametrize(
    ("path", "most"), [("name", 200), ("notes", 4000), ("fitted.line", 200), ("feed.run.0.what", 200)]
)
def test_texts_have_a_length(path: str, most: int) -> None:
    assert built_with(path, "x" * most) == {}
    assert built_with(path, "x" * (most + 1)) == {
        path: f"wants a text of {most} characters at most, got {most + 1}"
    }


def test_running_pumps_and_circuits_are_no_more_than_the_pumps() -> None:
    for pumps in (1, 2):
        plain = full()
        plain["pump"] |= {"count": pumps, "running_at_idle": pumps}
        plain["wiring"]["circuits"] = pumps
        assert faults(plain) == {}
        plain["pump"]["running_at_idle"] = plain["wiring"]["circuits"] = pumps + 1
        assert list(faults(plain)) == ["pump.running_at_idle", "wiring.circuits"]
        assert f"`pump.count` is {pumps}" in faults(plain)["wiring.circuits"]
