"""Rows of several sizes of squares and rectangles, shortened and proved by the search engine where rules leave a gap.

The rules of `rows` are quick and mostly best. Where they cannot show that nothing shorter exists, the same rows
become a task in two stages. How long the engine looks is counted in looks and not in seconds, so that a plan is
the same on every machine.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.laying import GRID_IN, Lot, is_on_grid, sides_of, wants_of, whole_units
from stitchflip.cutting.layouts.model import LayoutTask, Sheet
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.layouts.watch import Patience
from stitchflip.cutting.model import Row, Status
from stitchflip.cutting.rows import TOLERANCE, RowPlan

if TYPE_CHECKING:
    from stitchflip.cutting.layouts.model import LaidStrip
    from stitchflip.lengths import Unit

_LOOKS = 60
_SECONDS = 20.0
"""Never reached on a machine that works; the looks end the search."""
_MOST_SIZES = 40
_MOST_PIECES = 1_000


def searched_rows(usable_width: float, plan: RowPlan, unit: Unit) -> RowPlan:
    """The same rows, or shorter ones; a better bound where the sizes are whole sixteenths or millimeters.

    Args:
        usable_width: of the fabric, inches.
        plan: rows found by rule; returned as it is when they are proved already.
        unit: the maker's unit.
    """
    lots = [Lot(one.label, one.wide, one.long, one.count, one.can_turn) for one in plan.wanted]
    pieces = sum(lot.count for lot in lots)
    if plan.length_in <= plan.bound_in + TOLERANCE or len(lots) > _MOST_SIZES or pieces > _MOST_PIECES:
        return plan
    grid = GRID_IN[unit]
    task = LayoutTask(wants_of(lots, grid), (Sheet(whole_units(usable_width, grid), None),))
    answer = solve(task, Patience(_LOOKS, _SECONDS))
    is_exact = is_on_grid([*sides_of(lots), usable_width], grid)
    bound = max(plan.bound_in, answer.bound * grid) if is_exact else plan.bound_in
    length = answer.value * grid
    rows = plan.rows
    if answer.layouts and length < plan.length_in - TOLERANCE:
        laid = [_row(strip, lots, grid) for layout in answer.layouts for strip in layout.strips]
        rows = tuple(sorted(laid, key=lambda row: -row.height))
    else:
        length = plan.length_in
    bound = min(bound, length)
    status = Status.PROVED if length <= bound + TOLERANCE else Status.BEST_FOUND
    left = Status.IMPOSSIBLE if plan.left_out else status
    return replace(plan, rows=rows, length_in=length, bound_in=bound, status=left)


def _row(strip: LaidStrip, lots: list[Lot], grid: float) -> Row:
    """A strip of the engine as a row; every stack holds one piece."""
    laid = [(lots[stack.bits[0].want], stack.bits[0].turned) for stack in strip.stacks]
    tallest = max(laid, key=lambda one: one[0].across if one[1] else one[0].along)
    pieces = tuple((lot.label, lot.along if turned else lot.across) for lot, turned in laid)
    return Row(strip.high * grid, pieces, turned=tallest[1])
