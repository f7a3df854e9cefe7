"""Stages: the power at which fewer pumps than there are would just be enough, the boost in step with it."""

from __future__ import annotations

from fuelwiz.physics.boost import boost_in_step_pa
from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.roots import root
from fuelwiz.sizing.part_figures import Stage
from fuelwiz.sizing.sized_system import SizedSystem


def stages(sized: SizedSystem) -> tuple[Stage, ...]:
    """For each number of pumps from those at idle to all but one; none in series, none that suffices at the goal."""
    pump = sized.system.session.pump
    if not sized.system.solvable or pump is None or pump.arrangement != "parallel":
        return ()
    found = (_stage(sized, count) for count in range(pump.running_at_idle, pump.count))
    return tuple(stage for stage in found if stage is not None)


def _stage(sized: SizedSystem, count: int) -> Stage | None:
    system = sized.system
    pumps = system.pump_set(count)
    assert pumps is not None
    if sized.capacity_m3_s(pumps=pumps) >= system.flow_m3_s:
        return None
    share = _share(sized, pumps)
    return Stage(count, share * system.demand.crank_power_W, _boost_pa(sized, share))


def _boost_pa(sized: SizedSystem, share: float) -> float:
    system = sized.system
    return boost_in_step_pa(
        boost_pa=system.session.pressure.boost, share=share, atmosphere_pa=system.atmosphere_pa
    )


def _share(sized: SizedSystem, pumps: PumpSet) -> float:
    """The share of the goal's power at which some pumps are just enough; 0 where they hold no rail without boost."""
    system = sized.system

    def rise(share: float) -> float:
        rail = system.rail_pa(_boost_pa(sized, share))
        return sized.rise_pa(share * system.flow_m3_s, rail_pa=rail, pumps=pumps)

    def spare(share: float) -> float:
        return pumps.flow_m3_s(rise(share)) - share * system.flow_m3_s

    if spare(0.0) <= 0:
        return 0.0
    share = root(spare, 0.0, 1.0) if spare(1.0) < 0 else 1.0
    relief = pumps.relief_pa
    if relief is None or rise(share) <= relief:
        return share
    return 0.0 if rise(0.0) > relief else root(lambda part: rise(part) - relief, 0.0, share)
