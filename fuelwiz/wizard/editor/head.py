"""What the lines on top say of a build: its name and facts, and how its steps stand."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.terms import INDUCTIONS, fuel_name_as_typed
from fuelwiz.wizard.chrome import Headline, StepMark

NO_BREAK = "\N{NO-BREAK SPACE}"


def headline(desk: Desk, kept: str) -> Headline:
    """The top line's words."""
    power = desk.text_in_field("goal.power")
    assumed = len(desk.result.figures.assumed) if desk.result else 0
    facts = [
        f"{power.text}{NO_BREAK}{power.unit}".strip() if power.text else "",
        fuel_name_as_typed(*(desk.text_in_field(f"fuel.{key}").text or None for key in ("kind", "ethanol")))
        or "",
        INDUCTIONS.get(desk.text_in_field("engine.induction").text, ""),
    ]
    return Headline(
        name=desk.name,
        facts=", ".join(part for part in facts if part),
        assumed=assumed,
        kept=kept,
        units="US units" if desk.system == "us" else "metric units",
    )


def step_marks(desk: Desk) -> list[StepMark]:
    """Every step with how it stands, and the reason where one wants a look."""
    return [StepMark(step.name, step.short, desk.step_state(step.id)) for step in STEPS]
