"""Column generation: better patterns for the prices of the day, better prices for the patterns known.

Every round fills the table for the prices (whole numbers, so exactly), puts in the patterns that pay, and gives a
lower bound: prices scaled until no strip is worth more than it costs bound every packing, whatever the linear
program is doing. The bound is worked out in whole numbers, so rounding it up is safe.
"""

from __future__ import annotations

from enum import Enum
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.lengthwise.every_filling import every_filling
from stitchflip.cutting.lengthwise.tables import Table, parts_of
from stitchflip.cutting.lengthwise.totals import Totals

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.cutting.lengthwise.master import Master, Range, Shares
    from stitchflip.cutting.lengthwise.model import LengthTask

_FINE = 1 << 32
"""Prices are counted in so many parts of the dearest strip."""
_MOST_NEW = 60
"""Patterns put in at once for each kind of strip."""
_SIDE_BY_SIDE = 20_000
"""Partial fillings looked at side by side."""
_NOTHING = 1e-9
_HAIR = 1e-7
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
        self.scale = _FINE // max(1, *(stock.cost for stock in task.stock))
        self.totals = Totals([stock.cost for stock in task.stock], ranges)
        self.bound = self.totals.from_here(0)

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
        return self.bound_by(prices, [self.table.most(stock.length) for stock in self.task.stock])

    def bound_by(self, prices: Sequence[int], worths: Sequence[int]) -> float:
        """Work out the bound.

        Args:
            prices: of each size, scaled.
            worths: no strip of each kind is worth more.

        Returns:
            The bound these prices give, unrounded; the best one so far, rounded, is kept.
        """
        total = sum(price * demand for price, demand in zip(prices, self.demands, strict=True))
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


class Until(Enum):
    """When to stop looking for patterns."""

    SOLVED = "solved"
    """None pays any more."""
    ROUNDED = "rounded"
    """The bound, rounded up, is what the linear program comes to, rounded up; more rounds cannot raise it."""
    TABLE = "table"
    """The table, however coarse, shows none that pays."""


def generate(
    master: Master,
    pricing: Pricing,
    over: Callable[[], bool],
    until: Until = Until.SOLVED,
    enough: int | None = None,
    content: float = -1.0,
) -> bool:
    """Go on until no pattern pays any more.

    Args:
        master: the linear program; it has patterns for a first packing.
        pricing: for the same pieces.
        over: asked every round.
        until: when to stop looking.
        enough: stop when the bound reaches this.
        content: stop when the linear program costs no more than this.

    Returns:
        Whether it came to the end asked for, with no pattern that pays.
    """
    while not over():
        shares = master.run()
        if shares.value <= content and shares.from_nothing < _NOTHING:
            return False
        pricing.price(pricing.whole(shares.prices))
        if enough is not None and pricing.bound >= enough:
            return False
        if until is Until.ROUNDED and pricing.totals.from_here(ceil(shares.value - _HAIR)) <= pricing.bound:
            return False
        if not _better(master, pricing, shares):
            if until is Until.TABLE or pricing.table.is_exact:
                return True
            if not _better_exactly(master, pricing, shares):
                return True
    return False


def _limits(pricing: Pricing, shares: Shares) -> list[int]:
    """What a strip of each kind must be worth more than, to pay."""
    return [
        stock.cost * pricing.scale + int(rent * pricing.scale) + _PAYS
        for stock, rent in zip(pricing.task.stock, shares.rents, strict=True)
    ]


def _better(master: Master, pricing: Pricing, shares: Shares) -> int:
    """Put in patterns from the table that pay; how many there were."""
    added = 0
    for kind, (stock, limit) in enumerate(zip(pricing.task.stock, _limits(pricing, shares), strict=True)):
        found = pricing.table.fillings(stock.length, limit)[:_MOST_NEW]
        added += master.add((kind, pattern) for _, pattern in found)
    return added


def _better_exactly(master: Master, pricing: Pricing, shares: Shares) -> int:
    """The same where the table is coarse: look through all fillings that it promises to pay.

    When there are none, the bound is worked out from that.
    """
    prices = pricing.whole(shares.prices)
    limits = _limits(pricing, shares)
    added = 0
    for kind, (stock, limit) in enumerate(zip(pricing.task.stock, limits, strict=True)):
        found = every_filling(pricing.task, pricing.table, prices, stock.length, limit, _SIDE_BY_SIDE)
        if found is None:
            return 0
        found.sort(key=lambda pattern: -sum(prices[size] * count for size, count in pattern))
        added += master.add((kind, pattern) for pattern in found[:_MOST_NEW])
    if not added:
        worths = (pricing.table.most(stock.length) for stock in pricing.task.stock)
        pricing.bound_by(prices, [min(worth, limit) for worth, limit in zip(worths, limits, strict=True)])
    return added
