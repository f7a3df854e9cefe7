"""All that there is to a result, worked out apart from the desk: by whichever thread waits for it."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.advice import Result, result
from fuelwiz.sizing import in_steps, with_slower_parts


def whole_result(quick: Result) -> Result:
    """The same with the parts that a desk fills in a little at a time; what is typed meanwhile does not touch it."""
    *_, figures = in_steps(quick.session, with_slower_parts(quick.session, quick.figures))
    return replace(result(quick.session, figures, quick.log), comments=quick.comments)
