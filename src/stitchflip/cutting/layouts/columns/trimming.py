"""Strips cut down to what is still wanted: pieces too many left out, the strip made lower where that lets it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.columns.column import Column, given_by

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.layouts.columns.column import Plan
    from stitchflip.cutting.layouts.columns.strips import StripKnapsack


def cut_down(knapsack: StripKnapsack, column: Column, left: Sequence[int]) -> Column | None:
    """The strip with no more of each piece than is left to cut.

    Args:
        knapsack: knows how low a strip can be.
        column: the strip.
        left: pieces of each kind still wanted.

    Returns:
        The strip itself if it has nothing too much, a lower or emptier one if it has; None if nothing in it is wanted.
    """
    if all(count <= left[kind] for kind, count in column.uses):
        return column
    pieces = tuple((kind, min(count, left[kind])) for kind, count in column.uses if left[kind] > 0)
    return knapsack.column(pieces) if pieces else None


def without_surplus(knapsack: StripKnapsack, plan: Plan, wanted: Sequence[int]) -> Plan:
    """The plan with exactly the pieces wanted, each one too many left out where that saves most.

    Args:
        knapsack: knows how low a strip can be.
        plan: at least the pieces wanted.
        wanted: pieces of each kind.

    Returns:
        A plan that costs no more.
    """
    plan = {column: times for column, times in plan.items() if times}
    for kind, given in enumerate(given_by(plan, len(wanted))):
        surplus = given - wanted[kind]
        while surplus > 0:
            column, lower, dropped = _best_drop(knapsack, plan, kind, surplus)
            times = min(plan[column], surplus // dropped)
            surplus -= dropped * times
            plan[column] -= times
            if not plan[column]:
                del plan[column]
            if lower is not None:
                plan[lower] = plan.get(lower, 0) + times
    return plan


def _best_drop(knapsack: StripKnapsack, plan: Plan, kind: int, surplus: int) -> tuple[Column, Column | None, int]:
    """From which strip to drop pieces of a kind: it, what becomes of it, and how many pieces are dropped."""
    best: tuple[int, int, Column, Column | None, int] | None = None
    for column in plan:
        count = dict(column.uses).get(kind, 0)
        if count:
            dropped = min(count, surplus)
            kept = tuple((row, n - dropped * (row == kind)) for row, n in column.uses if n > dropped or row != kind)
            lower = knapsack.column(kept) if kept else None
            saved = column.cost - (lower.cost if lower is not None else 0)
            if best is None or (saved, dropped) > best[:2]:
                best = (saved, dropped, column, lower, dropped)
    if best is None:
        raise AssertionError("a piece given too often is in some strip")
    return best[2:]
