"""Result -> JSON: every figure in SI under its own name, in the order that scripts hold on to."""

from __future__ import annotations

import json
from dataclasses import asdict

from fuelwiz import __version__
from fuelwiz.advice.result import Result
from fuelwiz.report.log_json import plain_run
from fuelwiz.report.plain import Plain, plain_value

# Scripts hold on to the order of the keys, and these came after the words.
CHANGE_IN_THE_WORDS = ("rated_flow_m3_s", "size", "wire_m2")
CEILING_IN_THE_WORDS = ("run", "by_line")
IN_THE_WORDS = ("long_way", "in_place_of_pump")
NEXT_IN_THE_WORDS = ("injector_rating_m3_s", "wiring", "duty", "ceilings", *IN_THE_WORDS)
CASE_IN_THE_WORDS = "duty"
WIRING_IN_THE_WORDS = "smallest_metric_wire_m2"
BEHIND_THE_WORDS = (
    "gauge",
    "wire_choices",
    "injector_choices",
    "one_volt",
    "path",
    "return_check",
    "metric_wire_choices",
)


def json_text(result: Result, *, ascii_only: bool = False) -> str:
    """The result as a JSON text that ends with a line end.

    Args:
        result: figures and words of one session.
        ascii_only: whether signs beyond ASCII are escaped, for an output that cannot hold them.
    """
    return json.dumps(plain_result(result), indent=1, allow_nan=False, ensure_ascii=ascii_only) + "\n"


def plain_result(result: Result) -> Plain:
    """The result as plain dictionaries, lists, numbers and texts; what is not known is None."""
    figures: Plain = plain_value(asdict(result.figures))
    words = result.words
    for row, explanation in zip(figures["sizes"], words.explanations, strict=True):
        row["explanation"] = plain_value(asdict(explanation))
    for ceiling in figures["ceilings"]:
        for key in CEILING_IN_THE_WORDS:
            del ceiling[key]
    fit = () if words.line_to_fit is None else (words.line_to_fit,)
    figures["verdict"]["answer"] = plain_value((*words.answer, *fit))
    for key in IN_THE_WORDS:
        del figures[key]
    if figures["wiring"] is not None:
        del figures["wiring"][WIRING_IN_THE_WORDS]
    for case in figures["stress"]:
        del case[CASE_IN_THE_WORDS]
    figures["stress"] = _with_words(figures["stress"], words.stress)
    figures["changes"] = _with_words(figures["changes"], words.changes)
    if figures["next"] is not None:
        for key in NEXT_IN_THE_WORDS:
            del figures["next"][key]
        figures["next"]["changes"] = _with_words(figures["next"]["changes"], words.next_changes)
    return {
        "format": result.session.format,
        "name": result.session.name,
        "version": __version__,
        **{key: value for key, value in figures.items() if key not in BEHIND_THE_WORDS},
        "findings": [plain_value(asdict(finding)) for finding in words.findings],
        "cautions": plain_value(words.cautions),
        **{key: figures[key] for key in BEHIND_THE_WORDS},
        "bench": _bench(result),
        "log": plain_run(result.log),
    }


def _bench(result: Result) -> Plain | None:
    """What the bench tests come to, None without any."""
    bench = result.measured.bench
    return None if bench is None else plain_value(asdict(bench))


def _with_words(listed: list[Plain], words: tuple[str, ...]) -> list[Plain]:
    """Stress cases or changes, each with its words behind its name."""
    return [_with_what(one, plain_value(what)) for one, what in zip(listed, words, strict=True)]


def _with_what(listed: Plain, what: str) -> Plain:
    name, *figures = ((key, value) for key, value in listed.items() if key not in CHANGE_IN_THE_WORDS)
    return dict((name, ("what", what), *figures))
