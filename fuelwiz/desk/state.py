"""What is told of a build at one moment; never changed, so that undo is to take an older one back."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from fuelwiz.desk.plain import Plain, put, taken_out, value_at, value_path


@dataclass(frozen=True, slots=True)
class State:
    """One build as far as it is told.

    `plain` is what a file would hold, as typed. `raw` is what stands in fields and cannot be taken: refused or
    half typed, by path. `picked` are answers in words that no key of the file tells, `stashed` what a choice put
    away and its opposite brings back. `measured` says what measured a value and when, by path. `good` is the last
    `plain` that made a session.
    """

    plain: Plain
    raw: Mapping[str, str] = field(default_factory=dict)
    picked: Mapping[str, str] = field(default_factory=dict)
    stashed: Mapping[str, Any] = field(default_factory=dict)
    good: Plain | None = None
    measured: Mapping[str, str] = field(default_factory=dict)

    def same(self, other: State) -> bool:
        """Whether the builder has said the same."""
        return (
            self.plain == other.plain
            and self.raw == other.raw
            and self.picked == other.picked
            and self.stashed == other.stashed
            and self.measured == other.measured
        )

    def with_value(self, path: str, value: Any) -> State:
        """Another value at a path; what stood there refused is gone, and so is what measured it."""
        stands = value_at(self.plain, value_path(path)) == value
        return replace(
            self,
            plain=put(self.plain, value_path(path), value),
            raw=_without(self.raw, path),
            measured=self.measured if stands else self._still_measured(path),
        )

    def measured_as(self, entered: State) -> State:
        """The same with what measured those values that stand again as they were once, after others were typed."""
        again = {
            path: comment
            for path, comment in entered.measured.items()
            if value_at(self.plain, value_path(path)) == value_at(entered.plain, value_path(path))
        }
        return (
            self
            if again.items() <= self.measured.items()
            else replace(self, measured={**self.measured, **again})
        )

    def without(self, path: str) -> State:
        """Nothing at a path."""
        return replace(
            self,
            plain=taken_out(self.plain, value_path(path)),
            raw=_without(self.raw, path),
            measured=self._still_measured(path),
        )

    def _still_measured(self, path: str) -> Mapping[str, str]:
        """What measured the values that a change at a path leaves alone."""
        rest = _without(self.measured, path)
        return {at: comment for at, comment in rest.items() if not path.startswith(f"{at}.")}

    def with_raw(self, path: str, text: str) -> State:
        """A text that stands in the field at a path and is not taken."""
        return replace(self, raw={**self.raw, path: text})

    def without_raw(self, path: str) -> State:
        """Nothing refused at a path, nor below it."""
        return replace(self, raw=_without(self.raw, path)) if self.raw else self

    def with_texts(self, texts: Mapping[str, str]) -> State:
        """The same with further texts that are not taken, by path."""
        return replace(self, raw={**self.raw, **texts}) if texts else self

    def without_texts(self, texts: Mapping[str, str]) -> State:
        """The same without those texts."""
        if not texts:
            return self
        return replace(self, raw={at: text for at, text in self.raw.items() if at not in texts})

    def with_picked(self, key: str, value: str) -> State:
        """An answer in words."""
        return replace(self, picked={**self.picked, key: value})

    def without_picked(self, key: str) -> State:
        """No answer in words."""
        return replace(self, picked={name: value for name, value in self.picked.items() if name != key})

    def with_stashed(self, key: str, value: Any) -> State:
        """Something that a choice put away."""
        return replace(self, stashed={**self.stashed, key: value})

    def renumbered(self, path: str, number: Callable[[int], int | None]) -> State:
        """Texts that stand in entries of the list at a path, each with its entry's new number; None drops them."""
        if not self.raw and not self.measured:
            return self
        raw = {_moved(at, path, number): text for at, text in self.raw.items()}
        kept = {at: text for at, text in raw.items() if at is not None}
        return replace(self, raw=kept, measured=self._still_measured(path))


def _moved(at: str, path: str, number: Callable[[int], int | None]) -> str | None:
    if not at.startswith(f"{path}."):
        return at
    entry, *below = at[len(path) + 1 :].split(".")
    new = number(int(entry))
    return None if new is None else ".".join((path, str(new), *below))


def _without(raw: Mapping[str, str], path: str) -> Mapping[str, str]:
    below = f"{path}."
    return {at: text for at, text in raw.items() if at != path and not at.startswith(below)}


def with_sections(state: State, sections: Mapping[str, Any]) -> State:
    """The build with whole sections in place of its own; what stood refused in them is gone."""
    for section, value in sections.items():
        state = state.with_value(section, value)
        inside = {path: text for path, text in state.raw.items() if path.startswith(f"{section}.")}
        for path in inside:
            state = replace(state, raw=_without(state.raw, path))
    return state
