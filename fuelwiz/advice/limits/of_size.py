"""What can be wrong with a size of feed line, in words: a record for each limit, in the order of the verdict."""

from __future__ import annotations

from fuelwiz.advice.limits.record import SizeLimitWords, WhatAndDo
from fuelwiz.advice.phrases import spare, vapour_phrase, volts_seen
from fuelwiz.advice.subject import Subject, capitalized, size_label
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.thresholds import MOST_SAG
from fuelwiz.sizing.vocabulary import LINE_LIMITS


def _larger_line(build: Subject) -> str:
    row = build.smallest_with_working_line()
    if row is None or row.fixed:
        return "Fit a larger line, or two side by side."
    return f"Fit {row.size} or larger, or two lines side by side."


def _velocity(build: Subject, row: SizeFigures) -> str:
    figure, most = build.numbers.pair("velocity", row.velocity_m_s, build.session.bands.feed[2])
    return f"{figure} (limit {most})"


def _too_fast(build: Subject, row: SizeFigures) -> WhatAndDo:
    name = capitalized(size_label(row.size))
    return f"{name} is too small for the goal: {_velocity(build, row)}.", _larger_line(build)


def _delivery(build: Subject, row: SizeFigures) -> str:
    assert row.full_delivery_velocity_m_s is not None
    figure, most = build.numbers.pair("velocity", row.full_delivery_velocity_m_s, build.session.bands.feed[3])
    return f"{figure} with the return flow on top (limit {most})"


def _too_fast_with_all(build: Subject, row: SizeFigures) -> WhatAndDo:
    name = capitalized(size_label(row.size))
    return f"{name} is too small for all the pump delivers: {_delivery(build, row)}.", _larger_line(build)


def _sag(build: Subject, row: SizeFigures) -> str:
    assert row.rail_sag_Pa is not None
    allowed = MOST_SAG * build.figures.pressure.injector_Pa
    figure, most = build.numbers.pair("pressure", row.rail_sag_Pa, allowed)
    return f"rail pressure drops {figure} (limit {most})"


def _sags(build: Subject, row: SizeFigures) -> WhatAndDo:
    return f"At full power {_sag(build, row)}: the mixture goes lean.", _larger_line(build)


def _pump(build: Subject, row: SizeFigures) -> str:
    assert row.margin is not None
    if row.margin < 0.0:
        return f"{build.numbers.figure('percent', -row.margin, 0.0)} short of the goal"
    figure, wanted = build.numbers.pair("percent", row.margin, build.session.goal.reserve)
    return f"{figure} to spare, you want {wanted}\u00a0%"


def _pump_too_small(build: Subject, row: SizeFigures) -> WhatAndDo:
    verb = "are" if build.pump_word == "pumps" else "is"
    through = "" if row.fixed else f"Through {row.size} "
    what = f"{capitalized(f'{through}the {build.pump_word}')} {verb} too small: {_pump(build, row)}."
    line = build.figures.row(build.figures.recommended)
    if line is not None and line is not row:
        return what, f"Fit {line.size}: {spare(build, line)}."
    if set(LINE_LIMITS).intersection(row.limits):
        return what, "Fit a larger line first: this one loses too much."
    if row.pump_volts_V is not None and row.pump_volts_V < ASSUMED_VOLTS:
        return what, f"Check the wiring first: the pump gets {volts_seen(build, row)}."
    if build.volts_assumed:
        volts = build.numbers.figure("volts", ASSUMED_VOLTS)
        return what, f"Measure the voltage at the pump first: {volts} is assumed."
    assert row.target_rise_Pa is not None
    flow = build.numbers.figure("flow", build.figures.demand.target_flow_m3_s)
    rise = build.numbers.about("pressure", row.target_rise_Pa)
    wanted = "pumps that together flow" if build.pump_word == "pumps" else "a pump that flows"
    return what, f"You need {wanted} {flow} at {rise}, or a lower goal."


def _relief(build: Subject, row: SizeFigures) -> str:
    pump = build.session.pump
    assert pump is not None and pump.relief is not None and row.pump_rise_Pa is not None
    needed, relief = build.numbers.pair("pressure", row.pump_rise_Pa, pump.relief)
    return f"{needed} is needed, but the pump's relief valve opens at {relief}"


def _relief_opens(build: Subject, row: SizeFigures) -> WhatAndDo:
    return f"{_relief(build, row)}.", "Fit a pump with a higher relief pressure, or run less fuel pressure."


def _vapour(build: Subject, row: SizeFigures) -> str:
    assert row.vapour_margin_Pa is not None
    return vapour_phrase(build, row.vapour_margin_Pa)


def cooler_inlet(build: Subject) -> str:
    """What helps against boiling at the pump inlet, by what the build has there."""
    inlet, pump = build.session.inlet, build.session.pump
    helps = ["cool the fuel"]
    if inlet is not None and inlet.strainer is not None:
        helps.append("clean or enlarge the strainer")
    if inlet is not None and inlet.run:
        helps.append("shorten or enlarge the suction line")
    if pump is not None and pump.place == "outside":
        helps.append("mount the pump below the fuel level")
    else:
        helps.append(f"keep the {'surge pot' if pump is not None and pump.place == 'surge' else 'tank'} full")
    return f"{capitalized(', '.join(helps[:-1]))}{',' if len(helps) > 2 else ''} or {helps[-1]}."


def _boils(build: Subject, row: SizeFigures) -> WhatAndDo:
    return f"{capitalized(_vapour(build, row))}.", cooler_inlet(build)


def _inlet(build: Subject, row: SizeFigures) -> str:
    inlet, most = build.figures.inlet, build.session.bands.inlet[2]
    if inlet is None or inlet.velocity_m_s is None or row is not build.pick:
        return f"the suction line is too fast (limit {build.numbers.limit('velocity', most)})"
    figure, shown = build.numbers.pair("velocity", inlet.velocity_m_s, most)
    return f"{figure} in the suction line (limit {shown})"


def _suction_too_fast(build: Subject, row: SizeFigures) -> WhatAndDo:
    do = "Fit a larger suction line: a starved pump loses flow and wears."
    return f"The suction line is too small: {_inlet(build, row)}.", do


SIZE_WORDS = (
    SizeLimitWords(
        "velocity", "lines", "the feed line is too small", "a larger feed line", _velocity, _too_fast
    ),
    SizeLimitWords(
        "delivery",
        "lines",
        "the feed line is too small for all the pump delivers",
        "a larger feed line",
        _delivery,
        _too_fast_with_all,
    ),
    SizeLimitWords("sag", "lines", "rail pressure drops too far", "a larger feed line", _sag, _sags),
    SizeLimitWords("pump", "pump", "{pump_is} too small", "a bigger pump", _pump, _pump_too_small),
    SizeLimitWords(
        "relief",
        "pump",
        "the pump's relief valve opens too early",
        "a pump with a higher relief pressure",
        _relief,
        _relief_opens,
    ),
    SizeLimitWords(
        "vapour",
        "inlet",
        "the fuel is too close to boiling at the pump inlet",
        "cooler fuel and less loss before the pump",
        _vapour,
        _boils,
    ),
    SizeLimitWords(
        "inlet", "inlet", "the suction line is too small", "a larger suction line", _inlet, _suction_too_fast
    ),
)
