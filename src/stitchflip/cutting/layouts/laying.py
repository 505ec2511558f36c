"""A plan of strips written as the layout a hand can cut."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Bit, LaidStrip, Layout, Stack

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.columns.column import Column, Plan
    from stitchflip.cutting.layouts.columns.strips import StripKnapsack


def laid_out(knapsack: StripKnapsack, plan: Plan, *, units: tuple[int, int] = (1, 1), sheet: int = 0) -> Layout:
    """The strips one above the other: equal heights together, so that the ruler is set once for each.

    Args:
        knapsack: knows how a piece lies in a strip.
        plan: strips, and how often each is cut.
        units: one unit across, and along, is so many units of the layout.
        sheet: number of the sheet they are cut from.

    Returns:
        The tallest strips first; among equal ones the fullest first, so that what is left lies together; in a strip
        the longest pieces first.
    """
    order = sorted(plan, key=lambda column: (-column.cost, _room(knapsack, column), column.uses))
    strips: list[LaidStrip] = []
    for column in order:
        strips += [_strip(knapsack, column, units)] * plan[column]
    return Layout(sheet=sheet, strips=tuple(strips))


def _room(knapsack: StripKnapsack, column: Column) -> int:
    """Width of the strip that is left over."""
    return knapsack.wide - sum(knapsack.way(kind, column.cost).wide * count for kind, count in column.uses)


def _strip(knapsack: StripKnapsack, column: Column, units: tuple[int, int]) -> LaidStrip:
    """One strip, its pieces side by side."""
    stacks: list[Stack] = []
    lying = [(knapsack.way(kind, column.cost), kind, count) for kind, count in column.uses]
    for way, kind, count in sorted(lying, key=lambda lies: (-lies[0].long, -lies[0].wide, lies[1])):
        stacks += [Stack(wide=way.wide * units[0], bits=(Bit(want=kind, turned=way.is_turned),))] * count
    return LaidStrip(high=column.cost * units[1], stacks=tuple(stacks))
