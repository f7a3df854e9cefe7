"""What is declared once about a key: its type, range, fallback, choices and the units that it is shown in."""

from __future__ import annotations

from typing import Any, Literal

from fuelwiz.record import record
from fuelwiz.unit_table import Kind

Type = Literal[
    "format",
    "quantity",
    "count",
    "ratio",
    "choice",
    "text",
    "note",
    "size",
    "sizes",
    "fittings",
    "points",
    "wire",
    "rated_flow",
    "velocities",
    "change",
    "kept",
    "flag",
    "words",
    "column",
    "yes_no",
    "span",
]


@record
class FieldSpec:
    """One key of a file.

    `low` and `high` are texts as the file would hold them ("0 psi", "24"), both allowed; for a text, `high`
    is the most characters, for a list the two are the least and the most entries. `fallback` is the plain
    value of a key that is left out; None where there is none, or where it depends on other keys. `parts` are
    the specs inside a value that is made of several: the two columns of points, one size of a list of sizes;
    `falls` says of points that the second column may not rise.
    """

    type: Type
    kind: Kind | None = None
    low: str | None = None
    high: str | None = None
    fallback: Any = None
    choices: tuple[str, ...] = ()
    us_unit: str | None = None
    metric_unit: str | None = None
    required: bool = False
    example: Any = None
    parts: tuple[FieldSpec, ...] = ()
    falls: bool = False

    @property
    def fallback_text(self) -> str | None:
        """The fallback as the file would say it; None where there is none that stands by itself."""
        return None if self.fallback is None else as_text(self.fallback)


def as_text(value: Any) -> str:
    """A plain value in words: `0.85`, `-4, -6`, `none` for no fittings."""
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list):
        return ", ".join(as_text(item) for item in value)
    if isinstance(value, dict):
        return ", ".join(f"{key} {as_text(item)}" for key, item in value.items()) or "none"
    return str(value)
