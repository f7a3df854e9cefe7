"""What the lines on top say of a build: its name and facts, and how its steps stand."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.chrome import Headline, StepMark

_AIR = {"turbo": "turbo", "supercharger": "supercharger", "none": "no boost"}
NO_BREAK = "\N{NO-BREAK SPACE}"


def headline(desk: Desk, kept: str) -> Headline:
    """The top line's words."""
    power = desk.text_in_field("goal.power")
    assumed = len(desk.result.figures.assumed) if desk.result else 0
    facts = [
        f"{power.text}{NO_BREAK}{power.unit}".strip() if power.text else "",
        fuel_name(desk),
        _AIR.get(desk.text_in_field("engine.induction").text, ""),
    ]
    return Headline(
        name=desk.name,
        facts=", ".join(part for part in facts if part),
        assumed=assumed,
        kept=kept,
        units="US units" if desk.system == "us" else "metric units",
    )


def fuel_name(desk: Desk) -> str:
    """The fuel in a word: E85, methanol, own fuel."""
    kind = desk.text_in_field("fuel.kind").text
    if kind == "methanol":
        return "methanol"
    if kind == "own":
        return "own fuel"
    return f"E{desk.text_in_field('fuel.ethanol').text.split(' ')[0].removesuffix('%')}"


def step_marks(desk: Desk) -> list[StepMark]:
    """Every step with how it stands, and the reason where one wants a look."""
    return [StepMark(step.name, step.short, desk.step_state(step.id)) for step in STEPS]
