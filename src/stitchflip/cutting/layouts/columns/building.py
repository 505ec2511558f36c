"""Plans built strip by strip: always the strip that is worth most for its height, as often as the pieces allow.

The worths begin near what the linear program says and learn from every plan: a piece that ended in a wasteful strip
is worth more in the next, so it gets its place early. A few dozen plans made this way are nearly as good as any,
and their strips are what a still better plan is made of. Several plans are built at once, each with its own worths:
a table for eight takes little longer than a table for one.
"""

from __future__ import annotations

from itertools import accumulate, chain
from itertools import count as numbers
from operator import truediv
from random import Random
from typing import TYPE_CHECKING, Any

from stitchflip.cutting.layouts.columns.column import Column, Plan
from stitchflip.cutting.layouts.columns.generating import SCALE

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from numpy import int32
    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.columns.column import Uses
    from stitchflip.cutting.layouts.columns.strips import StripKnapsack
    from stitchflip.cutting.layouts.watch import Watch

_AT_ONCE = 8
"""Plans built at once, where memory allows."""
_MOST_CELLS = 6_000_000
_FROM_PRICES = 0.7
"""Part of the prices in the first worths; the rest goes by area."""
_LEARNED = (0.1, 0.5)
"""Least and most part of what a plan taught in the worths for the next."""
_SHAKEN = 0.02
"""Worths are changed by chance by at most this part."""
_MOST_WORTH = 1 << 29
"""Of a strip, in whole numbers of four bytes: half the memory makes the tables a third faster."""
_NOTHING = -(1 << 30)
_STRIPS_A_LOOK = 16
"""Strips laid before the watch is asked again whether the maker has had enough; the clock is read at every strip."""


class Builders:
    """Builds plans, several at once, each learning from its own one before.

    Args:
        knapsack: finds strips.
        wanted: pieces of each kind.
        worths: of one piece of each kind in the best bound so far, `SCALE` for a cost of 1.
        seed: of the chances taken; the same seed gives the same plans.
    """

    def __init__(self, knapsack: StripKnapsack, wanted: Sequence[int], worths: Sequence[int], seed: int) -> None:
        self._table = _ManyTables(knapsack, wanted)
        self._knapsack, self._wanted, self._random = knapsack, tuple(wanted), Random(seed)
        self._areas = [kind.ways[0].wide * kind.ways[0].long if kind.ways else 0 for kind in knapsack.kinds]
        self._narrowest = [min((way.wide for way in kind.ways), default=1) for kind in knapsack.kinds]
        area = sum(a * n for a, n in zip(self._areas, wanted, strict=True))
        proved = sum(worth * n for worth, n in zip(worths, wanted, strict=True)) / SCALE
        self._cost_of_area = (proved or area / knapsack.wide) / max(1, area)
        first = [
            _FROM_PRICES * worth / SCALE + (1 - _FROM_PRICES) * piece * self._cost_of_area
            for worth, piece in zip(worths, self._areas, strict=True)
        ]
        self._prices = [first, *(self._shaken(first) for _ in range(self._table.builders - 1))]

    def next_plans(self, watch: Watch) -> list[Plan]:
        """Build one more plan each.

        Args:
            watch: ends the search.

        Returns:
            Plans of exactly the pieces wanted; none when time was over before they were done.
        """
        dearest = max(max(map(truediv, prices, self._narrowest)) for prices in self._prices)
        scale = min(SCALE, _MOST_WORTH / max(1e-9, dearest * self._knapsack.wide))
        worths = [[max(1, int(price * scale)) for price in prices] for prices in self._prices]
        left = [list(self._wanted) for _ in worths]
        plans: list[Plan] = [{} for _ in worths]
        for strip in numbers():
            if not any(map(any, left)):
                break
            if watch.over() if strip % _STRIPS_A_LOOK == 0 else watch.left() <= 0:
                return []
            self._table.fill(worths, left)
            for builder, plan in enumerate(plans):
                if any(left[builder]):
                    column = self._best(builder, worths[builder], left[builder])
                    times = min(left[builder][kind] // count for kind, count in column.uses)
                    plan[column] = plan.get(column, 0) + times
                    for kind, count in column.uses:
                        left[builder][kind] -= count * times
        self._prices = [self._learned(prices, plan) for prices, plan in zip(self._prices, plans, strict=True)]
        return plans

    def _best(self, builder: int, worths: Sequence[int], left: Sequence[int]) -> Column:
        """The strip that is worth most for its height."""
        best_rate, best = 0.0, None
        for level, high, most in self._table.levels(builder):
            if most / high <= best_rate:
                break
            worth, uses = most, self._table.pieces(builder, level)
            if any(count > left[kind] for kind, count in uses):
                worth, uses = self._knapsack.best_of_height(level, worths, left)
            if worth / high > best_rate:
                best_rate, best = worth / high, Column(cost=high, uses=uses)
        if best is None:
            raise AssertionError("every piece fits in some strip")
        return best

    def _learned(self, prices: Sequence[float], plan: Plan) -> list[float]:
        """Prices after a plan: pieces cost the area they took in it, waste of their strips included."""
        paid = [0.0] * len(self._wanted)
        for column, times in plan.items():
            used = sum(self._areas[kind] * count for kind, count in column.uses)
            rate = column.cost * self._knapsack.wide / used * times * self._cost_of_area
            for kind, count in column.uses:
                paid[kind] += count * self._areas[kind] * rate
        part = self._random.uniform(*_LEARNED)
        return self._shaken(
            [
                (1 - part) * price + part * cost / wanted if wanted else price
                for price, cost, wanted in zip(prices, paid, self._wanted, strict=True)
            ]
        )

    def _shaken(self, prices: Sequence[float]) -> list[float]:
        """Prices changed a little by chance."""
        return [price * (1 + self._random.uniform(-_SHAKEN, _SHAKEN)) for price in prices]


class _ManyTables:
    """Tables of the width for several builders at once.

    Builders share the widths of every row. Of pieces that all have enough of, handfuls are put; the others one by
    one, without worth for the builders that have no more.
    """

    def __init__(self, knapsack: StripKnapsack, wanted: Sequence[int]) -> None:
        import numpy as np

        self._np = np
        self._heights, self._wide, self._is_trimmed = knapsack.heights, knapsack.wide, knapsack.is_trimmed
        self._lying = [
            [
                (kind, way.wide, min(wanted[kind], knapsack.wide // way.wide))
                for kind, way in knapsack.newly_lying(level)
            ]
            for level in range(len(self._heights))
        ]
        self._most_of = [0] * len(wanted)
        for kind, _, most in chain.from_iterable(self._lying):
            self._most_of[kind] = max(self._most_of[kind], most)
        rows = sum(most for lying in self._lying for _, _, most in lying) + len(self._heights) + 1
        self.builders = max(1, min(_AT_ONCE, _MOST_CELLS // (rows * (2 * self._wide + 1))))
        self._rows: list[tuple[int, int, int]] = []
        self._begins: list[int] = []
        self._stops: list[int] = []
        self._cells: Any = np.full((rows, 2 * self._wide + 1, self.builders), _NOTHING, dtype=np.int32)

    def fill(self, worths: Sequence[Sequence[int]], left: Sequence[Sequence[int]]) -> None:
        """Put all pieces that are left.

        Args:
            worths: for each builder, of one piece of each kind.
            left: for each builder, pieces of each kind.
        """
        np = self._np
        worth, count = np.array(worths, dtype=np.int32).T, np.array(left, dtype=np.int32).T
        gains = _Gains(worth, count, self._most_of, self._wide)
        self._rows, self._begins, self._stops = [], [], []
        for lying in self._lying:
            if not self._rows or not self._is_trimmed:
                self._rows.append((-1, 0, 0))
                self._cells[len(self._rows) - 1, self._wide :] = 0
            self._begins.append(0 if self._is_trimmed else len(self._rows) - 1)
            for kind, wide, most in lying:
                for handful, gain in gains.of(kind, most):
                    self._put(kind, wide * handful, handful, gain)
            self._stops.append(len(self._rows) - 1)
        tops = self._cells[self._stops, -1]
        self._order = np.argsort(-tops / np.array(self._heights)[:, None], axis=0, kind="stable").T.tolist()
        self._tops = tops.T.tolist()

    def _put(self, kind: int, moved: int, handful: int, gain: NDArray[int32]) -> None:
        """One more row of the tables."""
        zero, row = self._wide, len(self._rows)
        before = self._cells[row - 1]
        taken = before[zero - moved : 2 * zero + 1 - moved] + gain
        self._np.maximum(before[zero:], taken, out=self._cells[row, zero:])
        self._rows.append((kind, moved, handful))

    def levels(self, builder: int) -> Iterator[tuple[int, int, int]]:
        """Number, height and most worth of a strip of each height, the one worth most for its height first."""
        most = self._tops[builder]
        return ((level, self._heights[level], most[level]) for level in self._order[builder])

    def pieces(self, builder: int, level: int) -> Uses:
        """The pieces of the strip of a height that is worth most; too many of a kind, if it lies both ways."""
        begin, end, place = self._begins[level], self._stops[level], 2 * self._wide
        counts: dict[int, int] = {}
        while (worth := self._cells[end, place, builder]) > 0:
            end = begin + int(self._cells[begin : end + 1, place, builder].searchsorted(worth))
            kind, moved, handful = self._rows[end]
            counts[kind] = counts.get(kind, 0) + handful
            place -= moved
            end -= 1
        return tuple(sorted(counts.items()))


class _Gains:
    """What a handful of a kind is worth to each builder, written out for every width."""

    def __init__(self, worth: NDArray[int32], left: NDArray[int32], most: Sequence[int], wide: int) -> None:
        import numpy as np

        self._all_have = left[:, left.any(axis=0)].min(axis=1).tolist()
        self._one_has = [min(limit, has) for limit, has in zip(most, left.max(axis=1).tolist(), strict=True)]
        self._starts = list(accumulate(self._one_has, initial=0))
        kinds = np.repeat(np.arange(len(most)), self._one_has)
        ranks = np.concatenate([np.arange(1, has + 1) for has in self._one_has])
        each = np.where(left[kinds] >= ranks[:, None], worth[kinds], 0)
        self._worth = np.repeat(each[:, None, :], wide + 1, axis=1)

    def of(self, kind: int, most: int) -> Iterator[tuple[int, NDArray[int32]]]:
        """Handfuls of pieces all builders have, then one piece after the other that some have."""
        everybody = left = min(most, self._all_have[kind])
        start, handful = self._starts[kind], 1
        while left > 0:
            handful = min(handful, left)
            yield handful, self._worth[start] if handful == 1 else self._worth[start] * handful
            left -= handful
            handful *= 2
        for rank in range(everybody, min(most, self._one_has[kind])):
            yield 1, self._worth[start + rank]
