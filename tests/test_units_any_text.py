"""Any text gives a number or a sentence, any number comes back, and pint is kept away from both."""

import os
import subprocess
import sys
from typing import get_args

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from test_units import refusal

from fuelwiz import unit_judge, units
from fuelwiz.errors import UnitError
from fuelwiz.unit_table import Kind

KINDS: tuple[Kind, ...] = get_args(Kind)
TEMPERATURE_UNITS = ["degC", "degF", "K"]
FACTOR_UNITS = sorted(
    {unit for kind in KINDS if kind != "temperature" for unit in units.units_of(kind)}
    | {"W", "Pa", "MPa", "psia", "gal/min", "m^3/s", "kg/s", "m^2/s", "g/cc"}
)


HOSTILE = [
    "9**9**9 psi",
    "9^9^9^9 psi",
    "1+2 psi",
    "2*3 psi",
    "(3) psi",
    "1/2/3 psi",
    "3 psi + 2 psi",
    "3 psi; 2",
    "5'6\"",
    "0x10 psi",
    "1_000 psi",
    "3 3 psi",
    "__import__('os').system('true') psi",
    "1 __import__('os')",
    "1 psi.__class__",
    "{} psi",
    "%s psi",
    "1e999 psi",
    "-1e999 psi",
    "1e308 bar",
    "1e99999999999999999 psi",
    "nan psi",
    "NaN",
    "inf psi",
    "-inf psi",
    "Infinity psi",
    "\u221e psi",
    "\u0663 psi",
    "\uff13 psi",
    "\u00b2 psi",
    "\u00bd psi",
    "3\u0663 psi",
    "3 \u0440si",
    "3\x00psi",
    "3 psi\x00",
    "3\x1b[31m psi",
    "3\npsi",
    "3 \u202epsi",
    "3 p\u200bsi",
    "\ud800 psi",
    "9" * 100_000 + " psi",
    "3 " + "psi" * 50_000,
    "3 " + "/" * 100,
    " " * 100_000,
]


class TestHostileText:
    @pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
    def test_refused_in_one_short_line_that_is_safe_to_print(self, text: str) -> None:
        said = refusal(text, "gauge_pressure")
        assert said.isprintable()
        assert len(said) < 160

    def test_a_long_text_is_counted_and_not_read(self) -> None:
        assert "got 300002 characters" in refusal("3 " + "psi" * 100_000, "gauge_pressure")

    @pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
    def test_pint_never_sees_it(self, text: str, monkeypatch: pytest.MonkeyPatch) -> None:
        units.to_si(1, "psi")
        units.to_si(1, "bar")
        monkeypatch.setattr(unit_judge, "factor", lambda _expression: pytest.fail("pint was asked"))
        refusal(text, "gauge_pressure")

    @pytest.mark.parametrize("unit", ["", "parsec", "3 psi", "__import__('os')", "psi\x00", "x" * 1000])
    def test_unknown_units(self, unit: str) -> None:
        with pytest.raises(UnitError):
            units.to_si(1, unit)
        with pytest.raises(UnitError):
            units.from_si(1, unit)


kinds = st.sampled_from(KINDS)
pieces = st.sampled_from(
    [
        *"0123456789",
        *".,/eE+-\u2212 *^()%'\"°²",
        "1 1/2",
        "1e",
        "psi",
        "bar",
        "kPa",
        "gal/h",
        "in",
        "deg",
        "F",
        "hp",
        "nan",
    ]
)
numbers = st.from_regex(r"[-+\u2212]?([0-9]{1,9}(\.[0-9]{0,9})?|[0-9]{1,3}/[1-9][0-9]?)", fullmatch=True)
blanks = st.text(alphabet=" \t\u00a0", max_size=3)


class TestAnyText:
    @settings(deadline=None)
    @given(text=st.text() | st.lists(pieces, max_size=12).map("".join), kind=kinds)
    @example(text="1e400 m", kind="length")
    def test_a_number_or_a_sentence_and_nothing_else(self, text: str, kind: Kind) -> None:
        try:
            value = units.parse(text, kind)
        except UnitError as error:
            assert str(error).isprintable()
        else:
            assert abs(value) < float("inf")

    @settings(deadline=None)
    @given(number=numbers, ends=st.tuples(blanks, blanks), gap=blanks, kind=kinds, data=st.data())
    def test_typed_text_is_never_lost(
        self, number: str, ends: tuple[str, str], gap: str, kind: Kind, data: st.DataObject
    ) -> None:
        unit, bare = (
            data.draw(st.sampled_from(names)) for names in (("", *units.units_of(kind)), units.units_of(kind))
        )
        typed = f"{number}{gap}{unit}".strip()
        value, kept = units.parse_typed(f"{ends[0]}{typed}{ends[1]}", kind, bare)
        assert kept == (typed if unit else f"{number} {bare}")
        assert units.parse(kept, kind) == value


sane = st.floats(min_value=-1e9, max_value=1e9, allow_subnormal=False)


class TestThereAndBack:
    @settings(deadline=None)
    @given(number=sane, unit=st.sampled_from(FACTOR_UNITS))
    def test_there_and_back(self, number: float, unit: str) -> None:
        assert units.from_si(units.to_si(number, unit), unit) == pytest.approx(number, rel=1e-12, abs=1e-300)

    @settings(deadline=None)
    @given(number=st.floats(min_value=-459, max_value=1e4), unit=st.sampled_from(TEMPERATURE_UNITS))
    def test_temperatures_there_and_back(self, number: float, unit: str) -> None:
        # The zeros lie up to 459.67 apart, so a number near zero keeps the last bits of that.
        back = units.from_si(units.to_si(number, unit), unit)
        assert back == pytest.approx(number, rel=1e-12, abs=1e-12 * 460)

    @settings(deadline=None)
    @given(number=sane, unit=st.sampled_from(FACTOR_UNITS))
    def test_a_printed_number_reads_as_itself(self, number: float, unit: str) -> None:
        kind = units.kinds_of(unit)[0]
        assert units.parse(f"{number!r} {unit}", kind) == units.to_si(number, unit)


def run_python(code: str, **environment: str) -> str:
    """What a fresh Python prints."""
    done = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, **environment},
        timeout=60,
    )
    assert done.stderr == ""
    return done.stdout.strip()


class TestPint:
    CONVERT = "from fuelwiz import units; print(round(units.to_si(1, 'psi'), 6))"
    PSI_IN_PA = "6894.757293"  # NIST SP 811

    def test_is_not_imported_before_it_is_asked(self) -> None:
        code = "import sys; from fuelwiz import units; units.units_of('power'); print('pint' in sys.modules)"
        assert run_python(code) == "False"

    def test_a_run_does_without_it(self) -> None:
        assert run_python(f"import sys; {self.CONVERT}; print('pint' in sys.modules)").split() == [
            self.PSI_IN_PA,
            "False",
        ]
