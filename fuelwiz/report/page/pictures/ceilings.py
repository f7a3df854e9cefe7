"""Ceilings: the power that each part alone is good for, against the goal and the next one."""

from __future__ import annotations

from fuelwiz.advice.sections.ceilings import (
    ceiling_figure,
    ceiling_groups,
    ceiling_name,
    goals_of,
    next_differs,
)
from fuelwiz.advice.sections.headings import CEILINGS
from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.bars import WIDTH, Bar, Line, bars
from fuelwiz.report.page.pictures.shapes import Kind, Picture

FARTHEST = 3.0
"""Bars end at so many times the goal: one far longer would press the others flat."""


def ceilings_picture(subject: Subject) -> Picture | None:
    """A bar a part, pale where it is a rule of thumb; None while nothing is solved."""
    groups, goals = ceiling_groups(subject), goals_of(subject)
    if not groups:
        return None
    goal = goals[0][1]
    rows = []
    for group in groups:
        for item in group.ceilings:
            enough: Kind = "could" if group.basis == "rule" else "works"
            kind: Kind = enough if item.max_power_W >= goal else "fails"
            name, figure = ceiling_name(subject, item), ceiling_figure(subject, item)
            rows.append(Bar(name, 0.0, min(item.max_power_W, FARTHEST * goals[-1][1]), figure, kind))
    lines = [Line(f"{name} {subject.numbers.number('power', power)}", power, "goal") for name, power in goals]
    unit = subject.numbers.unit("power")
    height, shapes = bars(rows, lines, figures=unit)
    figures = ", ".join(f"{row.name} {row.figure}" for row in rows)
    against = ", ".join(line.name for line in lines)
    rule = " Pale bars go by rule of thumb." if any(group.basis == "rule" for group in groups) else ""
    today = " at today's boost" if next_differs(subject) else ""
    sentence = f"The power that each part alone is good for{today}.{rule}"
    return Picture("ceilings", CEILINGS, f"In {unit}: {figures}; {against}.", sentence, WIDTH, height, shapes)
