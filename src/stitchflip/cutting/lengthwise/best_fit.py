"""Longest first, each from the strip that it leaves the least of: quick for any number of pieces.

Equal pieces are laid many at once, so a demand of millions takes no longer than one of ten.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stitchflip.cutting.lengthwise.model import Pattern
    from stitchflip.cutting.lengthwise.remaining import Remaining


def best_fit(start: Remaining) -> Remaining | None:
    """Every piece cut; None when the strips are used up.

    Args:
        start: what is wanted; left as it is.
    """
    task = start.task
    counts = start.counts.copy()
    rests: list[int] = []
    groups: dict[int, list[tuple[int, int, Pattern]]] = {}
    """For each rest: (how many strips, kind, pattern)."""
    by_price = sorted(range(len(task.stock)), key=lambda kind: task.stock[kind].cost / task.stock[kind].length)

    def put(strips: int, kind: int, pattern: Pattern, rest: int) -> None:
        if rest not in groups:
            insort(rests, rest)
            groups[rest] = []
        groups[rest].append((strips, kind, pattern))

    for size, (length, demand) in enumerate(zip(task.sizes, start.left, strict=True)):
        left = demand
        while left:
            place = bisect_left(rests, length)
            if place < len(rests):
                rest = rests[place]
                strips, kind, pattern = groups[rest].pop()
                if not groups[rest]:
                    del groups[rest]
                    del rests[place]
            else:
                opened = next((one for one in by_price if counts[one] != 0 and task.stock[one].length >= length), None)
                if opened is None:
                    return None
                kind, pattern, rest = opened, (), task.stock[opened].length
                had = counts[kind]
                strips = left if had is None else min(had, left)
                if had is not None:
                    counts[kind] = had - strips
                unused = strips
            each = min(rest // length, left)
            filled = min(strips, left // each)
            left -= each * filled
            put(filled, kind, (*pattern, (size, each)), rest - each * length)
            if strips > filled:
                if pattern:
                    put(strips - filled, kind, pattern, rest)
                else:
                    had = counts[kind]
                    if had is not None:
                        counts[kind] = had + unused - filled
    done = start.copy()
    for strips, kind, pattern in (one for group in groups.values() for one in group):
        done.cut(kind, pattern, strips)
    return done
