"""Longest first, each from the strip that it leaves the least of: quick for any number of pieces.

Equal pieces are laid many at once, so a demand of millions takes no longer than one of ten.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stitchflip.cutting.lengthwise.model import Pattern
    from stitchflip.cutting.lengthwise.remaining import Remaining

    Alike = tuple[int, int, Pattern]
    """So many strips, of one kind, cut alike so far."""


def best_fit(start: Remaining) -> Remaining | None:
    """Every piece cut; None when the strips are used up.

    Args:
        start: what is wanted; left as it is.
    """
    table = _Table(start)
    for size, (length, demand) in enumerate(zip(start.task.sizes, start.left, strict=True)):
        left = demand
        while left:
            taken = table.take(length, left)
            if taken is None:
                return None
            (strips, kind, pattern), rest = taken
            each = min(rest // length, left)
            filled = min(strips, left // each)
            left -= each * filled
            table.put((filled, kind, (*pattern, (size, each))), rest - each * length)
            table.put((strips - filled, kind, pattern), rest)
    done = start.copy()
    for strips, kind, pattern in table.all_cut():
        done.cut(kind, pattern, strips)
    return done


class _Table:
    """Opened strips by what is left of them, and those still closed."""

    def __init__(self, start: Remaining) -> None:
        self.stock = start.task.stock
        self.counts = start.counts.copy()
        self.rests: list[int] = []
        self.alike: dict[int, list[Alike]] = {}
        self.by_price = sorted(range(len(self.stock)), key=lambda kind: self.stock[kind].cost / self.stock[kind].length)

    def take(self, length: int, most: int) -> tuple[Alike, int] | None:
        """Strips with the shortest rest that is long enough, and that rest; else up to so many fresh ones."""
        place = bisect_left(self.rests, length)
        if place < len(self.rests):
            rest = self.rests[place]
            group = self.alike[rest]
            one = group.pop()
            if not group:
                del self.alike[rest], self.rests[place]
            return one, rest
        for kind in self.by_price:
            count = self.counts[kind]
            if count != 0 and self.stock[kind].length >= length:
                strips = most if count is None else min(count, most)
                if count is not None:
                    self.counts[kind] = count - strips
                return (strips, kind, ()), self.stock[kind].length
        return None

    def put(self, strips: Alike, rest: int) -> None:
        """Lay strips back; those not cut from count as closed again."""
        number, kind, pattern = strips
        if not number:
            return
        if not pattern:
            count = self.counts[kind]
            if count is not None:
                self.counts[kind] = count + number
            return
        if rest not in self.alike:
            insort(self.rests, rest)
            self.alike[rest] = []
        self.alike[rest].append(strips)

    def all_cut(self) -> list[Alike]:
        """All strips cut from."""
        return [one for group in self.alike.values() for one in group]
