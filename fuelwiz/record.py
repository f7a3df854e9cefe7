"""Frozen dataclasses that are quick to declare."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, fields
from operator import attrgetter
from typing import Any, TypeVar, dataclass_transform

T = TypeVar("T")
Methods = dict[str, Callable[..., Any]]


@dataclass_transform(frozen_default=True)
def record(declared: type[T]) -> type[T]:
    """What `dataclass(frozen=True, slots=True)` makes of a class, in a fifth of the time.

    That one writes and compiles six methods for each class; there are two hundred of them, and a first answer waited
    longer for their methods than for its figures. Here `__init__` alone is compiled, for the first object. Values may
    have defaults, but no `field()`.
    """
    made = dataclass(slots=True, init=False, repr=False, eq=False)(declared)
    own = fields(made)  # type: ignore[arg-type]
    if any(field.default_factory is not MISSING for field in own):
        raise TypeError(f"{declared.__name__}: a record makes no default anew for each object")
    for name, method in {**_FROZEN, "__init__": _first_init(made, own), **_by_values(own)}.items():
        setattr(made, name, method)
    return made


def _by_values(own: tuple[Field[Any], ...]) -> Methods:
    """The methods that look at all values."""
    names = tuple(field.name for field in own)
    values = _values(names)

    def text(self: object) -> str:
        pairs = zip(names, values(self), strict=True)
        return f"{type(self).__qualname__}({', '.join(f'{name}={value!r}' for name, value in pairs)})"

    def is_same(self: object, other: object) -> bool:
        return values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented

    def number(self: object) -> int:
        return hash(values(self))

    def parts(self: object) -> tuple[type, tuple[Any, ...]]:
        return type(self), values(self)

    return {"__repr__": text, "__eq__": is_same, "__hash__": number, "__reduce__": parts}


def _values(names: tuple[str, ...]) -> Callable[[object], tuple[Any, ...]]:
    """What gives the values that an object has under names."""
    if len(names) > 1:
        return attrgetter(*names)
    return lambda one: tuple(getattr(one, name) for name in names)


def _first_init(made: type[Any], own: tuple[Field[Any], ...]) -> Callable[..., None]:
    """The method that takes the values of the first object, and makes the one for all others."""

    def first(self: object, *given: Any, **named: Any) -> None:
        made.__init__ = init = _init_of(own)
        init(self, *given, **named)

    return first


def _init_of(own: tuple[Field[Any], ...]) -> Callable[..., None]:
    """The method that takes the values of a new object."""
    given = {f"_{field.name}": field.default for field in own if field.default is not MISSING}
    names = (f"{field.name}=_{field.name}" if f"_{field.name}" in given else field.name for field in own)
    kept = (f" _keep(self, {field.name!r}, {field.name})" for field in own)
    written = "\n".join((f"def __init__(self, {', '.join(names)}):", *kept, " pass"))
    space: dict[str, Any] = {"_keep": object.__setattr__, **given}
    exec(written, space)
    made: Callable[..., None] = space["__init__"]
    return made


def _refuse_to_set(_self: object, name: str, _value: object) -> None:
    raise FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_to_delete(_self: object, name: str) -> None:
    raise FrozenInstanceError(f"cannot delete field {name!r}")


_FROZEN: Methods = {"__setattr__": _refuse_to_set, "__delattr__": _refuse_to_delete}
