"""One column: a strip or a sheet cut in a certain way, what it costs and what it gives; and bounds from prices."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

Uses = tuple[tuple[int, int], ...]
"""(number of a row, how many of it), by row: of each want so many pieces."""


@dataclass(frozen=True, slots=True)
class Column:
    """Something that can be cut, any number of times."""

    cost: int
    """Height of a strip, cost of a sheet."""
    uses: Uses

    def worth(self, worths: Sequence[int]) -> int:
        """What it gives at the given worth of a piece."""
        return sum(count * worths[row] for row, count in self.uses)


def whole_worths(prices: Iterable[float], scale: int) -> list[int]:
    """Prices as whole numbers, so that tables and bounds are exact.

    Args:
        prices: cost a piece is worth, zero or more; a linear program may return a hair less.
        scale: whole numbers for a cost of 1.

    Returns:
        Rounded down.
    """
    return [max(0, int(price * scale)) for price in prices]


def promised(wanted: Sequence[int], worths: Sequence[int], offers: Iterable[tuple[int, int]]) -> Fraction:
    """The cost no plan can beat, from any worths of the pieces.

    Were every column worth at most its cost, no plan could cost less than the worth of all that is wanted. Where
    some column is worth more, all worths are cut by the worst ratio first; so the bound holds while better columns
    are still being found, and needs no tolerance.

    Args:
        wanted: pieces of each want.
        worths: of one piece of each want, zero or more, in any unit.
        offers: for each cost a column can have: the cost, and the most any column of it is worth. Columns worth
            nothing need not be told.

    Returns:
        The bound, in the unit of the costs; 0 when nothing is worth anything.

    Example:
        Two pieces worth 3 each; a strip of height 4 can hold both, one of height 3 only one of them:

        >>> promised([2], [3], [(4, 6), (3, 3)])
        Fraction(4, 1)
    """
    rate = min((Fraction(cost, worth) for cost, worth in offers if worth > 0), default=Fraction(0))
    return rate * sum(count * worth for count, worth in zip(wanted, worths, strict=True))


def rounded_up(bound: Fraction | float, unit: int = 1) -> int:
    """The bound as a whole multiple of what all costs are multiples of.

    Args:
        bound: exact, or a float already lowered by its error.
        unit: divisor of all costs.

    Returns:
        The next multiple at or above it.
    """
    return ceil(bound / unit) * unit


Plan = dict[Column, int]
"""How often each column is cut."""


def cost_of(plan: Plan) -> int:
    """What a plan costs."""
    return sum(column.cost * times for column, times in plan.items())


def given_by(plan: Plan, rows: int) -> list[int]:
    """How much of each row a plan gives."""
    given = [0] * rows
    for column, times in plan.items():
        for row, count in column.uses:
            given[row] += count * times
    return given
