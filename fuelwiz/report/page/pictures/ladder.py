"""The pressure ladder: what the pump must make at the goal, step by step, and what it could make there."""

from __future__ import annotations

from fuelwiz.advice.sections.headings import LADDER
from fuelwiz.advice.sections.pressure import ladder_sentence, ladder_steps, ladder_totals
from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.bars import WIDTH, Bar, bars
from fuelwiz.report.page.pictures.shapes import Kind, Picture


def ladder_picture(subject: Subject) -> Picture | None:
    """A bar a step, each begun where the one above ends, and the totals; None without a feed."""
    pick = subject.pick
    if pick.ladder is None or pick.pump_rise_Pa is None:
        return None
    rows = [
        Bar(step.name, step.low_Pa, step.high_Pa, step.figure, "focus")
        for step in ladder_steps(subject, pick.ladder)
    ]
    for total in ladder_totals(subject, pick):
        kind: Kind = "pump" if total.enough is None else "works" if total.enough else "fails"
        rows.append(Bar(total.name, 0.0, total.pressure_Pa, total.figure, kind))
    unit = subject.numbers.unit("pressure")
    height, shapes = bars(rows, figures=unit)
    steps = ", ".join(f"{row.name} {row.figure}" for row in rows)
    sentence = ladder_sentence(subject, pick)
    return Picture("ladder", LADDER, f"In {unit}: {steps}.", sentence, WIDTH, height, shapes)
