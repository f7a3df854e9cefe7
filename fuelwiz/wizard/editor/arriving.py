"""Where a build's screen begins: at what is to be put right, and why there."""

from __future__ import annotations

from fuelwiz.desk.look_here import first_to_put_right
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.form.form import Form


def arrive(form: Form, *, is_begun: bool) -> str:
    """Go to what cures the limit that the first line names, else to the first step without an answer; says why.

    Args:
        form: of the build.
        is_begun: it stays at the step that it shows, as of a build that is just begun; nothing needs to be said.
    """
    if is_begun:
        form.go_to_path(form.path)
        return ""
    look = first_to_put_right(form.desk.to_look_at(), form.desk.result)
    if look is not None:
        form.go_to_path(look.path)
        return f"Opened at {_name(look.step)}: {look.why}."
    step = form.desk.progress.needs_attention(())
    form.go_to_step(step)
    return "" if step == STEPS[0].id else f"Opened at {_name(step)}: the first step without an answer."


def _name(step: str) -> str:
    return next(one.name for one in STEPS if one.id == step)
