"""Injectors: flow at the pressure they really see, duty and the smallest rating that does."""

from __future__ import annotations

import math

TEST_FLUID_KG_M3 = 684.0  # n-heptane, SAE J1832 practice


def wide_open_flow_kg_s(
    *, rated_flow_m3_s: float, rated_pressure_pa: float, density_kg_m3: float, pressure_pa: float
) -> float:
    """Mass flow of one injector held open: an orifice's square root law in density and pressure; 0 without pressure."""
    if pressure_pa <= 0:
        return 0.0
    return rated_flow_m3_s * math.sqrt(TEST_FLUID_KG_M3 * density_kg_m3 * pressure_pa / rated_pressure_pa)
