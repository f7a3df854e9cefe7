"""A worse input never looks better; temperature, ethanol and base pressure are neither worse nor better."""

from __future__ import annotations

import copy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.session import validate
from fuelwiz.sizing import Figures, first_figures

from .builds import build

BUILDS = ("full-session", "hill-climb-coupe", "street-turbo", "twins", "outside-twins", "mild", "pipe")
STAY = {"pump", "sag", "injectors"}
NEAR = 1e-9


def solved(plain: dict[str, Any]) -> Figures:
    return first_figures(validate(plain, "a build"))


def section(plain: dict[str, Any], *names: str) -> list[dict[str, Any]]:
    """The tables of that name, each of a list; none where the build has none."""
    found: list[dict[str, Any]] = [plain]
    for name in names:
        below = [each[name] for each in found if name in each]
        found = [one for each in below for one in (each if isinstance(each, list) else [each])]
    return found


def more_power(plain: dict[str, Any], share: float) -> None:
    number, unit = plain["goal"]["power"].split()
    plain["goal"]["power"] = f"{min(float(number) * (1 + share), 3000)!r} {unit}"


def more_boost(plain: dict[str, Any], share: float) -> None:
    number, unit = plain["pressure"].get("boost", "0 psi").split()
    plain["pressure"]["boost"] = f"{float(number) * (1 + share)!r} {unit}"


def thirstier(plain: dict[str, Any], share: float) -> None:
    plain.setdefault("engine", {})["bsfc"] = f"{1.4 * (1 + share)!r} lb/(hp*h)"


def longer(plain: dict[str, Any], share: float) -> None:
    for run in section(plain, "feed", "run"):
        run["length"] = f"{30 * (1 + share)!r} ft"


def rougher(plain: dict[str, Any], share: float) -> None:
    for run in section(plain, "feed", "run"):
        run["extra_k"] = 3 + 20 * share


def higher(plain: dict[str, Any], share: float) -> None:
    for run in section(plain, "feed", "run"):
        run["rise"] = f"{0.3 + share!r} m"


def dirtier(plain: dict[str, Any], share: float) -> None:
    for part in (*section(plain, "feed", "filter"), *section(plain, "inlet", "strainer")):
        part["clogging"] = 1 + 4 * share


def worn(plain: dict[str, Any], share: float) -> None:
    plain["pump"]["health"] = f"{100 - 60 * share!r} %"


def fewer_volts(plain: dict[str, Any], share: float) -> None:
    plain["pump"]["volts"] = f"{13.8 - 5 * share!r} V"


def thinner_tank(plain: dict[str, Any], share: float) -> None:
    plain.setdefault("tank", {})["pressure"] = f"{-2 * share!r} psi"


def slower_injectors(plain: dict[str, Any], share: float) -> None:
    for part in section(plain, "injectors"):
        part["dead_time"] = f"{2 * share!r} ms"
        plain.setdefault("engine", {})["rpm"] = 7000


def lower_relief(plain: dict[str, Any], share: float) -> None:
    plain["pump"]["relief"] = f"{140 - 80 * share!r} psi"


WORSE = (
    *(more_power, more_boost, thirstier, longer, rougher, higher, dirtier, worn, fewer_volts),
    *(thinner_tank, slower_injectors, lower_relief),
)


def never_better(before: Figures, after: Figures) -> None:
    """No size has more to spare, and what was wrong and is not cured by less flow is still wrong."""
    for first, then in zip(before.sizes, after.sizes, strict=True):
        assert first.margin is not None and then.margin is not None
        assert first.least is not None and then.least is not None
        assert then.margin <= first.margin + NEAR
        assert then.least.margin <= first.least.margin + NEAR
        assert STAY & set(first.limits) <= set(then.limits)
        if first.band == "too fast":
            assert then.band == "too fast" and "velocity" in then.limits
    assert STAY & set(before.verdict.limits) <= set(after.verdict.limits)


@pytest.mark.parametrize("worsen", WORSE, ids=lambda worsen: str(worsen.__name__))
@settings(max_examples=12, deadline=None)
@given(name=st.sampled_from(BUILDS), share=st.floats(0.0, 0.9), more=st.floats(0.01, 1.0))
def test_a_worse_input_never_looks_better(worsen: Any, name: str, share: float, more: float) -> None:
    plain = build(name, {"feed.chosen": None})
    plain["feed"] |= {"chosen": plain["feed"]["sizes"][-1] if "sizes" in plain["feed"] else "-10"}
    worse = copy.deepcopy(plain)
    worsen(plain, share)
    worsen(worse, share + more * (1 - share))
    never_better(solved(plain), solved(worse))


@settings(max_examples=25, deadline=None)
@given(
    name=st.sampled_from(BUILDS),
    power=st.floats(100, 1200),
    boost=st.floats(0, 45),
    rpm=st.one_of(st.none(), st.integers(1000, 9000)),
)
def test_one_more_point_of_full_power_never_improves_anything(
    name: str, power: float, boost: float, rpm: int | None
) -> None:
    plain = build(name, {})
    point = {"power": f"{power!r} hp", "boost": f"{boost!r} psi"} | ({} if rpm is None else {"rpm": rpm})
    more = copy.deepcopy(plain)
    more["pull"] = [*plain.get("pull", []), point]
    before, after = solved(plain), solved(more)
    for first, then in zip(before.sizes, after.sizes, strict=True):
        assert first.least is not None and then.least is not None
        assert then.least.margin <= first.least.margin
        assert set(first.limits) <= set(then.limits)
        assert then.line_works <= first.line_works
        assert (then.margin, then.capacity_m3_s, then.max_power_W) == (
            first.margin,
            first.capacity_m3_s,
            first.max_power_W,
        )
    assert (after.verdict.works or False) <= (before.verdict.works or False) or (
        after.verdict.size != before.verdict.size
    )
    assert len(after.pull) == len(before.pull) + 1


@settings(max_examples=25, deadline=None)
@given(name=st.sampled_from(BUILDS), volts=st.floats(9, 16))
def test_a_pump_of_no_known_kind_gives_no_more_than_either(name: str, volts: float) -> None:
    plain = build(name, {"pump.volts": f"{volts!r} V"})
    capacities = {}
    for kind in (None, "turbine", "displacement"):
        plain["pump"].pop("kind", None)
        if kind is not None:
            plain["pump"]["kind"] = kind
        found = solved(plain)
        capacities[kind] = [row.capacity_m3_s or 0.0 for row in found.sizes]
        if kind is None:
            assert found.pump is not None
            both = (found.pump.capacity_turbine_m3_s or 0.0, found.pump.capacity_displacement_m3_s or 0.0)
            assert (found.pick.capacity_m3_s or 0.0) <= min(both) * (1 + NEAR)
    for least, *others in zip(*capacities.values(), strict=True):
        assert least <= min(others) * (1 + NEAR)


@settings(max_examples=25, deadline=None)
@given(name=st.sampled_from(BUILDS), psi=st.floats(5, 200), less=st.floats(0, 60))
def test_a_relief_never_raises_what_the_pumps_send(name: str, psi: float, less: float) -> None:
    plain = build(name, {})
    free, high, low = (copy.deepcopy(plain) for _ in range(3))
    free["pump"].pop("relief", None)
    high["pump"]["relief"] = f"{psi!r} psi"
    low["pump"]["relief"] = f"{max(5.0, psi - less)!r} psi"
    for rows in zip(*(solved(each).sizes for each in (free, high, low)), strict=True):
        most, some, least = (row.capacity_m3_s or 0.0 for row in rows)
        assert most * (1 + NEAR) >= some and some * (1 + NEAR) >= least
