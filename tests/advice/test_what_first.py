"""What to do first, on an invented five-cylinder that is short of several parts at once."""

from __future__ import annotations

import random
import tomllib
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.advice.answer.how_far import limit_named_first
from fuelwiz.advice.answer.what_first import most_helps, what_first
from fuelwiz.advice.blocks import FuelPath
from fuelwiz.advice.sections.changes import ways_out
from fuelwiz.advice.sections.path import path
from fuelwiz.advice.subject import Subject
from fuelwiz.session import validate
from fuelwiz.sizing import in_steps, quick_figures
from fuelwiz.sizing.thresholds import WORTH_MARGIN

from .builds import changed, spaced

FIVE = """
format = 1
show_units = "metric"
show_power = "hp"
[goal]
power = "500 hp"
power_at = "wheels"
driveline_loss = "25 %"
[engine]
cylinders = 5
[fuel]
ethanol = "85 %"
[pressure]
base = "4 bar"
boost = "1.9 bar"
[pump]
current = [["5 bar", "16 A"]]
[[pump.curve]]
points = [["3 bar", "420 L/h"], ["4 bar", "385 L/h"], ["5 bar", "340 L/h"], ["6 bar", "280 L/h"]]
[wiring]
supply = "14.1 V"
wire = "2.5 mm^2"
length = "4 m"
return_path = "chassis"
[feed]
chosen = "8 mm"
[[feed.run]]
length = "4.5 m"
fittings = { swept_90 = 4 }
[[feed.filter]]
rated_flow = "200 L/h"
rated_loss = "0.1 bar"
[return_line]
chosen = "6 mm"
[[return_line.run]]
hose = "tube"
length = "4.5 m"
[injectors]
rated_flow = "1050 cc/min"
"""


def five(**changes: Any) -> Result:
    """That car with keys changed, and what changes buy, at a next goal too where there is one."""
    session = validate(changed(tomllib.loads(FIVE), changes), "five")
    first = quick_figures(session)
    wanted = (step for step in in_steps(session, first) if (step.next.changes if step.next else step.changes))
    return result(session, next(wanted, first))


def third_line(one: Result) -> str:
    """What to do first, at its longest."""
    forms = what_first(Subject(one.session, one.figures))
    assert forms is not None
    return spaced(forms[0])


def test_a_pump_injectors_and_a_return_together_are_a_way_out() -> None:
    assert third_line(five()) == (
        "Buy first: a second pump on its own wire (356 to 410 hp). Then a -6 return and injectors of 1300 cc/min."
        " And a filter for 357 L/h or more."
    )


def test_a_return_that_alone_is_too_small_is_what_is_bought() -> None:
    """Two sizes up: the next one does not hold."""
    one = five(pump__count=2, injectors__rated_flow="1400 cc/min", goal__power="480 hp")
    assert one.figures.verdict.limits == ("return",)
    assert third_line(one) == (
        "Buy first: a -8 return. And a filter for 342 L/h or more. Not needed: a third pump, a -8 feed."
    )


def test_low_volts_at_the_end_of_a_long_wire_ask_for_wire_first() -> None:
    one = five(wiring__length="20 m")
    assert third_line(one).startswith("Buy first: 16 mm² wire (")
    stop = next(finding for finding in one.words.findings if finding.about == "pump")
    assert "Fit 16 mm² wire first: the pump gets 11.4 V." in spaced(stop.text)


@pytest.mark.parametrize("seed", range(60))
def test_what_is_named_first_helps_what_the_first_line_names(seed: int) -> None:
    draw = random.Random(seed)
    one = five(
        goal__power=f"{draw.choice([300, 450, 600, 900])} hp",
        pump__count=draw.choice([1, 2, 3]),
        pump__place=draw.choice(["tank", "outside"]),
        feed__chosen=draw.choice(["-4", "8 mm", "-10"]),
        return_line__chosen=draw.choice(["5 mm", "6 mm", "-12"]),
        injectors__rated_flow=draw.choice(["600 cc/min", "1050 cc/min", "2000 cc/min"]),
        wiring__length=draw.choice(["4 m", "20 m"]),
    )
    subject, figures = Subject(one.session, one.figures), one.figures
    if not figures.verdict.limits:
        return
    limit = limit_named_first(subject)
    found = most_helps(subject, limit, figures.changes)
    assert limit in figures.verdict.limits
    if found is None:
        assert not any(limit in change.cures for change in figures.changes)
        assert "most helps" not in third_line(one)
        return
    assert figures.pick.least is not None
    more = found.margin - figures.pick.least.margin
    assert limit in found.cures or (limit == "pump" and more >= WORTH_MARGIN)


@pytest.mark.parametrize("power", ["1200 hp", "2000 hp"])
def test_where_no_change_is_enough_the_one_that_helps_the_pump_is_named(power: str) -> None:
    one = five(goal__power=power, injectors__rated_flow="4000 cc/min")
    assert one.figures.way_out is None and not one.figures.long_way
    line = third_line(one)
    assert line.startswith("No change cures it, nor several together; most helps: ")
    assert "a second pump" in line
    assert ways_out(Subject(one.session, one.figures)) == (
        ("way out", "none of these is enough, nor several together"),
    )


@pytest.mark.parametrize(("circuits", "said"), [(None, True), (1, False)])
def test_one_more_pump_is_said_to_have_the_wire_that_it_counts_with(circuits: int | None, said: bool) -> None:
    """Circuits that nobody counted are one a pump; a builder who says one keeps one."""
    line = third_line(five(wiring__circuits=circuits))
    assert "second pump" in line and ("a second pump on its own wire" in line) == said


def test_the_path_says_what_is_needed_before_what_there_is() -> None:
    """The pump's 6.45 bar is more than it makes, the return's 5.01 more than the regulator should hold."""
    one = five()
    (way,) = (
        block for block in path(Subject(one.session, one.figures), one.words) if isinstance(block, FuelPath)
    )
    comes_out = [spaced(stop.comes_out) for stop in way.lines]
    assert "needs 6.45, has 4.44 bar" in comes_out and "5.01 bar at idle, not 3.38" in comes_out


def test_injectors_among_several_parts_have_the_larger_ones_set_apart() -> None:
    line = third_line(five(goal__next_power="550 hp", goal__next_boost="2.2 bar"))
    assert "Then a -6 return and injectors of 1300 cc/min (or 1450 for 550 hp too)." in line
