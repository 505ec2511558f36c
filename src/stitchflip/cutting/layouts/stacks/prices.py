"""Strips priced by a linear program: a bound for every plan of stacks, and strips that waste nothing."""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.generating import SCALE, Offered, generated
from stitchflip.cutting.layouts.columns.master import Master
from stitchflip.cutting.layouts.stacks.knapsack import StackKnapsack

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.column import Column
    from stitchflip.cutting.layouts.stacks.ground import Ground, PiledStrip
    from stitchflip.cutting.layouts.stacks.record import Record

_WHOLE = 1e-6


class Prices:
    """The linear program over strips of stacks, solved.

    Args:
        ground: the task.
        record: gets the bound; its plan is among the columns.
    """

    def __init__(self, ground: Ground, record: Record) -> None:
        self._ground, self._record = ground, record
        self._knapsack = StackKnapsack(ground)
        self.amounts: list[tuple[Column, float]] = []
        """How often each strip is used by the linear program over low strips."""
        self.worths = [0.0] * len(ground.counts)
        """Length of fabric one piece of each want is worth."""
        tallest = max(lay.long for lay in ground.lays)
        if tallest <= self._knapsack.tallest_priced():
            self._solve(tallest)

    def _solve(self, low: int) -> None:
        """Columns from low strips first, then a bound for all strips a better plan could have."""
        ground, record = self._ground, self._record
        master = Master(ground.counts)
        master.add(self._knapsack.plain_columns() + [self._knapsack.column(strip) for strip in record.strips])
        limit = record.value - 1 if ground.tallest is None else min(ground.tallest, record.value - 1)
        bound = self._promised(master, min(low, limit), min(low, limit))
        self.amounts = list(zip(master.columns, master.amounts, strict=False))
        if limit > low and bound > record.bound:
            bound = self._promised(master, min(limit, self._knapsack.tallest_priced()), limit)
        record.raise_bound(bound)

    def _promised(self, master: Master, priced: int, limit: int) -> int:
        """Solve for strips up to a height.

        Args:
            master: gets columns.
            priced: columns up to this height are looked for.
            limit: the bound holds for strips up to this height.

        Returns:
            The bound.
        """

        def pricer(worths: Sequence[int], *, is_last: bool) -> Offered:
            del is_last  # all worths are exact
            offered = self._knapsack.offered(worths, priced)
            if limit > priced:
                offered = replace(offered, offers=[*offered.offers, self._knapsack.endless(worths, priced)])
            return offered

        promise = generated(master, list(self._ground.counts), pricer, self._record.watch)
        self.worths = [worth / SCALE for worth in promise.worths]
        return ceil(promise.bound)

    def whole_strips(self) -> list[PiledStrip]:
        """Strips the linear program uses whole times, as far as their pieces are wanted."""
        left, kept = list(self._ground.counts), []
        for column, amount in sorted(self.amounts, key=lambda pair: -pair[1]):
            times = min([int(amount + _WHOLE), *(left[want] // count for want, count in column.uses)])
            kept += [self._knapsack.strip(column)] * times
            for want, count in column.uses:
                left[want] -= times * count
        return kept
