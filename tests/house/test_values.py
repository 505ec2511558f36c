"""Our quick data classes behave like the standard library's."""

import dataclasses

import pytest

from stitchflip.values import dataclass


@dataclass(frozen=True, slots=True)
class Mark:
    """A place with a name."""

    x: float
    name: str = "mark"


@dataclass(frozen=True, slots=True)
class Other:
    """The same fields under another name."""

    x: float
    name: str = "mark"


@dataclasses.dataclass(frozen=True, slots=True)
class Standard:
    """What the standard decorator makes of the same fields."""

    x: float
    name: str = "mark"


def test_equal_values_are_equal_and_one_in_a_set() -> None:
    """Same class and fields: equal with one hash; another value or another class is not."""
    assert Mark(1.0) == Mark(1.0)
    assert {Mark(1.0)} == {Mark(1.0), Mark(1.0, "mark")}
    assert Mark(1.0) != Mark(2.0)
    assert repr(Mark(1.0)) != repr(Other(1.0))
    assert len({Mark(1.0), Other(1.0)}) == 2


def test_a_value_prints_as_the_standard_one_does() -> None:
    """The printed form names every field, like the standard library's."""
    assert repr(Standard(1.5)).replace("Standard", "Mark") == repr(Mark(1.5))


def test_a_value_is_frozen_slotted_and_can_be_replaced() -> None:
    """No field can be set, no attribute added; `replace` makes a changed copy."""
    mark = Mark(1.0)
    with pytest.raises(dataclasses.FrozenInstanceError):
        mark.x = 2.0  # type: ignore[misc]

    assert not hasattr(mark, "__dict__")
    assert Mark(2.0) == dataclasses.replace(mark, x=2.0)
    assert ["x", "name"] == [field.name for field in dataclasses.fields(mark)]
