"""Every fallback of a session file, in SI by the definitions of the units."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.session import Size, fallback_text, given, leaf_paths, validate

from .builds import full, session, smallest, value_of, with_value

# Definitions (NIST SP 811): inch 25.4 mm, pound 0.45359237 kg, gravity 9.80665 m/s2, US gallon 231 in3.
INCH = 0.0254
PSI = 0.45359237 * 9.80665 / INCH**2
GALLON_H = 231 * INCH**3 / 3600
FOOT = 12 * INCH


def dashes(*numbers: int) -> tuple[Size, ...]:
    return tuple(Size(f"-{number}", number, None) for number in numbers)


ALONE: list[tuple[str, Any, str]] = [
    ("goal.reserve", 0.15, "15 %"),
    ("engine.injection", "port", "port"),
    ("goal.driveline_loss", 0.15, "15 %"),
    ("goal.power_at", "crank", "crank"),
    ("engine.cylinders", 4, "4"),
    ("engine.induction", "turbo", "turbo"),
    ("fuel.kind", "blend", "blend"),
    ("fuel.ethanol", 0.10, "10 %"),
    ("fuel.temperature", 313.15, "40 degC"),
    ("pressure.base", 300_000.0, "3 bar"),
    ("pressure.reference", "manifold", "manifold"),
    ("pressure.regulator", "rail", "rail"),
    ("pressure.altitude", 0.0, "0 m"),
    ("feed.sizes", dashes(4, 6, 8, 10, 12, 16), "-4, -6, -8, -10, -12, -16"),
    ("feed.end_ratio", 0.85, "0.85"),
    ("feed.constant_loss", 0.0, "0 psi"),
    ("tank.fill", 0.5, "50 %"),
    ("tank.pressure", 0.0, "0 psi"),
    ("bands.feed", (4 * FOOT, 6 * FOOT, 8 * FOOT, 10 * FOOT), "4 ft/s, 6 ft/s, 8 ft/s, 10 ft/s"),
    ("bands.inlet", (2 * FOOT, 3 * FOOT, 4 * FOOT, 5 * FOOT), "2 ft/s, 3 ft/s, 4 ft/s, 5 ft/s"),
    ("show_units", "us", "us"),
    ("notes", "", ""),
    ("fitted.line", "", ""),
]

CURVE = [{"points": [["40 psi", "97 gal/h"]]}]
BESIDE: list[tuple[str, Any, str, Any, str]] = [
    ("pump.curve", CURVE, "pump.place", "tank", "tank"),
    ("pump.curve", CURVE, "pump.health", 1.0, "100 %"),
    ("pump.curve", CURVE, "pump.count", 1, "1"),
    ("pump.curve", CURVE, "pump.arrangement", "parallel", "parallel"),
    ("pump.curve", CURVE, "pump.running_at_idle", 1, "1"),
    ("pump.curve", CURVE, "pump.curve.0.voltage", 13.5, "13.5 V"),
    ("wiring.supply", "13.8 V", "wiring.connections", 0.2, "0.2 V"),
    ("wiring.return_path", "chassis", "wiring.connections", 0.3, "0.3 V"),
    ("wiring.supply", "13.8 V", "wiring.return_path", "wire", "wire"),
    ("wiring.supply", "13.8 V", "wiring.temperature", 313.15, "40 degC"),
    ("wiring.supply", "13.8 V", "wiring.circuits", 1, "1"),
    ("feed.run.0.what", "line", "feed.run.0.hose", "ptfe", "ptfe"),
    ("feed.run.0.what", "line", "feed.run.0.length", 15 * FOOT, "15 ft"),
    ("feed.run.0.what", "line", "feed.run.0.rise", 0.0, "0 m"),
    ("feed.run.0.what", "line", "feed.run.0.side_by_side", 1, "1"),
    ("feed.run.0.what", "line", "feed.run.0.fittings", {}, "none"),
    ("feed.run.0.what", "line", "feed.run.0.extra_k", 0.0, "0.0"),
    ("feed.filter.0.rated_flow", "120 gal/h", "feed.filter.0.rated_loss", 1.5 * PSI, "1.5 psi"),
    ("feed.filter.0.what", "fine", "feed.filter.0.rated_flow", 120 * GALLON_H, "120 gal/h"),
    ("feed.filter.0.rated_flow", "120 gal/h", "feed.filter.0.clogging", 1.0, "1.0"),
    ("feed.filter.0.rated_flow", "120 gal/h", "feed.filter.0.place", "line", "line"),
    ("inlet.run.0.size", "-10", "inlet.run.0.length", 2 * FOOT, "2 ft"),
    ("inlet.run.0.size", "-10", "inlet.fuel_head", 0.0, "0 m"),
    ("inlet.run.0.size", "-10", "inlet.run.0.carries", "each", "each"),
    ("inlet.fuel_head", "0.1 m", "inlet.strainer.rated_flow", 120 * GALLON_H, "120 gal/h"),
    ("inlet.fuel_head", "0.1 m", "inlet.strainer.rated_loss", 0.5 * PSI, "0.5 psi"),
    ("inlet.fuel_head", "0.1 m", "inlet.strainer.carries", "each", "each"),
    ("return_line.run.0.what", "home", "return_line.run.0.length", 15 * FOOT, "15 ft"),
    ("return_line.run.0.what", "home", "return_line.sizes", dashes(4, 6, 8, 10, 12), "-4, -6, -8, -10, -12"),
    ("return_line.chosen", "-6", "return_line.regulator.rated_flow", 100 * GALLON_H, "100 gal/h"),
    ("return_line.chosen", "-6", "return_line.regulator.rated_loss", 6 * PSI, "6 psi"),
    ("surge.volume", "2 l", "surge.return_to", "surge", "surge"),
    ("injectors.rated_flow", "1050 cc/min", "injectors.rated_pressure", 300_000.0, "3 bar"),
    ("injectors.rated_flow", "1050 cc/min", "injectors.duty_limit", 0.85, "85 %"),
    ("injectors.rated_flow", "1050 cc/min", "injectors.count", 4, "4"),
]

DERIVED: list[tuple[str, Any, str, float, str]] = [
    ("engine.induction", "turbo", "pressure.boost", 15 * PSI, "15 psi"),
    ("engine.induction", "supercharger", "pressure.boost", 8 * PSI, "8 psi"),
    ("engine.induction", "none", "pressure.boost", 0.0, "0 psi"),
    ("pressure.regulator", "tank", "pressure.idle_vacuum", 0.0, "0 psi"),
    ("pressure.reference", "manifold", "pressure.idle_vacuum", 9 * PSI, "9 psi"),
    ("pressure.reference", "atmosphere", "pressure.idle_vacuum", 0.0, "0 psi"),
]


@pytest.mark.parametrize(("path", "value", "text"), ALONE)
def test_a_key_that_is_left_out(path: str, value: Any, text: str) -> None:
    built = session()
    assert value_of(built, path) == pytest.approx(value, rel=1e-12) if _is_number(value) else True
    assert _is_number(value) or value_of(built, path) == value
    assert fallback_text(built, path) == text
    assert not given(built, path)


@pytest.mark.parametrize(("beside", "said", "path", "value", "text"), BESIDE + DERIVED)
def test_a_key_that_is_left_out_beside_another(
    beside: str, said: Any, path: str, value: Any, text: str
) -> None:
    plain = with_value(smallest(), beside, said)
    if beside == "wiring.return_path":
        plain["wiring"]["supply"] = "13.8 V"
    built = validate(plain, "a build")
    found = value_of(built, path)
    assert found == pytest.approx(value, rel=1e-12) if isinstance(value, float) else found == value
    assert fallback_text(built, path) == text
    assert given(built, beside)
    assert not given(built, path)


def _is_number(value: Any) -> bool:
    return isinstance(value, float | int) or (isinstance(value, tuple) and isinstance(value[0], float))


@pytest.mark.parametrize("pumps", [1, 2, 3])
def test_pumps_at_idle_and_circuits_follow_the_number_of_pumps(pumps: int) -> None:
    plain = smallest() | {"pump": {"count": pumps, "curve": CURVE}, "wiring": {"supply": "13.8 V"}}
    built = validate(plain)
    assert built.pump is not None
    assert built.wiring is not None
    assert built.pump.running_at_idle == pumps
    assert built.wiring.circuits == pumps
    assert fallback_text(built, "wiring.circuits") == str(pumps)


def test_injectors_are_as_many_as_cylinders() -> None:
    plain = with_value(smallest(), "engine.cylinders", 8)
    built = validate(with_value(plain, "injectors.rated_flow", "1050 cc/min"))
    assert built.injectors is not None
    assert built.injectors.count == 8


def test_the_name_is_that_of_the_file() -> None:
    assert validate(smallest(), "Hill\x1b[2J-climb").name == "Hill[2J-climb"
    assert validate(smallest() | {"name": ""}, "file").name == ""


def test_a_stress_case_without_a_name_has_its_number() -> None:
    change = {"change": {"fuel.temperature": "50 degC"}}
    built = validate(smallest() | {"stress": {"case": [change, {"name": "hot"} | change, change]}})
    assert [case.name for case in built.stress.case] == ["case 1", "hot", "case 3"]


NOTHING_ASSUMED = [
    *(
        "goal.next_power",
        "goal.next_boost",
        "goal.next_induction",
        "engine.rpm",
        "engine.bsfc",
        "engine.lambda",
        "engine.idle_fuel",
    ),
    *("fuel.reid_pressure", "fuel.density", "fuel.viscosity", "fuel.lhv", "fuel.stoich", "tank.volume"),
    *("feed.chosen", "pump", "wiring", "inlet", "return_line", "surge", "injectors", "record"),
]


@pytest.mark.parametrize("path", NOTHING_ASSUMED)
def test_what_is_not_known_is_none(path: str) -> None:
    assert value_of(session(), path) is None


def test_a_fallback_is_said_where_the_file_gives_another_value() -> None:
    built = session("pressure.boost", "22 psi")
    assert fallback_text(built, "pressure.boost") == "15 psi"
    assert given(built, "pressure.boost")


def test_a_fallback_typed_is_the_same_value_but_given() -> None:
    left_out, typed = session(), session("goal.reserve", "15 %")
    assert left_out.goal.reserve == typed.goal.reserve
    assert [given(built, "goal.reserve") for built in (left_out, typed)] == [False, True]


def test_every_fallback_text_can_be_typed_into_the_file() -> None:
    built = validate(full())
    for path in leaf_paths():
        text = fallback_text(built, path)
        if text and path.split(".")[0] in {"goal", "pressure", "tank", "fuel"}:
            plain = with_value(smallest(), path, text)
            assert value_of(validate(plain), path) == value_of(session(), path), path


def test_what_a_full_file_gave() -> None:
    built = validate(full())
    for path in (
        "engine.lambda",
        "pump.curve.0.points",
        "feed.run.0.fittings",
        "record.works",
        "stress.case.0.name",
    ):
        assert given(built, path), path
    for path in (
        "feed.run.0.size",
        "feed.run.1.length",
        "inlet.run",
        "fuel.density",
        "no.such.key",
        "feed.run.x",
    ):
        assert not given(built, path), path


@pytest.mark.parametrize(
    ("regulator", "reference"), [("rail", "manifold"), ("tank", "atmosphere"), ("none", "atmosphere")]
)
def test_what_the_regulator_follows_goes_with_its_place(regulator: str, reference: str) -> None:
    built = session("pressure.regulator", regulator)
    assert built.pressure.reference == reference
    assert fallback_text(built, "pressure.reference") == reference
    assert not given(built, "pressure.reference")


@pytest.mark.parametrize(("place", "carries"), [("tank", "each"), ("surge", "each"), ("outside", "all")])
def test_a_pump_outside_draws_through_one_pick_up(place: str, carries: str) -> None:
    plain = smallest() | {"pump": {"place": place, "curve": CURVE}, "inlet": {"run": [{"size": "-10"}]}}
    built = validate(plain)
    assert built.inlet is not None and built.inlet.strainer is not None
    assert built.inlet.strainer.carries == built.inlet.run[0].carries == carries
    assert fallback_text(built, "inlet.run.0.carries") == carries


def test_a_filter_and_a_strainer_are_assumed_unless_they_are_said_to_be_none() -> None:
    """120 gal/h at 1.5 and at 0.5 psi: not knowing never betters an answer."""
    built = session("inlet.fuel_head", "0 m")
    (part,) = built.feed.filter
    assert (part.rated_flow, part.rated_loss) == pytest.approx((120 * GALLON_H, 1.5 * PSI))
    assert built.inlet is not None and built.inlet.strainer is not None
    assert built.inlet.strainer.rated_loss == pytest.approx(0.5 * PSI)
    assert not given(built, "feed.filter") and not given(built, "inlet.strainer")
    none = validate(smallest() | {"feed": {"filter": []}, "inlet": {"strainer": False}})
    assert none.feed.filter == ()
    assert none.inlet is not None and none.inlet.strainer is None
    assert given(none, "feed.filter") and given(none, "inlet.strainer")
