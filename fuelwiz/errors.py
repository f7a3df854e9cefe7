"""What can go wrong, in one small tree.

FuelwizError
├── UnitError       a text that is no quantity of the kind wanted
├── FactError       a size, hose or gauge that the tables do not have
├── SessionError    a session file with faults, all of them at once
├── LogError        a log of a run that cannot be read, or does not hold what is needed
└── OutputError     a file that cannot be written
"""

from __future__ import annotations

from fuelwiz.record import record


class FuelwizError(Exception):
    """Anything that the program says in a sentence instead of a traceback."""


class UnitError(FuelwizError):
    """A text is not one number and one unit of the kind that is wanted."""


class FactError(FuelwizError):
    """The tables hold no such size, hose or gauge."""


class LogError(FuelwizError):
    """A log of a run cannot be held against a build."""


class OutputError(FuelwizError):
    """A file cannot be written; `why` is the reason alone, for a place with little room."""

    def __init__(self, sentence: str, why: str = "") -> None:
        self.why = why or sentence
        super().__init__(sentence)


@record
class Fault:
    """One thing that is wrong in a session file: where, and in words what was found and what is wanted."""

    key: str
    text: str
    line: int | None = None

    def sentence(self, file: str) -> str:
        """The fault as one line that names the file, the line where it is known, and the key."""
        place = f"{file}, line {self.line}" if self.line is not None else file
        return f"{place}: {self.text}" if not self.key else f"{place}: `{self.key}` {self.text}"


class SessionError(FuelwizError):
    """A session file cannot be used; holds every fault that was found."""

    def __init__(self, file: str, faults: tuple[Fault, ...]) -> None:
        self.file = file
        self.faults = faults
        super().__init__("\n".join(self.lines()))

    def lines(self) -> list[str]:
        """One line a fault."""
        return [fault.sentence(self.file) for fault in self.faults]
