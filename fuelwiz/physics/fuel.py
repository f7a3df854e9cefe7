"""Fuel: density, viscosity, heating value and vapour pressure of blends, pure fuels and a fuel of one's own."""

from __future__ import annotations

import math

from fuelwiz.facts import table
from fuelwiz.record import record

PSI_PA = 6894.757293168  # NIST SP 811
REFERENCE_K = 288.15  # 15 degC
VISCOSITY_K = 293.15  # 20 degC
REID_K = 310.93  # 100 degF, where a Reid pressure is measured


@record
class Fuel:
    """A fuel at one temperature; SI units, both pressures absolute.

    >>> round(pure("methanol", temperature_k=288.15).density_kg_m3, 1)
    795.9
    """

    density_kg_m3: float
    viscosity_m2_s: float
    lhv_J_kg: float
    stoich: float | None
    vapour_pressure_pa: float | None
    cp_J_kgK: float
    reid_pa: float | None = None


def component_density_kg_m3(name: str, temperature_k: float) -> float:
    """Density in kg/m3 of a component, such as "gasoline" or "ethanol", at a temperature in K.

    A straight line about 15 degC, constants and their sources in facts; valid from -40 to 90 degC.

    >>> round(component_density_kg_m3("gasoline", 288.15), 1)
    745.0
    """
    facts = table("fuels")[name]
    return float(facts["rho_15"] * (1 - facts["alpha"] * (temperature_k - REFERENCE_K)))


def component_viscosity_pa_s(name: str, temperature_k: float) -> float:
    """Dynamic viscosity in Pa s of a component at a temperature in K, by Andrade's law about 20 degC.

    Constants and their sources in facts; valid from -40 to 90 degC.

    >>> round(component_viscosity_pa_s("ethanol", 293.15), 6)
    0.001195
    """
    facts = table("fuels")[name]
    return float(facts["mu_20"] * math.exp(facts["andrade_K"] * (1 / temperature_k - 1 / VISCOSITY_K)))


def blend_row(ethanol: float, column: str) -> float:
    """A column of the blend table at an ethanol fraction by volume (0 to 1), straight lines between its rows.

    Sources beside the table in facts.

    >>> blend_row(0.85, "reid_psi")
    5.8
    """
    rows = table("fuels")["blend"]
    percents, values = rows["ethanol_percent"], rows[column]
    percent = ethanol * 100
    for left, right, low, high in zip(percents, percents[1:], values, values[1:], strict=False):
        if percent <= right:
            return float(low + (high - low) * (percent - left) / (right - left))
    return float(values[-1])


def blend_reid_pa(ethanol: float) -> float:
    """Reid vapour pressure in Pa of gasoline with an ethanol fraction by volume (0 to 1), where none was measured.

    On a 9 psi base gasoline; sources beside the blend table in facts.

    >>> round(blend_reid_pa(0.0) / PSI_PA, 6)
    9.0
    """
    return blend_row(ethanol, "reid_psi") * PSI_PA


def ethanol_mass_fraction(ethanol: float) -> float:
    """Mass fraction of ethanol from its volume fraction at 15 degC (0 to 1).

    >>> round(ethanol_mass_fraction(0.5), 4)
    0.5159
    """
    gasoline, alcohol = table("fuels")["gasoline"], table("fuels")["ethanol"]
    mass = ethanol * alcohol["rho_15"]
    return float(mass / ((1 - ethanol) * gasoline["rho_15"] + mass))


def vapour_pressure_pa(
    *, reid_pa: float, true_over_reid: float, slope_k: float, temperature_k: float
) -> float:
    """True vapour pressure in Pa, absolute, at a temperature in K, carried from 100 degF by a slope in K.

    Clausius and Clapeyron's law; the slope holds from about 0 to 70 degC.

    >>> round(vapour_pressure_pa(reid_pa=6e4, true_over_reid=1.0, slope_k=3000.0, temperature_k=REID_K))
    60000
    """
    return reid_pa * true_over_reid * math.exp(-slope_k * (1 / temperature_k - 1 / REID_K))


def blend(*, ethanol: float, temperature_k: float, reid_pa: float | None = None) -> Fuel:
    """Gasoline with an ethanol fraction (by volume, 0 to 1) at a temperature.

    Density by volume, viscosity by the logarithm by volume, heating value, air need and heat capacity by mass
    (API MPMS 11.3.4 finds the excess volume 0.2 % or less). Temperature in K, from -40 to 90 degC; a measured Reid
    pressure (Pa) wins over the table's.

    >>> round(blend(ethanol=0.0, temperature_k=288.15).stoich, 1)
    14.7
    """
    gasoline, alcohol = table("fuels")["gasoline"], table("fuels")["ethanol"]
    by_mass = ethanol_mass_fraction(ethanol)
    density = (1 - ethanol) * component_density_kg_m3("gasoline", temperature_k)
    density += ethanol * component_density_kg_m3("ethanol", temperature_k)
    viscosity = math.exp(
        (1 - ethanol) * math.log(component_viscosity_pa_s("gasoline", temperature_k))
        + ethanol * math.log(component_viscosity_pa_s("ethanol", temperature_k))
    )

    reid = blend_reid_pa(ethanol) if reid_pa is None else reid_pa

    def mix(key: str, share: float) -> float:
        return float((1 - share) * gasoline[key] + share * alcohol[key])

    return Fuel(
        density_kg_m3=density,
        viscosity_m2_s=viscosity / density,
        lhv_J_kg=mix("lhv", by_mass),
        stoich=mix("stoich", by_mass),
        vapour_pressure_pa=vapour_pressure_pa(
            reid_pa=reid,
            true_over_reid=mix("true_over_reid", ethanol),
            slope_k=blend_row(ethanol, "clausius_K"),
            temperature_k=temperature_k,
        ),
        cp_J_kgK=mix("cp", by_mass),
        reid_pa=reid,
    )


def pure(name: str, *, temperature_k: float, reid_pa: float | None = None) -> Fuel:
    """A component alone at a temperature in K, from -40 to 90 degC; a measured Reid pressure (Pa) wins over the table's.

    Sources of its constants beside them in facts, its Reid pressure among them.

    >>> pure("methanol", temperature_k=300.0).stoich
    6.46
    """
    facts = table("fuels")[name]
    density = component_density_kg_m3(name, temperature_k)
    reid = facts["reid"] if reid_pa is None else reid_pa
    return Fuel(
        density_kg_m3=density,
        viscosity_m2_s=component_viscosity_pa_s(name, temperature_k) / density,
        lhv_J_kg=facts["lhv"],
        stoich=facts["stoich"],
        vapour_pressure_pa=vapour_pressure_pa(
            reid_pa=reid,
            true_over_reid=facts["true_over_reid"],
            slope_k=facts["clausius_K"],
            temperature_k=temperature_k,
        ),
        cp_J_kgK=facts["cp"],
        reid_pa=reid,
    )


def own(
    *,
    density_kg_m3: float,
    viscosity_m2_s: float,
    lhv_J_kg: float,
    given_at_k: float,
    temperature_k: float,
    stoich: float | None = None,
    reid_pa: float | None = None,
) -> Fuel:
    """A fuel whose figures were given at one temperature in K, carried to another with gasoline's constants.

    Valid as far as the fuel expands and thins as gasoline does; without a Reid pressure (Pa) no vapour pressure.

    >>> mine = own(density_kg_m3=750, viscosity_m2_s=6e-7, lhv_J_kg=42e6, given_at_k=300.0, temperature_k=300.0)
    >>> mine.density_kg_m3, mine.vapour_pressure_pa
    (750.0, None)
    """
    facts = table("fuels")["gasoline"]
    alpha = facts["alpha"]
    shrink = (1 - alpha * (temperature_k - REFERENCE_K)) / (1 - alpha * (given_at_k - REFERENCE_K))
    thin = math.exp(facts["andrade_K"] * (1 / temperature_k - 1 / given_at_k))
    density = density_kg_m3 * shrink
    vapour = None
    if reid_pa is not None:
        vapour = vapour_pressure_pa(
            reid_pa=reid_pa,
            true_over_reid=facts["true_over_reid"],
            slope_k=facts["clausius_K"],
            temperature_k=temperature_k,
        )
    return Fuel(
        density_kg_m3=density,
        viscosity_m2_s=viscosity_m2_s * density_kg_m3 * thin / density,
        lhv_J_kg=lhv_J_kg,
        stoich=stoich,
        vapour_pressure_pa=vapour,
        cp_J_kgK=facts["cp"],
        reid_pa=reid_pa,
    )
