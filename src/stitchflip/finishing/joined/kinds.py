"""Different kinds of block in one quilt: how many of each, and which lies where.

A kind is counted from 0 in the order of the project's blocks; in the project file and in words from 1.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from stitchflip.project.model import Block, Joined, Setting


def places_of_kinds(blocks: Sequence[Block], joined: Joined, counts: Sequence[int]) -> tuple[tuple[int, ...], ...]:
    """The kind of block in every place, row by row from the top.

    Args:
        blocks: The kinds of block; with none or one, all are alike.
        joined: For the rows as the maker laid them.
        counts: Places in each row from the top; on point the rows between count too.

    Returns:
        Indexes into the kinds. A place the maker left out, or gave to a kind that is not there, is filled in turn.
    """
    if len(blocks) < 2:
        return tuple((0,) * count for count in counts)
    laid = laid_kinds(joined, len(blocks))
    wanted = Counter(dict(enumerate(wanted_counts(blocks, sum(counts)))))
    given = [
        [laid[row][place] if row < len(laid) and place < len(laid[row]) else None for place in range(count)]
        for row, count in enumerate(counts)
    ]
    wanted.subtract(kind for row in given for kind in row if kind is not None)
    filled: list[tuple[int, ...]] = []
    for row, kinds in enumerate(given):
        here: list[int] = []
        for place, laid_kind in enumerate(kinds):
            if laid_kind is not None:
                here.append(laid_kind)
                continue
            beside = (*here[-1:], *_above(filled, place))
            here.append(_in_turn(wanted, _turn(joined, row, place) % len(blocks), beside))
            wanted[here[-1]] -= 1
        filled.append(tuple(here))
    return tuple(filled)


def _turn(joined: Joined, row: int, place: int) -> int:
    """Whose turn it is: a checkerboard, which on point is the rows and the rows between."""
    return row if joined.setting is Setting.ON_POINT else row + place


def _above(filled: list[tuple[int, ...]], place: int) -> tuple[int, ...]:
    return filled[-1][place : place + 1] if filled else ()


def _in_turn(left: Counter[int], turn: int, beside: tuple[int, ...]) -> int:
    """The kind whose turn it is, while there are some left; else the one most are left of, not beside itself."""
    if left[turn] > 0:
        return turn
    return max(left, key=lambda kind: (left[kind] > 0, kind not in beside, left[kind], -kind))


def row_counts(joined: Joined) -> tuple[int, ...]:
    """Blocks in each row from the top; on point the rows between the others count too and have one fewer.

    Args:
        joined: How the blocks lie.
    """
    if joined.setting is Setting.STRAIGHT:
        return (joined.across,) * joined.down
    return tuple(joined.across - row % 2 for row in range(2 * joined.down - 1) if joined.across - row % 2)


def laid_kinds(joined: Joined, kinds: int) -> tuple[tuple[int | None, ...], ...]:
    """The rows of places as the maker wrote them; None for a kind that is not there.

    Args:
        joined: For the rows of places.
        kinds: How many kinds of block there are.
    """
    rows = ([int(number) - 1 for number in re.findall(r"[0-9]{1,9}", line)] for line in joined.places)
    return tuple(tuple(kind if 0 <= kind < kinds else None for kind in row) for row in rows)


def wanted_counts(blocks: Sequence[Block], places: int) -> tuple[int, ...]:
    """How many of each kind: as given, the others sharing the rest evenly, earlier kinds one more.

    Args:
        blocks: The kinds of block.
        places: Blocks in the whole quilt.

    Returns:
        One count for each kind; they add up to the places unless the given ones do not.
    """
    rest = max(0, places - sum(block.count for block in blocks if block.count is not None))
    sharing = sum(block.count is None for block in blocks)
    each, more = divmod(rest, sharing) if sharing else (0, 0)
    counts = []
    for block in blocks:
        if block.count is not None:
            counts.append(block.count)
        else:
            counts.append(each + (1 if more > 0 else 0))
            more -= 1
    return tuple(counts)
