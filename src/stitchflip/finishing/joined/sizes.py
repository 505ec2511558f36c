"""How large blocks become when they are joined, and where each of them lies.

A block gives up a seam at each edge that is joined; what shows between two blocks comes back. The strips are cut to
the blocks as measured: sewn on long and cut off afterwards, a strip stretches or eases and the rows no longer meet.
"""

from __future__ import annotations

from collections.abc import Sequence

from stitchflip.errors import BuildError
from stitchflip.lengths import TOLERANCE_IN, in_both_units
from stitchflip.piecing.geometry import box
from stitchflip.piecing.model import Polygon
from stitchflip.values import dataclass


def row_length(blocks: Sequence[float], between: float, seam: float) -> float:
    """A row of blocks, raw edge to raw edge: the sum of T - 2a, what shows between them, and the two outer seams.

    Args:
        blocks: Squared-up size of each block along the row, inches.
        between: What shows between two blocks (0 for a plain seam), inches.
        seam: Seam as stitched, inches.

    Returns:
        Inches, both outer seam allowances in it; they go under the binding or into a border.

    Example:
        >>> row_length([13] * 4, 0.625, 0.25), row_length([8.5] * 4, 0, 0.25)
        (52.375, 32.5)
    """
    return sum(size - 2 * seam for size in blocks) + (len(blocks) - 1) * between + 2 * seam


@dataclass(frozen=True, slots=True)
class Grid:
    """Straight rows and columns of blocks about the middle of the whole; inches."""

    columns: tuple[float, ...]
    """Squared-up width of the blocks of each column, from the left."""
    rows: tuple[float, ...]
    """Squared-up height of the blocks of each row, from the top."""
    between: float
    """From seam line to seam line of two neighbors."""
    seam: float

    @property
    def wide(self) -> float:
        """Raw edge to raw edge."""
        return row_length(self.columns, self.between, self.seam)

    @property
    def high(self) -> float:
        """Raw edge to raw edge."""
        return row_length(self.rows, self.between, self.seam)

    def column(self, index: int) -> tuple[float, float]:
        """Raw edges of a column, left and right."""
        return _raw_edges(self.columns, self.between, self.seam, index, -self.wide / 2)

    def row(self, index: int) -> tuple[float, float]:
        """Raw edges of a row, lower and upper; row 0 lies at the top."""
        high, low = (-place for place in _raw_edges(self.rows, self.between, self.seam, index, -self.high / 2))
        return low, high

    def column_shown(self, index: int) -> tuple[float, float]:
        """What of a column lies between its seams, out to the raw edge at the outside."""
        return _shown(self.column(index), self.wide / 2, self.seam)

    def row_shown(self, index: int) -> tuple[float, float]:
        """What of a row lies between its seams, out to the raw edge at the outside."""
        return _shown(self.row(index), self.high / 2, self.seam)

    def right_of(self, column: int) -> tuple[float, float]:
        """From seam line to seam line between a column and the next, left and right."""
        return self.column(column)[1] - self.seam, self.column(column + 1)[0] + self.seam

    def below(self, row: int) -> tuple[float, float]:
        """From seam line to seam line between a row and the next, lower and upper."""
        return self.row(row + 1)[1] - self.seam, self.row(row)[0] + self.seam


def _raw_edges(sizes: Sequence[float], between: float, seam: float, index: int, start: float) -> tuple[float, float]:
    before = start + sum(size - 2 * seam + between for size in sizes[:index])
    return before, before + sizes[index]


def _shown(raw: tuple[float, float], half: float, seam: float) -> tuple[float, float]:
    low, high = raw
    return (
        low if low <= -half + TOLERANCE_IN else low + seam,
        high if high >= half - TOLERANCE_IN else high - seam,
    )


def area_between(x: tuple[float, float], y: tuple[float, float]) -> Polygon:
    """The rectangle between two places each way; nothing when it has no width or height.

    Example:
        >>> area_between((0, 2), (1, 1))
        ()
    """
    if x[1] - x[0] <= TOLERANCE_IN or y[1] - y[0] <= TOLERANCE_IN:
        return ()
    return box((x[0], y[0]), (x[1], y[1]))


def check_sizes(sizes: Sequence[float], seam: float) -> None:
    """Refuse blocks that their own seams use up.

    Args:
        sizes: Squared-up sizes, inches.
        seam: Seam as stitched, inches.

    Raises:
        BuildError: If a block is no larger than its two seams.
    """
    least = min(sizes)
    if least - 2 * seam <= TOLERANCE_IN:
        raise BuildError(
            what=f"a block of {in_both_units(least)} is used up by its two seams of {in_both_units(seam)}",
            fix="Square the blocks up larger, or measure them again, raw edge to raw edge.",
            where="squared_up, joined.measured",
            code="build.block-too-small",
        )
