"""One length of the full width for all windows round motifs: nothing is cut before the motifs are found on it."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.model import Row, RowStack, StackPiece

if TYPE_CHECKING:
    from stitchflip.cutting.model import Piece

_TOLERANCE = 1e-6


def block_row(piece: Piece, wide: float) -> Row | None:
    """The block that gives a piece's windows, drawn with its windows close together; None when none lies in the width.

    Where the windows really lie is told by the print. The block is never lower than windows that lie close.

    Args:
        piece: with `block_in`, the length in which as many windows as asked surely lie.
        wide: usable width, inches.

    Example:
        >>> from stitchflip.cutting.model import Piece
        >>> row = block_row(Piece("Center", 8, 8, 4, kind="rectangle", block_in=36.0), 20)
        >>> row.height, [len(stack.pieces) for stack in row.stacks]
        (36.0, [2, 2])
    """
    across, along = piece.takes
    columns = min(int((wide + _TOLERANCE) // across), piece.count)
    if columns < 1:
        return None
    levels = ceil(piece.count / columns)
    laid = StackPiece(piece.name, across, along)
    full, over = divmod(piece.count, levels)
    stacks = [RowStack(across, (laid,) * levels)] * full + [RowStack(across, (laid,) * over)] * (over > 0)
    return Row(
        height=max(piece.block_in, levels * along),
        pieces=((piece.name, across),) * piece.count,
        turned=False,
        stacks=tuple(stacks),
    )
