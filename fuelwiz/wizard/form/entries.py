"""The entries of a list as a form shows them: what stands in which column."""

from __future__ import annotations

from typing import Any

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.plain import value_at, way
from fuelwiz.printable import clean
from fuelwiz.terms import FILTER_PLACES, FITTINGS, HOSES

HEADS = {
    "run": ("Run of hose", "Hose", "Length", "What is on it", "Ends"),
    "filter": ("Filter", "Rated", "Loss", "Where"),
    "part": ("Part", "Rated", "Loss", ""),
    "curve": ("Curve at", "Points", "", ""),
    "case": ("Case", "What changes", "", ""),
}


def entries(desk: Desk, list_path: str) -> list[dict[str, Any]]:
    """The entries of a list as the file would hold them."""
    found = value_at(desk.plain, way(list_path))
    return [entry for entry in found if isinstance(entry, dict)] if isinstance(found, list) else []


def columns(list_path: str, index: int, entry: dict[str, Any]) -> tuple[str, ...]:
    """What the row of an entry shows, column by column."""
    kind = list_path.rpartition(".")[2]
    make = {"run": _run, "filter": _filter, "part": _part, "curve": _curve, "case": _case}[kind]
    return tuple(clean(str(text)) for text in make(index, entry))


def _run(index: int, run: dict[str, Any]) -> tuple[str, ...]:
    kept = run.get("bore") or run.get("size")
    hose = HOSES.get(run.get("hose", "ptfe"), "?") + (f" {kept}" if kept else "")
    counts = run.get("fittings") or {}
    ends = sum(count for count in counts.values() if isinstance(count, int))
    return (
        run.get("what") or f"run {index + 1}",
        hose,
        run.get("length", "15 ft"),
        _fittings(counts),
        str(ends),
    )


def _fittings(counts: dict[str, Any]) -> str:
    return (
        ", ".join(f"{count} {FITTINGS.get(kind, kind)}" for kind, count in counts.items() if count)
        or "no fittings"
    )


def _filter(index: int, part: dict[str, Any]) -> tuple[str, ...]:
    place = FILTER_PLACES.get(part.get("place", "line"), "?")
    return (
        part.get("what") or f"filter {index + 1}",
        part.get("rated_flow", "?"),
        part.get("rated_loss", "1.5 psi"),
        place,
    )


def _part(index: int, part: dict[str, Any]) -> tuple[str, ...]:
    return (
        part.get("what") or f"part {index + 1}",
        part.get("rated_flow", "?"),
        part.get("rated_loss", "?"),
        "",
    )


def _curve(index: int, curve: dict[str, Any]) -> tuple[str, ...]:
    count = len(curve.get("points") or ())
    return (curve.get("voltage", "13.5 V"), f"{count} point{'' if count == 1 else 's'}", "", "")


def _case(index: int, case: dict[str, Any]) -> tuple[str, ...]:
    change = case.get("change") or {}
    said = ", ".join(f"{key} {value}" for key, value in change.items())
    return (case.get("name") or f"case {index + 1}", said or "nothing yet", "", "")
