"""Strips of stacks, priced: which strip of every height is worth most.

Inside a stack the bits share its height, a small table for every width a stack can have; side by side the stacks
share the width of the fabric, one table for all heights of strips at once. Several stacks of a strip may hold the same
piece more often than it is wanted: worths are bounds, and the strips told may give too many.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from stitchflip.cutting.layouts.columns.column import Column
from stitchflip.cutting.layouts.columns.generating import SCALE, Offered
from stitchflip.cutting.layouts.stacks.ground import PiledStrip

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from stitchflip.cutting.layouts.stacks.ground import Ground

_MOST_CELLS = 40_000_000
"""Cells of the tables together; beyond that a round takes too long."""
_MOST_A_ROUND = 24
_ALMOST = 1 - 1e-9


class StackKnapsack:
    """Finds the strips worth most.

    Args:
        ground: the pieces.
    """

    def __init__(self, ground: Ground) -> None:
        self._ground = ground
        by_width: dict[int, list[int]] = {}
        for number, lay in enumerate(ground.lays):
            by_width.setdefault(lay.wide, []).append(number)
        self.widths = sorted(by_width)
        self._by_width = [by_width[wide] for wide in self.widths]
        self._sums = _sums(self.widths, ground.wide)
        self._strips: dict[Column, PiledStrip] = {}

    def tallest_priced(self) -> int:
        """The tallest strip that can be priced in a moment."""
        return _MOST_CELLS // (len(self.widths) * len(self._sums))

    def column(self, strip: PiledStrip) -> Column:
        """A strip as a column; the strip is remembered."""
        uses = tuple((want, count) for want, count in enumerate(self._ground.given([strip])) if count)
        column = Column(cost=strip.high, uses=uses)
        self._strips.setdefault(column, strip)
        return column

    def strip(self, column: Column) -> PiledStrip:
        """The strip behind a column."""
        return self._strips[column]

    def plain_columns(self) -> list[Column]:
        """For each lay a strip filled with it alone, one bit a stack."""
        wide = self._ground.wide
        return [
            self.column(PiledStrip(high=lay.long, stacks=((number,),) * (wide // lay.wide)))
            for number, lay in enumerate(self._ground.lays)
        ]

    def offered(self, worths: Sequence[int], tallest: int) -> Offered:
        """Strips worth much, and what no strip is worth more than.

        Args:
            worths: of one piece of each want, `SCALE` for a cost of 1.
            tallest: of all strips looked at.

        Returns:
            Offers for every height up to `tallest`.
        """
        import numpy as np

        tables = _Tables(self._ground, self._by_width, worths, tallest)
        best = tables.side_by_side(self.widths, self._sums)
        heights = np.arange(1, tallest + 1)
        ratios = best[1:] / heights
        at = np.flatnonzero(ratios >= ratios.max() * _ALMOST) + 1
        offers = [(int(high), int(best[high])) for high in at]
        rising = np.flatnonzero(best[1:] > np.maximum(best[:-1], heights * SCALE)) + 1
        rising = rising[np.argsort(-ratios[rising - 1], kind="stable")][:_MOST_A_ROUND]
        columns = [self.column(tables.strip(int(high))) for high in rising]
        return Offered(offers=offers, columns=columns)

    def endless(self, worths: Sequence[int], high: int) -> tuple[int, int]:
        """What strips of any height are at most worth: as if bits could be cut through at the top.

        Args:
            worths: of one piece of each want.
            high: a height.

        Returns:
            The height, and a worth whose ratio no strip exceeds.
        """
        rates: list[int] = []
        for numbers in self._by_width:
            lays = [self._ground.lays[number] for number in numbers]
            rate = max(-(-worths[lay.want] * high // lay.long) for lay in lays)
            rates.append(max(rate, rates[-1] if rates and self._ground.can_trim else 0))
        most = {0: 0}
        best = 0
        for total in self._sums:
            for wide, rate in zip(self.widths, rates, strict=True):
                if total - wide in most:
                    best = max(best, most[total - wide] + rate)
            most[total] = best
        return high, best


def _sums(widths: Sequence[int], wide: int) -> list[int]:
    """Every sum of widths up to that of the fabric, from 0."""
    sums, known = 0, 1
    while known != sums:
        sums = known
        for width in widths:
            known |= known << width
        known &= (1 << (wide + 1)) - 1
    return [total for total in range(wide + 1) if sums >> total & 1]


class _Tables:
    """Most worth of a stack by width and height, and of stacks side by side."""

    def __init__(self, ground: Ground, by_width: list[list[int]], worths: Sequence[int], tallest: int) -> None:
        import numpy as np

        self._np, self._ground, self._worths, self._tallest = np, ground, worths, tallest
        self._piled: list[list[tuple[int, int, NDArray[Any]]]] = []
        """For each width: (lay, handful, worths after it), narrower widths first where they count."""
        self._stacks = np.zeros((len(by_width), tallest + 1), dtype=np.int64)
        piles: list[tuple[int, int, NDArray[Any]]] = []
        for level, numbers in enumerate(by_width):
            if ground.same_stack:
                piles = self._alike(numbers)
            else:
                start = piles if ground.can_trim else []
                piles = [*start, *self._mixed(numbers, start[-1][2] if start else np.zeros(tallest + 1, np.int64))]
            self._piled.append(piles)
            if piles:
                self._stacks[level] = piles[-1][2]

    def _mixed(self, numbers: Sequence[int], now: NDArray[Any]) -> list[tuple[int, int, NDArray[Any]]]:
        """Lays of one width into a stack, in handfuls of 1, 2, 4, ..."""
        piles = []
        for number in numbers:
            lay = self._ground.lays[number]
            worth = self._worths[lay.want]
            left = min(self._ground.counts[lay.want], self._tallest // lay.long) if worth > 0 else 0
            handful = 1
            while left > 0:
                handful = min(handful, left)
                up = handful * lay.long
                after = now.copy()
                self._np.maximum(now[up:], now[:-up] + handful * worth, out=after[up:])
                piles.append((number, handful, after))
                now, left, handful = after, left - handful, handful * 2
        return piles

    def _alike(self, numbers: Sequence[int]) -> list[tuple[int, int, NDArray[Any]]]:
        """Lays of one width, each in stacks of its own: the best of them; handful 0 means as many as fit."""
        np = self._np
        now, piles = np.zeros(self._tallest + 1, dtype=np.int64), []
        for number in numbers:
            lay = self._ground.lays[number]
            many = np.minimum(np.arange(self._tallest + 1) // lay.long, self._ground.counts[lay.want])
            now = np.maximum(now, many * self._worths[lay.want])
            piles.append((number, 0, now))
        return piles

    def side_by_side(self, widths: Sequence[int], sums: Sequence[int]) -> NDArray[Any]:
        """Fill the table of the width.

        Returns:
            For each height the worth of the best strip.
        """
        np = self._np
        self._widths, self._sums = widths, sums
        place = {total: row for row, total in enumerate(sums)}
        self._before = [
            [(level, place[total - wide]) for level, wide in enumerate(widths) if total - wide in place]
            for total in sums
        ]
        self._wide = np.zeros((len(sums), self._tallest + 1), dtype=np.int64)
        for row, before in enumerate(self._before):
            if row:
                levels, rows = ([pair[part] for pair in before] for part in (0, 1))
                together = self._wide[rows]
                together += self._stacks[levels]
                np.maximum(together.max(axis=0), self._wide[row - 1], out=self._wide[row])
        best: NDArray[Any] = self._wide[-1]
        return best

    def strip(self, high: int) -> PiledStrip:
        """The best strip of a height."""
        row, stacks = len(self._sums) - 1, []
        while row:
            worth = self._wide[row, high]
            if worth == self._wide[row - 1, high]:
                row -= 1
                continue
            level, row = next(
                (level, before)
                for level, before in self._before[row]
                if self._wide[before, high] + self._stacks[level, high] == worth
            )
            stacks.append(self._stack(level, high))
        lays = self._ground.lays
        tallest = max(sum(lays[number].long for number in stack) for stack in stacks)
        return PiledStrip(high=tallest, stacks=tuple(stacks))

    def _stack(self, level: int, high: int) -> tuple[int, ...]:
        """The best stack of a width and a height, the widest bit first."""
        piles, numbers = self._piled[level], []
        end = len(piles)
        worth = int(self._stacks[level, high])
        while worth:
            while end > 1 and piles[end - 2][2][high] == worth:
                end -= 1
            number, handful, _ = piles[end - 1]
            lay = self._ground.lays[number]
            if not handful:
                return (number,) * min(high // lay.long, self._ground.counts[lay.want])
            numbers += [number] * handful
            high -= handful * lay.long
            worth -= handful * self._worths[lay.want]
            end -= 1
        return tuple(sorted(numbers))
