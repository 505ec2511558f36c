"""Better columns found round by round, until no column is worth more than it costs.

Prices of a young linear program jump about. Columns are therefore looked for at prices between those and the best
prices so far (the ones with the best bound), which takes half the rounds; any prices give a valid bound.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Protocol

from stitchflip.cutting.layouts.columns.column import Column, promised, rounded_up, whole_worths
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.master import Master
    from stitchflip.cutting.layouts.watch import Watch

SCALE = 1 << 20
"""Whole numbers of worth for a cost of 1."""
_NEARNESS = 0.6
"""Part of the best prices so far in the prices columns are looked for at."""
_HAIR = 1e-7
"""A column must be worth more than its cost by this part of it to be called better."""
_MOST_A_ROUND = 40


@dataclass(frozen=True, slots=True)
class Offered:
    """What there is at some prices."""

    offers: list[tuple[int, int]]
    """For each cost a column can have: the cost, and a worth no column of it exceeds."""
    columns: list[Column]
    """Columns worth much."""


@dataclass(frozen=True, slots=True)
class Promise:
    """A bound and the worths that prove it."""

    bound: Fraction
    """No plan costs less (not rounded)."""
    worths: tuple[int, ...]
    """Of one piece of each row, `SCALE` for a cost of 1: no column is worth more than it costs."""


class Pricer(Protocol):
    """Finds columns at given prices."""

    def __call__(self, worths: Sequence[int], *, is_last: bool) -> Offered:
        """Look for columns.

        Args:
            worths: of one piece of each row, `SCALE` for a cost of 1.
            is_last: nothing better was found at prices near by: now every worth has to be exact, and the best column
                of every cost told.
        """
        ...


def generated(
    master: Master,
    wanted: Sequence[int],
    pricer: Pricer,
    watch: Watch,
    *,
    unit: int = 1,
) -> Promise:
    """Add columns until none would lower the cost, or the bound can rise no further.

    Args:
        master: holds columns for a first solution; its last solution is the cheapest in fractions.
        wanted: pieces of each row.
        pricer: finds columns.
        watch: ends the search.
        unit: bounds are rounded up to multiples of it, so the search may end early.

    Returns:
        The best bound found, zero when the search ended before the first.
    """
    best, best_prices, is_last = Promise(bound=Fraction(0), worths=(0,) * len(wanted)), None, False
    while not watch.over() and master.solve(watch):
        if rounded_up(master.cost - _HAIR, unit) <= rounded_up(best.bound, unit):
            break
        looked_at = prices = master.prices
        if best_prices is not None and not is_last:
            looked_at = [_NEARNESS * a + (1 - _NEARNESS) * b for a, b in zip(best_prices, prices, strict=True)]
        worths = whole_worths(looked_at, SCALE)
        offered = pricer(worths, is_last=is_last)
        promise = _promise(wanted, worths, offered.offers)
        if best_prices is None or promise.bound > best.bound:
            best = promise
            best_prices = [worth / SCALE for worth in promise.worths]
        if master.add(_better(offered.columns, prices)):
            is_last = False
        elif is_last:
            break
        else:
            is_last = True
    return best


def _promise(wanted: Sequence[int], worths: Sequence[int], offers: Sequence[tuple[int, int]]) -> Promise:
    """The bound the worths prove, and the worths cut down so that no column is worth more than it costs."""
    rate = promised([1], [1], offers) * SCALE
    cut = tuple(int(worth * rate) for worth in worths)
    return Promise(bound=promised(wanted, worths, offers), worths=cut)


def _better(columns: Sequence[Column], prices: Sequence[float]) -> list[Column]:
    """The columns that are worth more than they cost, the best first."""
    rated = [(sum(count * prices[row] for row, count in column.uses), column) for column in columns]
    better = [(column.cost / worth, column) for worth, column in rated if worth > column.cost * (1 + _HAIR)]
    better.sort(key=lambda pair: (pair[0], pair[1].cost, pair[1].uses))
    return [column for _, column in better[:_MOST_A_ROUND]]
