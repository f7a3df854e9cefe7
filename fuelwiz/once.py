"""Attributes that are computed once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, Self, TypeVar, overload

T = TypeVar("T")


class once(Generic[T]):  # noqa: N801, it is used as functools.cached_property is
    """An attribute that is computed when it is first read and stays as it is.

    The same as `functools.cached_property`, which in Python 3.11 takes a lock for each first reading: a build makes
    some hundred of these objects for one answer, each is read by one thread, and the locks were a fifth of the time.
    """

    def __init__(self, compute: Callable[[Any], T]) -> None:
        self._compute = compute
        self._name = compute.__name__
        self.__doc__ = compute.__doc__

    @overload
    def __get__(self, instance: None, owner: type) -> Self: ...

    @overload
    def __get__(self, instance: object, owner: type) -> T: ...

    def __get__(self, instance: object | None, owner: type) -> T | Self:
        """The value, put where the next reading finds it without coming here, in a frozen dataclass too."""
        if instance is None:
            return self
        value = instance.__dict__[self._name] = self._compute(instance)
        return value
