"""Demand: how much fuel a power goal burns."""

from __future__ import annotations

# Common practice, no source: about 0.50, 0.61 and 0.63 lb/(hp h) on gasoline, rich for safety.
BRAKE_EFFICIENCY = {"none": 0.275, "turbo": 0.225, "supercharger": 0.215}
CREDIBLE_EFFICIENCY = (0.15, 0.42)  # of an engine at full load; common practice, no source
IDLE_SHARE = 0.02  # of the demand, burned at idle where nothing was measured; common practice, no source


def crank_power_w(*, power_w: float, at_wheels: bool, driveline_loss: float) -> float:
    """Crank power in watts from a goal at the crank or at the wheels; the loss is a fraction."""
    return power_w / (1 - driveline_loss) if at_wheels else power_w


def usual_bsfc_kg_J(*, lhv_J_kg: float, induction: str) -> float:
    """Fuel per unit of crank work where none was measured: 1 / (efficiency x heating value)."""
    return 1 / (BRAKE_EFFICIENCY[induction] * lhv_J_kg)


def thermal_efficiency(*, bsfc_kg_J: float, lhv_J_kg: float) -> float:
    """Brake thermal efficiency: work over the heat in the fuel burned (Heywood 1988, eq. 2.23; from memory)."""
    return 1 / (bsfc_kg_J * lhv_J_kg)
