"""What is said of each bad day that the program asks for by itself: a record each."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.advice.subject import Subject, listed
from fuelwiz.record import record
from fuelwiz.sizing import thresholds
from fuelwiz.sizing.blends import other_blends
from fuelwiz.sizing.vocabulary import Case


@record
class CaseWords:
    """The words of one bad day: its name, the same as a time, what changes then, what helps where the pump is short.

    `in_few` is what changes in a few words, beside the name; where it is None, what changes is short enough.
    """

    case: Case
    name: str
    when: str
    changes: Callable[[Subject], str]
    pump_cure: str = "a bigger pump"
    in_few: Callable[[Subject], str] | None = None


def times(factor: float) -> str:
    """A factor as an adverb: twice, 1.5 times."""
    return "twice" if factor == 2.0 else f"{factor:g} times"


def _few_volts(subject: Subject) -> str:
    return f"No more than {subject.numbers.figure('volts', thresholds.WEAK_SUPPLY_V)}"


def _low_volts(subject: Subject) -> str:
    return f"{_few_volts(subject)} from the alternator"


def _hot_fuel(subject: Subject) -> str:
    hottest = max(subject.session.fuel.temperature, thresholds.HOT_FUEL_K)
    return f"Fuel at {subject.numbers.figure('temperature', hottest)}"


def _dirty_filters(subject: Subject) -> str:
    strainer = subject.session.inlet is not None and subject.session.inlet.strainer is not None
    parts = [
        name for name, known in (("filter", subject.session.feed.filter), ("strainer", strainer)) if known
    ]
    return f"{' and '.join(parts).capitalize()} clogged {times(thresholds.CLOGGED)} as much"


def _clogged(_subject: Subject) -> str:
    return f"Clogged {times(thresholds.CLOGGED)} as much"


def _boost_spike(subject: Subject) -> str:
    return f"Boost {subject.numbers.limit('pressure', thresholds.SPIKE_PA)} higher"


def _worn_pump(subject: Subject) -> str:
    return f"A worn pump, {subject.numbers.limit('percent', 1.0 - thresholds.WORN)} less flow"


def _ethanol(subject: Subject, at: int) -> str:
    share = other_blends(subject.session.fuel.ethanol)[at]
    return f"Ethanol at {subject.numbers.limit('percent', share)}"


def _more_ethanol(subject: Subject) -> str:
    return _ethanol(subject, 0)


def _less_ethanol(subject: Subject) -> str:
    return _ethanol(subject, 1)


def _altitude(subject: Subject) -> str:
    highest = max(subject.session.pressure.altitude, thresholds.HIGH_ALTITUDE_M)
    return f"At {subject.numbers.about('altitude', highest)} of altitude"


def _one_pump_dead(_subject: Subject) -> str:
    return "One pump stopped"


def combined(subject: Subject) -> list[str]:
    """The single days that the combined one is made of."""
    dirty = ["dirty filters"] if subject.case("dirty filters") is not None else []
    return ["low volts", *dirty, "worn pump"]


def _bad_day(subject: Subject) -> str:
    *others, pump = combined(subject)
    words = listed([*others, f"a {pump}"])
    return f"{words[0].upper()}{words[1:]} at once"


def _how_many_at_once(subject: Subject) -> str:
    return f"{'Three' if len(combined(subject)) == 3 else 'Two'} of these at once"


CASES = (
    CaseWords(
        "low volts",
        "low volts",
        "on low volts",
        _low_volts,
        "a sound alternator, heavier wire or a bigger pump",
        _few_volts,
    ),
    CaseWords("hot fuel", "hot fuel", "with hot fuel", _hot_fuel),
    CaseWords(
        "dirty filters",
        "dirty filters",
        "with dirty filters",
        _dirty_filters,
        "clean filters or a bigger pump",
        _clogged,
    ),
    CaseWords(
        "boost spike", "boost spike", "on a boost spike", _boost_spike, "a boost limiter or a bigger pump"
    ),
    CaseWords(
        "worn pump", "worn pump", "with a worn pump", _worn_pump, "a pump replaced in time, or a bigger one"
    ),
    CaseWords(
        "more ethanol",
        "more ethanol",
        "with more ethanol",
        _more_ethanol,
        "a bigger pump, or less power on that fuel",
    ),
    CaseWords("less ethanol", "less ethanol", "with less ethanol", _less_ethanol),
    CaseWords("altitude", "altitude", "at altitude", _altitude),
    CaseWords(
        "one pump dead",
        "one pump stopped",
        "with one pump stopped",
        _one_pump_dead,
        "a cut-off on low fuel pressure, or pumps that do it with one stopped",
    ),
    CaseWords(
        "bad day",
        "combined bad day",
        "on the combined bad day",
        _bad_day,
        "heavier wire and a bigger pump",
        _how_many_at_once,
    ),
)
BY_CASE: dict[Case, CaseWords] = {words.case: words for words in CASES}


def when_in_own_case(name: str) -> str:
    """A case of the builder's own as a time."""
    return f"in \u201c{name}\u201d"
