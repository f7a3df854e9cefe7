"""The kinds of key that the model is declared with, and how pydantic reads each."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import replace
from types import ModuleType, SimpleNamespace
from typing import Any, ClassVar, cast, get_args

from pydantic import BaseModel, ConfigDict, Field, GetCoreSchemaHandler
from pydantic_core import PydanticCustomError, core_schema

from fuelwiz.physics.fittings import KINDS
from fuelwiz.record import record
from fuelwiz.session.readers import read
from fuelwiz.session.scalars import Rejected
from fuelwiz.session.spec import FieldSpec
from fuelwiz.shown_units import SHOWN_UNITS
from fuelwiz.unit_table import Kind

# pydantic asks this module of its own for plugins, of which we have none: it would load all that can look through what
# is installed (mail, zip files), which takes longer than to read a build.
sys.modules.setdefault("pydantic.plugin._loader", cast(ModuleType, SimpleNamespace(get_plugins=tuple)))


class Section(BaseModel):
    """A table of the file: no unknown keys, nothing bent into shape, nothing changed afterwards.

    Where sections are declared, annotations are not postponed: pydantic would read each from its text at every start.
    """

    model_config = ConfigDict(strict=True, extra="forbid", frozen=True, defer_build=True)
    called: ClassVar[str] = "table"
    """What a file is called whose root this is."""


@record
class Leaf:
    """A key with a value."""

    spec: FieldSpec

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        """Read by our own words; a key that is left out takes its fallback, or None."""
        spec = self.spec
        schema = core_schema.no_info_plain_validator_function(_reader(spec))
        if spec.required:
            return schema
        if spec.fallback is None:
            return core_schema.with_default_schema(schema, default=() if spec.type == "points" else None)
        return core_schema.with_default_schema(schema, default_factory=lambda: read(spec, spec.fallback))


@record
class Tables:
    """A key that holds a list of tables, `least` to `most` of them; left out, `fallback` tables that say nothing."""

    least: int
    most: int
    fallback: int = 0

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        """A tuple from a list; none where the key is left out and none is needed."""
        schema = core_schema.no_info_before_validator_function(_as_tuple, handler(source))
        if self.least:
            return schema
        if self.fallback:
            return core_schema.with_default_schema(
                schema, default_factory=lambda: tuple({} for _ in range(self.fallback)), validate_default=True
            )
        return core_schema.with_default_schema(schema, default=())


def _as_tuple(value: Any) -> Any:
    return tuple(value) if isinstance(value, list) else value


def _reader(spec: FieldSpec) -> Callable[[Any], Any]:
    def read_or_refuse(value: Any) -> Any:
        try:
            return read(spec, value)
        except Rejected as rejected:
            raise PydanticCustomError("rejected", "rejected", {"problems": rejected.problems}) from None

    return read_or_refuse


@record
class OrFalse:
    """A table that stands with its fallbacks where the file leaves it out, and is none where the file says `false`."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        """None from `false`; all else is a table or refused."""
        schema = core_schema.no_info_before_validator_function(
            lambda value: None if value is False else value, handler(source)
        )
        return core_schema.with_default_schema(schema, default_factory=dict, validate_default=True)


def table(fallback: dict[str, Any] | None = None) -> Any:
    """A section that stands even where the file leaves it out."""
    return Field(default_factory=lambda: dict(fallback or {}), validate_default=True)


def quantity(
    kind: Kind,
    low: str,
    high: str,
    fallback: str | None = None,
    *,
    required: bool = False,
    example: str | None = None,
    shown: tuple[str, str] | None = None,
) -> Leaf:
    """A number with its unit, from `low` to `high`; `shown` are the US and the metric unit of its row."""
    us_unit, metric_unit = shown or SHOWN_UNITS[kind]
    return Leaf(
        FieldSpec(
            "quantity",
            kind,
            low,
            high,
            fallback,
            us_unit=us_unit,
            metric_unit=metric_unit,
            required=required,
            example=example or fallback,
        )
    )


def count(low: int, high: int, fallback: int | None = None, *, example: int | None = None) -> Leaf:
    """A bare whole number."""
    return Leaf(
        FieldSpec("count", low=str(low), high=str(high), fallback=fallback, example=example or fallback)
    )


def ratio(low: float, high: float, fallback: float | None = None, *, example: float | None = None) -> Leaf:
    """A bare number without a unit."""
    shown = fallback if example is None else example
    return Leaf(FieldSpec("ratio", low=f"{low:g}", high=f"{high:g}", fallback=fallback, example=shown))


def choice(
    literal: Any, fallback: str | None = None, *, required: bool = False, example: str | None = None
) -> Leaf:
    """One of the words of a Literal."""
    return Leaf(
        FieldSpec(
            "choice",
            choices=get_args(literal),
            fallback=fallback,
            required=required,
            example=fallback or example,
        )
    )


def yes_no(fallback: bool | None = None, *, example: bool = True) -> Leaf:
    """True or false, bare."""
    return Leaf(FieldSpec("yes_no", fallback=fallback, example=example))


def span(kind: Kind, low: str, high: str, *, example: list[str]) -> Leaf:
    """From one quantity up to another."""
    end = quantity(kind, low, high, example=example[0]).spec
    return Leaf(FieldSpec("span", low="2", high="2", example=example, parts=(end,)))


def words(literal: Any) -> Leaf:
    """Any of the words of a Literal, each once."""
    known = get_args(literal)
    return Leaf(FieldSpec("words", choices=known, fallback=[], example=list(known[:2])))


def text(fallback: str | None = "", *, most: int = 200, lines: bool = False) -> Leaf:
    """A text of `most` characters, over several lines where `lines` is true."""
    return Leaf(FieldSpec("note" if lines else "text", low="0", high=str(most), fallback=fallback))


def bore(*, example: str) -> Leaf:
    """A bore given as a length."""
    return quantity("length", "1 mm", "60 mm", example=example, shown=("in", "mm"))


def column(kind: Kind | None, unit: str, *, or_value: bool = False) -> Leaf:
    """A column of a log whose unit is of that kind, such as `unit`; `or_value`: or one quantity throughout."""
    value = (FieldSpec("quantity", kind, us_unit=unit, metric_unit=unit),) if or_value else ()
    return Leaf(
        FieldSpec(
            "column", kind, "1", "120", us_unit=unit, metric_unit=unit, example=["Head", unit], parts=value
        )
    )


_SIZE = FieldSpec(
    "size",
    low="-2",
    high="-32",
    us_unit="in",
    metric_unit="mm",
    example="-8",
    parts=(bore(example="8 mm").spec,),
)
SIZE = Leaf(_SIZE)


def needed(leaf: Leaf) -> Leaf:
    """The same key where it has to be there."""
    return Leaf(replace(leaf.spec, required=True))


def sizes(fallback: list[str]) -> Leaf:
    """Candidates: dash sizes or bores."""
    return Leaf(FieldSpec("sizes", low="1", high="24", fallback=fallback, example=fallback, parts=(_SIZE,)))


def points(second: Leaf, *, falls: bool, required: bool, example: list[list[str]]) -> Leaf:
    """Points rising in pressure; where `falls` is true the other column may not rise."""
    pressure = quantity("pressure_change", "0 psi", "500 psi", example="40 psi").spec
    return Leaf(
        FieldSpec(
            "points",
            low="1",
            high="200",
            required=required,
            falls=falls,
            example=example,
            parts=(pressure, second.spec),
        )
    )


def velocities(fallback: list[str]) -> Leaf:
    """Four rising velocities."""
    velocity = quantity("velocity", "0.1 ft/s", "200 ft/s", example="4 ft/s").spec
    return Leaf(
        FieldSpec("velocities", low="4", high="4", fallback=fallback, example=fallback, parts=(velocity,))
    )


LOSS = quantity("pressure_change", "0 psi", "100 psi", required=True, example="0.8 psi")
FLOW = quantity("flow", "1 gal/h", "5000 gal/h", required=True, example="120 gal/h")
RELIEF = quantity("pressure_change", "5 psi", "500 psi", example="115 psi")
CURRENT = points(
    quantity("current", "0 A", "200 A", example="9 A"),
    falls=False,
    required=False,
    example=[["40 psi", "9 A"], ["80 psi", "15 A"]],
)
FORMAT = Leaf(FieldSpec("format", low="1", high="1", required=True, example=1))
FITTING_COUNTS = Leaf(
    FieldSpec(
        "fittings",
        choices=KINDS,
        fallback={},
        example={"straight": 2, "swept_90": 2},
        parts=(count(0, 50, example=2).spec,),
    )
)
WIRE = Leaf(
    FieldSpec(
        "wire",
        "area",
        "0 AWG",
        "24 AWG",
        us_unit="AWG",
        metric_unit="mm^2",
        example="12 AWG",
        parts=(quantity("area", "0.1 mm^2", "100 mm^2", example="4 mm^2").spec,),
    )
)
INJECTOR_FLOW = Leaf(
    FieldSpec(
        "rated_flow",
        "flow",
        "10 cc/min",
        "10000 cc/min",
        us_unit="cc/min",
        metric_unit="cc/min",
        required=True,
        example="1200 cc/min",
        parts=(
            quantity(
                "flow", "10 cc/min", "10000 cc/min", example="1200 cc/min", shown=("cc/min", "cc/min")
            ).spec,
            quantity("mass_flow", "1 lb/h", "1000 lb/h", example="110 lb/h").spec,
        ),
    )
)
CHANGE = Leaf(FieldSpec("change", required=True, example={"fuel.temperature": "55 degC"}))
KEPT = Leaf(FieldSpec("kept", low="0", high="4000", fallback=""))
FLAG = Leaf(FieldSpec("flag"))
