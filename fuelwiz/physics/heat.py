"""Heat that the pumps put into fuel that goes round, and how long a tank lasts."""

from __future__ import annotations

MOST_RISE_K_PER_H = 25.0  # common practice, no source
LONG_ENOUGH_S = 20 * 60.0  # a tank that is empty before that warms up no further; common practice, no source


def rise_k_per_h(
    *, volts: float, current_a: float, density_kg_m3: float, volume_m3: float, cp_J_kgK: float
) -> float:
    """Rise of the tank's temperature in K/h if all electrical power (V, A) stays in the fuel (kg/m3, m3, J/(kg K)).

    First law of thermodynamics; an upper bound, no cooling counted. Valid for a volume above zero.

    >>> round(rise_k_per_h(volts=13.5, current_a=10, density_kg_m3=745, volume_m3=0.03, cp_J_kgK=2100), 2)
    10.35
    """
    return volts * current_a / (density_kg_m3 * volume_m3 * cp_J_kgK) * 3600


def lasts_s(*, volume_m3: float, flow_m3_s: float) -> float:
    """How many seconds a volume of fuel in m3 lasts at a flow in m3/s above zero.

    >>> round(lasts_s(volume_m3=0.03, flow_m3_s=5e-5))
    600
    """
    return volume_m3 / flow_m3_s
