"""A record is the dataclass that it stands for."""

from __future__ import annotations

import copy
import pickle
from dataclasses import FrozenInstanceError, asdict, dataclass, field, fields, is_dataclass, replace
from inspect import signature
from typing import Any

import pytest

from fuelwiz.record import record


@record
class Hose:
    """A record with a default."""

    bore_m: float
    name: str
    turns: tuple[int, ...] = (2, 3)


@record
class Braided(Hose):
    """One that has more than the class that it comes from."""

    braid: str = "steel"

    @property
    def label(self) -> str:
        """Something that is made of its values."""
        return f"{self.name} in {self.braid}"


@record
class Nothing:
    """One without values."""


@record
class One:
    """One with a single value."""

    value: object


@dataclass(frozen=True, slots=True)
class Usual:
    """The same as `Hose`, as Python makes it."""

    bore_m: float
    name: str
    turns: tuple[int, ...] = (2, 3)


GIVEN: list[dict[str, Any]] = [
    {"bore_m": 0.01, "name": "feed"},
    {"bore_m": 0.01, "name": "feed", "turns": ()},
    {"bore_m": 0.02, "name": "it's", "turns": (1,)},
]


@pytest.mark.parametrize("given", GIVEN, ids=str)
def test_is_the_dataclass_of_the_same_values(given: dict[str, Any]) -> None:
    ours, usual = Hose(**given), Usual(**given)
    assert asdict(ours) == asdict(usual)
    assert repr(ours) == repr(usual).replace("Usual", "Hose")
    assert hash(ours) == hash(usual)
    assert ours == Hose(*given.values())
    assert [ours == Hose(**other) for other in GIVEN] == [usual == Usual(**other) for other in GIVEN]
    assert replace(ours, name="return") == Hose(**{**given, "name": "return"})
    assert copy.deepcopy(ours) == ours == pickle.loads(pickle.dumps(ours))


def test_is_not_another_class_with_the_same_values() -> None:
    pair: list[object] = [Hose(0.01, "feed"), Usual(0.01, "feed"), Braided(0.01, "feed")]
    assert [one == other for one in pair for other in pair] == [
        one is other for one in pair for other in pair
    ]


def test_has_the_face_of_a_dataclass() -> None:
    assert Hose.__doc__ == "A record with a default."
    assert [field.name for field in fields(Braided)] == ["bore_m", "name", "turns", "braid"]
    assert list(signature(Hose).parameters) == list(signature(Usual).parameters)
    assert Hose.__match_args__ == Usual.__match_args__
    assert not hasattr(Hose(0.01, "feed"), "__dict__")
    assert is_dataclass(Hose)


@pytest.mark.parametrize("given", [(), (0.01,), (0.01, "feed", (), "more")], ids=str)
def test_takes_all_that_has_no_default_and_no_more(given: tuple[Any, ...]) -> None:
    with pytest.raises(TypeError):
        Usual(*given)
    with pytest.raises(TypeError):
        Hose(*given)


def test_nothing_changes_afterwards() -> None:
    hose = Hose(0.01, "feed")
    with pytest.raises(FrozenInstanceError, match="'name'"):
        hose.name = "return"  # type: ignore[misc]
    with pytest.raises(FrozenInstanceError, match="'name'"):
        del hose.name
    with pytest.raises(FrozenInstanceError, match="'color'"):
        hose.color = "blue"  # type: ignore[attr-defined]
    assert hose == Hose(0.01, "feed")


def test_one_that_comes_from_another_has_the_values_of_both() -> None:
    braided = Braided(0.01, "feed", braid="nylon")
    assert braided.label == "feed in nylon"
    assert braided != Hose(0.01, "feed")
    assert repr(braided) == "Braided(bore_m=0.01, name='feed', turns=(2, 3), braid='nylon')"


def test_with_one_value_or_none() -> None:
    assert Nothing() == Nothing() and repr(Nothing()) == "Nothing()" and hash(Nothing()) == hash(())
    assert One((1, 2)) == One((1, 2)) != One(None) and hash(One(3)) == hash((3,))
    assert repr(One("a")) == "One(value='a')"


def test_a_default_that_is_made_anew_is_refused() -> None:
    class Listed:
        """With a list of its own for each."""

        values: list[int] = field(default_factory=list)

    with pytest.raises(TypeError, match="Listed"):
        record(Listed)
