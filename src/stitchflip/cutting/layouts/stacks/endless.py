"""A bound that holds for every way of cutting: pieces told as if they could be cut through along the fabric.

Any straight line across the fabric meets pieces that are together no wider than the fabric. Give each piece a worth,
spread evenly over its length; if no row of pieces side by side is worth more than 1 for each unit of length, no plan,
of however many stages, is shorter than all pieces are worth.
"""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.column import Column
from stitchflip.cutting.layouts.columns.generating import Offered, generated
from stitchflip.cutting.layouts.columns.master import Master

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.stacks.ground import Ground
    from stitchflip.cutting.layouts.watch import Watch

_LENGTH = 1_000_000
"""Of the rows priced: long enough that whole numbers of pieces in it are nearly exact."""
_MOST_STEPS = 3_000_000
"""Of one table; beyond that the area has to do."""
_MOST_ROUNDS = 60


class Rows:
    """Pieces side by side, each as long as it takes: which row is worth most.

    Args:
        ground: the pieces.
    """

    def __init__(self, ground: Ground) -> None:
        self._ground = ground
        widths = sorted({lay.wide for lay in ground.lays})
        self._lying = [(wide, [lay for lay in ground.lays if lay.wide == wide]) for wide in widths]

    def steps(self) -> int:
        """What one table takes."""
        return len(self._lying) * self._ground.wide

    def best(self, worths: Sequence[int]) -> tuple[int, Column]:
        """The row of `_LENGTH` that is worth most.

        Args:
            worths: of one piece of each want, zero or more.

        Returns:
            A worth no row exceeds, and about how many pieces of each want that row holds.
        """
        rates = []
        for wide, lays in self._lying:
            rate, want, long = max((-(-worths[lay.want] * _LENGTH // lay.long), lay.want, lay.long) for lay in lays)
            rates.append((wide, rate, want, long))
        most, last = [0], [(0, 0, 0)]
        for total in range(1, self._ground.wide + 1):
            best, came = most[-1], (0, 0, 0)
            for wide, rate, want, long in rates:
                if wide > total:
                    break
                if most[total - wide] + rate > best:
                    best, came = most[total - wide] + rate, (wide, want, long)
            most.append(best)
            last.append(came)
        return most[-1], Column(cost=_LENGTH, uses=self._uses(last))

    def _uses(self, last: Sequence[tuple[int, int, int]]) -> tuple[tuple[int, int], ...]:
        """Pieces of each want in the row that a table leads to."""
        counts: dict[int, int] = {}
        total = len(last) - 1
        while total > 0:
            wide, want, long = last[total]
            total -= wide or 1
            if wide:
                counts[want] = counts.get(want, 0) + _LENGTH // long
        return tuple(sorted((want, count) for want, count in counts.items() if count))


def plain_bound(ground: Ground) -> int:
    """No plan is shorter than the area asks for, or than the longest piece."""
    lowest: dict[int, int] = {}
    for lay in ground.lays:
        lowest[lay.want] = min(lay.long, lowest.get(lay.want, lay.long))
    return max(-(-ground.area(ground.counts) // ground.wide), *lowest.values())


def bound_for_any_cuts(ground: Ground, watch: Watch) -> int:
    """The length no plan of any number of stages goes under.

    Args:
        ground: the pieces.
        watch: ends the search; the area tells a bound at any moment.

    Returns:
        The best bound found.
    """
    bound = plain_bound(ground)
    rows = Rows(ground)
    if rows.steps() > _MOST_STEPS:
        return bound
    master = Master(ground.counts)
    master.add(
        [Column(cost=_LENGTH, uses=((lay.want, ground.wide // lay.wide * _LENGTH // lay.long),)) for lay in ground.lays]
    )
    left = _MOST_ROUNDS

    def pricer(worths: Sequence[int], *, is_last: bool) -> Offered:
        nonlocal left
        del is_last  # every worth is a bound
        left -= 1
        worth, column = rows.best(worths)
        return Offered(offers=[(_LENGTH, worth)], columns=[column] if left > 0 else [])

    promise = generated(master, list(ground.counts), pricer, watch)
    return max(bound, ceil(promise.bound))
