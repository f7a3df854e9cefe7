"""What each change is in words: a record each."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from fuelwiz.advice.limits.near_boiling import missing_today_pa, needs_less_in_the_tank
from fuelwiz.advice.wire_words import wire_label
from fuelwiz.record import record
from fuelwiz.session import given
from fuelwiz.sizing import thresholds
from fuelwiz.sizing.vocabulary import Change, is_fixed
from fuelwiz.units import from_si

if TYPE_CHECKING:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.sizing.figures import Figures, NextFigures
    from fuelwiz.sizing.slow_figures import ChangeFigures

ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth")


@record
class ChangeWords:
    """The words of one change: what is fitted or done, with its figure, and the same as a noun."""

    change: Change
    what: Callable[[Subject, ChangeFigures], str]
    noun: Callable[[Subject, ChangeFigures], str]


def _feed(subject: Subject, figures: ChangeFigures) -> str:
    return _in_place(figures, "feed line", subject.figures.verdict.size)


def _return(subject: Subject, figures: ChangeFigures) -> str:
    line = subject.figures.return_line
    return _in_place(figures, "return line", None if line is None else line.size)


def _in_place(figures: ChangeFigures, line: str, today: str | None) -> str:
    """A line of another size in place of today's."""
    if figures.size is None:
        return f"a larger {line}"
    return f"{line} {figures.size}{'' if today is None or is_fixed(today) else f' in place of {today}'}"


def _regulator(subject: Subject, _figures: ChangeFigures) -> str:
    line = subject.session.return_line
    if line is None:
        return "a larger regulator"
    numbers, regulator = subject.numbers, line.regulator
    flow = numbers.figure("flow", 2 * regulator.rated_flow)
    return f"a larger regulator: {flow} at {numbers.limit('pressure', regulator.rated_loss)}"


def _wire(subject: Subject, figures: ChangeFigures) -> str:
    wiring = subject.session.wiring
    if figures.wire_m2 is None or wiring is None or wiring.wire is None:
        return "thicker wire"
    new, old = wire_label(subject, figures.wire_m2), wire_label(subject, wiring.wire)
    return f"{new} in place of {old if '(' in new else old.split()[0]}"


def _circuits(_subject: Subject, _figures: ChangeFigures) -> str:
    return "a circuit of its own for each pump"


def _base(base_pa: float) -> Callable[[Subject, ChangeFigures], str]:
    def what(subject: Subject, _figures: ChangeFigures) -> str:
        bar = f"{from_si(base_pa, 'bar'):g} bar"
        psi = f"{subject.numbers.limit('pressure', base_pa)} ({bar})"
        base = psi if subject.numbers.system == "us" else bar
        return f"base pressure {base}; the engine computer's injector figures must follow, or the engine runs lean"

    return what


def _pump(subject: Subject, _figures: ChangeFigures) -> str:
    pump = subject.session.pump
    if pump is None:
        return "a pump more"
    runs = f"{pump.running_at_idle} {'runs' if pump.running_at_idle == 1 else 'run'} at idle"
    wire = ", on a fused wire of its own" if one_more_is_on_its_own_wire(subject) else ""
    return f"a {ORDINALS[min(pump.count + 1, 6)]} pump of the same{wire}; {runs}, as today"


def one_more_is_on_its_own_wire(subject: Subject) -> bool:
    """Whether one more pump counts with a circuit of its own: where nobody said how many there are."""
    return subject.session.wiring is not None and not given(subject.session, "wiring.circuits")


def _filters(subject: Subject, _figures: ChangeFigures) -> str:
    one = len(subject.session.feed.filter) == 1
    return "a filter of twice the flow" if one else "filters of twice the flow"


def _clean(subject: Subject, _figures: ChangeFigures) -> str:
    inlet = subject.session.inlet
    clogged = {"filter": any(part.clogging > 1 for part in subject.session.feed.filter)}
    clogged["strainer"] = inlet is not None and inlet.strainer is not None and inlet.strainer.clogging > 1
    return f"a clean {' and '.join(part for part, dirty in clogged.items() if dirty)}"


def _injectors(subject: Subject, figures: ChangeFigures) -> str:
    rated = figures.rated_flow_m3_s
    return (
        "larger injectors" if rated is None else f"injectors of {subject.numbers.figure('injector', rated)}"
    )


def _cooler(subject: Subject, _figures: ChangeFigures) -> str:
    return f"fuel {subject.numbers.limit('warming', thresholds.COOLER_K)} cooler"


def _cooler_noun(subject: Subject, figures: ChangeFigures) -> str:
    """The same, and what does it too where the fuel is only too close to boiling for a pump outside the tank."""
    missing = missing_today_pa(subject, subject.pick.vapour_margin_Pa)
    in_the_tank = missing is not None and needs_less_in_the_tank(subject, missing)
    other = " (or the pump in the tank)" if in_the_tank and figures.cures == ("vapour",) else ""
    return f"{_cooler(subject, figures)}{other}"


def _feed_noun(_subject: Subject, figures: ChangeFigures) -> str:
    return _of_size(figures, "feed")


def _return_noun(_subject: Subject, figures: ChangeFigures) -> str:
    return _of_size(figures, "return")


def _of_size(figures: ChangeFigures, line: str) -> str:
    """A line with its size, and the article that is spoken before that."""
    size = figures.size or "larger"
    return f"{'an' if size.startswith(('8', '11', '18')) else 'a'} {size} {line}"


def _wire_noun(subject: Subject, figures: ChangeFigures) -> str:
    wire = _wire(subject, figures).partition(" in place")[0]
    return wire if figures.wire_m2 is None else f"{wire} wire"


def _base_noun(base_pa: float) -> Callable[[Subject, ChangeFigures], str]:
    def noun(subject: Subject, _figures: ChangeFigures) -> str:
        return f"base pressure {subject.numbers.figure('pressure', base_pa)}, the injector figures to match"

    return noun


def _pump_noun(subject: Subject, figures: ChangeFigures) -> str:
    return _pump(subject, figures).partition(" of the same")[0]


def _plain(words: str) -> Callable[[Subject, ChangeFigures], str]:
    return lambda _subject, _figures: words


RECORDS = (
    ChangeWords("feed", _feed, _feed_noun),
    ChangeWords("regulator", _regulator, _plain("a larger regulator")),
    ChangeWords("return", _return, _return_noun),
    ChangeWords("wire", _wire, _wire_noun),
    ChangeWords("circuits", _circuits, _plain("a circuit for each pump")),
    ChangeWords("lower base", _base(thresholds.LOWER_BASE_PA), _base_noun(thresholds.LOWER_BASE_PA)),
    ChangeWords("higher base", _base(thresholds.HIGHER_BASE_PA), _base_noun(thresholds.HIGHER_BASE_PA)),
    ChangeWords("pump", _pump, _pump_noun),
    ChangeWords("filters", _filters, _plain("larger filters")),
    ChangeWords("clean", _clean, _clean),
    ChangeWords("injectors", _injectors, _injectors),
    ChangeWords("cooler", _cooler, _cooler_noun),
)
WORDS: dict[Change, ChangeWords] = {record.change: record for record in RECORDS}


def change_words(subject: Subject, changes: tuple[ChangeFigures, ...]) -> tuple[str, ...]:
    """What each of some changes is, in words."""
    return tuple(WORDS[figures.change].what(subject, figures) for figures in changes)


def change_noun(subject: Subject, figures: ChangeFigures) -> str:
    """A change as a noun, short enough for a line that names several."""
    return WORDS[figures.change].noun(subject, figures)


def in_place_of_pump_noun(subject: Subject, found: Figures | NextFigures) -> str:
    """What does as much as the pump of a way out, in the words of one who buys it; nothing where nothing does."""
    other = found.in_place_of_pump
    if other is None:
        return ""
    return "a fused wire for each pump" if other.change == "circuits" else change_noun(subject, other)


def step_noun(subject: Subject, figures: ChangeFigures) -> str:
    """The same of what one buys: one more pump with the wire that it counts with."""
    wired = figures.change == "pump" and one_more_is_on_its_own_wire(subject)
    return f"{change_noun(subject, figures)}{' on its own wire' if wired else ''}"
