"""From the plain data of a parts file to its parts: every fault is found."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from fuelwiz.document.file import read, with_lines
from fuelwiz.errors import Fault, SessionError
from fuelwiz.options.parts_file import Parts
from fuelwiz.printable import clean
from fuelwiz.session import (
    KeyPath,
    Rejected,
    Size,
    bore_fault,
    faults_of,
    field_at,
    key_path_of,
    list_key_paths,
    newer_format,
    order_of,
    path_of,
    same_volts,
    schema_of,
    value_at,
)
from fuelwiz.session import read as read_value
from fuelwiz.terms import HOSES


def parts_schema() -> dict[str, Any]:
    """The JSON Schema of a parts file."""
    return schema_of(Parts, "Parts that may be bought or are on the shelf, with their prices.")


def load_parts(path: Path) -> Parts:
    """The parts of a file.

    Raises:
        SessionError: with every fault, and the line of each where it can be found.
    """
    document = read(path, Parts.called)
    try:
        return validate_parts(document.plain)
    except SessionError as error:
        raise SessionError(clean(str(path)), with_lines(error.faults, document.text)) from None


def plain_parts(path: Path) -> dict[str, Any]:
    """What a parts file holds, as it was typed.

    Raises:
        SessionError: the file cannot be read.
    """
    return read(path, Parts.called).plain


def validate_parts(plain: dict[str, Any]) -> Parts:
    """The parts that plain data hold.

    Raises:
        SessionError: with every fault, in the order of the file's keys.
    """
    newer = newer_format(plain)
    if newer:
        raise SessionError("these parts", tuple(newer))
    parts: Parts | None = None
    found = list(_faults_between(plain))
    try:
        parts = Parts.model_validate(plain)
    except ValidationError as error:
        found += faults_of(error, Parts)
    if parts is None or found:
        found.sort(key=lambda fault: order_of(key_path_of(fault.key), Parts))
        raise SessionError("these parts", tuple(found))
    return parts


def _faults_between(plain: dict[str, Any]) -> Iterator[Fault]:
    """What must fit together, beyond each key by itself; passes over what cannot be read."""
    for key_path, tables in list_key_paths(Parts).items():
        for at, found in _lists_at(plain, key_path):
            if not tables.least <= len(found) <= tables.most:
                wanted = f"wants {tables.least} to {tables.most} tables [[{path_of(key_path)}]]"
                yield Fault(path_of(at), f"{wanted}, got {len(found) or 'none'}")
    for number, pump in _tables(plain, "pump"):
        yield from _volts_told_apart(pump, number)
    yield from _sizes_that_are_made(plain)


def _lists_at(plain: Any, key_path: KeyPath) -> Iterator[tuple[KeyPath, list[Any]]]:
    """Every list of tables that stands under a path of keys, one below each table of the lists above it."""
    first, *rest = key_path
    found = plain.get(first) if isinstance(plain, dict) else None
    if not isinstance(found, list):
        return
    if not rest:
        yield (first,), found
        return
    for number, table in enumerate(found):
        for below, inner in _lists_at(table, tuple(rest)):
            yield (first, number, *below), inner


def _tables(plain: dict[str, Any], key: str) -> Iterator[tuple[int, dict[str, Any]]]:
    found = plain.get(key)
    for number, table in enumerate(found if isinstance(found, list) else []):
        if isinstance(table, dict):
            yield number, table


def _readable(table: dict[str, Any], key: str, path: str) -> Any:
    """A value as it is read, its fallback where it is left out; None where it is refused."""
    spec = field_at(path, Parts)
    value = table.get(key, spec.fallback)
    try:
        return None if value is None else read_value(spec, value)
    except Rejected:
        return None


def _volts_told_apart(pump: dict[str, Any], number: int) -> Iterator[Fault]:
    """No two curves of a pump are of one voltage."""
    where, found = f"pump.{number}.curve", pump.get("curve")
    volts = (
        _readable(curve, "voltage", "pump.curve.voltage") if isinstance(curve, dict) else None
        for curve in (found if isinstance(found, list) else [])
    )
    for at, same in same_volts(volts):
        yield Fault(f"{where}.{at}.voltage", f"wants a voltage of its own: it is that of `{where}.{same}`")


def _sizes_that_are_made(plain: dict[str, Any]) -> Iterator[Fault]:
    """Each hose has its size."""
    for number, table in _tables(plain, "hose"):
        size, hose = value_at(table, ("size",)), table.get("hose")
        read_size = None if size is None else _readable(table, "size", "hose.size")
        if not isinstance(read_size, Size) or not isinstance(hose, str) or hose not in HOSES:
            continue
        fault = bore_fault(read_size, hose)
        if fault:
            yield Fault(f"hose.{number}.size", fault)
