"""What is typed into a field, what the field then shows, and what is said where it is refused."""

from __future__ import annotations

from pathlib import Path

import pytest
from rich.cells import cell_len

from fuelwiz.desk import Desk, FieldText, NoSuchField

from .desks import NB, empty, told


def shown(desk: Desk, path: str) -> tuple[str, str, str, bool]:
    field = desk.text_in_field(path)
    return field.text, field.unit, field.echo.replace(NB, " "), field.assumed


# The echoes are conversions by the exact factors of NIST SP 811 (2008), appendix B, rounded half up to three digits:
# 750 hp (550 ft*lbf/s) 559.27 kW, 22 psi 1.5168 bar, 13 ft 3.9624 m, 120 US gal/h 454.25 L/h, 9 psi 18.324 inHg
# (at 32 degF). A lb/h on a data sheet is 10.5 cc/min: common practice, no source. 12 AWG is 3.31 mm^2 (ASTM B258).
@pytest.mark.parametrize(
    ("path", "raw", "kept", "field"),
    [
        ("goal.power", "750", "750 hp", ("750", "hp", "559 kW", False)),
        ("goal.power", "750 hp", "750 hp", ("750", "hp", "559 kW", False)),
        ("pressure.boost", "22", "22 psi", ("22", "psi", "1.52 bar", False)),
        ("pressure.base", "3 bar", "3 bar", ("3 bar", "", "43.5 psi", False)),
        ("pressure.idle_vacuum", "18", "18 inHg", ("18", "inHg", "61 kPa", False)),
        ("pressure.altitude", "1000", "1000 ft", ("1000", "ft", "305 m", False)),
        ("fuel.temperature", "104", "104 degF", ("104", "°F", "40 °C", False)),
        ("fuel.temperature", "40 °C", "40 °C", ("40 °C", "", "104 °F", False)),
        ("goal.reserve", "20", "20 %", ("20", "%", "", False)),
        ("engine.bsfc", "0.63", "0.63 lb/(hp*h)", ("0.63", "lb/hp·h", "383 g/kWh", False)),
        ("engine.cylinders", "6", 6, ("6", "", "", False)),
        ("engine.lambda", "0.80", 0.8, ("0.8", "", "", False)),
        ("feed.length", "13", "13 ft", ("13", "ft", "3.96 m", False)),
        ("feed.filter", "120", "120 gal/h", ("120", "gal/h", "454 L/h", False)),
        ("feed.chosen", "-8", "-8", ("-8", "", "", False)),
        ("feed.chosen", "AN8", "-8", ("-8", "", "", False)),
        ("feed.chosen", "8", "-8", ("-8", "", "", False)),
        ("feed.length", "16' 6\"", "16' 6\"", ("16' 6\"", "", "16.5 ft", False)),
        ("fitted.has", "line, filter", ["line", "filter"], ("feed line, filter", "", "", False)),
        (
            "fitted.has",
            "Return line; wire pump",
            ["return_line", "wire", "pump"],
            ("return line, wire, pump", "", "", False),
        ),
        ("wiring.wire", "14 gauge", "14 gauge", ("14 gauge", "", "", False)),
        ("injectors.rated_flow", "850 cc", "850 cc/min", ("850", "cc/min", "81 lb/h", False)),
        ("feed.sizes", "-6, -8 -10", ["-6", "-8", "-10"], ("-6 -8 -10", "", "", False)),
        ("feed.sizes", "-6 8 mm 3/8 in", ["-6", "8 mm", "3/8 in"], ("-6; 8 mm; 3/8 in", "", "", False)),
        ("bands.feed", "3 5 7 9", ["3 ft/s", "5 ft/s", "7 ft/s", "9 ft/s"], ("3 5 7 9", "ft/s", "", False)),
        ("wiring.wire", "12", "12 AWG", ("12", "AWG", "3.31 mm²", False)),
        ("wiring.wire", "4 mm^2", "4 mm^2", ("4 mm^2", "", "", False)),
        ("injectors.rated_flow", "1050", "1050 cc/min", ("1050", "cc/min", "100 lb/h", False)),
        ("injectors.rated_flow", "95 lb/h", "95 lb/h", ("95 lb/h", "", "998 cc/min", False)),
        ("tank.volume", "15", "15 gal", ("15", "gal", "56.8 L", False)),
        ("pump.name", "a pump, ?", "a pump, ?", ("a pump, ?", "", "", False)),
    ],
)
def test_a_number_alone_takes_the_unit_shown(
    tmp_path: Path, path: str, raw: str, kept: object, field: tuple[str, str, str, bool]
) -> None:
    desk = empty(tmp_path)
    desk.type(path, raw)
    desk.visit("notes")
    places = {"feed.length": "feed.run.0.length", "feed.filter": "feed.filter.0.rated_flow"}
    assert desk.value(places.get(path, path)) == kept
    assert shown(desk, path) == field
    assert desk.is_given(path)


def test_in_metric_units_a_number_alone_is_metric(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.choose("show_units", "metric")
    for path, raw, kept in [
        ("goal.power", "500", "500 kW"),
        ("pressure.boost", "1.5", "1.5 bar"),
        ("pressure.idle_vacuum", "60", "60 kPa"),
        ("pressure.altitude", "300", "300 m"),
        ("fuel.temperature", "40", "40 degC"),
        ("injectors.rated_flow", "1050", "1050 cc/min"),
        ("wiring.wire", "4", "4 mm^2"),
    ]:
        desk.type(path, raw)
        assert desk.value(path) == kept
    assert shown(desk, "pressure.base") == ("3", "bar", "43.5 psi", True)
    assert shown(desk, "pressure.boost")[2] == "21.8 psi"


def test_the_units_shown_change_no_value(tmp_path: Path) -> None:
    desk = told(tmp_path, pressure__boost="22")
    before = desk.result
    desk.choose("show_units", "metric")
    assert desk.value("pressure.boost") == "22 psi"
    assert shown(desk, "pressure.boost") == ("22 psi", "", "1.52 bar", False)
    assert before is not None
    assert desk.result is not None
    assert desk.result.figures == before.figures


def test_while_it_is_typed_a_field_shows_each_sign(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.visit("pressure.boost")
    for raw, unit in [
        ("2", "psi"),
        ("2.", "psi"),
        ("2.0", "psi"),
        ("2.0 ", "psi"),
        ("2.0 b", ""),
        ("2.0 bar", ""),
    ]:
        desk.type("pressure.boost", raw)
        field = desk.text_in_field("pressure.boost")
        assert (field.text, field.unit) == (raw, unit)


# A fallback stands in the unit of its row (3 bar base, 40 degC, 9 psi vacuum, 15 psi boost for a turbo).
@pytest.mark.parametrize(
    ("path", "field"),
    [
        ("goal.reserve", ("15", "%", "", True)),
        ("pressure.base", ("43.5", "psi", "3 bar", True)),
        ("pressure.boost", ("15", "psi", "1.03 bar", True)),
        ("pressure.idle_vacuum", ("18.3", "inHg", "9 psi", True)),
        ("fuel.temperature", ("104", "°F", "40 °C", True)),
        ("engine.induction", ("turbo", "", "", True)),
        ("engine.cylinders", ("4", "", "", True)),
        ("feed.sizes", ("-4 -6 -8 -10 -12 -16", "", "", True)),
        ("bands.feed", ("4 6 8 10", "ft/s", "", True)),
        ("fuel.which", ("10 %", "", "", True)),
        ("goal.power", ("", "hp", "", False)),
        ("goal.next_power", ("", "hp", "", False)),
        ("feed.length", ("", "ft", "", False)),
        ("feed.chosen", ("", "", "", False)),
    ],
)
def test_a_key_left_out_shows_its_fallback(
    tmp_path: Path, path: str, field: tuple[str, str, str, bool]
) -> None:
    desk = empty(tmp_path)
    assert shown(desk, path) == field
    assert not desk.is_given(path)


def test_fallbacks_follow_what_they_hang_on(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.choose("engine.induction", "supercharger")
    assert shown(desk, "pressure.boost")[:2] == ("8", "psi")
    desk.type("engine.cylinders", "8")
    assert shown(desk, "injectors.count") == ("8", "", "", True)
    desk.type("pump.count", "2")
    assert shown(desk, "pump.running_at_idle") == ("2", "", "", True)
    desk.choose("pressure.reference", "atmosphere")
    assert shown(desk, "pressure.idle_vacuum")[:2] == ("0", "inHg")


def test_typing_the_fallback_makes_it_the_builders_own(tmp_path: Path) -> None:
    desk = told(tmp_path)
    assert desk.result is not None
    assert "goal.reserve" in {one.key for one in desk.result.figures.assumed}
    desk.type("goal.reserve", "15")
    assert "goal.reserve" not in {one.key for one in desk.result.figures.assumed}
    assert not desk.text_in_field("goal.reserve").assumed


def test_an_empty_field_takes_the_value_out(tmp_path: Path) -> None:
    desk = told(tmp_path, pressure__boost="22")
    desk.type("pressure.boost", "")
    assert desk.value("pressure.boost") is None
    assert shown(desk, "pressure.boost")[0] == "15"


def test_a_section_goes_with_its_last_value(tmp_path: Path) -> None:
    desk = told(tmp_path, wiring__supply="13.8", wiring__length="14")
    desk.type("wiring.supply", "")
    assert desk.text_in_field("wiring.supply").refused == "needed: a voltage"
    desk.type("wiring.length", "")
    assert desk.refused == {}
    assert "wiring" not in desk.plain


# The words beside the field, and in full.
@pytest.mark.parametrize(
    ("path", "raw", "short", "why"),
    [
        (
            "pressure.boost",
            "22 gal/h",
            "a pressure is wanted",
            '"gal/h" is a flow; boost wants a pressure: psi, bar, kPa or inHg. What you typed stays here.',
        ),
        (
            "pressure.boost",
            "22 furlongs",
            "a pressure is wanted",
            '"furlongs" is not a known unit; boost wants a pressure: psi, bar, kPa or inHg. '
            "What you typed stays here.",
        ),
        (
            "pressure.boost",
            "35 psia",
            "a pressure is wanted",
            '"psia" is a pressure above vacuum; boost wants a pressure above the atmosphere: '
            "psi, bar, kPa or inHg. What you typed stays here.",
        ),
        (
            "pressure.boost",
            "lots",
            "a number is wanted",
            f'"lots" is not a number. Enter the boost, for example 21{NB}psi. What you typed stays here.',
        ),
        (
            "pressure.boost",
            "200",
            "0 to 100 psi is wanted",
            "Boost can be 0 to 100 psi; 200 is outside that. What you typed stays here.",
        ),
        (
            "fuel.temperature",
            "hot",
            "a number is wanted",
            f'"hot" is not a number. Enter the fuel temperature, for example 104{NB}°F. What you typed stays here.',
        ),
        ("pressure.boost", "1,5", "a decimal point is wanted", None),
        ("pressure.boost", "1,500 psi", "no thousands mark", None),
        ("fuel.temperature", "250", "−40 to 194 °F is wanted", None),
        ("engine.cylinders", "4.5", "a whole number is wanted", None),
        ("engine.cylinders", "40", "1 to 24 is wanted", None),
        ("engine.lambda", "rich", "a plain number is wanted", None),
        ("engine.lambda", "0,8", "a decimal point is wanted", None),
        ("engine.induction", "steam", "one of the answers is wanted", None),
        ("feed.chosen", "eight", 'type "-8" or "8 mm"', None),
        ("feed.sizes", "-6 -8 x", 'type "-8" or "8 mm"', None),
        ("bands.feed", "4 6", "4 entries are wanted", None),
        ("bands.feed", "4 6 5 9", "each above the one before", None),
        ("wiring.wire", "fat", 'type "12 AWG" or "4 mm^2"', None),
        ("injectors.rated_flow", "5", "10 to 10000 cc/min is wanted", None),
        ("injectors.rated_flow", "5000 lb/h", "1 to 1000 lb/h is wanted", None),
        ("name", "x" * 201, "200 characters at most", None),
    ],
)
def test_what_is_refused_stays_and_is_explained(
    tmp_path: Path, path: str, raw: str, short: str, why: str | None
) -> None:
    desk = told(tmp_path, wiring__supply="13.8")
    desk.type(path, raw)
    desk.visit("notes")
    field = desk.text_in_field(path)
    assert (field.text, field.refused) == (raw, short)
    assert cell_len(short) <= 32
    assert desk.refused[path].endswith("What you typed stays here.")
    if why is not None:
        assert desk.refused[path] == why


def test_an_emptied_power_is_wanted_and_a_new_build_is_not_told_so(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    assert desk.refused == {}
    desk.type("goal.power", "750")
    desk.type("goal.power", "")
    assert desk.text_in_field("goal.power") == FieldText(
        "", "hp", refused="a power is wanted", is_missing=True
    )


def test_control_characters_never_reach_a_field(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.type("pump.name", "\x1b[2Jpump\u202e")
    assert desk.value("pump.name") == "[2Jpump"
    desk.type("notes", "one\ntwo\x07")
    assert desk.value("notes") == "one\ntwo"
    desk.type("pressure.boost", "\x1b[31m22")
    assert desk.text_in_field("pressure.boost").text == "[31m22"


@pytest.mark.parametrize(
    "path",
    ["", "no.such", "feed", "feed.run", "feed.run.3.length", "goal.power.x", "format", "record.answer"],
)
def test_a_path_that_leads_nowhere_is_said(tmp_path: Path, path: str) -> None:
    with pytest.raises(NoSuchField):
        empty(tmp_path).type(path, "1")


def test_a_choice_takes_its_own_words_alone(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    with pytest.raises(NoSuchField):
        desk.choose("engine.induction", "steam")
    with pytest.raises(NoSuchField):
        desk.choose("fuel.which", "55 %")
    desk.choose("pressure.idle_vacuum", "12 inHg")
    assert desk.value("pressure.idle_vacuum") == "12 inHg"
    desk.type("engine.induction", "None")
    assert desk.value("engine.induction") == "none"
