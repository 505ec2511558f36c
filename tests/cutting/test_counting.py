"""Counting alone: what it forbids is forbidden, and what fits it lets pass."""

from __future__ import annotations

from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stitchflip.cutting import plan_fabric
from stitchflip.cutting.closer import Closer, cut_closer
from stitchflip.cutting.counting import is_too_much_for
from stitchflip.cutting.laying import Lot
from stitchflip.cutting.layouts.watch import Watch
from stitchflip.lengths import Unit
from stitchflip.project.model import Working
from tests.cutting.lists import YARD, binding, fabric, strips
from tests.twins.table import house


def lot(across: float, along: float, count: int, *, can_turn: bool = True) -> Lot:
    """Pieces of one size."""
    return Lot("piece", across, along, count, can_turn)


@pytest.mark.parametrize(
    ("lots", "length", "is_too_much"),
    [
        # Three whole strips take 7½ of 12½; in 5 in no 11 stands, so 14 + 14 + 11 + 11 = 50 lie in one row of 40.
        ([lot(40, 2.5, 3), lot(14, 3.25, 2), lot(11, 3.25, 2)], 12.5, True),
        # One row more, 3¼: 7½ + 6½ = 14.
        ([lot(40, 2.5, 3), lot(14, 3.25, 2), lot(11, 3.25, 2)], 14, False),
        # 10 × 11½ lies in 8 in neither way.
        ([lot(11.5, 10, 1)], 8, True),
        # Nothing fits beside 38 when the narrowest piece is 3: 2 + 3 > 4½.
        ([lot(38, 2, 1), lot(9, 3, 1, can_turn=False)], 4.5, True),
        # A piece of 2 fits beside it, turned.
        ([lot(38, 2, 1), lot(2, 3, 1)], 4.5, False),
        # Three squares of 3 over one another do not stand in 8, so two rows: 27 of them are 81 in, more than 80.
        ([lot(3, 3, 27)], 8, True),
        ([lot(3, 3, 26)], 8, False),
        # Of pieces wider than half the fabric two never lie side by side: 3 × 4 = 12.
        ([lot(21, 4, 3, can_turn=False), lot(5, 1, 2)], 11.5, True),
        ([], 0, False),
    ],
)
def test_counting_by_hand(lots: list[Lot], length: float, *, is_too_much: bool) -> None:
    """Fabric 40 in wide."""
    assert is_too_much == is_too_much_for(lots, 40, length)


@given(
    st.lists(
        st.lists(st.tuples(st.integers(1, 12), st.integers(1, 9)), min_size=1, max_size=5), min_size=1, max_size=5
    ),
    st.booleans(),
)
def test_what_was_laid_is_never_refused(rows: list[list[tuple[int, int]]], can_turn: bool) -> None:  # noqa: FBT001
    """Pieces side by side in rows over one another fit into the fabric they were laid on, told either way round."""
    width = max(sum(across for across, _ in row) for row in rows)
    length = sum(max(along for _, along in row) for row in rows)
    laid = [piece for row in rows for piece in row]
    lots = [
        lot(*(piece[::-1] if can_turn and place % 2 else piece), 1, can_turn=can_turn)
        for place, piece in enumerate(laid)
    ]

    assert not is_too_much_for(lots, width, length)


def test_a_step_that_counting_refuses_is_proved_without_a_search() -> None:
    """Binding 3 × 2½ and strips of 3¼, 14 + 14 + 11 + 11: 15 in, ½ yd; the 12½ in of ⅜ yd hold 3 + 1 rows, not 5."""
    pieces = (*strips(3.25, 14, 14, 11, 11), binding(2.5, 40, 3))
    everyday = plan_fabric(fabric(), pieces, house(), Working.CUT_FIRST, Unit.INCH)
    found = cut_closer(fabric(), pieces, house(), Unit.INCH, everyday, partial(Watch, 0.0))

    assert Closer(None, 2, 0.0, YARD / 2, is_proved=True, settings=0) == found
