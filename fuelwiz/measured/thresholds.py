"""What bench tests are judged by, and the cans that they are done with; words read them here."""

from __future__ import annotations

# All of them are common practice, no source.
ODD = 2.0  # a test further off the median than so many times its own tolerance is odd
LEAST_TOLERANCE = 0.015  # of a factor, however many tests there are
WORTH_MOST_WITHIN_V = 0.7  # of the volts that the pump has on the car
LONG_ENOUGH_S = 40.0  # for a watch to be good to about 1 %
CANS = {"us": ((1.0, "gal"), (2.0, "gal"), (5.0, "gal")), "metric": ((4.0, "l"), (10.0, "l"), (20.0, "l"))}
