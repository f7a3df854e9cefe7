"""Roots of functions of one variable, in plain Python."""

from __future__ import annotations

from collections.abc import Callable
from math import sqrt

RELATIVE = 1e-12
MOST_STEPS = 200


def root(
    function: Callable[[float], float],
    low: float,
    high: float,
    *,
    at_ends: tuple[float, float] | None = None,
) -> float:
    """The argument in [low, high] where a function changes its sign, to 1e-12 of it.

    Chandrupatla's method (Adv. Eng. Software 1997, 28, 145): inverse quadratic steps where they are safe, else
    bisection. Where the ends do not differ in sign, the end whose value is nearer to zero is the answer.
    Argument and value are in whatever units the function has. `at_ends` are its values at both ends where they are
    known already.

    >>> round(root(lambda x: x * x - 2, 0.0, 2.0), 9)
    1.414213562
    """
    a, b = high, low
    fb, fa = at_ends or (function(b), function(a))
    if fa == 0 or fb == 0 or (fa > 0) == (fb > 0):
        return a if abs(fa) <= abs(fb) else b
    share = 0.5
    for _ in range(MOST_STEPS):
        x = a + share * (b - a)
        fx = function(x)
        if (fx > 0) == (fa > 0):
            c, fc = a, fa
        else:
            c, fc = b, fb
            b, fb = a, fa
        a, fa = x, fx
        best = a if abs(fa) < abs(fb) else b
        nearness = RELATIVE * max(abs(best), 1e-30) / abs(b - a)
        if fx == 0 or nearness > 0.5:
            return best
        share = _safe_share(a, fa, b, fb, c, fc, nearness)
    return a


def _safe_share(a: float, fa: float, b: float, fb: float, c: float, fc: float, nearness: float) -> float:
    """Where between a and b to look next: by inverse quadratic interpolation where it is safe, else half way."""
    place = (a - b) / (c - b)
    rise = (fa - fb) / (fc - fb)
    share = 0.5
    if 1 - sqrt(1 - place) < rise < sqrt(place):
        share = fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
    return min(1 - nearness, max(nearness, share))
