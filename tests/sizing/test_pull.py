"""Points of full power off a dyno sheet, each worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures
from fuelwiz.sizing.figures import Figures

# An own fuel of 750 kg/m3 is 6.2591 lb a US gallon; 0.6 lb/(hp*h). The line, the filter and the inlet lose nothing, and
# the pump falls by one gal/h for each psi: 62 at 40 psi, 22 at 80.
LB_GALLON = 750 * 3.785411784e-3 / 0.45359237
SHEET = [(6000, 400, 20), (4500, 300, 26)]


def by_hand(horsepower: float, psi_of_boost: float) -> float:
    """Margin at a point: what the pump gives against 40 psi and the boost, over what is burned."""
    return (62 - psi_of_boost) / (horsepower * 0.6 / LB_GALLON) - 1


def car(**changes: Any) -> dict[str, Any]:
    return {
        "format": 1,
        "goal": {"power": "420 hp", "reserve": "10 %"},
        "engine": {"bsfc": "0.6 lb/(hp*h)", "cylinders": 4},
        "fuel": {"kind": "own", "density": "750 kg/m^3", "viscosity": "0.6 mm^2/s", "lhv": "43 MJ/kg"},
        "pressure": {"base": "40 psi", "boost": "14 psi"},
        "pull": [{"rpm": rpm, "power": f"{hp} hp", "boost": f"{psi} psi"} for rpm, hp, psi in SHEET],
        "pump": {"volts": "13.5 V", "curve": [{"points": [["40 psi", "62 gal/h"], ["80 psi", "22 gal/h"]]}]},
        "feed": {"run": [{"length": "0 ft"}], "filter": []},
        **changes,
    }


def test_each_point_of_a_dyno_sheet() -> None:
    found = quick_figures(validate(car(), "dyno"))
    assert [point.margin for point in found.pull] == pytest.approx([by_hand(400, 20), by_hand(300, 26)])
    assert [point.rpm for point in found.pull] == [6000, 4500]
    assert [point.limits for point in found.pull] == [("pump",), ()]
    assert found.pick.margin == pytest.approx(by_hand(420, 14))


def test_the_tightest_point_is_named_and_decides() -> None:
    """9.5 % at 6000, short of the reserve of 10; 19.2 % at the goal."""
    found = quick_figures(validate(car(), "dyno"))
    least = found.pick.least
    assert least is not None
    assert least.at == 0
    assert least.margin == pytest.approx(by_hand(400, 20))
    assert found.pick.limits == ("pump",) and not found.verdict.works
    hardest = found.pump_target.hardest if found.pump_target else None
    assert hardest is not None
    assert hardest.at == 0
    assert hardest.flow_m3_s == pytest.approx(1.1 * 400 * 0.6 * 0.45359237 / 3600 / 750)
    assert hardest.rise_Pa == pytest.approx(60 * 6894.757293168)
    assert quick_figures(validate(car(pull=[]), "dyno")).verdict.works


def test_the_goal_comes_before_a_point_that_asks_the_same() -> None:
    same = [{"power": "420 hp", "boost": "14 psi"}] * 2
    least = quick_figures(validate(car(pull=same), "dyno")).pick.least
    assert least is not None and least.at is None


def test_injectors_are_judged_at_the_speed_of_each_point() -> None:
    """By hand: 4 of 500 cc/min on n-heptane at 40 psi give 0.0057 sqrt(750/684) kg/s each; 1 ms at 7000 is 5.8 %."""
    injectors = {"rated_flow": "850 cc/min", "rated_pressure": "40 psi", "dead_time": "1 ms"}
    plain = car(injectors=injectors, engine={"bsfc": "0.6 lb/(hp*h)", "rpm": 7000})
    found = quick_figures(validate(plain, "dyno"))
    each = 850e-6 / 60 * (684 * 750) ** 0.5
    burned = 0.6 * 0.45359237 / 3600
    assert found.injectors is not None
    assert found.injectors.duty == pytest.approx(420 * burned / 4 / each + 1e-3 * 7000 / 120)
    assert [point.duty for point in found.pull] == pytest.approx(
        [400 * burned / 4 / each + 1e-3 * 6000 / 120, 300 * burned / 4 / each + 1e-3 * 4500 / 120]
    )


def test_a_boost_spike_lifts_boost_and_power_at_every_point() -> None:
    """By hand at 101 325 Pa: 17.6959 psi of air; the spike adds 3 psi and the power with it."""
    air = 101325 / 6894.757293168
    spike = next(case for case in quick_figures(validate(car(), "dyno")).stress if case.case == "boost spike")
    margins = [
        by_hand(horsepower * (air + psi + 3) / (air + psi), psi + 3)
        for _, horsepower, psi in [(0, 420, 14), *SHEET]
    ]
    assert spike.margin == pytest.approx(min(margins))


def near_boiling(power: str, boost: str, **changes: Any) -> Figures:
    """A goal on fuel near boiling behind a strainer: the less boost, the more the pump draws through it."""
    fuel = car()["fuel"] | {"temperature": "100 degF", "reid_pressure": "9 psi"}
    inlet = {"strainer": {"rated_flow": "60 gal/h", "rated_loss": "3 psi"}}
    goal, pressure = {"power": power, "reserve": "10 %"}, {"base": "40 psi", "boost": boost}
    return quick_figures(
        validate(car(fuel=fuel, inlet=inlet, goal=goal, pressure=pressure, **changes), "hot")
    )


@pytest.mark.parametrize("case", ["altitude", "dirty filters"])
def test_a_bad_day_on_which_the_fuel_boils_at_a_point_alone_fails(case: str) -> None:
    """The point typed as a goal of its own boils on that day, the goal does not."""
    point = [{"power": "300 hp", "boost": "2 psi"}]
    goal, both, alone = (
        next(day for day in found.stress if day.case == case)
        for found in (
            near_boiling("420 hp", "14 psi", pull=[], tank={"pressure": "0.1 psi"}),
            near_boiling("420 hp", "14 psi", pull=point, tank={"pressure": "0.1 psi"}),
            near_boiling("300 hp", "2 psi", pull=[], tank={"pressure": "0.1 psi"}),
        )
    )
    assert goal.vapour_margin_Pa is not None and alone.vapour_margin_Pa is not None
    assert alone.vapour_margin_Pa < 0 < goal.vapour_margin_Pa
    assert "vapour" not in goal.limits and "vapour" in alone.limits
    assert both.vapour_margin_Pa == pytest.approx(goal.vapour_margin_Pa), "the figure is that of the goal"
    assert "vapour" in both.limits and not both.works


def test_hot_fuel_is_never_further_from_boiling_than_today_at_a_point() -> None:
    """The summer fuel of hot places boils later: where today's boils at the point alone, so does that of the day."""
    found = quick_figures(
        validate(
            car(
                fuel={"ethanol": "0 %", "temperature": "50 degC"},
                inlet={"strainer": {"rated_flow": "60 gal/h", "rated_loss": "3 psi"}},
                tank={"pressure": "1.5 psi"},
                pull=[{"power": "300 hp", "boost": "2 psi"}],
            ),
            "hot",
        )
    )
    hot = next(day for day in found.stress if day.case == "hot fuel")
    assert found.pick.vapour_margin_Pa is not None and found.pick.vapour_margin_Pa > 0
    assert hot.vapour_margin_Pa == found.pick.vapour_margin_Pa
    assert "vapour" in found.pick.limits and "vapour" in hot.limits
