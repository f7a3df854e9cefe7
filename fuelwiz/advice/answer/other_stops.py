"""What else is wrong behind the first line: a stop that is no ceiling in power may not vanish behind one that is."""

from __future__ import annotations

from fuelwiz.advice.answer.lines import SHORT_COLUMNS, Forms, line
from fuelwiz.advice.limits import short_why
from fuelwiz.advice.subject import Subject, listed
from fuelwiz.sizing.vocabulary import Limit

NO_CEILING: tuple[Limit, ...] = ("vapour", "inlet", "return", "lift", "rating", "fuse")
IN_BRIEF: dict[Limit, str] = {
    "rating": "a pressure rating is passed",
    "fuse": "the wire is too thin",
}


def with_other_stops(subject: Subject, forms: Forms, said: Limit | None = None) -> Forms:
    """A first line with the stops behind it that it does not speak of; `said` is the one that it does."""
    limits = subject.figures.verdict.limits
    others = [limit for limit in NO_CEILING if limit in limits and limit != said]
    if not others:
        return forms
    whole = f"And {listed([short_why(subject, limit) for limit in others])}."
    brief = f"And {_in_brief(subject, others[0])}."
    shorter = [f"{form} {brief}" for form in forms]
    shorter.append(f"{forms[-1].partition(':')[0].rstrip('.')}. {brief}")
    plain = () if len(shorter[-1]) <= SHORT_COLUMNS else forms[-1:]
    return line(f"{forms[0]} {whole}", *shorter, *plain)


def _in_brief(subject: Subject, limit: Limit) -> str:
    margin = subject.pick.vapour_margin_Pa
    if limit == "vapour":
        boils = margin is not None and margin < 0.0
        return f"the fuel {'boils' if boils else 'may boil'} at the pump"
    return IN_BRIEF.get(limit) or short_why(subject, limit)
