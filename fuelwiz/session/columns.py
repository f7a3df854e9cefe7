"""Reading what a column of a log is: its head, and its unit where the head has none."""

from __future__ import annotations

from typing import Any

from fuelwiz import units
from fuelwiz.errors import UnitError
from fuelwiz.printable import clean, quoted
from fuelwiz.record import record
from fuelwiz.session.scalars import Rejected, edges, refuse
from fuelwiz.session.spec import FieldSpec

NO_UNIT_AT_ALL = ("", "rpm", "1/min", "/min", "min-1", "u/min")
"""What stands for the unit of a speed of turning, which is counted and never converted."""


NOT_IN_THE_LOG = "none"
"""What stands in place of a head where the log has no such column; one that is called so needs its unit beside it."""


@record
class Column:
    """A column of a log: its head, and its unit where that was given; or one SI value in place of a column."""

    head: str
    unit: str | None = None
    value: float | None = None

    @property
    def is_absent(self) -> bool:
        """Whether it is said that the log has no such column."""
        return self.unit is None and self.value is None and self.head.casefold() == NOT_IN_THE_LOG


def column(spec: FieldSpec, value: Any) -> Column:
    """A head, or a head and its unit; where the key may have one value throughout, a quantity too."""
    if isinstance(value, str):
        return _by_head(spec, value)
    if isinstance(value, list) and len(value) == 2 and all(isinstance(part, str) for part in value):
        head, unit = value
        _refuse_unfit(spec, unit)
        return Column(_head(spec, head), clean(unit).strip())
    raise refuse(
        f"wants the head of a column in quotes, or a head and its unit such as {_pair(spec)}, got {quoted(value)}"
    )


def _by_head(spec: FieldSpec, typed: str) -> Column:
    if spec.parts:
        part = spec.parts[0]
        assert part.kind is not None
        try:
            return Column(clean(typed), value=units.parse(typed, part.kind))
        except UnitError:
            pass
    return Column(_head(spec, typed))


def _head(spec: FieldSpec, typed: str) -> str:
    _, most = edges(spec)
    if len(typed) > int(most):
        raise refuse(f"wants a head of {most} characters at most, got {len(typed)}")
    if not typed.strip():
        raise refuse("wants the head of a column, got an empty text")
    return clean(typed).strip()


def _refuse_unfit(spec: FieldSpec, unit: str) -> None:
    if spec.kind is None:
        if unit.strip().lower() not in NO_UNIT_AT_ALL:
            raise Rejected(((1,), f"wants no unit but rpm, got {quoted(unit)}"))
    elif not fits(spec, unit):
        raise Rejected(
            (
                (1,),
                f"wants the unit of {units.describe(spec.kind)}, such as {spec.us_unit}, got {quoted(unit)}",
            )
        )


def fits(spec: FieldSpec, unit: str) -> bool:
    """Whether a column of that key may have a unit: a flow by mass too, as every fuel here has its density."""
    kinds = units.kinds_of(unit) if len(unit) <= 40 else ()
    return spec.kind in kinds or (spec.kind == "flow" and "mass_flow" in kinds)


def _pair(spec: FieldSpec) -> str:
    head, unit = spec.example
    return f'["{head}", "{unit}"]'
