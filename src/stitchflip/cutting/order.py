"""The order of the hand: what is cut first.

Large before small, because a slip can still be made good from what is left: squares and rectangles, then the
strips from the widest down. What is cut from the list comes before what is trimmed while sewing.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from stitchflip.cutting.model import Piece


def cutting_order(pieces: Iterable[Piece]) -> tuple[Piece, ...]:
    """Pieces of one fabric in the order one cuts them.

    Args:
        pieces: the list, in any order.

    Returns:
        Cut first before cut later; rectangles before strips; widest first; the binding after strips of its
        width; then the order sewn.

    Example:
        >>> from stitchflip.cutting import Piece
        >>> strip, center = Piece("1", 3.5, 12, step=1), Piece("Center", 3, 3, kind="rectangle")
        >>> [piece.name for piece in cutting_order([strip, center])]
        ['Center', '1']
    """
    return tuple(
        sorted(
            pieces,
            key=lambda piece: (
                not piece.cut_first,
                piece.kind != "rectangle",
                -round(piece.wide, 6),
                piece.kind == "binding",
                piece.step,
            ),
        )
    )
