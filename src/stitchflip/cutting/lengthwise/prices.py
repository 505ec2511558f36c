"""Column generation: better patterns for the prices of the day, better prices for the patterns known.

Every round fills the table for the prices (whole numbers, so exactly), puts in the patterns that pay, and gives a
lower bound: prices scaled until no strip is worth more than it costs bound every packing, whatever the linear
program is doing. The bound is worked out in whole numbers, so rounding it up is safe.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.tables import Table, parts_of
from stitchflip.cutting.lengthwise.totals import Totals

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.cutting.lengthwise.master import Master, Range
    from stitchflip.cutting.lengthwise.model import LengthTask

_FINE = 1 << 32
"""Prices are counted in so many parts of the dearest strip."""
_MOST_NEW = 60
"""Patterns put in at once for each kind of strip."""
_PAYS = 1 << 10
"""A pattern must pay so many of them more than it costs."""


class Pricing:
    """Finds patterns that pay, and bounds.

    Args:
        task: sizes longest first, strips.
        demands: pieces still wanted.
        ranges: fewest and most strips of each kind.
    """

    def __init__(self, task: LengthTask, demands: Sequence[int], ranges: Sequence[Range]) -> None:
        self.task = task
        self.demands = tuple(demands)
        self.ranges = tuple(ranges)
        longest = max(stock.length for stock in task.stock)
        self.table = Table(parts_of(task.sizes, self.demands, longest), longest)
        self.scale = _FINE // max(max(stock.cost for stock in task.stock), 1)
        self.totals = Totals([stock.cost for stock in task.stock], ranges)
        self.bound = self.totals.from_here(0)
        self.rounds = 0

    def whole(self, prices: Sequence[float]) -> list[int]:
        """Prices in whole numbers.

        Args:
            prices: of each size.
        """
        return [int(price * self.scale) for price in prices]

    def price(self, prices: Sequence[int]) -> float:
        """Fill the table and work out the bound.

        Args:
            prices: of each size, scaled.

        Returns:
            The bound these prices give, unrounded; the best one so far, rounded, is kept.
        """
        self.table.price(prices)
        total = sum(price * demand for price, demand in zip(prices, self.demands, strict=True))
        worths = [self.table.most(stock.length) for stock in self.task.stock]
        costs = [stock.cost * self.scale for stock in self.task.stock]
        over, under = 1, 1
        for worth, cost, (_, most) in zip(worths, costs, self.ranges, strict=True):
            if most is None and cost * under < over * worth:
                over, under = cost, worth
        value = total * over
        for worth, cost, (fewest, most) in zip(worths, costs, self.ranges, strict=True):
            each = cost * under - worth * over
            value += each * (fewest if each >= 0 else most or 0)
        self.bound = max(self.bound, self.totals.from_here(-(-value // (self.scale * under))))
        return value / (self.scale * under)

    def settled(self, prices: Sequence[float]) -> list[int]:
        """Whole prices at which no strip that there are enough of is worth more than it costs, and the table for them.

        Args:
            prices: of each size.
        """
        whole = [int(price * self.scale * (1 - 1e-10)) for price in prices]
        self.table.price(whole)
        over, under = 1, 1
        for stock, (_, most) in zip(self.task.stock, self.ranges, strict=True):
            worth = self.table.most(stock.length)
            if most is None and stock.cost * self.scale * under < over * worth:
                over, under = stock.cost * self.scale, worth
        if over < under:
            whole = [price * over // under for price in whole]
            self.table.price(whole)
        return whole

    def floor(self, prices: Sequence[int]) -> int:
        """What every packing costs at least, scaled, by settled prices.

        Args:
            prices: as `settled` gave them; the table is filled for them.
        """
        value = sum(price * demand for price, demand in zip(prices, self.demands, strict=True))
        for stock, (fewest, most) in zip(self.task.stock, self.ranges, strict=True):
            each = stock.cost * self.scale - self.table.most(stock.length)
            value += each * (fewest if each >= 0 else most or 0)
        return value


def generate(
    master: Master,
    pricing: Pricing,
    over: Callable[[], bool],
    enough: int | None = None,
    smooth: float = 0.0,
    content: float = -1.0,
) -> bool:
    """Go on until no pattern pays any more.

    Args:
        master: the linear program; it has patterns for a first packing.
        pricing: for the same pieces.
        over: asked every round.
        enough: stop when the bound reaches this.
        content: stop when the linear program costs no more than this.
        smooth: how far prices stay with those of the best bound.

    Returns:
        Whether the linear program is solved to its end.
    """
    task = master.task
    center: list[float] | None = None
    best = -1.0
    while not over():
        shares = master.run()
        if shares.value <= content and shares.from_nothing < 1e-9:
            return False
        keep = smooth if center is not None else 0.0
        while True:
            pricing.rounds += 1
            prices = list(shares.prices)
            if keep and center is not None:
                prices = [keep * old + (1 - keep) * new for old, new in zip(center, prices, strict=True)]
            bound = pricing.price(pricing.whole(prices))
            if bound > best:
                best, center = bound, prices
            if enough is not None and pricing.bound >= enough:
                return False
            added = 0
            exact = pricing.whole(shares.prices)
            for kind, stock in enumerate(task.stock):
                rent = int(shares.rents[kind] * pricing.scale)
                limit = stock.cost * pricing.scale + rent + _PAYS
                found = pricing.table.fillings(stock.length, limit - limit // 1000 if keep else limit)[:_MOST_NEW]
                paying = [
                    (kind, pattern)
                    for _, pattern in found
                    if sum(exact[size] * count for size, count in pattern) > limit
                ]
                added += master.add(paying)
            if added or not keep:
                break
            keep = 0.0
        if not added:
            return True
    return False
