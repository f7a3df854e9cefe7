"""The figures of one row of sizes: each stays on its own side of what it is judged by."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from fuelwiz.advice.numbers import Numbers
from fuelwiz.advice.row import BORE, FEEDS, FULL_DELIVERY_VELOCITY, LOSS, SPARE, VELOCITY, size_name, works
from fuelwiz.advice.subject import Subject
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures
from fuelwiz.sizing.figures import SizeFigures

EXAMPLES = Path(__file__).parent.parent / "examples"
PSI = 6894.757  # Pa (NIST SP 811)
HP = 745.6999  # W (NIST SP 811)
FOOT = 0.3048  # m


def subject(name: str = "hill-climb-coupe") -> Subject:
    """An example: 15 % of reserve, 560 hp, bands that begin at 8 ft/s and so on."""
    session = validate(tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")), name)
    return Subject(session, quick_figures(session))


def row(of: Subject, **changes: object) -> SizeFigures:
    """The size that the build is judged at, with other figures."""
    return replace(of.pick, **changes)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("margin", "text"),
    [
        (0.1496, "14.96"),
        (0.148, "14.8"),
        (0.15, "15"),
        (0.151, "15.1"),
        (0.2, "20"),
        (0.004, "0.4"),
        (-0.004, "−0.4"),
    ],
)
def test_spare_is_judged_by_the_reserve_and_by_nothing_left(margin: float, text: str) -> None:
    of = subject()
    assert of.session.goal.reserve == 0.15
    assert SPARE.number(of, row(of, margin=margin)) == text
    assert SPARE.figure(of, row(of, margin=margin)) == f"{text}\u00a0%"


def test_velocity_is_judged_by_the_edges_of_the_bands() -> None:
    of = subject()
    for edge in of.session.bands.feed:
        feet = edge / FOOT
        for nudge in (-0.01, 0.01):
            shown = float(VELOCITY.number(of, row(of, velocity_m_s=edge + nudge * FOOT)) or "")
            assert (shown > feet) == (nudge > 0)
            full = float(
                FULL_DELIVERY_VELOCITY.number(of, row(of, full_delivery_velocity_m_s=edge + nudge * FOOT))
                or ""
            )
            assert (full > feet) == (nudge > 0)


def test_loss_is_judged_at_the_tank_alone() -> None:
    """There the rail may sag by a twentieth of the pressure across the injectors, 43.5 psi: 2.175 psi."""
    of = subject()
    session = of.session.model_copy(
        update={"pressure": of.session.pressure.model_copy(update={"regulator": "tank"})}
    )
    at_tank = Subject(session, of.figures)
    most = 0.05 * of.figures.pressure.injector_Pa / PSI
    close = row(of, feed_loss_Pa=(most + 0.004) * PSI)
    assert float(LOSS.number(at_tank, close) or "") > most
    assert LOSS.number(of, close) == f"{most:.1f}"


def test_what_a_size_feeds_is_judged_by_the_goal() -> None:
    of = subject()
    assert FEEDS.number(of, row(of, max_power_W=559.7 * HP)) == "559.7"
    assert FEEDS.number(of, row(of, max_power_W=559.3 * HP)) == "559"


def test_what_is_not_known_has_no_text() -> None:
    of = subject()
    unknown = row(of, margin=None, feed_loss_Pa=None, max_power_W=None, works=None)
    assert [figure.number(of, unknown) for figure in (SPARE, LOSS, FEEDS)] == [None] * 3
    assert [figure.figure(of, unknown) for figure in (SPARE, LOSS, FEEDS)] == [None] * 3
    assert works(unknown) is None


def test_a_figure_can_be_shown_in_another_way_than_the_build_has() -> None:
    of = subject()
    assert FEEDS.figure(of, row(of, max_power_W=500e3), Numbers("metric", 1.0)) == "500\u00a0kW"
    assert BORE.figure(of, row(of, bore_m=0.01), Numbers("metric", 1.0)) == "10.0\u00a0mm"


def test_the_chosen_size_has_a_star_and_no_other_has() -> None:
    of = subject("full-session")
    assert of.figures.chosen == "-8"
    assert [size_name(of, size) for size in of.figures.sizes if "*" in size_name(of, size)] == ["-8*"]


def test_works_in_a_word() -> None:
    of = subject()
    assert [works(row(of, works=answer)) for answer in (True, False, None)] == ["yes", "no", None]
