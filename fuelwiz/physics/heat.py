"""Heat that the pumps put into fuel that goes round."""

from __future__ import annotations

MOST_RISE_K_PER_H = 25.0  # common practice, no source


def rise_k_per_h(
    *, volts: float, current_a: float, density_kg_m3: float, volume_m3: float, cp_J_kgK: float
) -> float:
    """Rise of the tank's temperature if all electrical power stays in the fuel: an upper bound, no cooling counted."""
    return volts * current_a / (density_kg_m3 * volume_m3 * cp_J_kgK) * 3600
