"""What the model declares of a key, as the texts of the questions say it: limits, fallback, bare numbers."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal

from fuelwiz.errors import FactError
from fuelwiz.printable import MINUS
from fuelwiz.questions.round_figures import EXACT, readable
from fuelwiz.session import FieldSpec, field_at
from fuelwiz.shown_units import of_pair, unit_sign
from fuelwiz.units import UnitSystem, from_si, parse, split

_DIGITS = 2
_TOWARDS = {"low": ROUND_CEILING, "high": ROUND_FLOOR}
_US_MEASURES = {"gal", "gal/h"}


def declared(what: str, key: str, system: UnitSystem) -> str:
    """The fallback or a limit of a key, in the units of the build: "43.5 psi"; FactError where it has none."""
    spec = field_at(key)
    found = {"fallback": spec.fallback, "low": spec.low, "high": spec.high}[what]
    if found is None:
        raise FactError(f"{key} has no {what}")
    if isinstance(found, list):
        return _listed([_shown(spec.parts[0], text, what, system) for text in found])
    return _shown(spec, str(found), what, system)


def accepted(key: str | None, system: UnitSystem) -> str:
    """The limits of a key that takes a number: "Accepted: 5 to 150 psi."; empty where it takes no number."""
    spec = _spec(key)
    if spec is None or spec.type not in ("quantity", "count", "ratio") or spec.low is None:
        return ""
    low, high = (
        _shown(spec, str(end), name, system) for name, end in (("low", spec.low), ("high", spec.high))
    )
    unit = _unit(spec, system)
    return f"Accepted: {low.removesuffix(unit).strip()} to {high}."


def understood(key: str | None, system: UnitSystem) -> str:
    """Which unit a bare number takes: "A bare number is in psi."; empty where no unit is typed."""
    spec = _spec(key)
    if spec is None:
        return ""
    if spec.type in ("text", "note"):
        return f"Plain text, up to {spec.high} characters."
    unit = _unit(spec, system)
    if spec.type not in ("quantity", "wire", "rated_flow") or not unit:
        return ""
    return f"A bare number is in {unit}{' (US gallons)' if unit in _US_MEASURES else ''}."


def _spec(key: str | None) -> FieldSpec | None:
    try:
        return field_at(key) if key else None
    except KeyError:
        return None


def _unit(spec: FieldSpec, system: UnitSystem) -> str:
    return unit_sign(of_pair(spec.us_unit or "", spec.metric_unit or "", system))


def _shown(spec: FieldSpec, text: str, what: str, system: UnitSystem) -> str:
    """A declared value in the unit of its row; a limit is rounded inwards, so that what is said is accepted."""
    if spec.kind is None:
        return text
    unit = _unit(spec, system)
    si = parse(text, spec.kind)
    number, typed = split(text)
    if unit_sign(typed) == unit:
        return f"{number.replace('-', MINUS)} {unit}"
    value = from_si(si, unit)
    return (
        f"{_rounded(value, what)} {unit}" if what != "fallback" else f"{readable(value, unit, EXACT)} {unit}"
    )


def _rounded(value: float, what: str) -> str:
    exact = Decimal(f"{value:.12g}")
    if not exact:
        return "0"
    step = Decimal(1).scaleb(exact.adjusted() - _DIGITS + 1)
    shown = (exact / step).quantize(Decimal(1), _TOWARDS.get(what, ROUND_HALF_UP)) * step
    text = f"{abs(shown):f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return f"{MINUS}{text}" if shown < 0 else text


def _listed(texts: list[str]) -> str:
    """Values of one unit in a sentence: "4, 6, 8 and 10 ft/s"."""
    units = {text.rpartition(" ")[2] for text in texts}
    if len(units) == 1 and " " in texts[0]:
        texts = [*(text.rpartition(" ")[0] for text in texts[:-1]), texts[-1]]
    return f"{', '.join(texts[:-1])} and {texts[-1]}"
