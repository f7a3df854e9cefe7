"""Reading one plain value of a session file by what is declared about its key."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from fuelwiz.session import columns, compounds, scalars
from fuelwiz.session.spec import FieldSpec, Type

_READERS: dict[Type, Callable[[FieldSpec, Any], Any]] = {
    "format": scalars.format_number,
    "quantity": scalars.quantity,
    "count": scalars.count,
    "ratio": scalars.ratio,
    "choice": scalars.choice,
    "text": scalars.text,
    "note": scalars.text,
    "kept": scalars.kept,
    "flag": scalars.flag,
    "words": compounds.words,
    "size": compounds.size,
    "sizes": compounds.sizes,
    "fittings": compounds.fittings,
    "points": compounds.points,
    "wire": compounds.wire,
    "rated_flow": compounds.rated_flow,
    "velocities": compounds.velocities,
    "change": compounds.change,
    "column": columns.column,
    "yes_no": scalars.yes_no,
    "span": compounds.span,
}


def read(spec: FieldSpec, value: Any) -> Any:
    """The value that the session holds for a plain value.

    Args:
        spec: what is declared about the key.
        value: as TOML reads it.

    Raises:
        Wrong: with everything that is wrong in it.
    """
    return _READERS[spec.type](spec, value)
