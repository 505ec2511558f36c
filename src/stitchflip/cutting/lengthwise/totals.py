"""What strips can cost together: only sums of their prices, so a bound is rounded up to the next one."""

from __future__ import annotations

from math import gcd
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

NEVER = 1 << 62
"""More than any strips cost: they are not enough."""
_MOST = 200_000
"""Sums are written down one by one up to this multiple of their common divisor."""


class Totals:
    """Sums of the costs of strips.

    Args:
        costs: of one strip of each kind.
        ranges: fewest and most of each kind; None: as many as it takes.

    Example:
        >>> totals = Totals([336, 120], [(0, None), (0, 2)])
        >>> [totals.from_here(cost) for cost in (1, 121, 337, 577)]
        [120, 240, 456, 672]
    """

    def __init__(self, costs: Sequence[int], ranges: Sequence[tuple[int, int | None]]) -> None:
        self._step = gcd(*costs) or 1
        self._least = sum(cost * fewest for cost, (fewest, _) in zip(costs, ranges, strict=True))
        self._most: int | None = 0
        self._sums = 1
        mask = (1 << _MOST) - 1
        endless = []
        for cost, (fewest, most) in zip(costs, ranges, strict=True):
            if not cost:
                continue
            if most is None:
                endless.append(cost // self._step)
            else:
                self._add(cost // self._step, most - fewest, mask)
        for cost in endless:
            self._most = None
            shift = cost
            while shift < _MOST:
                self._sums |= self._sums << shift
                shift *= 2
            self._sums &= mask

    def _add(self, cost: int, copies: int, mask: int) -> None:
        if self._most is not None:
            self._most += cost * copies
        times = 1
        while copies > 0:
            taken = min(times, copies)
            self._sums |= self._sums << min(taken * cost, _MOST)
            self._sums &= mask
            copies -= taken
            times *= 2

    def from_here(self, cost: int) -> int:
        """The least total that is not under a cost.

        Args:
            cost: whole, may be below the least total.

        Returns:
            The total; `NEVER` when all strips together cost less.
        """
        over = max(-(-(cost - self._least) // self._step), 0)
        if self._most is not None and over > self._most:
            return NEVER
        higher = self._sums >> over
        if over < _MOST and higher:
            over += (higher & -higher).bit_length() - 1
        return self._least + over * self._step
