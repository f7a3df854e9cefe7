"""What each unit is worth in SI, as pint has it: the one file that knows pint.

`facts/unit_factors.toml` holds what it says of every unit of `facts/units.toml`, so that a run need not load
pint, nor believe what an earlier run left in a user's cache. `python -m fuelwiz.unit_table` writes it anew.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from functools import cache
from math import lcm
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import pint

Factor = tuple[float, float, float]
"""An SI value is (number * first + second) / third."""

HEAD = """\
# What each unit is worth in SI: a value is (number * first + second) / third.
# Made from the expressions in units.toml by `python -m fuelwiz.unit_table`; a test asks pint again.

"""


def factor(expression: str) -> Factor:
    """The factor of a unit by pint's own name for it; nothing that anybody typed is given to pint."""
    quantity = _registry().Quantity
    zero, one = (Fraction(quantity(Fraction(n), expression).to_base_units().magnitude) for n in (0, 1))
    over = lcm(zero.denominator, one.denominator)
    return float((one - zero) * over), float(zero * over), float(over)


def table_of(expressions: Iterable[str]) -> str:
    """The text of `facts/unit_factors.toml` for these units."""
    return HEAD + "".join(f'"{name}" = {list(factor(name))}\n' for name in sorted(set(expressions)))


@cache
def _registry() -> pint.UnitRegistry[Any]:
    """pint's own units in exact fractions; without its cache, which would be executed as it is read."""
    import pint

    return pint.UnitRegistry(non_int_type=Fraction, cache_folder=None)
