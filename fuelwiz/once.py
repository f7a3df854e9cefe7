"""An attribute that is reckoned when it is first asked for, and kept."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, TypeVar, overload

T = TypeVar("T")


class once(Generic[T]):  # noqa: N801  used as a decorator, like property
    """A property whose value is reckoned once and kept in the instance.

    functools has the same with a lock around each first reading (up to Python 3.11), and a session is solved
    by one thread with thousands of them.
    """

    def __init__(self, reckon: Callable[[Any], T]) -> None:
        self._reckon = reckon
        self._name = reckon.__name__
        self.__doc__ = reckon.__doc__

    @overload
    def __get__(self, instance: None, owner: type) -> once[T]: ...

    @overload
    def __get__(self, instance: object, owner: type | None = None) -> T: ...

    def __get__(self, instance: object | None, owner: type | None = None) -> once[T] | T:
        """The value, from now on found in the instance itself."""
        if instance is None:
            return self
        value = instance.__dict__[self._name] = self._reckon(instance)
        return value
