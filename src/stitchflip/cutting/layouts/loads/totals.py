"""What sheets can cost together: a bound between two such sums can be rounded up to the higher one."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, gcd
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.loads.kinds import Kind

_MOST_SUMS = 4_000_000


class Totals:
    """Costs that sheets can add up to.

    Args:
        kinds: the sheets.
        copies: of each sheet of the task; None: as many as it takes.
        most: larger sums are of no interest.
    """

    def __init__(self, kinds: Sequence[Kind], copies: Sequence[int | None], most: int) -> None:
        costs = {kind.sheet: kind.cost for kind in kinds}
        self._unit = gcd(*costs.values()) or 1
        self._sums = 0
        end = most // self._unit
        if end > _MOST_SUMS:
            return
        inside = (1 << (end + 1)) - 1
        self._sums = 1
        for sheet, cost in costs.items():
            step, copies_left = cost // self._unit, copies[sheet]
            if step == 0:
                continue
            left, part = end // step if copies_left is None else min(copies_left, end // step), 1
            while left > 0:
                taken = min(part, left)
                self._sums |= (self._sums << (taken * step)) & inside
                left -= taken
                part *= 2

    def up(self, bound: Fraction) -> int:
        """The smallest sum not below a bound."""
        least = max(0, ceil(bound / self._unit))
        above = self._sums >> least
        if above:
            least += (above & -above).bit_length() - 1
        return least * self._unit


def area_bound(kinds: Sequence[Kind], copies: Sequence[int | None], area: int) -> Fraction | None:
    """Cost of so much fabric, the cheapest for its size first; None when there is not so much."""
    sheets = {kind.sheet: (Fraction(kind.cost, kind.wide * kind.high), kind.wide * kind.high) for kind in kinds}
    paid, left = Fraction(0), area
    for sheet, (price, size) in sorted(sheets.items(), key=lambda entry: entry[1][0]):
        count = copies[sheet]
        taken = left if count is None else min(left, count * size)
        paid += price * taken
        left -= taken
    return None if left > 0 else paid
