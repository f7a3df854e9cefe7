"""One remark: what is so, with its figure, and what to do about it."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.advice.result import Finding, Severity

COLUMNS = 76


@dataclass(frozen=True, slots=True)
class Remark:
    """A finding in two halves, so that one line can say either."""

    severity: Severity
    about: str
    what: str
    do: str = ""

    @property
    def finding(self) -> Finding:
        """The whole of it."""
        return Finding(self.severity, self.about, f"{self.what} {self.do}".strip())


def one_line(*sentences: str) -> str:
    """The first of some sentences that fits one line; else the first, cut between words."""
    for sentence in sentences:
        if sentence and len(sentence) <= COLUMNS:
            return sentence
    longest = next(filter(None, sentences), "")
    return f"{longest[: COLUMNS - 1].rpartition(' ')[0].rstrip(',;:')}…"
