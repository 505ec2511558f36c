"""One aim: is there a packing at this cost? Dives look for one, the integer program over what can matter decides."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.choosing import choose
from stitchflip.cutting.lengthwise.dives import MANNERS, Diver
from stitchflip.cutting.lengthwise.every_filling import every_filling
from stitchflip.cutting.lengthwise.fillings import HABITS, fill_up
from stitchflip.cutting.lengthwise.prices import Pricing, generate

if TYPE_CHECKING:
    from stitchflip.cutting.lengthwise.master import Column, Master
    from stitchflip.cutting.lengthwise.remaining import Remaining
    from stitchflip.cutting.lengthwise.search import Search

_SIDE_BY_SIDE = (4_000, 40_000, 400_000)
"""Partial fillings looked at side by side, by how patient the search has become."""
_CHOSEN_FROM = (600, 4_000, 20_000)
"""Patterns the integer program takes."""
_STEPS = 40
_VIEWS = 5
"""Other optimal prices looked at."""
_NUDGE = 1e-3
"""Part by which demands are made larger to see other optimal prices."""


class Place:
    """A part of all packings: so many strips of each kind, and the linear program for them.

    Args:
        search: the whole search.
        master: the linear program.
        start: what is wanted, with the fewest and the most strips of each kind.
    """

    def __init__(self, search: Search, master: Master, start: Remaining) -> None:
        self.search = search
        self.master = master
        self.start = start
        self.bound = 0
        self.is_solved = False
        """Whether the linear program was solved to its end."""
        self.shares: list[tuple[float, Column]] = []
        self.opened: tuple[float, ...] = ()
        self.prices: tuple[float, ...] = ()
        self.middle: tuple[float, ...] | None = None
        self.tried = 0
        self.patience = 0

    def look(self) -> None:
        """Solve the linear program, which gives the bound."""
        self.master.want(self.start.left, self.start.ranges)
        pricing = self.pricing = Pricing(self.start.task, self.start.left, self.start.ranges)
        best = self.search.best
        aim = None if best is None else best.spent
        ended = generate(self.master, pricing, self.search.watch.over, aim)
        if ended and self.master.end_trades():
            ended = generate(self.master, pricing, self.search.watch.over, aim)
        self.bound = max(self.bound, pricing.bound)
        shares = self.master.run()
        self.is_solved = ended
        self.shares, self.opened, self.prices = self.master.shares(), shares.opened, shares.prices

    def settle(self) -> bool:
        """Try once to reach the bound; each call tries harder.

        Returns:
            True when the bound was reached or proved to be out of reach (and raised).
        """
        aim = self.bound
        self.tried += 1
        if self._dive(aim):
            return True
        if self.search.over() or not self.is_solved:
            return False
        return self._choose(aim)

    def _dive(self, aim: int) -> bool:
        diver = Diver(self.master, self.search.over, self.search.dice)
        found = diver.dive(self.start, self.shares, aim, MANNERS[self.tried % len(MANNERS)], _STEPS)
        self.search.found(diver.best)
        return found is not None

    def _choose(self, aim: int) -> bool:
        """The integer program over every pattern that a packing at the aim can use, when they are not too many."""
        if self.patience >= len(_SIDE_BY_SIDE):
            return False
        columns = self._that_matter(aim, _SIDE_BY_SIDE[self.patience])
        if columns is None or len(columns) > _CHOSEN_FROM[self.patience]:
            self.patience += 1
            return False
        seconds = self.search.watch.left()
        chosen = choose(self.start, columns, aim, seconds if self.patience == 2 else seconds / 2)
        if self.search.found(chosen.packing) and chosen.packing is not None and chosen.packing.spent <= aim:
            return True
        if chosen.bound > aim:
            self.bound = self.pricing.totals.from_here(aim + 1)
            return True
        self.patience += 1
        return False

    def _middle(self) -> tuple[float, ...]:
        """Prices in the middle of those that prove the bound: fewer patterns pay for themselves there."""
        if self.middle is None:
            start = self.start
            sums = list(self.prices)
            for _ in range(_VIEWS):
                nudged = [demand * (1 + _NUDGE * self.search.dice.random()) for demand in start.left]
                self.master.want(nudged, start.ranges)
                generate(self.master, self.pricing, self.search.over)
                sums = [old + new for old, new in zip(sums, self.master.run().prices, strict=True)]
            self.middle = tuple(price / (_VIEWS + 1) for price in sums)
        return self.middle

    def _that_matter(self, aim: int, most: int) -> list[Column] | None:
        """Patterns without which no packing at the aim exists, worked out in whole numbers; None: too many."""
        task, pricing = self.start.task, self.pricing
        prices = pricing.settled(self._middle())
        slack = aim * pricing.scale - pricing.floor(prices)
        columns: list[Column] = []
        for kind, (stock, (fewest, count)) in enumerate(zip(task.stock, self.start.ranges, strict=True)):
            if count == 0:
                continue
            worth = pricing.table.most(stock.length)
            base = worth if fewest else max(worth, stock.cost * pricing.scale)
            found = every_filling(task, pricing.table, prices, stock.length, base - slack, most)
            if found is None:
                return None
            columns.extend((kind, pattern) for pattern in found if pattern)
        return columns


def first_packings(search: Search, tries: int) -> list[Remaining]:
    """Some packings to begin with.

    Args:
        search: gives the task.
        tries: how many.
    """
    out = [] if search.best is None else [search.best]
    for number in range(tries):
        found = fill_up(search.start, search.dice, HABITS[number % len(HABITS)])
        if found is not None:
            search.found(found)
            out.append(found)
    return out
