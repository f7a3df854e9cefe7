"""A car with one bench test of its pump, with the builder's comments in the file: 90 gal/h where the sheet has 97."""

from __future__ import annotations

TEXT = """\
# My car, as the sheets have it.
format = 1

[goal]
power = "400 hp"    # at the crank

[pump]
# bought used
health = "100 %"    # as sold
[[pump.curve]]
voltage = "13.5 V"
points = [["40 psi", "97 gal/h"], ["80 psi", "68 gal/h"]]

[[feed.run]]
length = "13 ft"

[[bench]]
at = "pump"
date = "2026-05-14"
pressure = "40 psi"
volts = "13.5 V"
volume = "1 gal"
time = "40 s"       # 90 gal/h
"""
