"""What a session holds for what was typed: SI floats, checked by definitions and published tables."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pydantic
import pytest

from fuelwiz.session import Size, validate

from .builds import EXAMPLES, full, session, value_of, with_value

PUBLISHED = Path(__file__).parents[1] / "published" / "reference_values.toml"
WIRE = tomllib.loads(PUBLISHED.read_text(encoding="utf-8"))["wire"]["rows"]

# Definitions (NIST SP 811): inch 25.4 mm, pound 0.45359237 kg, gravity 9.80665 m/s2, US gallon 231 in3.
INCH = 0.0254
POUND = 0.45359237
HORSEPOWER = 550 * 12 * INCH * POUND * 9.80665
PSI = POUND * 9.80665 / INCH**2
GALLON_H = 231 * INCH**3 / 3600


@pytest.mark.parametrize(
    ("path", "value", "expected"),
    [
        ("goal.power", "410 hp", 410 * HORSEPOWER),
        ("goal.power", "300 kW", 300e3),
        ("goal.reserve", "15 %", 0.15),
        ("engine.bsfc", "0.5 lb/(hp*h)", 0.5 * POUND / 3600 / HORSEPOWER),
        ("engine.lambda", 1, 1.0),
        ("fuel.temperature", "104 degF", 313.15),
        ("fuel.viscosity", "0.6 cSt", 0.6e-6),
        ("fuel.lhv", "43.4 MJ/kg", 43.4e6),
        ("pressure.boost", "21 psi", 21 * PSI),
        ("pressure.altitude", "1000 ft", 304.8),
        ("tank.volume", "55 l", 0.055),
        ("tank.pressure", "-1 psi", -PSI),
        ("feed.run.0.length", "13 ft", 13 * 12 * INCH),
        ("feed.run.0.bore", "3/8 in", 0.375 * INCH),
        ("surge.lift_flow", "60 gal/h", 60 * GALLON_H),
        ("injectors.rated_flow", "1050 cc/min", 1050e-6 / 60),
        ("wiring.wire", "4 mm^2", 4e-6),
    ],
)
def test_a_quantity_is_held_in_si(path: str, value: Any, expected: float) -> None:
    plain = with_value(full(), path, value)
    assert value_of(validate(plain), path) == pytest.approx(expected, rel=1e-9)


def test_injectors_rated_by_mass_are_rated_on_heptane() -> None:
    """684 kg/m3 (SAE J1832 practice): 40 kg/h is 40 kg/h over that density."""
    built = session("injectors.rated_flow", "40 kg/h")
    assert built.injectors is not None
    assert built.injectors.rated_flow == pytest.approx(40 / 3600 / 684, rel=1e-12)


@pytest.mark.parametrize(
    ("said", "cc_min"),
    [("95 lb/h", 997.5), ("80 lb", 840), ("850 cc", 850), ("850 cc/min", 850), ("0.85 L/min", 850)],
)
def test_injectors_as_people_say_them(said: str, cc_min: float) -> None:
    """A maker's lb/h is 10.5 cc/min: common practice, no source."""
    built = session("injectors.rated_flow", said)
    assert built.injectors is not None
    assert built.injectors.rated_flow == pytest.approx(cc_min * 1e-6 / 60, rel=1e-12)


@pytest.mark.parametrize("row", WIRE, ids=lambda row: f"{row['awg']} AWG")
def test_a_gauge_is_held_as_its_area(row: dict[str, Any]) -> None:
    """ASTM B258 areas as printed in the reference values; the printed digits bound the tolerance."""
    plain = full()
    plain["wiring"]["wire"] = f"{row['awg']} AWG"
    wiring = validate(plain).wiring
    assert wiring is not None
    assert wiring.wire == pytest.approx(row["area_mm2"] * 1e-6, rel=2e-5)


@pytest.mark.parametrize("typed", ["12 AWG", "12awg", " 12 Awg ", "12 gauge", "12 ga", "#12"])
def test_a_gauge_in_any_letter_case(typed: str) -> None:
    plain = full()
    plain["wiring"]["wire"] = typed
    wiring = validate(plain).wiring
    assert wiring is not None
    # No. 12 is 0.0808 in thick (ASTM B258, from memory)
    assert wiring.wire == pytest.approx(3.14159 / 4 * (0.0808 * INCH) ** 2, rel=1e-3)


@pytest.mark.parametrize("typed", ["1/0 AWG", "12.5 AWG", "AWG 12", "-2 AWG", "twelve AWG", "12", 12, "3 ft"])
def test_what_is_no_wire(typed: Any) -> None:
    plain = full()
    plain["wiring"]["wire"] = typed
    with pytest.raises(Exception, match="wants a gauge of 0 to 24 AWG, or an area"):
        validate(plain)


def near(value: Any) -> Any:
    """Equal to a value but for what turning its unit rounds."""
    return pytest.approx(value)


def test_sizes() -> None:
    built = session("feed.sizes", ["-8", " -10 ", "8 mm", "3/8 in"])
    assert built.feed.sizes == (
        Size("-8", 8, None),
        Size("-10", 10, None),
        Size("8 mm", None, 0.008),
        Size("3/8 in", None, near(0.009525), inches=True),
    )


@pytest.mark.parametrize("said", ["-8", "AN8", "-8AN", "AN-8", "-8 AN", "an 8", "#8", "8"])
def test_a_dash_size_as_people_say_it(said: str) -> None:
    assert session("feed.sizes", [said]).feed.sizes == (Size("-8", 8, None),)


@pytest.mark.parametrize(
    ("said", "text", "mm", "inches"),
    [
        ("5/16 pipe", "5/16 in", 7.9375, True),
        ("5/16", "5/16 in", 7.9375, True),
        ("5/16 in OD", "5/16 in", 7.9375, True),
        ('3/8"', '3/8"', 9.525, True),
        ("8 mm pipe", "8 mm", 8, False),
    ],
)
def test_a_pipe_as_people_say_it(said: str, text: str, mm: float, inches: bool) -> None:
    (size,) = session("feed.sizes", [said]).feed.sizes
    assert (size.text, size.dash, size.inches) == (text, None, inches)
    assert size.length_m == pytest.approx(mm * 1e-3)


@pytest.mark.parametrize("said", ["2.5 square mm", "2.5 sq mm", "2.5 mm2", "2.5 mm^2", "2.5 mm²"])
def test_a_wire_by_its_area_as_people_say_it(said: str) -> None:
    plain = full()
    plain["wiring"]["wire"] = said
    wiring = validate(plain).wiring
    assert wiring is not None
    assert wiring.wire == pytest.approx(2.5e-6)


def test_points() -> None:
    built = validate(full())
    assert built.pump is not None
    first, second = built.pump.curve[0].points[:2]
    assert first == pytest.approx((20 * PSI, 108 * GALLON_H))
    assert second == pytest.approx((40 * PSI, 97 * GALLON_H))
    assert built.pump.current == (near((40 * PSI, 9)), near((80 * PSI, 15)))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_examples_load(path: Path) -> None:
    plain = tomllib.loads(path.read_text(encoding="utf-8"))
    built = validate(plain, path.stem)
    assert built.name == plain.get("name", path.stem)
    number, unit = plain["goal"]["power"].split()
    assert built.goal.power == pytest.approx(float(number) * {"hp": HORSEPOWER, "kW": 1e3}[unit])


def test_there_are_examples() -> None:
    assert len(EXAMPLES) >= 6


def test_a_session_cannot_be_changed_but_copied() -> None:
    built = session()
    with pytest.raises(pydantic.ValidationError):
        built.goal.reserve = 0.3
    copied = built.model_copy(update={"goal": built.goal.model_copy(update={"reserve": 0.3})})
    assert (built.goal.reserve, copied.goal.reserve) == (0.15, 0.3)


def test_what_was_read_is_left_as_it_is() -> None:
    plain = full()
    validate(plain)
    assert plain == full()


@pytest.mark.parametrize(
    "record", [3, [], "x", {}, {"works": "yes", "margin": 3, "new": 1}, {"answer": "x" * 9999}]
)
def test_the_record_is_the_programs_own_and_never_refused(record: Any) -> None:
    built = session("record", record) if record == {} else validate(full() | {"record": record})
    assert built.record is not None
    assert built.record.works is None
    assert len(built.record.answer) <= 4000


def test_a_date_in_the_record_may_lack_quotes() -> None:
    built = validate(full() | {"record": tomllib.loads("saved = 2026-05-14")})
    assert built.record is not None
    assert built.record.saved == "2026-05-14"
