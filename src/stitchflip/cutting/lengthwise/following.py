"""After some strips are fixed: the linear program of what is left, from prices or from a list of patterns."""

from __future__ import annotations

from itertools import accumulate
from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.master import Master
from stitchflip.cutting.lengthwise.prices import Pricing, Until, generate

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.cutting.lengthwise.master import Column
    from stitchflip.cutting.lengthwise.model import LengthTask
    from stitchflip.cutting.lengthwise.remaining import Remaining

    Shares = list[tuple[float, Column]]

_HAIR = 1e-6
_MOST_NEW = 40
_PAYS = 1e-7


class ByPrices:
    """New patterns come from the table.

    Args:
        master: the linear program.
        over: asked every round.
    """

    def __init__(self, master: Master, over: Callable[[], bool]) -> None:
        self.master = master
        self.over = over

    def shares(self, now: Remaining, aim: int) -> Shares | None:
        """Shares for what is left; None when the aim is out of reach.

        Args:
            now: what is left.
            aim: cost of all strips that must not be passed.
        """
        self.master.want(now.left, now.ranges)
        pricing = Pricing(now.task, now.left, now.ranges)
        within = aim - now.spent
        if generate(self.master, pricing, self.over, Until.TABLE, within + 1, within + _HAIR):
            return None
        return None if pricing.bound > within else self.master.shares()


class ByList:
    """New patterns come from a list that holds all that can matter.

    Args:
        task: sizes and strips.
        columns: the list.
        first: those of them to begin with.
        over: asked every round.
    """

    def __init__(
        self, task: LengthTask, columns: Sequence[Column], first: Sequence[Column], over: Callable[[], bool]
    ) -> None:
        import numpy as np

        self.over = over
        self.columns = list(columns)
        self.master = Master(task, trades=False)
        sizes = [size for _, pattern in self.columns for size, _ in pattern]
        counts = [count for _, pattern in self.columns for _, count in pattern]
        starts = [0, *accumulate(len(pattern) for _, pattern in self.columns)][:-1]
        self.sizes, self.counts, self.starts = np.array(sizes), np.array(counts, dtype=float), np.array(starts)
        self.kinds = np.array([kind for kind, _ in self.columns], dtype=np.int64)
        self.costs = np.array([task.stock[kind].cost for kind, _ in self.columns], dtype=float)
        listed = set(self.columns)
        self.master.add(column for column in first if column in listed)
        self.outside = np.array([column not in self.master.known for column in self.columns], dtype=bool)

    def shares(self, now: Remaining, aim: int) -> Shares | None:
        """Shares for what is left; None when the aim is out of reach.

        Args:
            now: what is left.
            aim: cost of all strips that must not be passed.
        """
        import numpy as np

        self.master.want(now.left, now.ranges)
        within = aim - now.spent + _HAIR
        while not self.over():
            shares = self.master.run()
            if shares.value <= within and shares.from_nothing < _HAIR:
                return self.master.shares()
            gains = np.add.reduceat(np.array(shares.prices)[self.sizes] * self.counts, self.starts)
            gains -= self.costs + np.array(shares.rents)[self.kinds]
            paying = (self.outside & (gains > _PAYS * float(self.costs.max()))).nonzero()[0]
            if not len(paying):
                return None
            dearest = float((gains[paying] / self.costs[paying]).max()) if self.costs[paying].all() else 0.0
            if dearest and shares.value > within * (1 + dearest) and shares.from_nothing < _HAIR:
                return None
            best = paying[np.argsort(-gains[paying])[:_MOST_NEW]]
            self.outside[best] = False
            self.master.add(self.columns[row] for row in best.tolist())
        return None
