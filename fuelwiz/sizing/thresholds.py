"""The thresholds and assumptions that a build is judged by, where physics has none of its own; words read them here."""

from __future__ import annotations

from fuelwiz.physics.fuel import PSI_PA

# All of them are common practice, no source.
MOST_SAG = 0.05  # of the pressure across the injectors
COSTS_THE_PUMP = 0.05  # of the flow that the pumps would send without the loss of the runs
WORTH_MARGIN = 0.02  # what a larger size has to add to the margin to be worth naming

RATED_AT_PA = 3e5  # at which injectors that are not given are looked for
DUTY_LIMIT = 0.85

# Bad days.
WEAK_SUPPLY_V = 12.8
USUAL_SUPPLY_V = 13.8
HOT_FUEL_K = 323.15
SPIKE_PA = 3 * PSI_PA
WORN = 0.9  # of the flow at every point of the curves
CLOGGED = 2  # times the loss of every filter and strainer
OTHER_ETHANOL = 0.15  # more or less of the blend, by volume
LOW_BLENDS_TO, FLEX_FUEL_FROM, FLEX_FUEL_TO = 0.15, 0.51, 0.90
FLEX_FUEL_AT_MOST = 0.83  # what is sold as flex fuel holds 51 to 83 % of ethanol (ASTM D5798)
SUMMER_REID = 7.8 / 9  # the summer fuel of hot places over the usual one (40 CFR 1090.215)
SUMMER_REID_UP_TO = 0.85  # of ethanol
LITTLE_BEFORE_RELIEF_PA = 10 * PSI_PA  # valves weep early
CREEP_CALLED_OUT_PA = 5 * PSI_PA  # with all pumps on
HIGH_ALTITUDE_M = 2000.0

# What may be changed about a build.
LOWER_BASE_PA, LOWER_ABOVE_PA = 3.0e5, 3.1e5  # what base pressure is lowered to, and from where on
HIGHER_BASE_PA, HIGHER_BELOW_PA = 4.0e5, 3.9e5  # what it is raised to, and from where down
COOLER_K = 15.0
CC_MIN = 1e-6 / 60  # m3/s
STEP_CC_MIN = 50  # injectors are sold in rough steps of this: common practice, no source
