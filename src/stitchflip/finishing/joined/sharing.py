"""Blocks of unequal size: which to lay together so that least is trimmed off.

All blocks of a column are trimmed to its narrowest and all of a row to its lowest, so of the fabric that is there
remains (sum of the column widths) x (sum of the row heights). Sorting the widths alone is not enough, because a
block's height comes with it: what must be asked is whether the blocks can be dealt out to columns and rows of given
sizes, each at least as large as its place. That question has a quick exact answer; the search goes through the
sizes worth asking, the largest first.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Iterator, Sequence
from itertools import islice

from stitchflip.lengths import TOLERANCE_IN
from stitchflip.values import dataclass

_Size = tuple[float, float]
_MOST_LISTS = 4000
"""No more lists of column widths (or row heights) are looked through."""
_MOST_DEALT = 200_000
"""No more blocks are dealt out in all tries together."""
_Dealing = tuple[tuple[float, ...], tuple[float, ...], tuple[int, ...]]
"""Column widths, row heights, and the block of each place."""


@dataclass(frozen=True, slots=True)
class Sharing:
    """Blocks dealt out to columns and rows; inches."""

    columns: tuple[float, ...]
    """Width of each column, the widest first."""
    rows: tuple[float, ...]
    """Height of each row, the highest first."""
    cells: tuple[int, ...]
    """Which block lies where, row by row from the top: its place in the list of blocks."""
    is_proved: bool
    """True: no other dealing leaves more."""

    @property
    def kept(self) -> float:
        """Sum of column widths times sum of row heights, square inches."""
        return sum(self.columns) * sum(self.rows)


def share(blocks: Sequence[_Size], across: int, down: int) -> Sharing:
    """The dealing that keeps most of the blocks.

    Args:
        blocks: (wide, high) of each block as measured, inches; across x down of them.
        across: Columns.
        down: Rows.

    Returns:
        Columns from the widest and rows from the highest, with the block of each place. Proved to be the best
        unless the blocks differ in so many ways that the search had to stop.

    Example:
        >>> share([(8, 8), (9, 8), (8, 8), (9, 8)], 2, 2)
        Sharing(columns=(9, 8), rows=(8, 8), cells=(1, 0, 3, 2), is_proved=True)
    """
    columns, all_columns = _lists([wide for wide, _ in blocks], across, down)
    rows, all_rows = _lists([high for _, high in blocks], down, across)
    best = max(_sorted_deals(blocks, across, down), key=_kept)
    left = max(1, _MOST_DEALT // len(blocks))
    for wide in columns:
        for high in rows:
            if left == 0 or sum(wide) * sum(high) <= _kept(best) + TOLERANCE_IN:
                break
            left -= 1
            cells = dealt(blocks, wide, high)
            if cells is not None:
                best = (wide, high, cells)
                break
    return Sharing(*best, is_proved=all_columns and all_rows and left > 0)


def _kept(dealing: _Dealing) -> float:
    return sum(dealing[0]) * sum(dealing[1])


def _sorted_deals(blocks: Sequence[_Size], across: int, down: int) -> Iterator[_Dealing]:
    """Two good dealings to begin with: like widths to a column, the highest first; like heights to a row likewise."""
    by_width = sorted(range(len(blocks)), key=lambda index: (-blocks[index][0], -blocks[index][1], index))
    columns = [
        sorted(by_width[column * down : (column + 1) * down], key=lambda index: (-blocks[index][1], index))
        for column in range(across)
    ]
    yield _as_laid(blocks, [[column[row] for column in columns] for row in range(down)])
    by_height = sorted(range(len(blocks)), key=lambda index: (-blocks[index][1], -blocks[index][0], index))
    yield _as_laid(
        blocks,
        [
            sorted(by_height[row * across : (row + 1) * across], key=lambda index: (-blocks[index][0], index))
            for row in range(down)
        ],
    )


def _as_laid(blocks: Sequence[_Size], rows: list[list[int]]) -> _Dealing:
    """What blocks laid so are trimmed to."""
    columns = tuple(min(blocks[row[column]][0] for row in rows) for column in range(len(rows[0])))
    heights = tuple(min(blocks[index][1] for index in row) for row in rows)
    return columns, heights, tuple(index for row in rows for index in row)


def _lists(sizes: list[float], count: int, each: int) -> tuple[list[tuple[float, ...]], bool]:
    """Column widths that the blocks allow, looked at one way only: the largest sum first, and whether all are there.

    The k-th widest column needs k x `each` blocks at least as wide.
    """
    falling = sorted(sizes, reverse=True)
    found = list(islice(_falling(falling, count, each), _MOST_LISTS + 1))
    return sorted(found[:_MOST_LISTS], key=sum, reverse=True), len(found) <= _MOST_LISTS


def _falling(sizes: list[float], count: int, each: int) -> Iterator[tuple[float, ...]]:
    """Every list of falling sizes, the k-th at most the size that k x each blocks reach; large ones early."""
    values = sorted(set(sizes), reverse=True)

    def longer(made: tuple[float, ...], start: int) -> Iterator[tuple[float, ...]]:
        if len(made) == count:
            yield made
            return
        most = sizes[(len(made) + 1) * each - 1]
        for index in range(start, len(values)):
            if values[index] <= most:
                yield from longer((*made, values[index]), index)

    yield from longer((), 0)


def dealt(blocks: Sequence[_Size], columns: Sequence[float], rows: Sequence[float]) -> tuple[int, ...] | None:
    """Which block goes where so that each is at least as large as its place; None when that cannot be.

    Going from the widest column to the narrowest, every place takes the lowest block that is high enough of those
    wide enough: what it leaves over is worth most to the places still to come.

    Args:
        blocks: (wide, high) of each block, inches.
        columns: Widths, the widest first.
        rows: Heights.

    Returns:
        Places in the list of blocks, row by row.

    Example:
        >>> dealt([(8, 9), (9, 8)], [9, 8], [8])
        (1, 0)
    """
    waiting = sorted(range(len(blocks)), key=lambda index: -blocks[index][0])
    pool: list[tuple[float, int]] = []
    cells = [0] * (len(columns) * len(rows))
    order = sorted(range(len(columns)), key=lambda index: -columns[index])
    next_one = 0
    for column in order:
        while next_one < len(waiting) and blocks[waiting[next_one]][0] >= columns[column] - TOLERANCE_IN:
            index = waiting[next_one]
            insort(pool, (blocks[index][1], index))
            next_one += 1
        for row in sorted(range(len(rows)), key=lambda index: -rows[index]):
            at = bisect_left(pool, (rows[row] - TOLERANCE_IN, -1))
            if at == len(pool):
                return None
            cells[row * len(columns) + column] = pool.pop(at)[1]
    return tuple(cells)
