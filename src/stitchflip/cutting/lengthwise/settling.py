"""One aim: is there a packing at this cost? Dives look for one, the integer program over what can matter decides."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.choosing import choose
from stitchflip.cutting.lengthwise.dives import MANNERS, Diver
from stitchflip.cutting.lengthwise.every_filling import every_filling
from stitchflip.cutting.lengthwise.following import ByList, ByPrices
from stitchflip.cutting.lengthwise.prices import Pricing, Until, generate

if TYPE_CHECKING:
    from stitchflip.cutting.lengthwise.dives import Follower
    from stitchflip.cutting.lengthwise.master import Column, Master
    from stitchflip.cutting.lengthwise.remaining import Remaining
    from stitchflip.cutting.lengthwise.search import Search

_SIDE_BY_SIDE = (20_000, 400_000)
"""Partial fillings looked at side by side, by how patient the search has become."""
_MOST_LISTED = 20_000
"""Patterns written down."""
_CHOSEN_AT_ONCE = 400
"""So few of them go straight into the integer program."""
_TURNS = 4
"""More go in at every such try only."""
_HAIR = 1e-6
_STEPS_BY_PRICES = 15
_STEPS_BY_LIST = 40
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
        self.pricing: Pricing | None = None
        self.likely = 0
        """What the linear program comes to, rounded up: the bound, or what it is going to be."""
        self.middle: tuple[float, ...] | None = None
        self.columns: list[Column] | None = None
        """All that a packing at the bound can use."""
        self.listed: ByList | None = None
        self.tried = 0
        self.patience = 0

    def look(self) -> None:
        """The linear program, as far as it takes to know the bound."""
        self._generate(Until.ROUNDED)

    def put_away(self) -> None:
        """Keep the bound and the prices, drop the tables and lists, which are made anew when they are asked for."""
        self.pricing = self.columns = self.listed = None

    def _priced(self) -> Pricing:
        if self.pricing is None:
            self.pricing = Pricing(self.start.task, self.start.left, self.start.ranges)
        return self.pricing

    def _generate(self, until: Until) -> bool:
        """Go on with the linear program; whether it is solved."""
        best = self.search.best
        enough = None if best is None else best.spent
        pricing = self._priced()
        self.master.want(self.start.left, self.start.ranges)
        ended = generate(self.master, pricing, self.search.watch.over, until, enough)
        if self.master.end_trades():
            ended = generate(self.master, pricing, self.search.watch.over, until, enough)
        self.bound = max(self.bound, pricing.bound)
        shares = self.master.run()
        self.shares, self.opened, self.prices = self.master.shares(), shares.opened, shares.prices
        self.likely = pricing.totals.from_here(ceil(shares.value - _HAIR))
        return ended

    def settle(self) -> bool:
        """Try once to reach the bound; each call tries harder.

        Returns:
            True when the bound was reached or proved to be out of reach (and raised).
        """
        self.tried += 1
        if self.tried == 1 or self.listed is None:
            if self._dive(ByPrices(self.master, self.search.over), _STEPS_BY_PRICES):
                return True
            if self.search.over():
                return False
            before = self.bound
            if not self.is_solved:
                self.is_solved = self._generate(Until.SOLVED)
            if not self.is_solved or self.bound > before:
                return self.bound > before
        if self.columns is None and self.patience < len(_SIDE_BY_SIDE):
            self._list()
            if self.tried == 0:
                return True
        if self.columns is None:
            return False
        if self.tried > 1 or len(self.columns) > _CHOSEN_AT_ONCE:
            first = [column for _, column in self.shares]
            self.listed = ByList(self.start.task, self.columns, first, self.search.over)
            return self._dive(self.listed, _STEPS_BY_LIST) or (self.tried % _TURNS == 0 and self._choose())
        return self._choose()

    def _dive(self, follower: Follower, steps: int) -> bool:
        best = self.search.best
        aim = self.bound if self.is_solved or (best and best.spent <= self.likely) else max(self.likely, self.bound)
        diver = Diver(follower, self.search.over, self.search.dice, None if best is None else best.spent)
        found = diver.dive(self.start, self.shares, aim, MANNERS[self.tried % len(MANNERS)], steps)
        self.search.found(diver.best)
        return found is not None and found.spent <= self.bound

    def _list(self) -> None:
        """Write down every pattern that a packing at the bound can use, when they are not too many."""
        columns = self._that_matter(self.bound, _SIDE_BY_SIDE[self.patience])
        if columns is None or len(columns) > _MOST_LISTED:
            self.patience += 1
        elif columns:
            self.columns, self.listed = columns, None
        else:
            self._raise()

    def _choose(self) -> bool:
        """The integer program over them."""
        aim = self.bound
        seconds = self.search.watch.likely_left()
        chosen = choose(self.start, self.columns or [], aim, seconds if self.tried > 1 else seconds / 2)
        self.search.found(chosen.packing)
        if chosen.packing is not None and chosen.packing.spent <= aim:
            return True
        if chosen.bound > aim:
            sure = choose(self.start, self.columns or [], aim, self.search.watch.likely_left(), is_proof=True)
            self.search.found(sure.packing)
            if sure.bound > aim:
                self._raise()
                return True
        return False

    def _raise(self) -> None:
        """The bound is out of reach: take the next cost there is."""
        self.bound = self._priced().totals.from_here(self.bound + 1)
        self.columns = self.listed = None
        self.patience = self.tried = 0

    def _middle(self) -> tuple[float, ...]:
        """Prices in the middle of those that prove the bound: fewer patterns pay for themselves there."""
        if self.middle is None:
            start = self.start
            sums = list(self.prices)
            for _ in range(_VIEWS):
                nudged = [demand * (1 + _NUDGE * self.search.dice.random()) for demand in start.left]
                self.master.want(nudged, start.ranges)
                generate(self.master, self._priced(), self.search.over)
                sums = [old + new for old, new in zip(sums, self.master.run().prices, strict=True)]
            self.middle = tuple(price / (_VIEWS + 1) for price in sums)
        return self.middle

    def _that_matter(self, aim: int, most: int) -> list[Column] | None:
        """Patterns without which no packing at the aim exists, worked out in whole numbers; None: too many."""
        task, pricing = self.start.task, self._priced()
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
