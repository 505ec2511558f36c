"""Every strip a plan of a given cost could use: few, once good prices are known.

Worths prove a bound: strips are worth at most their height, and all that is wanted is worth the bound. So in a plan
that costs no more than the ceiling, what its strips cost beyond their worth adds up to at most ceiling minus bound;
a strip that alone costs more than that beyond its worth is in no such plan. What is left can be listed. Only strips
that hold as much as they can and are as low as they can be need to be listed: any other can be replaced by one of
them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.column import Column
from stitchflip.cutting.layouts.columns.generating import SCALE
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.generating import Promise
    from stitchflip.cutting.layouts.columns.strips import StripKnapsack
    from stitchflip.cutting.layouts.watch import Watch

_MOST_STEPS_A_STRIP = 60
"""The search is given up when it takes more steps than this for each strip it may list."""


@dataclass(frozen=True, slots=True)
class Listing:
    """Strips, and whether these are all."""

    columns: list[Column]
    is_complete: bool
    """Whether every plan within the ceiling can be made of these (of any plan: one at most as costly)."""


def all_strips(
    knapsack: StripKnapsack,
    promise: Promise,
    ceiling: int,
    watch: Watch,
    *,
    most: int,
) -> Listing:
    """List the strips a plan within a ceiling could use.

    Args:
        knapsack: the pieces and the width.
        promise: a bound and the worths that prove it.
        ceiling: cost of the dearest plan of interest.
        watch: ends the search.
        most: at most so many strips are listed.

    Returns:
        The strips, and whether the search came to its end.
    """
    proved = sum(kind.count * worth for kind, worth in zip(knapsack.kinds, promise.worths, strict=True))
    allowance = ceiling * SCALE - proved
    listed: list[Column] = []
    steps = most * _MOST_STEPS_A_STRIP
    for level in range(len(knapsack.heights)):
        search = _Level(knapsack, level, promise.worths, knapsack.heights[level] * SCALE - allowance)
        steps = search.run(listed, most, steps)
        if steps <= 0 or watch.over():
            return Listing(columns=listed, is_complete=False)
    return Listing(columns=listed, is_complete=True)


class _Level:
    """Strips of one height, searched piece by piece, the widest first."""

    def __init__(self, knapsack: StripKnapsack, level: int, worths: Sequence[int], least: int) -> None:
        self.high, self.room, self.least = knapsack.heights[level], knapsack.wide, least
        lying = sorted(knapsack.lying(level), key=lambda lies: (-lies[1].wide, -worths[lies[0]], lies[0]))
        self.kinds = [kind for kind, _ in lying]
        self.widths = [way.wide for _, way in lying]
        self.worths = [worths[kind] for kind in self.kinds]
        self.limits = [min(knapsack.kinds[kind].count, self.room // way.wide) for kind, way in lying]
        self.is_full_height = [way.long == self.high for _, way in lying]
        self.counts = [0] * len(lying)
        self.last_full = max((place for place, is_full in enumerate(self.is_full_height) if is_full), default=-1)

    def run(self, listed: list[Column], most: int, steps: int) -> int:
        """Add the strips worth at least the least; how many steps are left, 0 or less when it was given up."""
        self.listed, self.most, self.steps = listed, most, steps
        self.still = self._worth_still_to_come()
        self._go_on(0, self.room, 0, (False, self.room + 1))
        return self.steps

    def _worth_still_to_come(self) -> list[list[int]]:
        """For the kinds from each place on: most worth within each width."""
        import numpy as np

        now = np.zeros(self.room + 1, dtype=np.int64)
        tables = [now.tolist()]
        for wide, worth, limit in zip(self.widths[::-1], self.worths[::-1], self.limits[::-1], strict=True):
            handful, left = 1, limit
            while left > 0:
                handful = min(handful, left)
                before = now.copy()
                taken = handful * wide
                np.maximum(now[taken:], before[: self.room + 1 - taken] + handful * worth, out=now[taken:])
                left -= handful
                handful *= 2
            tables.append(now.tolist())
        return tables[::-1]

    def _go_on(self, place: int, room: int, worth: int, so_far: tuple[bool, int]) -> None:
        """Decide how many of the next kind; `so_far`: full height reached, narrowest piece that could be added."""
        self.steps -= 1
        is_high, narrowest = so_far
        if worth + self.still[place][room] < self.least or self.steps <= 0 or (not is_high and place > self.last_full):
            return
        if place == len(self.kinds):
            if narrowest > room:
                self._list()
            return
        wide, limit = self.widths[place], self.limits[place]
        is_full_height = self.is_full_height[place]
        for count in range(min(limit, room // wide), -1, -1):
            self.counts[place] = count
            narrower = min(narrowest, wide) if count < limit else narrowest
            after = (is_high or (is_full_height and count > 0), narrower)
            self._go_on(place + 1, room - count * wide, worth + count * self.worths[place], after)

    def _list(self) -> None:
        """Note the strip of the present counts."""
        uses = sorted((kind, count) for kind, count in zip(self.kinds, self.counts, strict=True) if count)
        self.listed.append(Column(cost=self.high, uses=tuple(uses)))
        if len(self.listed) >= self.most:
            self.steps = 0
