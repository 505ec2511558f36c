"""Can these pieces come from these strips at all? Tried out completely, within a number of looks.

The longest piece must come from some strip, so the search asks what else that strip gives. Only patterns
into which nothing more fits are tried, and none that leaves more than all strips together can spare.
The answer is yes with a packing, no, or "not decided"; never a guess.
"""

from __future__ import annotations

from enum import Enum
from typing import TYPE_CHECKING

from stitchflip.cutting.bounds import fewest_for
from stitchflip.cutting.whole import Kind, Packing, Pattern, Task
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_MOST_SIZES = 200
"""With more different lengths a complete search is hopeless."""


class Verdict(Enum):
    """What a complete search found out."""

    YES = "yes"
    NO = "no"
    UNDECIDED = "undecided"


@dataclass(frozen=True, slots=True)
class Trial:
    """A verdict, with the packing when it is yes."""

    verdict: Verdict
    packing: Packing = ()


class _TooLong(Exception):  # noqa: N818  no error: the search gives up
    """The looks are used up."""


def try_out(task: Task, new_strips: int, looks: int) -> Trial:
    """Whether the pieces come from the strips on hand and so many bought ones.

    Args:
        task: pieces and strips; of several bought kinds only the longest is used.
        new_strips: bought strips allowed.
        looks: how many strips may be filled on trial before giving up.

    Returns:
        The verdict; a "no" is certain.
    """
    if len(task.sizes) > _MOST_SIZES:
        return Trial(Verdict.UNDECIDED)
    searcher = _Searcher(task, looks)
    try:
        packing = searcher.run(new_strips)
    except _TooLong:
        return Trial(Verdict.UNDECIDED)
    return Trial(Verdict.NO) if packing is None else Trial(Verdict.YES, packing)


class _Searcher:
    def __init__(self, task: Task, looks: int) -> None:
        self.sizes = task.sizes
        self.demands = task.demands
        self.kinds = task.kinds
        self.looks = looks
        self.dead: set[tuple[Pattern, tuple[int, ...]]] = set()
        bought = [number for number, kind in enumerate(task.kinds) if kind.count is None]
        self.bought = max(bought, key=lambda number: task.kinds[number].length, default=None)

    def run(self, new_strips: int) -> Packing | None:
        counts = [kind.count or 0 for kind in self.kinds]
        if self.bought is not None:
            counts[self.bought] = new_strips
        return self.complete(self.demands, tuple(counts))

    def complete(self, left: Pattern, counts: tuple[int, ...]) -> Packing | None:
        """A packing of what is left, or None when there is none."""
        largest = next((size for size, demand in enumerate(left) if demand), None)
        if largest is None:
            return ()
        if (left, counts) in self.dead or self._cannot(left, counts):
            return None
        wanted = sum(size * demand for size, demand in zip(self.sizes, left, strict=True))
        room = sum(kind.length * count for kind, count in zip(self.kinds, counts, strict=True))
        for number in self._kinds_for(self.sizes[largest], counts):
            after = tuple(count - (place == number) for place, count in enumerate(counts))
            for pattern in self._patterns(left, largest, self.kinds[number].length, room - wanted):
                rest = tuple(demand - cut for demand, cut in zip(left, pattern, strict=True))
                found = self.complete(rest, after)
                if found is not None:
                    return ((number, pattern), *found)
        self.dead.add((left, counts))
        return None

    def _kinds_for(self, length: int, counts: Sequence[int]) -> list[int]:
        """Kinds with a strip left that holds the piece; on hand before bought, each length once."""
        fitting = [number for number, count in enumerate(counts) if count and self.kinds[number].length >= length]
        return sorted(fitting, key=lambda number: (self.kinds[number].count is None, self.kinds[number].length))

    def _cannot(self, left: Sequence[int], counts: Sequence[int]) -> bool:
        """True when a bound already says that the strips are not enough."""
        available = [Kind(kind.length, count) for kind, count in zip(self.kinds, counts, strict=True) if count]
        if not available:
            return True
        longest = max(kind.length for kind in available)
        return fewest_for(self.sizes, left, [*available, Kind(longest, None)]) > 0

    def _patterns(self, left: Sequence[int], largest: int, length: int, slack: int) -> Iterator[Pattern]:
        """Patterns with the longest piece into which nothing more fits, fullest first."""
        found: list[tuple[int, Pattern]] = []
        counts = [0] * len(self.sizes)
        counts[largest] = 1
        smallest = max(size for size, demand in enumerate(left) if demand)

        def fill(size: int, rest: int) -> None:
            self.looks -= 1
            if self.looks < 0:
                raise _TooLong
            if size > smallest:
                if rest <= slack and not self._room_for_more(left, counts, rest):
                    found.append((rest, tuple(counts)))
                return
            already = counts[size]
            for count in range(min(left[size] - already, rest // self.sizes[size]), -1, -1):
                counts[size] = already + count
                fill(size + 1, rest - count * self.sizes[size])
            counts[size] = already

        fill(largest, length - self.sizes[largest])
        found.sort(key=lambda one: (one[0], tuple(-count for count in one[1])))
        return (pattern for _, pattern in found)

    def _room_for_more(self, left: Sequence[int], counts: Sequence[int], rest: int) -> bool:
        return any(counts[size] < demand and self.sizes[size] <= rest for size, demand in enumerate(left) if demand)
