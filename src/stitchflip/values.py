"""Data classes that are quick to define.

A command imports nearly two hundred small value classes, and the standard decorator compiles five or six functions
for each, which is a fifth of the time until the first line appears. Here the functions that are the same for every
class (equality, hash, printed form, refusing to change) are shared, and `__init__` is compiled when a class makes
its first value, which half of them never do in one command. Fields and slots stay the standard library's, so
classes made here are real data classes: `replace` and `fields` work, copying and pickling too, and type checkers
see the standard decorator.
"""

from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING, Any

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
            cls.__init__ = _FirstValue(frozen=frozen)
            if frozen:
                cls.__setattr__, cls.__delattr__ = _refuse_to_set, _refuse_to_delete
                cls.__getstate__, cls.__setstate__ = _state, _restore
            return dataclasses.dataclass(slots=slots, init=False, eq=False, repr=False)(cls)

        return decorate


_MISSING = object()


class _FirstValue:
    """Stands for `__init__` until a class makes its first value, and writes it then."""

    def __init__(self, *, frozen: bool) -> None:
        self._is_frozen = frozen

    def __get__(self, value: object, owner: type) -> object:
        """The class's own `__init__`, which from now on stands here."""
        init = _written_init(owner, is_frozen=self._is_frozen)
        owner.__init__ = init  # type: ignore[misc]  # that is the point
        return init if value is None else init.__get__(value, owner)


def _written_init(cls: type[DataclassInstance], *, is_frozen: bool) -> Callable[..., None]:
    """What the standard decorator would write: parameters with their defaults, then one assignment a field."""
    known: dict[str, Any] = {"_set": object.__setattr__, "_missing": _MISSING}
    parameters, lines = ["self"], []
    for field in dataclasses.fields(cls):
        name, told = field.name, field.name
        if field.default is not dataclasses.MISSING:
            known[f"_default_{name}"] = field.default
            parameters += [f"{name}=_default_{name}"] if field.init else []
            told = name if field.init else f"_default_{name}"
        elif field.default_factory is not dataclasses.MISSING:
            known[f"_make_{name}"] = field.default_factory
            parameters += [f"{name}=_missing"] if field.init else []
            told = f"_make_{name}() if {name} is _missing else {name}" if field.init else f"_make_{name}()"
        elif field.init:
            parameters.append(name)
        else:
            continue
        lines.append(f"_set(self, {name!r}, {told})" if is_frozen else f"self.{name} = {told}")
    if hasattr(cls, "__post_init__"):
        lines.append("self.__post_init__()")
    exec(f"def __init__({', '.join(parameters)}):\n " + "\n ".join(lines or ["pass"]), known)  # noqa: S102  # our own text, as the library does
    init: Callable[..., None] = known["__init__"]
    init.__qualname__ = f"{cls.__qualname__}.__init__"
    init.__module__ = cls.__module__
    init.__annotations__ = {field.name: field.type for field in dataclasses.fields(cls) if field.init}
    return init


def _refuse_to_set(_self: DataclassInstance, name: str, _value: object) -> None:
    """No field of a frozen value changes."""
    said = f"cannot assign to field {name!r}"
    raise dataclasses.FrozenInstanceError(said)


def _refuse_to_delete(_self: DataclassInstance, name: str) -> None:
    """No field of a frozen value goes away."""
    said = f"cannot delete field {name!r}"
    raise dataclasses.FrozenInstanceError(said)


def _state(self: DataclassInstance) -> list[object]:
    """What a copy or a pickle keeps."""
    return [getattr(self, name) for name in self.__dataclass_fields__]


def _restore(self: DataclassInstance, state: list[object]) -> None:
    """A copy or a pickle as it was."""
    for name, value in zip(self.__dataclass_fields__, state, strict=True):
        object.__setattr__(self, name, value)


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
