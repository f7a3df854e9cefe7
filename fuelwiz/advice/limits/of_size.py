"""What can be wrong with a size of feed line, in words: a record for each limit, in the order of the verdict."""

from __future__ import annotations

from fuelwiz.advice.limits.record import SizeLimitWords, WhatAndDo
from fuelwiz.advice.phrases import spare, vapour_phrase, volts_seen
from fuelwiz.advice.subject import Subject, capitalized, size_label
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.thresholds import MOST_SAG
from fuelwiz.sizing.vocabulary import LINE_LIMITS


def _larger_line(subject: Subject) -> str:
    row = subject.smallest_with_working_line()
    if row is None or row.fixed:
        return "Fit a larger line, or two side by side."
    return f"Fit {row.size} or larger, or two lines side by side."


def _velocity(subject: Subject, row: SizeFigures) -> str:
    figure, most = subject.numbers.pair("velocity", row.velocity_m_s, subject.session.bands.feed[2])
    return f"{figure} (limit {most})"


def _too_fast(subject: Subject, row: SizeFigures) -> WhatAndDo:
    name = capitalized(size_label(row.size))
    return f"{name} is too small for the goal: {_velocity(subject, row)}.", _larger_line(subject)


def _delivery(subject: Subject, row: SizeFigures) -> str:
    assert row.full_delivery_velocity_m_s is not None
    figure, most = subject.numbers.pair(
        "velocity", row.full_delivery_velocity_m_s, subject.session.bands.feed[3]
    )
    return f"{figure} with the return flow on top (limit {most})"


def _too_fast_with_all(subject: Subject, row: SizeFigures) -> WhatAndDo:
    name = capitalized(size_label(row.size))
    return f"{name} is too small for all the pump delivers: {_delivery(subject, row)}.", _larger_line(subject)


def _sag(subject: Subject, row: SizeFigures) -> str:
    assert row.rail_sag_Pa is not None
    allowed = MOST_SAG * subject.figures.pressure.injector_Pa
    figure, most = subject.numbers.pair("pressure", row.rail_sag_Pa, allowed)
    return f"rail pressure drops {figure} (limit {most})"


def _sags(subject: Subject, row: SizeFigures) -> WhatAndDo:
    return f"At full power {_sag(subject, row)}: the mixture goes lean.", _larger_line(subject)


def _pump(subject: Subject, row: SizeFigures) -> str:
    assert row.margin is not None
    if row.margin < 0.0:
        return f"{subject.numbers.figure('percent', -row.margin, 0.0)} short of the goal"
    figure, wanted = subject.numbers.pair("percent", row.margin, subject.session.goal.reserve)
    return f"{figure} to spare, you want {wanted}\u00a0%"


def _pump_too_small(subject: Subject, row: SizeFigures) -> WhatAndDo:
    verb = "are" if subject.pump_word == "pumps" else "is"
    through = "" if row.fixed else f"Through {row.size} "
    what = f"{capitalized(f'{through}the {subject.pump_word}')} {verb} too small: {_pump(subject, row)}."
    line = subject.figures.row(subject.figures.recommended)
    if line is not None and line is not row:
        return what, f"Fit {line.size}: {spare(subject, line)}."
    if set(LINE_LIMITS).intersection(row.limits):
        return what, "Fit a larger line first: this one loses too much."
    if row.pump_volts_V is not None and row.pump_volts_V < ASSUMED_VOLTS:
        return what, f"Check the wiring first: the pump gets {volts_seen(subject, row)}."
    if subject.volts_assumed:
        volts = subject.numbers.figure("volts", ASSUMED_VOLTS)
        return what, f"Measure the voltage at the pump first: {volts} is assumed."
    assert row.target_rise_Pa is not None
    flow = subject.numbers.figure("flow", subject.figures.demand.target_flow_m3_s)
    rise = subject.numbers.about("pressure", row.target_rise_Pa)
    wanted = "pumps that together flow" if subject.pump_word == "pumps" else "a pump that flows"
    return what, f"You need {wanted} {flow} at {rise}, or a lower goal."


def _relief(subject: Subject, row: SizeFigures) -> str:
    pump = subject.session.pump
    assert pump is not None and pump.relief is not None and row.pump_rise_Pa is not None
    needed, relief = subject.numbers.pair("pressure", row.pump_rise_Pa, pump.relief)
    return f"{needed} is needed, but the pump's relief valve opens at {relief}"


def _relief_opens(subject: Subject, row: SizeFigures) -> WhatAndDo:
    return f"{_relief(subject, row)}.", "Fit a pump with a higher relief pressure, or run less fuel pressure."


def _vapour(subject: Subject, row: SizeFigures) -> str:
    assert row.vapour_margin_Pa is not None
    return vapour_phrase(subject, row.vapour_margin_Pa)


def cooler_inlet(subject: Subject) -> str:
    """What helps against boiling at the pump inlet, by what the build has there."""
    inlet, pump = subject.session.inlet, subject.session.pump
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


def _boils(subject: Subject, row: SizeFigures) -> WhatAndDo:
    return f"{capitalized(_vapour(subject, row))}.", cooler_inlet(subject)


def _inlet(subject: Subject, row: SizeFigures) -> str:
    inlet, most = subject.figures.inlet, subject.session.bands.inlet[2]
    if inlet is None or inlet.velocity_m_s is None or row is not subject.pick:
        return f"the suction line is too fast (limit {subject.numbers.limit('velocity', most)})"
    figure, shown = subject.numbers.pair("velocity", inlet.velocity_m_s, most)
    return f"{figure} in the suction line (limit {shown})"


def _suction_too_fast(subject: Subject, row: SizeFigures) -> WhatAndDo:
    do = "Fit a larger suction line: a starved pump loses flow and wears."
    return f"The suction line is too small: {_inlet(subject, row)}.", do


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
