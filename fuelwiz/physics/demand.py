"""Demand: how much fuel a power goal burns."""

from __future__ import annotations

# Common practice, no source: about 0.50, 0.61 and 0.63 lb/(hp h) on gasoline, rich for safety.
BRAKE_EFFICIENCY = {"none": 0.275, "turbo": 0.225, "supercharger": 0.215}
CREDIBLE_EFFICIENCY = (0.15, 0.42)  # of an engine at full load; common practice, no source
IDLE_SHARE = 0.02  # of the demand, burned at idle where nothing was measured; common practice, no source


def crank_power_w(*, power_w: float, at_wheels: bool, driveline_loss: float) -> float:
    """Crank power in W from a goal in W at the crank or at the wheels; the loss is a fraction below 1.

    Definition of the loss as a share of the power at the crank.

    >>> round(crank_power_w(power_w=170e3, at_wheels=True, driveline_loss=0.15))
    200000
    """
    return power_w / (1 - driveline_loss) if at_wheels else power_w


def usual_bsfc_kg_J(*, lhv_J_kg: float, induction: str) -> float:
    """Fuel in kg per J of crank work where none was measured: 1 / (efficiency x heating value in J/kg).

    Efficiencies of BRAKE_EFFICIENCY, common practice, no source; valid at full load, rich for safety.
    `induction` is one of its keys.

    >>> round(usual_bsfc_kg_J(lhv_J_kg=43.4e6, induction="none") * 3.6e9)
    302
    """
    return 1 / (BRAKE_EFFICIENCY[induction] * lhv_J_kg)


def thermal_efficiency(*, bsfc_kg_J: float, lhv_J_kg: float) -> float:
    """Brake thermal efficiency: work over the heat in the fuel burned, from kg/J and J/kg, both above zero.

    Source: Heywood 1988, eq. 2.23 (from memory).

    >>> round(thermal_efficiency(bsfc_kg_J=1e-7, lhv_J_kg=43.4e6), 4)
    0.2304
    """
    return 1 / (bsfc_kg_J * lhv_J_kg)
