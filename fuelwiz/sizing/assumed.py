"""What the builder did not say: the keys that were left out and the values taken for them, as the file would say it."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.session import Session, fallback_text, given
from fuelwiz.sizing.build import Build
from fuelwiz.sizing.figures import Assumption
from fuelwiz.units import from_si

BEFORE_PUMP = (
    "goal.reserve",
    "engine.induction",
    "engine.bsfc",
    "fuel.ethanol",
    "fuel.temperature",
    "pressure.base",
    "pressure.boost",
    "pressure.idle_vacuum",
    "pressure.regulator",
)
NOT_GIVEN = "not given"


def assumed(build: Build) -> tuple[Assumption, ...]:
    """The keys that matter to the figures and were left out, in the order of the questions."""
    return tuple(Assumption(key, value) for key, value in _left_out(build))


def _left_out(build: Build) -> Iterator[tuple[str, str]]:
    session = build.session
    for key in BEFORE_PUMP:
        if given(session, key) or (key == "fuel.ethanol" and session.fuel.kind != "blend"):
            continue
        yield key, bsfc_text(build.demand.bsfc_kg_J) if key == "engine.bsfc" else _fallback(session, key)
    if session.pump is None:
        yield "pump", NOT_GIVEN
    elif session.pump.volts is None and session.wiring is None:
        yield "pump.volts", "13.0 V"
    yield from _left_out_of_feed(session)
    for key in ("inlet", "return_line", "injectors"):
        if getattr(session, key) is None:
            yield key, NOT_GIVEN


def _left_out_of_feed(session: Session) -> Iterator[tuple[str, str]]:
    if not session.feed.run:
        yield "feed.run", NOT_GIVEN
    for i, run in enumerate(session.feed.run):
        for key in ("hose", "length", "fittings"):
            if key not in run.model_fields_set:
                yield f"feed.run.{i}.{key}", {"hose": "ptfe", "length": "15 ft", "fittings": "none"}[key]
    if not session.feed.filter:
        yield "feed.filter", NOT_GIVEN
    for i, part in enumerate(session.feed.filter):
        if "rated_loss" not in part.model_fields_set:
            yield f"feed.filter.{i}.rated_loss", _fallback(session, f"feed.filter.{i}.rated_loss")


def _fallback(session: Session, key: str) -> str:
    text = fallback_text(session, key)
    assert text is not None
    return text


def bsfc_text(bsfc_kg_J: float) -> str:
    """A fuel consumption to three significant figures, zeros kept, as the file would say it."""
    return f"{from_si(bsfc_kg_J, 'lb/(hp*h)'):#.3g} lb/(hp*h)"
