"""The injectors at the goal, and the power at which they give out."""

from __future__ import annotations

import math

from fuelwiz.physics.injector import TEST_FLUID_KG_M3, wide_open_flow_kg_s
from fuelwiz.physics.roots import root
from fuelwiz.sizing.part_figures import InjectorFigures
from fuelwiz.sizing.sized_system import SizedSystem, flow_where


def injector_figures(sized: SizedSystem) -> InjectorFigures | None:
    """Flow, duty and the smallest rating that does; None without injectors or a feed."""
    system = sized.system
    injectors = system.session.injectors
    if injectors is None or not system.session.feed.run:
        return None
    across = system.pressure.injector_Pa - (sized.sag_pa or 0.0)
    each = wide_open_flow_kg_s(
        rated_flow_m3_s=injectors.rated_flow,
        rated_pressure_pa=injectors.rated_pressure,
        density_kg_m3=system.fuel.density_kg_m3,
        pressure_pa=across,
    )
    if across <= 0:
        return InjectorFigures(injectors.count, 0.0, None, None, False)
    wanted = system.demand.mass_flow_kg_s / injectors.count
    duty = wanted / each
    law = math.sqrt(TEST_FLUID_KG_M3 * system.fuel.density_kg_m3 * across / injectors.rated_pressure)
    return InjectorFigures(
        injectors.count, each, duty, wanted / injectors.duty_limit / law, duty <= injectors.duty_limit
    )


def injector_ceiling_w(sized: SizedSystem, figures: InjectorFigures) -> float:
    """Crank power at which the injectors reach their duty limit, the sag growing with the flow; 0 without pressure."""
    system = sized.system
    injectors = system.session.injectors
    assert injectors is not None
    power = system.demand.crank_power_W
    if not system.at_tank:
        return 0.0 if figures.duty is None else power * injectors.duty_limit / figures.duty
    across = system.pressure.injector_Pa
    if across - sized.feed.loss_pa(0.0) <= 0:
        return 0.0

    def short(flow: float) -> float:
        each = wide_open_flow_kg_s(
            rated_flow_m3_s=injectors.rated_flow,
            rated_pressure_pa=injectors.rated_pressure,
            density_kg_m3=system.fuel.density_kg_m3,
            pressure_pa=across - sized.feed.loss_pa(flow),
        )
        return flow * system.fuel.density_kg_m3 - injectors.duty_limit * injectors.count * each

    most = flow_where(sized.feed, across, system.flow_m3_s)
    return power * root(short, 0.0, most) / system.flow_m3_s
