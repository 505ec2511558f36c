"""Column generation: better patterns for the prices of the day, better prices for the patterns known.

Every round fills the table for the prices (whole numbers, so exactly), puts in the patterns that pay, and gives a
lower bound: prices scaled until no strip is worth more than it costs bound every packing, whatever the linear
program is doing. The bound is worked out in whole numbers, so rounding it up is safe.
"""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.tables import Table, parts_of

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.cutting.lengthwise.master import Master
    from stitchflip.cutting.lengthwise.model import LengthTask

_FINE = 1 << 32
"""Prices are counted in so many parts of the dearest strip."""
_PAYS = 1 << 10
"""A pattern must pay so many of them more than it costs."""


class Pricing:
    """Finds patterns that pay, and bounds.

    Args:
        task: sizes longest first, strips.
        demands: when only some of the pieces are still wanted.
    """

    def __init__(self, task: LengthTask, demands: Sequence[int] | None = None) -> None:
        self.task = task
        self.demands = tuple(demands if demands is not None else task.demands)
        longest = max(stock.length for stock in task.stock)
        parts = parts_of(task.sizes, self.demands, longest)
        self.table = Table(parts, longest)
        self.scale = _FINE // max(stock.cost for stock in task.stock)
        self.step = gcd(*(stock.cost for stock in task.stock))
        self.bound = 0
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
        over, under = 1, 1
        for stock in self.task.stock:
            most = self.table.most(stock.length)
            if stock.count is None and stock.cost * self.scale * under < over * most:
                over, under = stock.cost * self.scale, most
        value = total * over
        for stock in self.task.stock:
            if stock.count is not None:
                value += stock.count * min(0, stock.cost * self.scale * under - self.table.most(stock.length) * over)
        each = self.scale * under
        self.bound = max(self.bound, -(-value // (each * self.step)) * self.step)
        return value / each


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
                found = pricing.table.fillings(stock.length, int(limit * 0.999) if keep else limit)
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
