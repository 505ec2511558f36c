"""What a sheet can be worth with edge-to-edge cuts in any number of stages: a bound, no plan.

Every cut divides a rectangle in two, so the most a rectangle can be worth is the most its best two parts can be
worth, or one piece. That counts no piece twice only by chance; prices on the pieces make up for it: what is paid above
the price of a piece is counted once for each that is wanted, the rest as often as it fits.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.loads.sums import Sums

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.loads.kinds import Choice, Kind
    from stitchflip.cutting.layouts.watch import Watch

_MOST_CELLS = 60_000
_SCALE = 64
"""Whole numbers for a worth of 1, so that prices can be parts of it."""
_ROUNDS = 60


class AnyCuts:
    """Bounds for one kind of sheet.

    Args:
        kind: the sheet.
        choices: every way to lay a piece on it.
        counts: how many of each want there are.
    """

    def __init__(self, kind: Kind, choices: Sequence[Choice], counts: Sequence[int]) -> None:
        fitting = [choice for choice in choices if choice.wide <= kind.wide and choice.high <= kind.high]
        self._choices, self._counts = fitting, counts
        self._across = Sums(dict.fromkeys((choice.wide for choice in fitting), kind.wide), kind.wide)
        self._up = Sums(dict.fromkeys((choice.high for choice in fitting), kind.high), kind.high)
        self.is_possible = (
            bool(fitting)
            and self._across.is_exact
            and self._up.is_exact
            and len(self._across) * len(self._up) <= _MOST_CELLS
        )

    def bound(self, values: Sequence[int], watch: Watch, goal: int) -> int | None:
        """No plan is worth more; None when there was no time.

        Args:
            values: of one of each want.
            watch: ends the search.
            goal: of a plan that is known; steps towards it are taken.
        """
        prices = [0] * len(values)
        best: int | None = None
        step = 1.0
        for _ in range(_ROUNDS):
            worths = [max(0, value * _SCALE - price) for value, price in zip(values, prices, strict=True)]
            table = self._table(worths, watch)
            if table is None:
                break
            paid = sum(price * count for price, count in zip(prices, self._counts, strict=True))
            value = (int(table[-1, -1]) + paid) // _SCALE
            better = best is None or value < best
            best = value if best is None else min(best, value)
            used = self._used(table, worths)
            over = {want: used[want] - count for want, count in enumerate(self._counts)}
            length = sum(much * much for want, much in over.items() if much > 0 or prices[want] > 0)
            if best <= goal or not length or all(much <= 0 for much in over.values()):
                break
            step = step if better else step * 0.8
            move = step * (value - goal) * _SCALE / length
            prices = [
                min(values[want] * _SCALE, max(0, price + int(move * over[want]))) for want, price in enumerate(prices)
            ]
        return best

    def _table(self, worths: Sequence[int], watch: Watch) -> NDArray[np.int64] | None:
        """Most worth of every rectangle whose sides are sums of pieces; None when time is up."""
        import numpy as np

        across, up = self._across.places, self._up.places
        table = np.zeros((len(across), len(up)), dtype=np.int64)
        for choice in self._choices:
            x, y = (
                int(across.searchsorted(choice.wide // self._across.unit)),
                int(up.searchsorted(choice.high // self._up.unit)),
            )
            table[x:, y:] = np.maximum(table[x:, y:], worths[choice.want])
        before_y = [up.searchsorted(up[y] - up[1 : y + 1], side="right") - 1 for y in range(len(up))]
        for x in range(len(across)):
            if watch.over():
                return None
            row = table[x]
            if x > 1:
                firsts = np.arange(1, int(across.searchsorted(across[x] // 2, side="right")))
                others = across.searchsorted(across[x] - across[firsts], side="right") - 1
                if len(firsts):
                    np.maximum(row, (table[firsts] + table[others]).max(axis=0), out=row)
                np.maximum(row, table[x - 1], out=row)
            for y in range(1, len(up)):
                half = int(up.searchsorted(up[y] // 2, side="right"))
                most = row[y]
                if half > 1:
                    most = max(most, (row[1:half] + row[before_y[y][: half - 1]]).max())
                row[y] = max(most, row[y - 1])
        return table

    def _used(self, table: NDArray[np.int64], worths: Sequence[int]) -> Counter[int]:
        """The pieces of the best way of cutting, read backwards."""
        across, up = self._across.places, self._up.places
        used: Counter[int] = Counter()
        open_parts = [(len(across) - 1, len(up) - 1)]
        while open_parts:
            x, y = open_parts.pop()
            worth = int(table[x, y])
            if not worth:
                continue
            if x and table[x - 1, y] == worth:
                open_parts.append((x - 1, y))
            elif y and table[x, y - 1] == worth:
                open_parts.append((x, y - 1))
            else:
                open_parts += self._parts(table, x, y, worths, used)
        return used

    def _parts(
        self, table: NDArray[np.int64], x: int, y: int, worths: Sequence[int], used: Counter[int]
    ) -> list[tuple[int, int]]:
        """Two parts that are worth as much as a rectangle, or one piece, which is counted."""
        across, up, worth = self._across.places, self._up.places, int(table[x, y])
        for choice in self._choices:
            if (
                worths[choice.want] == worth
                and choice.wide // self._across.unit <= across[x]
                and choice.high // self._up.unit <= up[y]
            ):
                used[choice.want] += 1
                return []
        for first in range(1, x):
            other = int(across.searchsorted(across[x] - across[first], side="right")) - 1
            if table[first, y] + table[other, y] == worth:
                return [(first, y), (other, y)]
        for first in range(1, y):
            other = int(up.searchsorted(up[y] - up[first], side="right")) - 1
            if table[x, first] + table[x, other] == worth:
                return [(x, first), (x, other)]
        raise AssertionError("a table can be read backwards")
