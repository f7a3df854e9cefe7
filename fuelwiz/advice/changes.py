"""What each change is in words: a record each."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from fuelwiz.advice.wire_words import wire_label
from fuelwiz.physics.wire import thicker_wire_m2
from fuelwiz.record import record
from fuelwiz.sizing import thresholds
from fuelwiz.sizing.vocabulary import Change, is_fixed
from fuelwiz.units import from_si

if TYPE_CHECKING:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.sizing.slow_figures import ChangeFigures

ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth")


@record
class ChangeWords:
    """The words of one change: what is fitted or done, with its figure, and the same as a noun."""

    change: Change
    what: Callable[[Subject, ChangeFigures], str]
    noun: Callable[[Subject, ChangeFigures], str]


def _larger(names: list[str], today: str, line: str) -> str:
    """The size after today's in place of it."""
    after = names[names.index(today) + 1 :]
    return (
        f"{line}{after[0]} in place of {today}" if after and not is_fixed(today) else f"{line}a size larger"
    )


def _feed(subject: Subject, _figures: ChangeFigures) -> str:
    return _larger([row.size for row in subject.figures.sizes], subject.figures.verdict.size, "")


def _return(subject: Subject, _figures: ChangeFigures) -> str:
    line = subject.figures.return_line
    if line is None:
        return "a larger return line"
    return _larger([row.size for row in line.sizes], line.size, "return line ")


def _regulator(subject: Subject, _figures: ChangeFigures) -> str:
    line = subject.session.return_line
    if line is None:
        return "a larger regulator"
    numbers, regulator = subject.numbers, line.regulator
    flow = numbers.figure("flow", 2 * regulator.rated_flow)
    return f"a larger regulator: {flow} at {numbers.limit('pressure', regulator.rated_loss)}"


def _wire(subject: Subject, _figures: ChangeFigures) -> str:
    wiring = subject.session.wiring
    today = None if wiring is None else wiring.wire
    thicker = None if today is None else thicker_wire_m2(today)
    if today is None or thicker is None:
        return "thicker wire"
    new, old = wire_label(subject, thicker), wire_label(subject, today)
    same_unit = "(" not in new
    return f"{new} in place of {old.split()[0] if same_unit else old}"


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
    return f"a {ORDINALS[min(pump.count + 1, 6)]} pump of the same; {runs}, as today"


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


def _next_size(names: list[str], today: str) -> str:
    after = names[names.index(today) + 1 :] if today in names else []
    if not after:
        return "a larger line"
    return after[0] if after[0].startswith("-") else f"a {after[0]} line"


def _feed_noun(subject: Subject, _figures: ChangeFigures) -> str:
    return _next_size([row.size for row in subject.figures.sizes], subject.figures.verdict.size)


def _return_noun(subject: Subject, _figures: ChangeFigures) -> str:
    line = subject.figures.return_line
    size = "a larger" if line is None else _next_size([row.size for row in line.sizes], line.size)
    return f"{size} return"


def _wire_noun(subject: Subject, figures: ChangeFigures) -> str:
    return _wire(subject, figures).partition(" in place")[0]


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
    ChangeWords("cooler", _cooler, _cooler),
)
WORDS: dict[Change, ChangeWords] = {record.change: record for record in RECORDS}


def change_words(subject: Subject, changes: tuple[ChangeFigures, ...]) -> tuple[str, ...]:
    """What each of some changes is, in words."""
    return tuple(WORDS[figures.change].what(subject, figures) for figures in changes)


def change_noun(subject: Subject, figures: ChangeFigures) -> str:
    """A change as a noun, short enough for a line that names several."""
    return WORDS[figures.change].noun(subject, figures)
