"""What must fit together in a session file, beyond each key by itself.

Works on plain data, and passes over what cannot be read there: a fault in one key hides none in another.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from fuelwiz.errors import Fault
from fuelwiz.facts import NEAR
from fuelwiz.session.bores import bore_fault
from fuelwiz.session.columns import NOT_IN_THE_LOG
from fuelwiz.session.compounds import Size
from fuelwiz.session.paths import KeyPath, field_at, list_key_paths, path_of, value_at
from fuelwiz.session.readers import read
from fuelwiz.session.scalars import Rejected
from fuelwiz.session.spec import as_text
from fuelwiz.terms import HOSES


def cross_faults(plain: dict[str, Any]) -> Iterator[Fault]:
    """Every pair of keys that cannot stand together."""
    yield from _list_lengths(plain)
    yield from _own_fuel(plain)
    yield from _pump_counts(plain)
    yield from _voltages(plain)
    yield from _candidates(plain)
    yield from _kept_sizes(plain)
    yield from _inlet_runs(plain)
    yield from _bench_tests(plain)
    yield from _log_columns(plain)


def _readable(plain: Any, key_path: KeyPath) -> Any:
    """The value that the session holds for a key; its own fallback where it is left out; None if refused."""
    spec = field_at(path_of(key_path))
    value = value_at(plain, key_path)
    if value is None:
        value = spec.fallback
    try:
        return None if value is None else read(spec, value)
    except Rejected:
        return None


def _list_lengths(plain: dict[str, Any]) -> Iterator[Fault]:
    for key_path, tables in list_key_paths().items():
        found = value_at(plain, key_path)
        if isinstance(found, list) and not tables.least <= len(found) <= tables.most:
            path = path_of(key_path)
            got = len(found) or "none"
            yield Fault(path, f"wants {tables.least} to {tables.most} tables [[{path}]], got {got}")


def _own_fuel(plain: dict[str, Any]) -> Iterator[Fault]:
    fuel = value_at(plain, ("fuel",))
    if not isinstance(fuel, dict) or fuel.get("kind") != "own":
        return
    for key in ("density", "viscosity", "lhv"):
        if key not in fuel:
            example = field_at(f"fuel.{key}").example
            yield Fault(f"fuel.{key}", f'is missing: a fuel of kind "own" needs it, such as "{example}"')


def _pump_counts(plain: dict[str, Any]) -> Iterator[Fault]:
    """`running_at_idle` and `circuits` are no more than the pumps that there are."""
    if not isinstance(plain.get("pump"), dict):
        return
    pumps = _readable(plain, ("pump", "count"))
    for key_path in (("pump", "running_at_idle"), ("wiring", "circuits")):
        number = _readable(plain, key_path)
        if pumps is not None and number is not None and number > pumps:
            wanted = f"1 to {pumps}" if pumps > 1 else "1"
            yield Fault(path_of(key_path), f"wants {wanted}, as `pump.count` is {pumps}, got {number}")


def _voltages(plain: dict[str, Any]) -> Iterator[Fault]:
    curves = value_at(plain, ("pump", "curve"))
    tables = curves if isinstance(curves, list) else []
    volts = (
        _readable(plain, ("pump", "curve", number, "voltage")) if isinstance(curve, dict) else None
        for number, curve in enumerate(tables)
    )
    for number, same in same_volts(volts):
        said = as_text(tables[number].get("voltage", field_at("pump.curve.voltage").fallback))
        yield Fault(
            f"pump.curve.{number}.voltage",
            f"wants a voltage of its own: {said} is that of `pump.curve.{same}`",
        )


def same_volts(volts: Iterable[float | None]) -> Iterator[tuple[int, int]]:
    """Curves of one pump that are of the voltage of one before them, each with that one; None is not known."""
    seen: list[tuple[int, float]] = []
    for number, here in enumerate(volts):
        if here is None:
            continue
        same = next((other for other, before in seen if abs(here - before) <= NEAR * here), None)
        if same is not None:
            yield number, same
        seen.append((number, here))


def _candidates(plain: dict[str, Any]) -> Iterator[Fault]:
    """Every candidate is one that the hose of each run that follows it has."""
    for section in ("feed", "return_line"):
        following = _following_runs(plain, section)
        sizes = value_at(plain, (section, "sizes"))
        key_paths: list[KeyPath] = [
            (section, "sizes", number) for number in range(len(sizes) if isinstance(sizes, list) else 0)
        ]
        for way in (*key_paths, (section, "chosen")):
            faults = (fault for run in following for fault in _not_made(plain, way, f"{section}.chosen", run))
            yield from {fault.text: fault for fault in faults}.values()


def _following_runs(plain: dict[str, Any], section: str) -> list[KeyPath]:
    """The runs that give no size or bore; where there is no run a PTFE hose is meant."""
    runs = value_at(plain, (section, "run"))
    if not isinstance(runs, list) or not runs:
        return [()]
    return [
        (section, "run", number)
        for number, run in enumerate(runs)
        if isinstance(run, dict) and "size" not in run and "bore" not in run
    ]


def _kept_sizes(plain: dict[str, Any]) -> Iterator[Fault]:
    """The size that a run gives itself is one that its hose has."""
    for section in ("feed", "inlet", "return_line"):
        runs = value_at(plain, (section, "run"))
        for number, run in enumerate(runs if isinstance(runs, list) else []):
            if isinstance(run, dict):
                way: KeyPath = (section, "run", number)
                yield from _not_made(plain, (*way, "size"), f"{section}.run.size", way)


def _not_made(plain: dict[str, Any], way: KeyPath, declared: str, run: KeyPath) -> Iterator[Fault]:
    """A size that the hose of a run does not have, or whose walls leave no bore."""
    value = value_at(plain, way)
    hose = (value_at(plain, (*run, "hose")) if run else None) or "ptfe"
    try:
        size = None if value is None else read(field_at(declared), value)
    except Rejected:
        return
    if not isinstance(size, Size) or not isinstance(hose, str) or hose not in HOSES:
        return
    fault = bore_fault(size, hose, _readable(plain, (*run, "wall")) if run else None)
    if fault:
        yield Fault(path_of(way), fault)


def _inlet_runs(plain: dict[str, Any]) -> Iterator[Fault]:
    runs = value_at(plain, ("inlet", "run"))
    for number, run in enumerate(runs if isinstance(runs, list) else []):
        if isinstance(run, dict) and "size" not in run and "bore" not in run:
            yield Fault(f"inlet.run.{number}", 'wants a size or a bore of its own, such as size = "-10"')


def _bench_tests(plain: dict[str, Any]) -> Iterator[Fault]:
    """A test gives its volume or its mass, not both, and runs no more pumps than there are."""
    tests = value_at(plain, ("bench",))
    pumps = _readable(plain, ("pump", "count"))
    for number, test in enumerate(tests if isinstance(tests, list) else []):
        if not isinstance(test, dict):
            continue
        if "volume" in test and "mass" in test:
            yield Fault(f"bench.{number}.mass", "must not stand beside `volume`: give one of them")
        elif "volume" not in test and "mass" not in test:
            wanted = 'is missing: wants a volume such as "4 l", or `mass` such as "2.9 kg"'
            yield Fault(f"bench.{number}.volume", wanted)
        running = _readable(plain, ("bench", number, "pumps"))
        if pumps is not None and running is not None and running > pumps:
            wanted = f"1 to {pumps}" if pumps > 1 else "1"
            yield Fault(f"bench.{number}.pumps", f"wants {wanted}, as `pump.count` is {pumps}, got {running}")


def _log_columns(plain: dict[str, Any]) -> Iterator[Fault]:
    """The manifold's pressure is told by one column, not by two that may differ."""
    columns = value_at(plain, ("log", "columns"))
    if isinstance(columns, dict) and all(
        columns.get(key, NOT_IN_THE_LOG) != NOT_IN_THE_LOG for key in ("manifold", "boost")
    ):
        yield Fault("log.columns.boost", "must not stand beside `manifold`: give the one that the log has")
