"""The thresholds and assumptions that a build is judged by, where physics has none of its own; words read them here."""

from __future__ import annotations

from fuelwiz.physics.fuel import PSI_PA

# All of them are common practice, no source.
MOST_SAG = 0.05  # of the pressure across the injectors
WORTH_MARGIN = 0.02  # what a larger size has to add to the margin to be worth naming

# Bad days.
WEAK_SUPPLY_V = 12.8
USUAL_SUPPLY_V = 13.8
HOT_FUEL_K = 323.15
SPIKE_PA = 3 * PSI_PA
WORN = 0.9  # of the flow at every point of the curves
CLOGGED = 2  # times the loss of every filter and strainer
OTHER_ETHANOL = 0.15  # more or less of the blend, by volume
HIGH_ALTITUDE_M = 2000.0
