"""What must fit together: points of a curve, voltages, candidates and hoses, an own fuel's figures."""

from __future__ import annotations

from typing import Any

import pytest

from .builds import faults, full, session, smallest, with_value


def points(*rows: tuple[Any, ...]) -> dict[str, str]:
    return faults(with_value(smallest(), "pump.curve.0.points", [list(row) for row in rows]))


def test_a_curve_rises_in_pressure_and_does_not_rise_in_flow() -> None:
    assert points(("40 psi", "97 gal/h")) == {}
    assert points(("40 psi", "97 gal/h"), ("60 psi", "97 gal/h")) == {}
    assert points(("40 psi", "97 gal/h"), ("60 psi", "98 gal/h")) == {
        "pump.curve.0.points.1.1": "must not rise as pressure rises, got 98 gal/h after 97 gal/h"
    }
    assert points(("40 psi", "97 gal/h"), ("40 psi", "90 gal/h")) == {
        "pump.curve.0.points.1.0": "must rise from point to point, got 40 psi after 40 psi"
    }


def test_every_fault_of_a_curve_is_said() -> None:
    found = points(("40 gal/h", "97 psi"), ("60 psi",), ("50 psi", 3), ("45 psi", "99 gal/h"))
    assert list(found) == [
        "pump.curve.0.points.0.0",
        "pump.curve.0.points.0.1",
        "pump.curve.0.points.1",
        "pump.curve.0.points.2.1",
        "pump.curve.0.points.3.0",
    ]
    assert (
        found["pump.curve.0.points.1"] == 'wants two entries such as ["40 psi", "97 gal/h"], got a list of 1'
    )


def test_current_rises_in_pressure_alone() -> None:
    plain = full()
    plain["pump"]["current"] = [["40 psi", "15 A"], ["80 psi", "9 A"]]
    assert faults(plain) == {}
    plain["pump"]["current"] = [["80 psi", "9 A"], ["40 psi", "15 A"]]
    assert list(faults(plain)) == ["pump.current.1.0"]


@pytest.mark.parametrize("second", ["13.5 V", "13.50 V", " 13.5V", None])
def test_no_two_curves_at_one_voltage(second: str | None) -> None:
    curve = {"points": [["40 psi", "97 gal/h"]]}
    plain = smallest() | {"pump": {"curve": [curve, curve | ({"voltage": second} if second else {})]}}
    assert list(faults(plain)) == ["pump.curve.1.voltage"]
    plain["pump"]["curve"][1] = curve | {"voltage": "12 V"}
    assert faults(plain) == {}


@pytest.mark.parametrize(
    ("path", "value", "hose", "wrong"),
    [
        ("feed.sizes", ["-5", "-8"], "tube", False),
        ("feed.sizes", ["-8", "-7"], "ptfe", True),
        ("feed.sizes", ["-7"], "nominal", False),
        ("feed.chosen", "-20", "rubber", True),
        ("feed.chosen", "8 mm", "rubber", False),
        ("return_line.sizes", ["-6", "-3"], "tube", True),
        ("return_line.chosen", "-32", "nominal", False),
        ("return_line.chosen", "-16", "ptfe", False),
    ],
)
def test_a_candidate_is_one_that_the_hose_has(path: str, value: Any, hose: str, wrong: bool) -> None:
    section = path.split(".", maxsplit=1)[0]
    plain = with_value(with_value(smallest(), path, value), f"{section}.run.0.hose", hose)
    key = f"{path}.1" if isinstance(value, list) else path
    assert list(faults(plain)) == ([key] if wrong else [])
    if wrong:
        assert f"no {hose} hose of size" in faults(plain)[key]


def test_candidates_are_judged_by_the_runs_that_follow_them() -> None:
    kept = {"hose": "ptfe", "size": "-8"}
    plain = smallest() | {"feed": {"sizes": ["-7"], "run": [kept, {"hose": "nominal"}]}}
    assert faults(plain) == {}
    plain["feed"]["run"].append({"hose": "rubber"})
    assert list(faults(plain)) == ["feed.sizes.0"]
    assert list(faults(smallest() | {"feed": {"sizes": ["-7"]}})) == ["feed.sizes.0"]


@pytest.mark.parametrize("section", ["feed", "inlet", "return_line"])
def test_a_run_keeps_to_a_size_that_its_hose_has(section: str) -> None:
    plain = smallest() | {section: {"run": [{"hose": "tube", "size": "-7"}]}}
    assert faults(plain) == {
        f"{section}.run.0.size": "wants a size that its hose has: "
        "no tube hose of size -7: it has -4 -5 -6 -8 -10 -12 -16"
    }
    plain[section]["run"][0]["hose"] = "nominal"
    assert faults(plain) == {}


def test_own_fuel_needs_its_figures() -> None:
    own = {"kind": "own", "density": "760 kg/m^3", "viscosity": "0.6 mm^2/s", "lhv": "42 MJ/kg"}
    assert faults(smallest() | {"fuel": own}) == {}
    assert list(faults(smallest() | {"fuel": {"kind": "own"}})) == [
        "fuel.density",
        "fuel.viscosity",
        "fuel.lhv",
    ]


def test_a_bench_test_gives_its_volume_or_its_mass() -> None:
    test = {"pressure": "43.5 psi", "volts": "13.4 V", "time": "52 s"}
    neither = faults({**smallest(), "bench": [test]})
    both = faults({**smallest(), "bench": [{**test, "volume": "4 l", "mass": "2.9 kg"}]})
    assert neither == {
        "bench.0.volume": 'is missing: wants a volume such as "4 l", or `mass` such as "2.9 kg"'
    }
    assert both == {"bench.0.mass": "must not stand beside `volume`: give one of them"}
    assert faults({**smallest(), "bench": [{**test, "mass": "2.9 kg"}]}) == {}


def test_a_bench_test_runs_no_more_pumps_than_there_are() -> None:
    plain = full()
    plain["bench"][0]["pumps"] = 2
    assert faults(plain) == {"bench.0.pumps": "wants 1, as `pump.count` is 1, got 2"}


def test_a_column_of_a_log_has_a_unit_of_its_kind() -> None:
    found = faults(with_value(smallest(), "log.columns.rail", ["FuelP", "gal/h"]))
    assert found == {
        "log.columns.rail.1": 'wants the unit of a pressure, such as psi, got "gal/h"',
    }
    assert faults(with_value(smallest(), "log.columns.flow", ["Flow", "kg/h"])) == {}
    assert faults(with_value(smallest(), "log.columns.rpm", ["Speed", "psi"])) != {}
    assert faults(with_value(smallest(), "log.columns.rpm", ["Speed", "rpm"])) == {}


def test_the_manifold_is_told_by_one_column() -> None:
    plain = with_value(full(), "log.columns.boost", ["Boost", "psi"])
    assert list(faults(plain)) == ["log.columns.boost"]


def test_the_barometer_may_be_one_value() -> None:
    built = session("log.columns.barometer", "1.0 bar")
    assert built.log.columns.barometer is not None
    assert built.log.columns.barometer.value == 1e5
