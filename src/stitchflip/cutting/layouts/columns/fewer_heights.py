"""Among plans that cost the same purchase, one with fewer heights of strips: the ruler is set less often.

A height is given up by cutting its strips a little taller, or by a new plan without it. The plan of the fewest
heights that is shortest leaves the most in one piece.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.building import Builders
from stitchflip.cutting.layouts.columns.column import Column, cost_of
from stitchflip.cutting.layouts.columns.strips import StripKnapsack

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.column import Plan
    from stitchflip.cutting.layouts.watch import Watch

_MOST_FAILED = 4
"""After so many heights that could not be given up the others are kept too."""


def heights_of(plan: Plan) -> tuple[int, ...]:
    """The different heights of its strips, the lowest first."""
    return tuple(sorted({column.cost for column in plan}))


def with_fewer_heights(knapsack: StripKnapsack, plan: Plan, worths: Sequence[int], most: int, watch: Watch) -> Plan:
    """Give up heights one after the other, the ones of the fewest strips first.

    Args:
        knapsack: the pieces and the width.
        plan: exactly the pieces wanted.
        worths: of one piece of each kind, `SCALE` for a cost of 1.
        most: the plan may cost so much (the same step of the purchase).
        watch: ends the search.

    Returns:
        A plan of exactly the same pieces, within the cost, with as many heights or fewer.
    """
    kept: set[int] = set()
    while len(kept) < _MOST_FAILED and not watch.over():
        strips: dict[int, int] = {}
        for column, times in plan.items():
            strips[column.cost] = strips.get(column.cost, 0) + times
        given_up = min(
            (high for high in strips if high not in kept), key=lambda high: (strips[high], high), default=None
        )
        if given_up is None:
            break
        without = _without(knapsack, plan, worths, (given_up, most), watch)
        if without is None:
            kept.add(given_up)
        else:
            plan = without
    return plan


def _without(
    knapsack: StripKnapsack, plan: Plan, worths: Sequence[int], given_up: tuple[int, int], watch: Watch
) -> Plan | None:
    """The shortest plan found without a height and within a cost."""
    high, most = given_up
    heights = [other for other in heights_of(plan) if other != high]
    fewer = StripKnapsack(knapsack.kinds, knapsack.wide, is_trimmed=knapsack.is_trimmed, heights=heights)
    if not fewer.holds_all():
        return None
    raised = _raised(plan, high, heights) if knapsack.is_trimmed else {}
    if raised and cost_of(raised) <= most:
        return raised
    plans = Builders(fewer, [kind.count for kind in knapsack.kinds], worths, seed=high).next_plans(watch)
    within = [found for found in plans if cost_of(found) <= most]
    return min(within, key=lambda found: (len(heights_of(found)), cost_of(found)), default=None)


def _raised(plan: Plan, high: int, heights: Sequence[int]) -> Plan:
    """The plan with strips of one height cut as tall as the next; empty if there is none taller."""
    taller = next((other for other in heights if other > high), None)
    if taller is None:
        return {}
    raised: Plan = {}
    for column, times in plan.items():
        new = Column(cost=taller, uses=column.uses) if column.cost == high else column
        raised[new] = raised.get(new, 0) + times
    return raised
