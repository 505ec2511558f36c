"""The order of the hand: large first."""

from __future__ import annotations

from stitchflip.cutting import Piece, cutting_order
from tests.cutting.lists import binding, strips


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
