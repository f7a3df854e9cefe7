"""Points of many inputs, each of them normally distributed, that fill their space evenly: the same ones every time."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from statistics import NormalDist

BITS = 20
DIRECTIONS: tuple[tuple[int, tuple[int, ...]], ...] = (
    (1, (1,)),
    (3, (1,)),
    (7, (1, 3)),
    (11, (1, 3, 1)),
    (13, (1, 1, 1)),
    (19, (1, 1, 3, 3)),
    (25, (1, 3, 5, 13)),
    (37, (1, 1, 5, 5, 17)),
    (41, (1, 1, 5, 5, 5)),
    (47, (1, 1, 7, 11, 19)),
    (55, (1, 1, 5, 1, 1)),
    (59, (1, 1, 1, 3, 11)),
    (61, (1, 3, 5, 5, 31)),
    (67, (1, 3, 3, 9, 7, 49)),
    (91, (1, 1, 1, 15, 21, 21)),
    (97, (1, 3, 1, 13, 27, 49)),
    (103, (1, 1, 1, 15, 7, 5)),
)
"""Primitive polynomial, its bits as a number, and first direction numbers of each input of Sobol's sequence.

Joe and Kuo, SIAM J. Sci. Comput. 2008, 30, 2635, table new-joe-kuo-6.
"""
MOST_INPUTS = len(DIRECTIONS)


def normal_points(count: int, inputs: int) -> Iterator[tuple[float, ...]]:
    """So many points of so many inputs, each standard normal and independent of the others.

    Sobol's sequence (Joe and Kuo, 2008) in the order of Gray code, each point in the middle of its cell, through
    the inverse of the normal distribution. The first inputs are filled most evenly: the ones that matter go first.
    Valid for a count that is a power of 2 up to 2**20, and up to 17 inputs.

    >>> [round(z, 3) for (z,) in normal_points(4, 1)]
    [-1.15, 0.319, 1.15, -0.319]
    """
    normal = [NormalDist().inv_cdf((i + 0.5) / count) for i in range(count)]
    shift = BITS - (count.bit_length() - 1)
    columns = [_column(number) for number in range(inputs)]
    at = [0] * inputs
    for index in range(count):
        yield tuple([normal[place >> shift] for place in at])
        changed = (~index & -~index).bit_length() - 1
        if changed < BITS:
            at = [place ^ column[changed] for place, column in zip(at, columns, strict=True)]


@cache
def _column(number: int) -> tuple[int, ...]:
    """The direction numbers of one input, as fractions of 2**BITS."""
    polynomial, first = DIRECTIONS[number]
    degree = polynomial.bit_length() - 1
    if degree == 0:
        return tuple(1 << (BITS - 1 - bit) for bit in range(BITS))
    odd = list(first)
    for bit in range(degree, BITS):
        value = odd[bit - degree] ^ (odd[bit - degree] << degree)
        for back in range(1, degree):
            if polynomial >> (degree - back) & 1:
                value ^= odd[bit - back] << back
        odd.append(value)
    return tuple(value << (BITS - 1 - bit) for bit, value in enumerate(odd))
