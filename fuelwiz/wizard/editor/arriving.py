"""Where a build's screen begins: at what is to be put right, and why there."""

from __future__ import annotations

from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.form.form import Form


def arrive(form: Form, *, is_begun: bool) -> str:
    """Go to the first answer to put right, else to the first of the steps that is not answered; says which and why.

    Args:
        form: of the build.
        is_begun: it stays at the step that it shows, as of a build that is just begun; nothing needs to be said.
    """
    if is_begun:
        form.go_to_path(form.path)
        return ""
    looks = form.desk.to_look_at()
    if looks:
        form.go_to_path(looks[0].path)
        return f"Opened at {_name(looks[0].step)}: {looks[0].why}."
    step = form.desk.progress.needs_attention(())
    form.go_to_step(step)
    return "" if step == STEPS[0].id else f"Opened at {_name(step)}: the first step without an answer."


def _name(step: str) -> str:
    return next(one.name for one in STEPS if one.id == step)
