"""What all pieces must cost at least, by weights that no strip can hold more of than its own.

Needs no table and no linear program, so it is known before anything else is. Every weight gives a small cheapest-strips
question of its own: which strips, whole or in part, carry all the weight for the least.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.bounds import weights_for
from stitchflip.cutting.lengthwise.totals import Totals

if TYPE_CHECKING:
    from stitchflip.cutting.lengthwise.model import LengthTask


def least_cost(task: LengthTask) -> int:
    """No packing costs less than this.

    Args:
        task: sizes longest first.

    Returns:
        The bound, rounded up to a sum that strips can cost; `NEVER` when they are not enough.
    """
    wanted = list(zip(task.sizes, task.demands, strict=True))
    if not wanted:
        return 0
    totals = Totals([stock.cost for stock in task.stock], [(0, stock.count) for stock in task.stock])
    longest = max(stock.length for stock in task.stock)
    best = 0
    for weight in weights_for(wanted, longest):
        need = sum(weight(size) * demand for size, demand in wanted)
        carriers = [(weight(stock.length), stock.cost, stock.count) for stock in task.stock]
        best = max(best, totals.from_here(_cheapest(need, carriers)))
    return best


def _cheapest(need: int, carriers: list[tuple[int, int, int | None]]) -> int:
    """Least cost, rounded up, of strips or parts of strips that carry the weight."""
    cost = Fraction(0)
    usable = sorted((one for one in carriers if one[0]), key=lambda one: Fraction(one[1], one[0]))
    for weight, each, count in usable:
        if count is None or count * weight >= need:
            return ceil(cost + Fraction(need * each, weight))
        cost += count * each
        need -= count * weight
        if need <= 0:
            break
    return ceil(cost) + (1 if need > 0 else 0)
