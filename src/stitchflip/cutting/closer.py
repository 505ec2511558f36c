"""Cutting closer: strips of different widths side by side and pieces turned, when that saves a step of the purchase.

The everyday plan cuts strips of one width across the fabric and whole rows of squares: few settings of the ruler,
and quick to read. Now and then it costs an eighth of a yard more than the fabric need be long. Here everything
that is cut from new fabric becomes one task for the search engine: first in two stages (a row across the fabric,
pieces cut off it and trimmed), then in three (pieces over one another in a row). The answer is offered beside the
everyday plan, never in place of it, and says what no way of cutting can go under.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.counting import is_too_much_for
from stitchflip.cutting.laying import (
    GRID_IN,
    is_on_grid,
    lots_of,
    may_move,
    plan_in_rows,
    row_of,
    sides_of,
    units_up,
    wants_of,
    whole_units,
)
from stitchflip.cutting.layouts.model import LayoutTask, Sheet
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.model import Status
from stitchflip.cutting.purchase import Purchase, Shrinkage, purchase_for, shrinkage_of
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.cutting.laying import Lot
    from stitchflip.cutting.layouts.model import Answer
    from stitchflip.cutting.layouts.watch import Watch
    from stitchflip.cutting.model import FabricPlan, Piece
    from stitchflip.lengths import Unit
    from stitchflip.project.model import Fabric
    from stitchflip.project.numbers import Numbers

_MOST_PIECES = 5_000
_STEP_IN = 1e-3
"""Purchases closer together than this are the same."""


@dataclass(frozen=True, slots=True)
class Closer:
    """How far cutting closer goes."""

    plan: FabricPlan | None
    """A plan in rows that buys less; None when there is none, or none was found."""
    stages: int
    """Cuts after one another that it takes: 2 (a row, then its pieces) or 3 (a row, a part of it, then its pieces)."""
    saves_in: float
    """What it buys less than the everyday plan."""
    least_buy_in: float
    """Edge-to-edge cutting cannot buy less: in two stages, and in three where two leave that open."""
    is_proved: bool
    """True: nothing cheaper exists; what is bought is the least there is."""
    settings: int
    """How many heights of rows it has, each one setting of the ruler."""


def cut_closer(
    fabric: Fabric,
    pieces: Sequence[Piece],
    numbers: Numbers,
    unit: Unit,
    plan: FabricPlan,
    watch: Callable[..., Watch],
    cancelled: Callable[[], bool] | None = None,
) -> Closer | None:
    """Whether the fabric can be cut closer than the everyday plan does.

    Args:
        fabric: the fabric.
        pieces: what is cut from it, as cut.
        numbers: the maker's numbers.
        unit: her unit; sizes are counted in sixteenths of an inch or in millimeters.
        plan: the everyday plan of the same pieces.
        watch: makes the clock of each of the two searches, called with `cancelled` and `tell`: a `Watch` or a
            `Patience` with its first arguments given.
        cancelled: asked again and again; True ends the search with what there is.

    Returns:
        What is found; None when the question has no sense here: nothing is bought, pieces come from the shelf,
        lengths are found while sewing, or a motif decides.
    """
    wanted = [piece for piece in pieces if piece.count]
    if plan.buy_in <= 0 or plan.from_hand or plan.left_out or not wanted:
        return None
    if not may_move(plan, wanted) or sum(piece.count for piece in wanted) > _MOST_PIECES:
        return None
    job = _Job.of(fabric, tuple(wanted), numbers, unit, plan.usable_width)
    least = job.buys(job.area_units)
    is_refused = least > plan.buy_in - _STEP_IN
    if is_refused or is_too_much_for(job.lots, plan.usable_width, job.longest_for_less_than(plan.buy_in)):
        return Closer(None, 2, 0.0, plan.buy_in, True, 0)
    return _search(job, plan, watch, cancelled)


def _search(job: _Job, plan: FabricPlan, watch: Callable[..., Watch], cancelled: Callable[[], bool] | None) -> Closer:
    """Two stages first; three when they leave a step of the purchase open."""
    best: tuple[int, Answer] | None = None
    reached = plan.buy_in
    least, looked = plan.buy_in, 2
    for stages in (2, 3):
        found = _one_search(job, stages, reached, watch, cancelled)
        if found.layouts and job.buys(found.value) < reached - _STEP_IN:
            best, reached = (stages, found), job.buys(found.value)
        least, looked = min(job.buys(job.bound(found)), reached), stages
        if job.buys(job.area_units) > reached - _STEP_IN:
            break
        if cancelled is not None and cancelled():
            least = job.buys(job.area_units)
            break
    proved = least > reached - _STEP_IN
    if best is None:
        return Closer(None, looked, 0.0, least, proved, 0)
    closer = job.fabric_plan(plan, best[1], is_proved=proved)
    settings = len({round(row.height, 6) for row in closer.rows})
    return Closer(closer, best[0], plan.buy_in - reached, least, proved, settings)


def _one_search(
    job: _Job, stages: int, goal: float, watch: Callable[..., Watch], cancelled: Callable[[], bool] | None
) -> Answer:
    """The engine's answer; it ends as soon as plan and bound mean the same purchase, or the bound meets the goal."""
    best: list[int | None] = [None]
    bound = [job.area_units]

    def tell(value: int | None, proved: int) -> None:
        best[0] = value
        bound[0] = max(bound[0], proved)

    def decided() -> bool:
        if cancelled is not None and cancelled():
            return True
        least = job.buys(bound[0])
        reached = goal if best[0] is None else min(goal, job.buys(best[0]))
        return least > reached - _STEP_IN

    return solve(replace(job.task, stages=stages), watch(cancelled=decided, tell=tell))


# --- the same in whole units -------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Job:
    """The pieces as a task for the engine, and the way back."""

    lots: tuple[Lot, ...]
    task: LayoutTask
    grid: float
    """Inches in one unit."""
    area_units: int
    """Length that the area of the pieces alone takes."""
    is_exact: bool
    """True when every size is a whole number of units, so that the engine's bound is one for the pieces themselves."""
    numbers: Numbers
    shrinkage: Shrinkage

    @classmethod
    def of(cls, fabric: Fabric, pieces: tuple[Piece, ...], numbers: Numbers, unit: Unit, width: float) -> _Job:
        grid = GRID_IN[unit]
        lots = lots_of(fabric, pieces, width)
        return cls(
            lots=lots,
            task=LayoutTask(wants_of(lots, grid), (Sheet(whole_units(width, grid), None),)),
            grid=grid,
            area_units=units_up(sum(lot.across * lot.along * lot.count for lot in lots) / width, grid),
            is_exact=is_on_grid([*sides_of(lots), width], grid),
            numbers=numbers,
            shrinkage=shrinkage_of(fabric, numbers),
        )

    def purchase(self, units: int) -> Purchase:
        """What a length of cuts means in the shop."""
        return purchase_for(units * self.grid, self.numbers, self.shrinkage)

    def buys(self, units: int) -> float:
        """Inches to buy for a length of cuts."""
        return self.purchase(units).buy_in

    def longest_for_less_than(self, buy_in: float) -> float:
        """No length of cuts that buys less is longer than this; the area alone would buy less."""
        low, high = self.area_units, self.area_units + 1
        while self.buys(high) < buy_in - _STEP_IN:
            low, high = high, high * 2
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (middle, high) if self.buys(middle) < buy_in - _STEP_IN else (low, middle)
        return (low if self.is_exact else high) * self.grid

    def bound(self, answer: Answer) -> int:
        """Length no plan of the answer's kind goes under."""
        return max(answer.bound, self.area_units) if self.is_exact else self.area_units

    def fabric_plan(self, everyday: FabricPlan, answer: Answer, *, is_proved: bool) -> FabricPlan:
        """The engine's answer as a plan in rows."""
        rows = [row_of(strip, self.lots, self.grid) for layout in answer.layouts for strip in layout.strips]
        bound = self.purchase(self.bound(answer)).need_in
        status = Status.PROVED if is_proved else Status.BEST_FOUND
        return plan_in_rows(everyday, rows, answer.value * self.grid, self.purchase(answer.value), bound, status)
