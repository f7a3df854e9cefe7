"""Text to SI and back, against the factors of NIST SP 811 and the definitions of the units."""

import tomllib
from pathlib import Path
from typing import get_args

import pytest

from fuelwiz import units
from fuelwiz.errors import UnitError
from fuelwiz.unit_table import Kind

PUBLISHED = Path(__file__).parent / "published" / "reference_values.toml"
CONVERSION = tomllib.loads(PUBLISHED.read_text(encoding="utf-8"))["conversion"]
TOLERANCE = CONVERSION["tol_rel"]

TABLE = Path(units.__file__).parent / "facts" / "units.toml"

KINDS: tuple[Kind, ...] = get_args(Kind)
PRESSURES: tuple[Kind, ...] = ("gauge_pressure", "absolute_pressure", "pressure_change")

# NIST SP 811, appendix B.8, as printed in the reference values.
PSI = CONVERSION["psi_Pa"]
BAR = CONVERSION["bar_Pa"]
INHG = CONVERSION["inHg_0C_Pa"]
HP = CONVERSION["hp_W"]
PS = CONVERSION["hp_metric_W"]
GALLON = CONVERSION["US_gal_L"] / 1000
POUND = CONVERSION["lb_kg"]
INCH = CONVERSION["inch_mm"] / 1000
FOOT = CONVERSION["ft_m"]
CENTISTOKES = CONVERSION["cSt_m2_s"]

# The rest are SI prefixes, and 60 s and 3600 s.
MINUTE, HOUR = 60.0, 3600.0

FACTORS: list[tuple[Kind, float, str]] = [
    ("power", HP, "hp HP Hp bhp horsepower"),
    ("power", PS, "PS ps"),
    ("power", 1e3, "kW KW kw kilowatts"),
    ("power", 1.0, "W"),
    ("flow", GALLON / HOUR, "gal/h gal/hr GAL/HR gph GPH Gph gallons/hour gals/hr"),
    ("flow", 1e-3 / HOUR, "L/h l/h L/hr l/hr lph LPH litres/hour liters/hr"),
    ("flow", 1e-3 / MINUTE, "L/min l/min lpm LPM"),
    ("flow", 1e-6 / MINUTE, "cc/min CC/min cm^3/min cm3/min cm³/min ml/min mL/min"),
    ("flow", GALLON / MINUTE, "gal/min gpm"),
    ("flow", 1.0, "m^3/s m3/s"),
    ("mass_flow", POUND / HOUR, "lb/h lb/hr lbs/hr LB/HR lbs./hr. #/hr pph"),
    ("mass_flow", 1 / HOUR, "kg/h KG/H kg/hr"),
    ("mass_flow", 1.0, "kg/s"),
    ("length", FOOT, "ft FT Ft ft. feet foot ' ′ ’"),
    ("length", INCH, 'in IN In in. inch inches " ″ ”'),
    ("length", 1.0, "m M meter metres"),
    ("length", 1e-2, "cm CM"),
    ("length", 1e-3, "mm MM"),
    ("velocity", FOOT, "ft/s FT/S fps ft/sec feet/second"),
    ("velocity", 1.0, "m/s M/S m/sec"),
    ("voltage", 1.0, "V v volt volts"),
    ("current", 1.0, "A a amp amps"),
    ("fraction", 1e-2, "% percent"),
    (
        "bsfc",
        POUND / HP / HOUR,
        "lb/(hp*h) lb/hp/h lb/hp-h LB/HP-HR lbs/hp-hr lb/(hp·h) lb/(hp*hr) lb/bhp-hr",
    ),
    ("bsfc", 1e-6 / HOUR, "g/kWh g/kwh G/KWH g/(kW*h) g/(kWh) g/kW-h g/kW/h"),
    ("density", 1.0, "kg/m^3 kg/m3 kg/m³ KG/M3"),
    ("density", 1e3, "g/cc g/cm3 g/cm^3 kg/l kg/L"),
    ("viscosity", 1e-6, "mm^2/s mm2/s mm²/s MM2/S"),
    ("viscosity", CENTISTOKES, "cSt cst CST"),
    ("heating_value", 1e6, "MJ/kg MJ/KG mj/kg"),
    ("area", 1e-6, "mm^2 mm2 mm² MM2 sqmm"),
    ("volume", GALLON, "gal GAL gals gallon gallons"),
    ("volume", 1e-3, "l L liter liters litre litres"),
    *(
        (kind, factor, spellings)
        for kind in PRESSURES
        for factor, spellings in [
            (PSI, "psi PSI Psi"),
            (BAR, "bar BAR Bar bars"),
            (1e3, "kPa kpa KPA KPa"),
            (1.0, "Pa pa PA"),
            (1e6, "MPa"),
            (INHG, 'inHg inhg INHG in-Hg "Hg'),
        ]
    ),
    ("gauge_pressure", PSI, "psig PSIG psiG"),
    ("pressure_change", PSI, "psig"),
    ("absolute_pressure", PSI, "psia PSIA"),
    ("gauge_pressure", BAR, "barg"),
    ("absolute_pressure", BAR, "bara"),
]
SPELLINGS = [(kind, factor, unit) for kind, factor, row in FACTORS for unit in row.split()]


def refusal(text: str, kind: Kind) -> str:
    """The sentence with which a text is refused."""
    with pytest.raises(UnitError) as caught:
        units.parse(text, kind)
    return str(caught.value)


class TestFactors:
    @pytest.mark.parametrize(("kind", "factor", "unit"), SPELLINGS)
    def test_every_spelling_has_the_published_factor(self, kind: Kind, factor: float, unit: str) -> None:
        # inHg: SP 811 prints seven digits (3.386 389 kPa), so half a unit of the last one.
        tolerance = 0.5e-6 if factor == INHG else TOLERANCE
        assert units.parse(f"8 {unit}", kind) == pytest.approx(8 * factor, rel=tolerance)
        assert units.parse(f"8{unit}", kind) == units.parse(f"8 {unit}", kind)
        assert units.to_si(8.0, unit) == units.parse(f"8 {unit}", kind)
        assert units.from_si(8 * factor, unit) == pytest.approx(8, rel=tolerance)
        assert kind in units.kinds_of(unit)

    @pytest.mark.parametrize(
        ("text", "kind", "value"),
        [
            ("20 in Hg", "gauge_pressure", 20 * INHG),
            ("0.63 lb / (hp h)", "bsfc", 0.63 * POUND / HP / HOUR),
            ("320 g / (kW h)", "bsfc", 320e-6 / HOUR),
            ("100 US gal/h", "flow", 100 * GALLON / HOUR),
            ("4 sq mm", "area", 4e-6),
        ],
    )
    def test_units_with_blanks_in_them(self, text: str, kind: Kind, value: float) -> None:
        assert units.parse(text, kind) == pytest.approx(value, rel=0.5e-6)

    @pytest.mark.parametrize("unit", ["degF", "degf", "°F", "° F", "F", "f", "deg F", "ºF"])
    def test_fahrenheit_by_the_fixed_points_of_water(self, unit: str) -> None:
        # NIST SP 811 B.8: 32 degF is 0 degC, 212 degF is 100 degC; 0 degC is 273.15 K.
        assert units.parse(f"32 {unit}", "temperature") == pytest.approx(273.15, abs=1e-9)
        assert units.parse(f"212 {unit}", "temperature") == pytest.approx(373.15, abs=1e-9)

    @pytest.mark.parametrize("unit", ["degC", "degc", "°C", "° C", "C", "c", "deg C", "ºC", "Celsius"])
    def test_celsius(self, unit: str) -> None:
        assert units.parse(f"40 {unit}", "temperature") == pytest.approx(313.15, abs=1e-9)

    def test_the_two_scales_meet_at_minus_forty(self) -> None:
        celsius, fahrenheit = (units.parse(f"-40 {unit}", "temperature") for unit in ("degC", "degF"))
        assert celsius == pytest.approx(fahrenheit, abs=1e-9)

    def test_published_conversions(self) -> None:
        computed = {
            "250 L/h in US gal/h": units.from_si(units.to_si(250, "L/h"), "gal/h"),
            "1 US gal/h in mL/s": units.to_si(1, "gal/h") * 1e6,
            "43.5 psi in kPa": units.from_si(units.to_si(43.5, "psi"), "kPa"),
            "58 psi in bar": units.from_si(units.to_si(58, "psi"), "bar"),
            "1 kW in hp": units.from_si(units.to_si(1, "kW"), "hp"),
        }
        published = {case["what"]: case["value"] for case in CONVERSION["cases"]}
        assert computed == {what: pytest.approx(value, rel=TOLERANCE) for what, value in published.items()}

    def test_decimal_factors_add_no_error_of_their_own(self) -> None:
        # 7 * 0.01 is 0.07000000000000001; a percentage is a hundredth, so 7 / 100.
        assert units.parse("7 %", "fraction") == 7 / 100
        assert units.parse("3 mm", "length") == 3 / 1000
        assert units.parse("104 degF", "temperature") == 313.15


class TestNumbers:
    @pytest.mark.parametrize(
        ("number", "value"),
        [
            ("3", 3.0),
            ("3.", 3.0),
            (".5", 0.5),
            ("43.50", 43.5),
            ("+3", 3.0),
            ("-3", -3.0),
            ("\u22123", -3.0),
            ("- 3", -3.0),
            ("1.5e2", 150.0),
            ("1E-2", 0.01),
            ("007", 7.0),
            ("3/8", 0.375),
            ("3 / 8", 0.375),
            ("1 1/2", 1.5),
            ("-1 1/2", -1.5),
            ("\u22123/8", -0.375),
            ("5/4", 1.25),
        ],
    )
    def test_ways_to_write_a_number(self, number: str, value: float) -> None:
        assert units.parse(f"{number} m", "length") == value

    @pytest.mark.parametrize(
        "text", ["  3 bar", "3 bar  ", "3    bar", "3\tbar", "3\u00a0bar", "3\u202fbar", "3bar", "3 bar\n"]
    )
    def test_blanks_are_free(self, text: str) -> None:
        assert units.parse(text, "gauge_pressure") == 3e5

    def test_a_bare_number_wants_a_unit(self) -> None:
        assert refusal("21", "gauge_pressure") == "wants a unit after the number: psi, bar, kPa or inHg"
        assert refusal("21", "fraction") == "wants a unit after the number: %"

    @pytest.mark.parametrize("text", ["0/0 in", "3/0 in", "1 1/0 in", "3/000 in"])
    def test_a_fraction_over_zero(self, text: str) -> None:
        assert refusal(text, "length") == "cannot be read: a fraction over zero"

    def test_a_whole_number_beside_a_fraction_over_one(self) -> None:
        assert "below one" in refusal("1 100/3 in", "length")

    @pytest.mark.parametrize("text", ["3,5 bar", "-3,5 bar", "0,35 MPa", "12,25 psi", ",5 bar"])
    def test_a_decimal_comma_is_answered_with_the_point(self, text: str) -> None:
        said = refusal(text, "gauge_pressure")
        assert "decimal point" in said
        assert f'"{text.split(maxsplit=1)[0].replace(",", ".")}"' in said

    @pytest.mark.parametrize("text", ["1,000 hp", "1,000,000 hp", "1,000.5 hp", "1 000 hp", "1\u202f000 hp"])
    def test_thousands_separators_are_refused_in_words(self, text: str) -> None:
        assert "without thousands separators" in refusal(text, "power")

    @pytest.mark.parametrize("number", ["9" * 41, "0." + "1" * 39, "1/" + "9" * 39])
    def test_a_number_longer_than_forty_characters(self, number: str) -> None:
        assert "40 characters at most" in refusal(f"{number} m", "length")

    def test_a_number_of_forty_characters(self) -> None:
        assert units.parse("0" * 39 + "8 m", "length") == 8.0


class TestKinds:
    @pytest.mark.parametrize(("kind", "unit"), [(kind, unit) for kind, _, unit in SPELLINGS])
    def test_a_unit_of_another_kind_is_refused_by_name(self, kind: Kind, unit: str) -> None:
        for other in KINDS:
            if other in units.kinds_of(unit):
                assert units.parse(f"3 {unit}", other) == units.to_si(3, unit)
            else:
                said = refusal(f"3 {unit}", other)
                assert f"got {unit}" in said
                assert units.describe(other) in said or (kind in PRESSURES and other in PRESSURES)

    def test_the_sentence_for_a_wrong_unit(self) -> None:
        assert refusal("21 gal/h", "gauge_pressure") == "wants a pressure, got gal/h"

    def test_only_pressures_share_their_units(self) -> None:
        for kind, _, unit in SPELLINGS:
            expected = set(PRESSURES) if kind in PRESSURES else {kind}
            assert set(units.kinds_of(unit)) <= expected

    def test_gauge_and_absolute_are_different_things(self) -> None:
        assert refusal("70 psia", "gauge_pressure") == (
            "wants a pressure above the atmosphere, got psia, which counts from vacuum"
        )
        assert refusal("7 psig", "absolute_pressure") == (
            "wants a pressure above vacuum, got psig, which counts from the atmosphere"
        )
        assert "difference of two pressures, got psia" in refusal("2 psia", "pressure_change")
        assert refusal("70 psia", "flow") == "wants a flow, got psia"

    @pytest.mark.parametrize("unit", ["psi", "bar", "kPa", "Pa", "inHg"])
    def test_a_unit_that_says_no_zero_takes_the_one_of_the_key(self, unit: str) -> None:
        assert units.parse(f"7 {unit}", "gauge_pressure") == units.parse(f"7 {unit}", "absolute_pressure")

    @pytest.mark.parametrize(
        ("text", "kind"),
        [("0.6 mPa", "gauge_pressure"), ("0.6 mpa", "gauge_pressure"), ("43 mJ/kg", "heating_value")],
    )
    def test_milli_is_not_taken_for_mega(self, text: str, kind: Kind) -> None:
        assert f'got "{text.split()[1]}"' in refusal(text, kind)

    @pytest.mark.parametrize(
        ("text", "kind"), [("100 imp gal/h", "flow"), ("12 AWG", "area"), ("3 parsec", "length")]
    )
    def test_an_unknown_unit_is_answered_with_those_that_are_known(self, text: str, kind: Kind) -> None:
        said = refusal(text, kind)
        assert all(unit in said for unit in units.units_of(kind))

    @pytest.mark.parametrize("kind", KINDS)
    def test_what_is_suggested_is_taken(self, kind: Kind) -> None:
        assert units.units_of(kind)
        for unit in units.units_of(kind):
            assert units.parse(f"1 {unit}", kind) == units.to_si(1, unit)
        example_text = refusal("", kind).split('"')[1]
        assert units.parse(example_text, kind) > 0

    def test_no_spelling_stands_for_two_units(self) -> None:
        table = tomllib.loads(TABLE.read_text(encoding="utf-8"))
        assert set(table["kinds"]) == set(KINDS)
        for spellings in (
            [spelling for row in table["unit"] for spelling in row["spellings"]],
            [word for words in table["words"].values() for word in words],
        ):
            assert len(spellings) == len(set(spellings))
        for row in table["unit"]:
            assert all(units.kinds_of(spelling) for spelling in row["spellings"] if "never" not in row)
            assert units.kinds_of(row["name"]) == tuple(row["kinds"])

    def test_kinds_of_an_unknown_unit(self) -> None:
        assert units.kinds_of("parsec") == ()
        assert units.kinds_of("") == ()


class TestTyped:
    @pytest.mark.parametrize(
        ("text", "kind", "bare", "kept", "value"),
        [
            ("22", "gauge_pressure", "psi", "22 psi", 22 * PSI),
            (" 22 ", "gauge_pressure", "bar", "22 bar", 22 * BAR),
            ("3 bar", "gauge_pressure", "psi", "3 bar", 3 * BAR),
            ("  3bar ", "gauge_pressure", "psi", "3bar", 3 * BAR),
            ("3/8", "length", "in", "3/8 in", 0.375 * INCH),
            ("1 1/2", "length", "in", "1 1/2 in", 1.5 * INCH),
            ("22.50", "gauge_pressure", "psi", "22.50 psi", 22.5 * PSI),
            ("\u22125", "temperature", "degC", "\u22125 degC", 268.15),
            ("15", "fraction", "%", "15 %", 0.15),
            ("0.80", "bsfc", "lb/(hp*h)", "0.80 lb/(hp*h)", 0.8 * POUND / HP / HOUR),
        ],
    )
    def test_the_file_keeps_what_was_typed(
        self, text: str, kind: Kind, bare: str, kept: str, value: float
    ) -> None:
        found, found_text = units.parse_typed(text, kind, bare)
        assert found_text == kept
        assert found == pytest.approx(value, rel=TOLERANCE)

    @pytest.mark.parametrize("text", ["", " ", "3 b", "abc", "-", ".", "1e", "3/", "3 gal/h", "3/0", "3,5"])
    def test_half_typed_and_wrong(self, text: str) -> None:
        with pytest.raises(UnitError):
            units.parse_typed(text, "gauge_pressure", "psi")

    @pytest.mark.parametrize(
        ("text", "parts"),
        [
            ("3 bar", ("3", "bar")),
            ("3bar", ("3", "bar")),
            ("3/8 in", ("3/8", "in")),
            ('1 1/2"', ("1 1/2", '"')),
            ("22", ("22", "")),
            (" \u22125.0  deg C ", ("\u22125.0", "deg C")),
        ],
    )
    def test_split(self, text: str, parts: tuple[str, str]) -> None:
        assert units.split(text) == parts

    def test_split_of_no_number(self) -> None:
        with pytest.raises(UnitError):
            units.split("bar")
