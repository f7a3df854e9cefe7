"""What a section says while its figures are not known: which answers they wait for."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from fuelwiz.advice.subject import Subject, listed

Need = Literal["line", "pump", "return line", "inlet", "wiring", "injectors", "current"]

_NEEDS: dict[Need, tuple[str, Callable[[Subject], bool]]] = {
    "line": ("a feed line", lambda subject: subject.has_runs),
    "pump": ("a pump", lambda subject: subject.session.pump is not None),
    "return line": ("the return line", lambda subject: subject.session.return_line is not None),
    "inlet": ("the inlet", lambda subject: subject.session.inlet is not None),
    "wiring": ("the wiring", lambda subject: subject.session.wiring is not None),
    "injectors": ("the injectors", lambda subject: subject.session.injectors is not None),
    "current": (
        "the pump's current",
        lambda subject: subject.session.pump is not None and bool(subject.session.pump.current),
    ),
}


def not_known(subject: Subject, *needs: Need) -> str:
    """What is still to be answered, in a clause: "not known yet (needs a pump)"."""
    missing = _missing(subject, needs)
    return f"not known yet (needs {missing})" if missing else "not known yet"


def not_known_sentence(subject: Subject, *needs: Need) -> str:
    """The same as a sentence of its own."""
    missing = _missing(subject, needs)
    return f"Not known yet: it needs {missing}." if missing else "Not known yet."


def slow_part_unknown(subject: Subject) -> str:
    """Why what takes hundreds of solutions is not there: what it waits for, or that it comes soon."""
    if subject.has_pump and subject.has_runs:
        return "Being worked out."
    return not_known_sentence(subject, "line", "pump")


def _missing(subject: Subject, needs: tuple[Need, ...]) -> str:
    missing = [words for words, is_there in map(_NEEDS.__getitem__, needs) if not is_there(subject)]
    return listed(missing) if missing else ""
