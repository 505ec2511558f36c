"""Exact lengths and the way back to a grid."""

from __future__ import annotations

import dataclasses
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.errors import LengthError
from stitchflip.lengths import TICKS_PER_CM, TICKS_PER_INCH, TOLERANCE_IN, Length, Rounding, round_to

inches = st.floats(min_value=-2000, max_value=2000, allow_nan=False)


def test_one_inch_is_exactly_2_54_centimeters_on_the_grid() -> None:
    """1 in = 25.4 mm exactly (international yard and pound agreement of 1959), so both units share the ticks."""
    assert Fraction(254, 100) == Fraction(TICKS_PER_INCH, TICKS_PER_CM)


def test_a_sixty_fourth_and_a_tenth_of_a_millimeter_are_whole_ticks() -> None:
    """The finest marks of both units are 127 and 32 ticks: 8128 / 64 and 8128 / 254."""
    assert (127, 32) == (Length.of_inches(Fraction(1, 64)).ticks, Length.of_cm(Fraction(1, 100)).ticks)


@pytest.mark.parametrize(
    ("value", "step", "rounding", "expected"),
    [
        (13.331, 0.25, Rounding.UP, 13.5),
        (13.25, 0.25, Rounding.UP, 13.25),
        (13.25 + 1e-7, 0.25, Rounding.UP, 13.25),
        (13.25 + 2e-6, 0.25, Rounding.UP, 13.5),
        (0.7825, 1 / 16, Rounding.DOWN, 0.75),
        (0.8125 - 1e-7, 1 / 16, Rounding.DOWN, 0.8125),
        (0.8125 - 2e-6, 1 / 16, Rounding.DOWN, 0.75),
        (15.556, 1 / 16, Rounding.NEAREST, 15.5625),
        (0.03125, 1 / 16, Rounding.NEAREST, 0.0625),
        (0.03125 - 1e-7, 1 / 16, Rounding.NEAREST, 0.0625),
        (-0.03125, 1 / 16, Rounding.NEAREST, -0.0625),
        (-0.01, 1 / 16, Rounding.DOWN, -0.0625),
        (-0.01, 1 / 16, Rounding.UP, 0.0),
    ],
)
def test_rounding_goes_the_way_it_is_told_and_forgives_a_millionth(
    value: float, step: float, rounding: Rounding, expected: float
) -> None:
    """A value within 1e-6 in of a step is that step; beyond, the direction decides (worked by hand)."""
    assert expected == round_to(value, step, rounding)


@given(value=inches, sixteenths=st.integers(1, 32))
def test_up_and_down_keep_the_value_between_them(value: float, sixteenths: int) -> None:
    """Rounding up is never below the value, rounding down never above, by more than the tolerance."""
    step = sixteenths / 16
    low, high = round_to(value, step, Rounding.DOWN), round_to(value, step, Rounding.UP)
    assert low - TOLERANCE_IN <= value <= high + TOLERANCE_IN
    assert high - low in {0.0, step} or high - low == -0.0


@given(value=inches, sixteenths=st.integers(1, 32), rounding=st.sampled_from(Rounding))
def test_rounding_twice_changes_nothing_more(value: float, sixteenths: int, rounding: Rounding) -> None:
    """A value on the grid stays where it is, whichever direction is named."""
    once = round_to(value, sixteenths / 16, rounding)
    assert {once} == {round_to(once, sixteenths / 16, again) for again in Rounding}


@pytest.mark.parametrize(
    ("value", "step"), [(float("nan"), 1.0), (float("inf"), 1.0), (1.0, 0.0), (1.0, -0.25), (1e300, 1e-300)]
)
def test_what_has_no_place_on_a_grid_is_an_error(value: float, step: float) -> None:
    """No number without end and no step of nothing slips through as a length."""
    with pytest.raises(LengthError) as caught:
        round_to(value, step, Rounding.UP)
    assert "length.off-the-grid" == caught.value.code


@pytest.mark.parametrize("value", [float("nan"), float("-inf")])
def test_no_length_is_made_of_a_number_without_end(value: float) -> None:
    """Inches and centimeters both refuse what is not finite."""
    with pytest.raises(LengthError):
        Length.of_inches(value)
    with pytest.raises(LengthError):
        Length.of_cm(value)


@given(a=st.integers(-(10**9), 10**9), b=st.integers(-(10**9), 10**9), count=st.integers(-1000, 1000))
def test_lengths_add_like_whole_numbers(a: int, b: int, count: int) -> None:
    """Adding, taking away and repeating lengths is exact; ticks are the second way of computing it."""
    assert Length(a + b) == Length(a) + Length(b)
    assert Length(a) == Length(a) + Length(b) - Length(b)
    assert Length(a * count) == Length(a) * count == count * Length(a)
    assert Length(a) + -Length(a) == Length(0)
    assert abs(Length(a)) >= Length(a)


def test_a_length_never_changes() -> None:
    """A length handed out is the same for everybody."""
    with pytest.raises(dataclasses.FrozenInstanceError):
        Length(1).ticks = 2  # type: ignore[misc]


def test_a_length_prints_as_what_builds_it() -> None:
    """The printed value can be typed back."""
    assert Length(20320) == eval(repr(Length.of_inches(2.5)), {"Length": Length})  # noqa: S307  our own text


@pytest.mark.parametrize(("rounding", "ticks"), [(Rounding.DOWN, 2709), (Rounding.NEAREST, 2709), (Rounding.UP, 2710)])
def test_a_third_of_an_inch_goes_to_a_tick_in_the_direction_named(rounding: Rounding, ticks: int) -> None:
    """8128 / 3 = 2709.33 ticks."""
    assert ticks == Length.of_inches(Fraction(1, 3), rounding).ticks


def test_inches_and_centimeters_are_two_views_of_one_length() -> None:
    """6.5 cm is 6.5 / 2.54 in."""
    length = Length.of_cm(6.5)
    assert 6.5 == length.cm
    assert pytest.approx(6.5 / 2.54, abs=1e-12) == length.inches
