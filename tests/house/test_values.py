"""Our quick data classes behave like the standard library's."""

import copy
import dataclasses
import inspect
import pickle

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


@dataclass(frozen=True, slots=True)
class Heap:
    """A value with a list of its own and one field it works out."""

    pieces: list[int] = dataclasses.field(default_factory=list)
    count: int = dataclasses.field(init=False)

    def __post_init__(self) -> None:
        """Count them."""
        object.__setattr__(self, "count", len(self.pieces))


@dataclass(slots=True)
class Tally:
    """A value that may change."""

    total: int = 0


def test_defaults_are_made_anew_and_what_is_worked_out_is_set() -> None:
    """Two values share no list, and a field without a parameter cannot be given."""
    one, other = Heap(), Heap([1, 2])
    one.pieces.append(3)
    assert [] == Heap().pieces
    assert (0, 2) == (one.count, other.count)
    with pytest.raises(TypeError):
        Heap(count=2)  # type: ignore[call-arg]


def test_a_value_is_made_by_place_by_name_and_not_by_anything_else() -> None:
    """Parameters are the fields in their order; a missing or an unknown one is refused from the first value on."""
    assert Mark(1.0, "here") == Mark(name="here", x=1.0)
    assert ["x", "name"] == list(inspect.signature(Mark).parameters)
    with pytest.raises(TypeError):
        Mark()  # type: ignore[call-arg]
    with pytest.raises(TypeError):
        Mark(1.0, color="red")  # type: ignore[call-arg]


def test_values_can_be_copied_and_pickled() -> None:
    """A copy and a pickled value equal the first and stay frozen."""
    mark = Mark(1.5, "here")
    for again in (copy.copy(mark), copy.deepcopy(mark), pickle.loads(pickle.dumps(mark))):  # noqa: S301  # our own
        assert mark == again
        with pytest.raises(dataclasses.FrozenInstanceError):
            again.x = 2.0  # type: ignore[misc]


def test_a_value_that_is_not_frozen_changes() -> None:
    """It is set like any attribute, and it has no hash."""
    tally = Tally(2)
    tally.total += 1
    assert Tally(3) == tally
    with pytest.raises(TypeError):
        hash(tally)
