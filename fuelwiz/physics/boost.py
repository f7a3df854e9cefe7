"""Boost and power: how one goes with the other."""

from __future__ import annotations


def boost_in_step_pa(*, boost_pa: float, share: float, atmosphere_pa: float) -> float:
    """Boost in Pa, gauge, at a share of the power that is made at `boost_pa`, with the atmosphere in Pa absolute.

    Power in proportion to the absolute pressure in the manifold, at one engine speed and one temperature of the
    charge (Heywood 1988, eq. 2.26, volumetric efficiency and fuel-air ratio kept; from memory). An engine without
    boost stays without; never below zero.

    >>> round(boost_in_step_pa(boost_pa=1e5, share=0.75, atmosphere_pa=1e5))
    50000
    >>> boost_in_step_pa(boost_pa=1e5, share=0.4, atmosphere_pa=1e5)
    0.0
    """
    return max(0.0, (atmosphere_pa + boost_pa) * share - atmosphere_pa) if boost_pa > 0 else 0.0


def power_share_at(*, boost_pa: float, more_pa: float, atmosphere_pa: float) -> float:
    """Power at a boost raised by `more_pa` over that at `boost_pa`; all in Pa, the atmosphere absolute.

    The law of `boost_in_step_pa` the other way round.

    >>> power_share_at(boost_pa=1e5, more_pa=5e4, atmosphere_pa=1e5)
    1.25
    """
    return (atmosphere_pa + boost_pa + more_pa) / (atmosphere_pa + boost_pa)
