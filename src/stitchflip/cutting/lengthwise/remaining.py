"""What is still wanted while strips are opened one after the other."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.model import LengthTask, Opened, Packing, Pattern
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable


@dataclass(slots=True)
class Remaining:
    """Pieces not cut yet, strips not opened yet, and what has been opened."""

    task: LengthTask
    left: list[int]
    """How many of each size."""
    counts: list[int | None]
    """How many of each kind of strip; None: as many as it takes."""
    fewest: list[int]
    """How many of each kind are to be opened at least, when the search asks for it."""
    spent: int
    opened: list[Opened]

    @classmethod
    def of(cls, task: LengthTask) -> Remaining:
        """Nothing opened yet.

        Args:
            task: gives the numbers.
        """
        return cls(task, list(task.demands), [stock.count for stock in task.stock], [0] * len(task.stock), 0, [])

    def copy(self) -> Remaining:
        """The same, to be changed apart."""
        return Remaining(
            self.task, self.left.copy(), self.counts.copy(), self.fewest.copy(), self.spent, self.opened.copy()
        )

    @property
    def is_done(self) -> bool:
        """Whether every piece is cut."""
        return not any(self.left)

    @property
    def ranges(self) -> list[tuple[int, int | None]]:
        """Fewest and most strips of each kind that may still be opened."""
        return list(zip(self.fewest, self.counts, strict=True))

    def times(self, stock: int, pattern: Pattern) -> int:
        """How often a pattern can be cut without making too many of anything.

        Args:
            stock: kind of strip.
            pattern: what each strip gives.
        """
        most = min(self.left[size] // count for size, count in pattern)
        count = self.counts[stock]
        return most if count is None else min(most, count)

    def cut(self, stock: int, pattern: Pattern, times: int = 1) -> None:
        """Open strips and cut them alike.

        Args:
            stock: kind of strip.
            pattern: what each gives.
            times: how many strips.
        """
        for size, count in pattern:
            self.left[size] -= count * times
        had = self.counts[stock]
        if had is not None:
            self.counts[stock] = had - times
        self.fewest[stock] = max(self.fewest[stock] - times, 0)
        self.spent += self.task.stock[stock].cost * times
        self.opened.append(Opened(stock, pattern, times))

    def within(self, pattern: Pattern) -> Pattern:
        """The part of a pattern that is still wanted.

        Args:
            pattern: what a strip could give.
        """
        wanted = ((size, min(count, self.left[size])) for size, count in pattern)
        return tuple((size, count) for size, count in wanted if count)


def packing_of(opened: Iterable[Opened]) -> Packing:
    """Strips cut alike counted together, in the order first met.

    Args:
        opened: the strips.
    """
    times: dict[tuple[int, Pattern], int] = {}
    for one in opened:
        key = (one.stock, one.pattern)
        times[key] = times.get(key, 0) + one.times
    return tuple(Opened(stock, pattern, count) for (stock, pattern), count in times.items())
