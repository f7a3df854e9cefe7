"""What can be wrong with a size of feed line, in words: a record for each limit, in the order of the verdict."""

from __future__ import annotations

from fuelwiz.advice.limits import cure_places
from fuelwiz.advice.limits.near_boiling import cooler_inlet, missing_today_pa
from fuelwiz.advice.limits.record import SizeLimitWords, WhatAndDo
from fuelwiz.advice.phrases import (
    kept_loss_pa,
    kept_run_chokes,
    kept_run_name,
    least_spare,
    point_name,
    spare,
    vapour_need,
    vapour_phrase,
    volts_seen,
)
from fuelwiz.advice.subject import Subject, capitalized, size_label
from fuelwiz.advice.wire_words import own_wire, smallest_wire
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.thresholds import MOST_SAG
from fuelwiz.sizing.vocabulary import LINE_LIMITS, SizeLimit


def _larger_line(subject: Subject, row: SizeFigures) -> str:
    """What cures a line that is too small: the run that keeps a size of its own where that one loses most."""
    if kept_run_chokes(subject, row):
        return f"Change {kept_run_name(subject).rstrip(',')}: it loses most, and no other size of line helps."
    working = subject.smallest_with_working_line()
    if working is None or working.fixed:
        return "Fit a larger line, or two side by side."
    return f"Fit {working.size} or larger, or two lines side by side."


def _hardest_flow(subject: Subject, limit: SizeLimit) -> tuple[float, str]:
    """How much more than the goal the point burns that meets a limit, and its name; 1 and nothing for the goal."""
    points = [(point.flow_m3_s, at) for at, point in enumerate(subject.figures.pull) if limit in point.limits]
    if not points:
        return 1.0, ""
    flow, at = max(points)
    share = flow / subject.figures.demand.volume_flow_m3_s
    return (share, f" {point_name(subject, at)}") if share > 1.0 else (1.0, "")


def _velocity(subject: Subject, row: SizeFigures) -> str:
    share, where = _hardest_flow(subject, "velocity")
    edges = subject.session.bands.feed
    edge = edges[3] if row.velocity_m_s * share > edges[3] else edges[2]
    figure, most = subject.numbers.pair("velocity", row.velocity_m_s * share, edge)
    return f"{figure}{where} (limit {most})"


def _too_fast(subject: Subject, row: SizeFigures) -> WhatAndDo:
    name = capitalized(size_label(row.size))
    return f"{name} is too small for the goal: {_velocity(subject, row)}.", _larger_line(subject, row)


def _delivery(subject: Subject, row: SizeFigures) -> str:
    most_m_s = subject.session.bands.feed[3]
    velocity = row.full_delivery_velocity_m_s
    if velocity is None or velocity <= most_m_s:
        return (
            f"too fast with the return flow on top, at a point of the pull (limit {_edge(subject, most_m_s)})"
        )
    figure, most = subject.numbers.pair("velocity", velocity, most_m_s)
    return f"{figure} with the return flow on top (limit {most})"


def _edge(subject: Subject, velocity_m_s: float) -> str:
    return subject.numbers.limit("velocity", velocity_m_s)


def _too_fast_with_all(subject: Subject, row: SizeFigures) -> WhatAndDo:
    name = capitalized(size_label(row.size))
    return f"{name} is too small for all the pump delivers: {_delivery(subject, row)}.", _larger_line(
        subject, row
    )


def _sag(subject: Subject, row: SizeFigures) -> str:
    assert row.rail_sag_Pa is not None
    allowed = MOST_SAG * subject.figures.pressure.injector_Pa
    if row.rail_sag_Pa < allowed:
        most = subject.numbers.limit("percent", MOST_SAG)
        return f"rail pressure drops more than {most} at a point of the pull"
    figure, most = subject.numbers.pair("pressure", row.rail_sag_Pa, allowed)
    return f"rail pressure drops {figure} (limit {most})"


def _sags(subject: Subject, row: SizeFigures) -> WhatAndDo:
    return f"At full power {_sag(subject, row)}: the mixture goes lean.", _larger_line(subject, row)


def _pump(subject: Subject, row: SizeFigures) -> str:
    found = least_spare(row)
    assert found is not None
    margin, at = found
    if margin < 0.0:
        of = "of the goal" if at is None else f"of what it takes {point_name(subject, at)}"
        return f"{subject.numbers.figure('percent', -margin, 0.0)} short {of}"
    figure, wanted = subject.numbers.pair("percent", margin, subject.session.goal.reserve)
    where = "" if at is None else f" {point_name(subject, at)}"
    return f"{figure} to spare{where}, you want {wanted}\u00a0%"


def _pump_too_small(subject: Subject, row: SizeFigures) -> WhatAndDo:
    verb = "are" if subject.pump_word == "pumps" else "is"
    through = "" if row.fixed else f"Through {row.size} "
    what = f"{capitalized(f'{through}the {subject.pump_word}')} {verb} too small: {_pump(subject, row)}."
    line = subject.figures.row(subject.figures.recommended)
    if line is not None and line is not row:
        return what, f"Fit {line.size}: {spare(subject, line)}."
    line_first = _line_first(subject, row)
    if line_first:
        return what, line_first
    if row.pump_volts_V is not None and row.pump_volts_V < ASSUMED_VOLTS:
        return what, f"{_wiring_first(subject)}: the pump gets {volts_seen(subject, row)}."
    if subject.volts_assumed:
        volts = subject.numbers.figure("volts", ASSUMED_VOLTS)
        return what, f"Measure the voltage at the pump first: {volts} is assumed."
    hardest = subject.figures.pump_target.hardest if subject.figures.pump_target is not None else None
    at_the_point = hardest is not None and hardest.at is not None and row is subject.pick
    assert row.target_rise_Pa is not None
    rise_pa = hardest.rise_Pa if at_the_point and hardest is not None else row.target_rise_Pa
    flow_m3_s = subject.figures.demand.target_flow_m3_s
    if at_the_point and hardest is not None:
        flow_m3_s = hardest.flow_m3_s
    flow = subject.numbers.figure("flow", flow_m3_s)
    wanted = "pumps that together flow" if subject.pump_word == "pumps" else "a pump that flows"
    return what, f"You need {wanted} {flow} at {subject.numbers.about('pressure', rise_pa)}, or a lower goal."


def _line_first(subject: Subject, row: SizeFigures) -> str:
    """The line to change before the pump; nothing where the regulator sits at the tank: no line costs a pump flow."""
    if subject.at_tank:
        return ""
    if set(LINE_LIMITS).intersection(row.limits):
        if kept_run_chokes(subject, row):
            return _larger_line(subject, row)
        return "Fit a larger line first: this one loses too much."
    if kept_run_chokes(subject, row):
        lost = subject.numbers.figure("pressure", kept_loss_pa(subject))
        return f"Change {kept_run_name(subject).rstrip(',')}, first: it loses {lost}."
    return ""


def _wiring_first(subject: Subject) -> str:
    """What to do about low volts: thicker wire by name, where the builder's own loses too much."""
    own, least = own_wire(subject), smallest_wire(subject, subject.figures.wiring)
    if own is None or own.does or least is None:
        return "Check the wiring first"
    return f"Fit {least} wire first"


def _relief(subject: Subject, row: SizeFigures) -> str:
    pump = subject.session.pump
    assert pump is not None and pump.relief is not None and row.pump_rise_Pa is not None
    if row.pump_rise_Pa <= pump.relief:
        opens = subject.numbers.limit("pressure", pump.relief)
        return (
            f"at a point of the pull more is needed than the {opens} at which the pump's relief valve opens"
        )
    needed, relief = subject.numbers.pair("pressure", row.pump_rise_Pa, pump.relief)
    return f"{needed} is needed, but the pump's relief valve opens at {relief}"


def _relief_opens(subject: Subject, row: SizeFigures) -> WhatAndDo:
    do = "Fit a pump with a higher relief pressure, or run less fuel pressure."
    return f"{capitalized(_relief(subject, row))}.", do


def _vapour(subject: Subject, row: SizeFigures) -> str:
    assert row.vapour_margin_Pa is not None
    need = vapour_need(subject)
    if row.vapour_margin_Pa >= need:
        least = subject.numbers.limit("pressure", need)
        near = f"is less than {least} above boiling" if need > 0.0 else "boils"
        return f"at a point of the pull the fuel {near} at the pump inlet"
    return vapour_phrase(subject, row.vapour_margin_Pa)


def _boils(subject: Subject, row: SizeFigures) -> WhatAndDo:
    missing = missing_today_pa(subject, row.vapour_margin_Pa)
    return f"{capitalized(_vapour(subject, row))}.", cooler_inlet(subject, missing)


def _inlet(subject: Subject, row: SizeFigures) -> str:
    inlet, most = subject.figures.inlet, subject.session.bands.inlet[2]
    if inlet is None or inlet.velocity_m_s is None or row is not subject.pick:
        return f"the suction line is too fast (limit {subject.numbers.limit('velocity', most)})"
    if inlet.velocity_m_s <= most:
        return (
            f"more than {subject.numbers.limit('velocity', most)} in the suction line at a point of the pull"
        )
    figure, shown = subject.numbers.pair("velocity", inlet.velocity_m_s, most)
    return f"{figure} in the suction line (limit {shown})"


def _suction_too_fast(subject: Subject, row: SizeFigures) -> WhatAndDo:
    do = "Fit a larger suction line: a starved pump loses flow and wears."
    return f"The suction line is too small: {_inlet(subject, row)}.", do


SIZE_WORDS = (
    SizeLimitWords(
        "velocity",
        cure_places.feed_line,
        "the feed line is too small",
        "a larger feed line",
        _velocity,
        _too_fast,
    ),
    SizeLimitWords(
        "delivery",
        cure_places.feed_line,
        "the feed line is too small for all the pump delivers",
        "a larger feed line",
        _delivery,
        _too_fast_with_all,
    ),
    SizeLimitWords(
        "sag", cure_places.feed_line, "rail pressure drops too far", "a larger feed line", _sag, _sags
    ),
    SizeLimitWords("pump", cure_places.pump, "{pump_is} too small", "a bigger pump", _pump, _pump_too_small),
    SizeLimitWords(
        "relief",
        cure_places.at("pump.relief"),
        "the pump's relief valve opens too early",
        "a pump with a higher relief pressure",
        _relief,
        _relief_opens,
    ),
    SizeLimitWords(
        "vapour",
        cure_places.pump_inlet,
        "the fuel is too close to boiling at the pump inlet",
        "cooler or less volatile fuel",
        _vapour,
        _boils,
    ),
    SizeLimitWords(
        "inlet",
        cure_places.suction_line,
        "the suction line is too small",
        "a larger suction line",
        _inlet,
        _suction_too_fast,
    ),
)
