"""Windows in whole rows across the fabric: never more than can be had, but every one cut from edge to edge."""

from __future__ import annotations

from bisect import bisect_right
from typing import TYPE_CHECKING

from stitchflip.cutting.motifs.model import TOLERANCE, Window

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.motifs.counting import Place


def in_rows(places: Sequence[Place], window: Window) -> tuple[int, ...]:
    """The most windows that lie in rows, none of which reaches into the next.

    Args:
        places: where windows could be cut.
        window: what is cut.

    Returns:
        Numbers of the places chosen.

    Example:
        >>> from stitchflip.cutting.motifs.counting import Place
        >>> in_rows([Place(2, 2, 0, 0, 0), Place(7, 3, 1, 0, 0), Place(2, 7, 0, 1, 0)], Window(4, 4))
        (0, 2)
    """
    across, along = window.box
    levels: dict[float, list[int]] = {}
    for number, place in enumerate(places):
        levels.setdefault(round(place.y, 5), []).append(number)
    heights = sorted(levels)
    best: list[tuple[int, tuple[int, ...]]] = [(0, ())]
    for at, height in enumerate(heights):
        row = _side_by_side([(places[n].x, n) for n in levels[height]], across)
        before = best[bisect_right(heights, height - along + TOLERANCE, hi=at)]
        with_row = (before[0] + len(row), (*before[1], *row))
        best.append(max(best[-1], with_row, key=lambda choice: choice[0]))
    return tuple(sorted(best[-1][1]))


def _side_by_side(row: Sequence[tuple[float, int]], across: float) -> list[int]:
    """As many of a row as do not overlap, from the left."""
    taken: list[int] = []
    reached = float("-inf")
    for x, number in sorted(row):
        if x >= reached - TOLERANCE:
            taken.append(number)
            reached = x + across
    return taken
