"""Plans built strip by strip: always the strip that is worth most for its height, as often as the pieces allow.

The worths begin near what the linear program says and learn from every plan: a piece that ended in a wasteful strip
is worth more in the next, so it gets its place early. A few dozen plans made this way are nearly as good as any,
and their strips are what a still better plan is made of. Several plans are built at once, each with its own worths:
a table for eight takes little longer than a table for one.
"""

from __future__ import annotations

from random import Random
from typing import TYPE_CHECKING, Any

from stitchflip.cutting.layouts.columns.column import Column, Plan
from stitchflip.cutting.layouts.columns.generating import SCALE

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from numpy import int64
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
_NOTHING = -(1 << 62)


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
        worths = [[max(1, int(price * SCALE)) for price in prices] for prices in self._prices]
        left = [list(self._wanted) for _ in worths]
        plans: list[Plan] = [{} for _ in worths]
        while any(map(any, left)):
            if watch.over():
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
    """Tables of the width for several builders at once, pieces put one by one.

    Pieces a builder has no more of are put with no worth, so that all builders share the widths of every row.
    """

    def __init__(self, knapsack: StripKnapsack, wanted: Sequence[int]) -> None:
        import numpy as np

        self._np = np
        self._heights = knapsack.heights
        kinds: list[int] = []
        widths: list[int] = []
        ranks: list[int] = []
        ends: list[int] = []
        for level in range(len(self._heights)):
            for kind, way in knapsack.newly_lying(level):
                count = min(wanted[kind], knapsack.wide // way.wide)
                kinds += [kind] * count
                widths += [way.wide] * count
                ranks += range(1, count + 1)
            ends.append(len(kinds))
        self._is_trimmed = knapsack.is_trimmed
        self._kinds, self._widths = np.array(kinds, dtype=np.int64), np.array(widths, dtype=np.int64)
        self._ranks, self._ends = np.array(ranks, dtype=np.int64), np.array(ends, dtype=np.int64)
        cells = (len(kinds) + len(self._heights) + 1) * (2 * knapsack.wide + 1)
        self.builders = max(1, min(_AT_ONCE, _MOST_CELLS // cells))
        self._zero, self._end = knapsack.wide, 2 * knapsack.wide + 1
        shape = (len(kinds) + len(self._heights) + 1, self.builders, self._end)
        self._rows: list[tuple[int, int]] = []
        self._begins: list[int] = []
        self._stops: list[int] = []
        self._cells: Any = np.full(shape, _NOTHING, dtype=np.int64)

    def fill(self, worths: Sequence[Sequence[int]], left: Sequence[Sequence[int]]) -> None:
        """Put all pieces that are left.

        Args:
            worths: for each builder, of one piece of each kind.
            left: for each builder, pieces of each kind.
        """
        np = self._np
        worth, count = np.array(worths, dtype=np.int64).T, np.array(left, dtype=np.int64).T
        gains = np.where(count[self._kinds] >= self._ranks[:, None], worth[self._kinds], 0)
        used = np.flatnonzero(gains.any(axis=1))
        puts = zip(self._kinds[used].tolist(), self._widths[used].tolist(), gains[used][:, :, None], strict=True)
        self._rows, self._begins, self._stops = [(-1, 0)], [], []
        self._cells[0, :, self._zero :] = 0
        place = 0
        for upto in np.searchsorted(used, self._ends).tolist():
            if not self._is_trimmed and self._begins:
                self._rows.append((-1, 0))
                self._cells[len(self._rows) - 1, :, self._zero :] = 0
            self._begins.append(0 if self._is_trimmed else len(self._rows) - 1)
            for _ in range(upto - place):
                self._put(*next(puts))
            place = upto
            self._stops.append(len(self._rows) - 1)
        tops = self._cells[self._stops, :, -1]
        self._order = np.argsort(-tops / np.array(self._heights)[:, None], axis=0, kind="stable").T.tolist()
        self._most = tops.T.tolist()

    def _put(self, kind: int, wide: int, gain: NDArray[int64]) -> None:
        """One more row: a piece put or not."""
        zero, end, row = self._zero, self._end, len(self._rows)
        before = self._cells[row - 1]
        moved = before[:, zero - wide : end - wide] + gain
        self._np.maximum(before[:, zero:], moved, out=self._cells[row, :, zero:])
        self._rows.append((kind, wide))

    def levels(self, builder: int) -> Iterator[tuple[int, int, int]]:
        """Number, height and most worth of a strip of each height, the one worth most for its height first."""
        most = self._most[builder]
        return ((level, self._heights[level], most[level]) for level in self._order[builder])

    def pieces(self, builder: int, level: int) -> Uses:
        """The pieces of the strip of a height that is worth most; too many of a kind, if it lies both ways."""
        begin, end, place = self._begins[level], self._stops[level], self._end - 1
        counts: dict[int, int] = {}
        while (worth := self._cells[end, builder, place]) > 0:
            end = begin + int(self._cells[begin : end + 1, builder, place].searchsorted(worth))
            kind, wide = self._rows[end]
            counts[kind] = counts.get(kind, 0) + 1
            place -= wide
            end -= 1
        return tuple(sorted(counts.items()))
