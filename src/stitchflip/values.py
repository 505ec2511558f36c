"""Data classes that are quick to define.

A command imports more than a hundred small value classes, and the standard decorator compiles five or six
functions for each, which is a fifth of the time until the first line appears. Here the functions that are the
same for every class (equality, hash, printed form) are shared; the rest, above all `__init__`, stays the standard
library's. Classes made here are real data classes: `replace` and `fields` work, and type checkers see the
standard decorator.
"""

from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

__all__ = ["dataclass"]

if TYPE_CHECKING:
    from collections.abc import Callable
    from dataclasses import dataclass

    from _typeshed import DataclassInstance
else:

    def dataclass(*, frozen: bool = False, slots: bool = False, order: bool = False) -> Callable[[type], type]:
        """The standard decorator, its common functions shared; ordered classes get their own."""

        def decorate(cls: type) -> type:
            if order:
                return dataclasses.dataclass(frozen=frozen, slots=slots, order=order)(cls)
            cls.__eq__, cls.__repr__ = _is_equal, _printed
            cls.__hash__ = _hashed if frozen else None
            return dataclasses.dataclass(frozen=frozen, slots=slots, eq=False, repr=False)(cls)

        return decorate


def _fields(value: DataclassInstance) -> tuple[object, ...]:
    """What the fields of a value hold, in their order."""
    return tuple(getattr(value, name) for name in value.__dataclass_fields__)


def _is_equal(self: DataclassInstance, other: DataclassInstance) -> bool:
    """Same class and every field equal."""
    if other.__class__ is not self.__class__:
        return NotImplemented  # type: ignore[no-any-return]  # as the protocol of equality wants
    return _fields(self) == _fields(other)


def _hashed(self: DataclassInstance) -> int:
    """Hash of all fields, so that equal values are one in a set."""
    return hash(_fields(self))


def _printed(self: DataclassInstance) -> str:
    """The expression that builds the value again."""
    named = zip(self.__dataclass_fields__, _fields(self), strict=True)
    return f"{self.__class__.__qualname__}({', '.join(f'{name}={value!r}' for name, value in named)})"
