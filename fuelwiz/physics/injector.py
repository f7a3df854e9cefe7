"""Injectors: flow at the pressure they really see, duty and the smallest rating that does."""

from __future__ import annotations

import math

TEST_FLUID_KG_M3 = 684.0  # n-heptane, SAE J1832 practice
LB_H_IN_CC_MIN = 10.5  # one lb/h on a maker's sheet: common practice, no source


def wide_open_flow_kg_s(
    *, rated_flow_m3_s: float, rated_pressure_pa: float, density_kg_m3: float, pressure_pa: float
) -> float:
    """Mass flow in kg/s of one injector held open, from its rating in m3/s of n-heptane at a pressure in Pa.

    An orifice's square root law in density and pressure (SAE J1832 practice, density 684 kg/m3). Valid where the
    nozzle does not cavitate; 0 without pressure.

    >>> each = wide_open_flow_kg_s(rated_flow_m3_s=1e-5, rated_pressure_pa=3e5, density_kg_m3=684, pressure_pa=12e5)
    >>> round(each, 5)
    0.01368
    """
    if pressure_pa <= 0:
        return 0.0
    return rated_flow_m3_s * math.sqrt(TEST_FLUID_KG_M3 * density_kg_m3 * pressure_pa / rated_pressure_pa)


def dead_share(*, dead_time_s: float | None, rpm: float | None) -> float:
    """Part of the time that an injector takes to open and close: dead time in s, engine speed in 1/min.

    It opens once in two turns of a four-stroke engine (kinematics). 0 where either is not known.

    >>> round(dead_share(dead_time_s=0.8e-3, rpm=6000), 9)
    0.04
    """
    return 0.0 if dead_time_s is None or rpm is None else dead_time_s * rpm / 120


def duty(*, mass_flow_kg_s: float, count: int, wide_open_kg_s: float, dead: float = 0.0) -> float:
    """Share of the time that `count` injectors stand open for a mass flow in kg/s, the dead share added.

    Valid for a flow above zero of each injector held open.

    >>> round(duty(mass_flow_kg_s=0.04, count=4, wide_open_kg_s=0.0125, dead=0.04), 9)
    0.84
    """
    return mass_flow_kg_s / (count * wide_open_kg_s) + dead


def smallest_rating_m3_s(
    *,
    mass_flow_kg_s: float,
    count: int,
    duty_limit: float,
    rated_pressure_pa: float,
    density_kg_m3: float,
    pressure_pa: float,
    dead: float = 0.0,
) -> float | None:
    """The rating in m3/s of n-heptane at the rated pressure in Pa that stays within a duty limit.

    The square root law of `wide_open_flow_kg_s`, solved for the rating. None without pressure, and where the
    dead share alone is at the limit or above.

    >>> rating = smallest_rating_m3_s(mass_flow_kg_s=0.04, count=4, duty_limit=0.8, rated_pressure_pa=3e5,
    ...                               density_kg_m3=684, pressure_pa=3e5)
    >>> round(rating * 684 * 4 * 0.8, 9)
    0.04
    """
    if pressure_pa <= 0 or dead >= duty_limit:
        return None
    law = math.sqrt(TEST_FLUID_KG_M3 * density_kg_m3 * pressure_pa / rated_pressure_pa)
    return mass_flow_kg_s / (count * (duty_limit - dead) * law)
