"""What to buy for windows round motifs, and what bad numbers lead to."""

from __future__ import annotations

from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stitchflip.cutting.motifs import Counting, Motif, Repeat, Window
from stitchflip.cutting.motifs.buying import identical, length_for, purchase_of
from stitchflip.cutting.purchase import Shrinkage
from stitchflip.errors import CuttingError
from tests.twins.table import house

LANTERN = Window(8.25, 8.25, on_point=True)


def test_one_window_surely_takes_its_box_and_one_repeat() -> None:
    """8 1/4 on point reaches 8.25 root 2 = 11.667; with a 12 in repeat 23.667 surely, 11.667 chosen in the shop."""
    found = length_for(Counting(Repeat(12), LANTERN, 40), 1)
    assert [8.25 * sqrt(2) + 12, 8.25 * sqrt(2)] == pytest.approx([found.surely_in, found.chosen_in])
    assert found.is_proved


def test_a_half_drop_print_needs_only_half_a_repeat_more() -> None:
    """Columns 12 apart in 40 in: both levels surely lie whole in the width, so 11.667 + 6."""
    found = length_for(Counting(Repeat(12, 12, half_drop=True), LANTERN, 40), 1)
    assert pytest.approx(8.25 * sqrt(2) + 6) == found.surely_in


def test_columns_side_by_side_save_length() -> None:
    """Box 11.667 in columns of 12: two surely in 40 in, so four windows take two levels: 11.667 + 12, surely + 12."""
    found = length_for(Counting(Repeat(12, 12), LANTERN, 40), 4)
    assert [35.667, 23.667] == pytest.approx([found.surely_in, found.chosen_in], abs=1e-3)


def test_a_width_that_may_hold_no_whole_motif_is_told() -> None:
    """Columns 30 in apart in 40 in: a box of 11.667 may lie cut on both sides, so no length is sure."""
    found = length_for(Counting(Repeat(12, 30), LANTERN, 40), 1)
    assert (None, None) == (found.surely_in, found.chosen_in)


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 9), st.integers(2, 12), st.integers(2, 12), st.integers(0, 5), st.booleans())
def test_the_length_found_is_enough_and_the_next_shorter_one_is_not(
    count: int,
    along: int,
    across: int,
    second: int,
    half_drop: bool,  # noqa: FBT001  drawn
) -> None:
    """A sixteenth of an inch less gives fewer windows, surely and chosen."""
    repeat = Repeat(along, across, half_drop, (Motif(0, 0), Motif(1, second / 2)))
    counting = Counting(repeat, Window(3, 3.5), 21)
    found = length_for(counting, count)
    assert found.surely_in is not None
    assert found.chosen_in is not None
    assert found.chosen_in <= found.surely_in
    assert counting.count(found.surely_in).surely >= count > counting.count(found.surely_in - 1 / 16).surely
    assert counting.chosen(found.chosen_in) >= count > counting.chosen(found.chosen_in - 1 / 16)


def test_the_purchase_goes_up_to_the_shops_step_and_keeps_mistakes_apart() -> None:
    """23.667 + 1 goes up to 3/4 yd; chosen in the shop 12.667 to 3/8 yd; a repeat for mistakes makes 36.667, 1 1/8."""
    plain = purchase_of(Counting(Repeat(12), LANTERN, 40), 1, house())
    safe = purchase_of(Counting(Repeat(12), LANTERN, 40), 1, house(), spare_repeats=1)
    assert plain.surely is not None
    assert plain.chosen is not None
    assert safe.surely is not None
    assert (27, 13.5, 40.5) == (plain.surely.buy_in, plain.chosen.buy_in, safe.surely.buy_in)


def test_washing_first_is_charged() -> None:
    """(23.667 + 1) / 0.95 = 25.96: still 3/4 yd."""
    bought = purchase_of(Counting(Repeat(12), LANTERN, 40), 1, house(), shrinkage=Shrinkage(0.0, 0.05)).surely
    assert bought is not None
    assert pytest.approx((8.25 * sqrt(2) + 13) / 0.95) == bought.need_in


def test_identical_pieces_side_by_side_take_fewer_repeats() -> None:
    """Columns of 12 in 40 in: two of 8 in surely lie whole side by side (32 / 12 = 2.67), so six take three repeats."""
    found = identical(Repeat(21, 12), Window(8, 8), 6, wide=40)
    assert (3, 2, 63, 50) == (found.repeats, found.per_repeat, found.whole_in, found.least_in)


def test_a_window_longer_than_the_repeat_takes_the_next_repeat_too() -> None:
    """8 in from a print of 6: identical pieces lie 12 apart."""
    assert 24 == identical(Repeat(6), Window(8, 8), 2).whole_in


@pytest.mark.parametrize(
    "make",
    [
        lambda: Repeat(0),
        lambda: Repeat(-3),
        lambda: Repeat(float("nan")),
        lambda: Repeat(1e9),
        lambda: Repeat(6, 0),
        lambda: Repeat(6, half_drop=True),
        lambda: Repeat(6, motifs=(Motif(0, 0), Motif(0, 3))),
        lambda: Repeat(6, 6, motifs=(Motif(float("inf"), 0),)),
        lambda: Repeat(6, 6, motifs=(Motif(0, 0, -1),)),
        lambda: Window(0.5, 8),
        lambda: Window(8, float("nan")),
        lambda: Window(8, 8, float("nan")),
        lambda: length_for(Counting(Repeat(6), Window(4, 4), 40), 10**9),
        lambda: Counting(Repeat(6), Window(4, 4), 40).count(float("nan")),
        lambda: Counting(Repeat(1 / 8, 1 / 8), Window(4, 4), 40).count(360),
    ],
)
def test_numbers_that_nobody_can_cut_are_refused(make: object) -> None:
    """Nothing, below nothing, endless, or without the measure it needs: an error with what would do, at once."""
    assert callable(make)
    with pytest.raises(CuttingError) as caught:
        make()
    assert caught.value.fix
    assert caught.value.code.startswith("cutting.")
