"""Quick ways of filling strips, the ones a careful cutter would try at the table.

They prove nothing. Often one of them meets the bound, and then nothing else needs to be asked.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.whole import Packing, Pattern, Task

_MOST_LOOKS = 4000
"""Sizes looked at when one strip is filled as full as it goes."""

_MOST_PIECES = 800
"""With more pieces only the quickest rule is used."""


def quick_packings(task: Task) -> Iterator[Packing]:
    """Complete packings found by simple rules, each at most once per rule.

    Args:
        task: pieces and strips; every piece must fit the longest bought strip.

    Yields:
        Packings in which every piece is cut. A rule that runs out of strips yields nothing.
    """
    is_small = sum(task.demands) <= _MOST_PIECES
    for order in _orders(task):
        for fill in (_first_fit, _best_fit, _fullest) if is_small else (_first_fit,):
            packing = fill(task, order)
            if packing is not None:
                yield packing


def _orders(task: Task) -> list[list[int]]:
    """Ways of taking the kinds on hand one after the other; bought ones always last."""
    on_hand = [number for number, kind in enumerate(task.kinds) if kind.count]
    orders = [on_hand]
    for backwards in (False, True):
        order = sorted(on_hand, key=lambda number: task.kinds[number].length, reverse=backwards)
        if order not in orders:
            orders.append(order)
    return orders


class _Strips:
    """Strips opened so far; the next one comes from the shelf while there is any, then from the bolt."""

    def __init__(self, task: Task, order: Sequence[int]) -> None:
        self.task = task
        self.kinds: list[int] = []
        self.patterns: list[list[int]] = []
        self.rests: list[int] = []
        self.shelf = [number for number in order for _ in range(task.kinds[number].count or 0)]
        bought = [number for number, kind in enumerate(task.kinds) if kind.count is None]
        self.bought = max(bought, key=lambda number: task.kinds[number].length, default=None)

    def next_kind(self, least: int) -> int | None:
        """The next strip at least so long, taken off the shelf if it lies there."""
        for place, number in enumerate(self.shelf):
            if self.task.kinds[number].length >= least:
                return self.shelf.pop(place)
        if self.bought is not None and self.task.kinds[self.bought].length >= least:
            return self.bought
        return None

    def open(self, kind: int) -> int:
        """Open a strip; its place in the lists."""
        self.kinds.append(kind)
        self.patterns.append([0] * len(self.task.sizes))
        self.rests.append(self.task.kinds[kind].length)
        return len(self.kinds) - 1

    def put(self, place: int, size: int, count: int) -> None:
        """Cut so many pieces of one size from an open strip."""
        self.patterns[place][size] += count
        self.rests[place] -= count * self.task.sizes[size]

    def packing(self) -> Packing:
        """What has been opened."""
        return tuple((kind, tuple(pattern)) for kind, pattern in zip(self.kinds, self.patterns, strict=True))


def _first_fit(task: Task, order: Sequence[int]) -> Packing | None:
    """Longest pieces first, each from the first strip that has room."""
    strips = _Strips(task, order)
    for size, length in enumerate(task.sizes):
        left = task.demands[size]
        place = 0
        while left:
            if place == len(strips.rests):
                kind = strips.next_kind(length)
                if kind is None:
                    return None
                strips.open(kind)
            count = min(left, strips.rests[place] // length)
            if count:
                strips.put(place, size, count)
                left -= count
            place += 1
    return strips.packing()


def _best_fit(task: Task, order: Sequence[int]) -> Packing | None:
    """Longest pieces first, each from the strip that it leaves the least of."""
    strips = _Strips(task, order)
    for size, length in enumerate(task.sizes):
        for _ in range(task.demands[size]):
            fitting = [place for place, rest in enumerate(strips.rests) if rest >= length]
            if fitting:
                place = min(fitting, key=lambda place: strips.rests[place])
            else:
                kind = strips.next_kind(length)
                if kind is None:
                    return None
                place = strips.open(kind)
            strips.put(place, size, 1)
    return strips.packing()


def _fullest(task: Task, order: Sequence[int]) -> Packing | None:
    """One strip after the other, each with its longest piece and as full as it goes."""
    strips = _Strips(task, order)
    left = list(task.demands)
    while any(left):
        largest = next(size for size, demand in enumerate(left) if demand)
        kind = strips.next_kind(task.sizes[largest])
        if kind is None:
            return None
        pattern = fullest_pattern(task.sizes, left, largest, task.kinds[kind].length)
        place = strips.open(kind)
        for size, count in enumerate(pattern):
            if count:
                strips.put(place, size, count)
                left[size] -= count
    return strips.packing()


def fullest_pattern(sizes: Sequence[int], left: Sequence[int], largest: int, length: int) -> Pattern:
    """The pattern with the longest wanted piece that fills a strip best, as far as a short search finds it.

    Args:
        sizes: lengths, longest first.
        left: how many of each are still wanted.
        largest: place of the longest size still wanted; it fits.
        length: the strip.
    """
    best: list[int] = []
    best_rest = length + 1
    looks = 0
    counts = [0] * len(sizes)
    counts[largest] = 1

    def look(place: int, rest: int) -> None:
        nonlocal best, best_rest, looks
        if rest < best_rest:
            best, best_rest = counts.copy(), rest
        if best_rest == 0 or looks > _MOST_LOOKS:
            return
        for size in range(place, len(sizes)):
            looks += 1
            if sizes[size] <= rest and counts[size] < left[size]:
                counts[size] += 1
                look(size, rest - sizes[size])
                counts[size] -= 1
                if best_rest == 0 or looks > _MOST_LOOKS:
                    return

    look(largest, length - sizes[largest])
    return tuple(best)
