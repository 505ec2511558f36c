"""The order of the hand: large first, and what is left after each cut."""

from __future__ import annotations

import pytest

from stitchflip.cutting import Piece, cuts_in_order, cutting_order
from tests.cutting.lists import binding, fabric, planned, strips
from tests.twins.table import house


def test_large_pieces_are_cut_before_small_ones() -> None:
    """The center, then strips from the widest down, the binding after strips of its width, what waits last."""
    pieces = (
        *strips(1.5, 9, first=1),
        binding(2.5, 40, 3),
        *strips(2.5, 11, 12, first=5),
        Piece("Center", 8, 8, kind="rectangle"),
        Piece("9", 4, 12, step=9, cut_first=False),
    )

    assert ["Center", "5", "6", "Binding", "1", "9"] == [piece.name for piece in cutting_order(pieces)]


def test_fabric_left_shrinks_with_each_cut() -> None:
    """18 in bought, half an inch straightened; a row of 4, two strips of 3 1/4, two of 2 1/2: 2 in are left."""
    pieces = (
        Piece("Center", 4, 4, kind="rectangle"),
        *strips(3.25, 30, 30),
        binding(2.5, 40, 2),
    )
    plan = planned(fabric(), pieces)

    assert (15.5 + 1, 18) == (plan.need_in, plan.buy_in)
    assert [
        (1, "row", 4, 1, 17.5, 13.5),
        (2, "strip", 3.25, 2, 13.5, 7),
        (3, "strip", 2.5, 2, 7, 2),
    ] == [
        (step.number, step.what, step.wide, step.count, step.before_in, step.after_in) for step in cuts_in_order(plan)
    ]


def test_washed_length_is_what_is_cut() -> None:
    """9 in bought lose 2 % in the wash: 8.82 in less half an inch stand before the first cut."""
    plan = planned(fabric(), strips(2, 30, 30), house(prewash_along=0.02))

    assert 9 * 0.98 - 0.5 == pytest.approx(cuts_in_order(plan)[0].before_in)


def test_nothing_bought_is_nothing_to_cut_across() -> None:
    """What comes from the shelf is not cut from a new length."""
    on_hand = [{"name": "fat quarter", "wide": "17 1/2", "long": "20 1/2"}]

    assert () == cuts_in_order(planned(fabric(on_hand=on_hand, only_on_hand=True), strips(2, 13)))
