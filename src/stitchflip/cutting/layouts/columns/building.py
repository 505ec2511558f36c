"""Plans built strip by strip: always the strip that is worth most for its height, as often as the pieces allow.

The worths begin near what the linear program says and learn from every plan: a piece that ended in a wasteful strip
is worth more in the next, so it gets its place early. A few dozen plans made this way are nearly as good as any,
and their strips are what a still better plan is made of.
"""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.column import Column, Plan
from stitchflip.cutting.layouts.columns.generating import SCALE

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.strips import StripKnapsack
    from stitchflip.cutting.layouts.watch import Watch

_FROM_PRICES = 0.7
"""Part of the prices in the first worths; the rest goes by area."""
_LEARNED = (0.1, 0.5)
"""Least and most part of what a plan taught in the worths for the next."""
_SHAKEN = 0.02
"""Worths are changed by chance by at most this part."""


class Builder:
    """Builds plans, each learning from the one before.

    Args:
        knapsack: finds strips.
        wanted: pieces of each kind.
        worths: of one piece of each kind in the best bound so far, `SCALE` for a cost of 1.
        seed: of the chances taken; the same seed gives the same plans.
    """

    def __init__(self, knapsack: StripKnapsack, wanted: Sequence[int], worths: Sequence[int], seed: int) -> None:
        self._knapsack, self._wanted, self._random = knapsack, tuple(wanted), Random(seed)
        self._areas = [kind.ways[0].wide * kind.ways[0].long if kind.ways else 0 for kind in knapsack.kinds]
        area = sum(map(_product, self._areas, wanted))
        proved = sum(map(_product, worths, wanted)) / SCALE
        self._cost_of_area = (proved or area / knapsack.wide) / max(1, area)
        self._prices = [
            _FROM_PRICES * worth / SCALE + (1 - _FROM_PRICES) * piece * self._cost_of_area
            for worth, piece in zip(worths, self._areas, strict=True)
        ]

    def next_plan(self, watch: Watch) -> Plan | None:
        """Build one more plan.

        Args:
            watch: ends the search.

        Returns:
            The plan, exactly the pieces wanted; None when time was over before it was done.
        """
        left = list(self._wanted)
        worths = [max(1, int(price * SCALE)) for price in self._prices]
        plan: Plan = {}
        while any(left):
            if watch.over():
                return None
            column = self._best(worths, left)
            times = min(left[kind] // count for kind, count in column.uses)
            plan[column] = plan.get(column, 0) + times
            for kind, count in column.uses:
                left[kind] -= count * times
        self._learn(plan)
        return plan

    def _best(self, worths: Sequence[int], left: Sequence[int]) -> Column:
        """The strip that is worth most for its height."""
        heights = self._knapsack.heights
        priced = self._knapsack.priced(worths, left)
        rates = [most / high for most, high in zip(priced.at_most, heights, strict=True)]
        best_rate, best = 0.0, None
        for level in sorted(range(len(heights)), key=lambda level: (-rates[level], level)):
            if rates[level] <= best_rate:
                break
            worth, uses = priced.best(level)
            if worth / heights[level] > best_rate:
                best_rate, best = worth / heights[level], Column(cost=heights[level], uses=uses)
        if best is None:
            raise AssertionError("every piece fits in some strip")
        return best

    def _learn(self, plan: Plan) -> None:
        """Price pieces by the area they cost in this plan, waste of their strips included."""
        paid = [0.0] * len(self._wanted)
        for column, times in plan.items():
            used = sum(self._areas[kind] * count for kind, count in column.uses)
            rate = column.cost * self._knapsack.wide / used * times * self._cost_of_area
            for kind, count in column.uses:
                paid[kind] += count * self._areas[kind] * rate
        part = self._random.uniform(*_LEARNED)
        for kind, wanted in enumerate(self._wanted):
            if wanted:
                price = (1 - part) * self._prices[kind] + part * paid[kind] / wanted
                self._prices[kind] = price * (1 + self._random.uniform(-_SHAKEN, _SHAKEN))


def _product(one: int, other: int) -> int:
    """For sums of products."""
    return one * other
