"""The two sorts of question that write several keys, or a part of one: answered in words, or with a count."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_questions import answers_to
from fuelwiz.desk.state import State
from fuelwiz.record import record


@record
class ChoiceQuestion:
    """A question answered in words: which answer stands, and what each writes.

    Attributes:
        key: of the question, whose answers are those on offer.
        read: the answer that stands; None where there is none yet.
        put: the build with one of the answers.
        fallback: the answer that `?` takes.
        clear: the build without an answer, where the fallback need not be written.
        put_typed: the build with a text that says more than the answers on offer; None where it does not.
        also: what such a text may be, as a sentence says it.
    """

    key: str
    read: Callable[[State], str | None]
    put: Callable[[State, str], State]
    fallback: str
    clear: Callable[[State], State] | None = None
    put_typed: Callable[[State, str], State | None] | None = None
    also: str = ""

    def use_fallback(self, state: State) -> State:
        """The build with the question left to its fallback."""
        return self.put(state, self.fallback) if self.clear is None else self.clear(state)

    def write(self, state: State, answer: str) -> State:
        """The build with an answer; NoSuchField where it is none of those on offer."""
        if answer not in answers_to(self.key):
            raise NoSuchField(f"{self.key} has no answer {answer}")
        return self.put(state, answer)

    def write_typed(self, state: State, text: str) -> State:
        """The build with a text as its answer; NoSuchField where it is none."""
        put = None if self.put_typed is None else self.put_typed(state, text)
        return self.write(state, text.strip()) if put is None else put


@record
class CountQuestion:
    """A question answered with a count that several keys hold."""

    read: Callable[[State], int | None]
    write: Callable[[State, int], State]
    clear: Callable[[State], State]
    most: int
