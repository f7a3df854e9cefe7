"""Attributes that are computed once."""

from __future__ import annotations

from dataclasses import dataclass, field

import pytest

from fuelwiz.once import once


@dataclass(frozen=True)
class Line:
    """Something frozen with a figure that is dear to compute."""

    bore: float
    readings: list[float] = field(default_factory=list, compare=False)

    @once
    def area(self) -> float:
        """A figure of the bore."""
        self.readings.append(self.bore)
        return self.bore**2

    @once
    def sound(self) -> float:
        """A figure that cannot be computed the first time."""
        self.readings.append(self.bore)
        if len(self.readings) == 1:
            raise ValueError("not yet")
        return self.bore


def test_it_is_computed_when_first_read_and_not_again() -> None:
    line = Line(3.0)
    assert line.readings == []
    assert line.area == 9.0 and line.area == 9.0
    assert line.readings == [3.0]


def test_each_object_has_its_own() -> None:
    small, large = Line(1.0), Line(2.0)
    assert (small.area, large.area, small.area) == (1.0, 4.0, 1.0)


def test_a_failure_is_not_remembered() -> None:
    line = Line(2.0)
    with pytest.raises(ValueError, match="not yet"):
        _ = line.sound
    assert line.sound == 2.0


def test_it_tells_what_it_is() -> None:
    assert Line.area.__doc__ == "A figure of the bore."
    assert Line(2.0) == Line(2.0)
