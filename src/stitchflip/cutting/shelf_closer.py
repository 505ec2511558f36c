"""Cutting closer from the shelf: which pieces on hand to cut, so that as little as possible is bought.

The everyday plan takes whole rows and strips of one width from each piece on hand, in turn. Here all pieces on
hand and every amount the shop would cut are put before the search engine together: what is bought costs more than
everything on hand, a piece on hand costs its area, so that big pieces stay whole where small ones do.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stitchflip.cutting.laying import (
    GRID_IN,
    is_on_grid,
    lots_of,
    may_move,
    plan_in_rows,
    row_of,
    sides_of,
    wants_of,
    whole_units,
)
from stitchflip.cutting.layouts.model import Aim, LayoutTask, Sheet
from stitchflip.cutting.layouts.solving import solve
from stitchflip.cutting.model import FabricPlan, HandSheet, Row, Status
from stitchflip.cutting.on_hand import Shelf
from stitchflip.cutting.purchase import Purchase, purchase_for, shrinkage_of
from stitchflip.cutting.words import from_hand_words
from stitchflip.lengths import Speaker, Unit
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from stitchflip.cutting.laying import Lot
    from stitchflip.cutting.layouts.model import Answer
    from stitchflip.cutting.layouts.watch import Watch
    from stitchflip.cutting.model import Piece
    from stitchflip.cutting.on_hand import Sheet as OnHandSheet
    from stitchflip.project.model import Fabric
    from stitchflip.project.numbers import Numbers

_MOST_PIECES = 2_000
_MOST_STEPS = 40
"""Amounts of new fabric that are put before the engine."""
_AREA = 4
"""Parts of a square inch that cost one."""
_STEP_IN = 1e-3
_TOLERANCE = 1e-6


@dataclass(frozen=True, slots=True)
class ShelfCloser:
    """What the shelf gives when it is cut closer."""

    plan: FabricPlan | None
    """A plan that buys less, or leaves more pieces on hand whole; None when there is none, or none was found."""
    saves_in: float
    """What it buys less than the everyday plan."""
    leaves_whole: tuple[str, ...]
    """Pieces on hand that the everyday plan cuts into and this one does not."""
    is_proved: bool
    """True: in two stages nothing cheaper exists."""


def cut_shelf_closer(
    fabric: Fabric,
    pieces: Sequence[Piece],
    numbers: Numbers,
    unit: Unit,
    plan: FabricPlan,
    watch: Callable[..., Watch],
    cancelled: Callable[[], bool] | None = None,
) -> ShelfCloser | None:
    """Whether the shelf gives more when it is cut closer than the everyday plan does.

    Args:
        fabric: the fabric, with what is on hand.
        pieces: what is cut from it, as cut.
        numbers: the maker's numbers.
        unit: her unit.
        plan: the everyday plan of the same pieces.
        watch: makes the clock of the search, called with `cancelled` and `tell`: a `Watch` or a `Patience` with its
            first arguments given.
        cancelled: asked again and again; True ends the search with what there is.

    Returns:
        What is found; None when the question has no sense here: nothing but strips is on hand, lengths are found
        while sewing, or a motif decides.
    """
    wanted = [piece for piece in pieces if piece.count]
    shelf = Shelf.of(
        fabric, [p.wide for p in wanted if p.kind != "rectangle"], numbers, shrinkage_of(fabric, numbers), unit
    )
    if not wanted or not shelf.sheets or shelf.strips or sum(piece.count for piece in wanted) > _MOST_PIECES:
        return None
    if not may_move(plan, wanted):
        return None
    if any(sheet.along == "long" for sheet in shelf.sheets) and not all(piece.can_turn for piece in wanted):
        return None
    job = _Job.of(fabric, wanted, numbers, unit, plan, shelf)
    answer, is_settled = _searched(job, watch, cancelled)
    proved = job.is_exact and (is_settled or answer.status in {Status.PROVED, Status.IMPOSSIBLE})
    if is_settled or not answer.layouts:
        return ShelfCloser(None, 0.0, (), is_proved=proved)
    closer = job.fabric_plan(answer)
    saves = plan.buy_in - closer.buy_in if not plan.left_out else 0.0
    cut_into = {sheet.name for sheet in closer.hand_sheets}
    whole = tuple(sheet.name for sheet in plan.hand_sheets if sheet.name not in cut_into)
    opened = _area(closer) < _area(plan) - _TOLERANCE
    is_better = bool(plan.left_out) or saves > _STEP_IN or (saves > -_STEP_IN and opened)
    if not is_better:
        return ShelfCloser(None, 0.0, (), is_proved=proved)
    return ShelfCloser(closer, saves, whole, is_proved=proved)


def _searched(job: _Job, watch: Callable[..., Watch], cancelled: Callable[[], bool] | None) -> tuple[Answer, bool]:
    """The engine's answer, and whether it is settled that nothing costs less than the everyday plan; then it ends."""
    least = [0]

    def tell(_value: int | None, proved: int) -> None:
        least[0] = max(least[0], proved)

    def is_settled() -> bool:
        return job.everyday_cost is not None and least[0] >= job.everyday_cost

    def is_over() -> bool:
        return is_settled() or (cancelled is not None and cancelled())

    answer = solve(job.task, watch(cancelled=is_over, tell=tell))
    tell(None, answer.bound)
    return answer, is_settled() and answer.status is not Status.IMPOSSIBLE


def _sheet_cost(wide: float, long: float) -> int:
    """What it costs to cut into a piece on hand."""
    return max(1, round(_AREA * wide * long))


def _area(plan: FabricPlan) -> float:
    """Of the pieces on hand that are cut into, square inches."""
    return sum(sheet.wide * sheet.long for sheet in plan.hand_sheets)


@dataclass(frozen=True, slots=True)
class _Job:
    """The shelf and the shop as a task for the engine, and the way back."""

    lots: tuple[Lot, ...]
    on_hand: tuple[OnHandSheet, ...]
    amounts: tuple[Purchase, ...]
    """Amounts the shop would cut, after the pieces on hand in the task."""
    task: LayoutTask
    grid: float
    is_exact: bool
    """True when every piece is whole units wide and long, so that what the engine proves is true of the pieces."""
    fabric: Fabric
    numbers: Numbers
    unit: Unit
    everyday: FabricPlan

    @classmethod
    def of(
        cls, fabric: Fabric, pieces: Sequence[Piece], numbers: Numbers, unit: Unit, plan: FabricPlan, shelf: Shelf
    ) -> _Job:
        grid = GRID_IN[unit]
        width = plan.usable_width
        on_hand = tuple(sheet for sheet in shelf.sheets if min(sheet.usable_length, sheet.usable_stack) >= grid)
        lots = lots_of(fabric, pieces, max([width, *(sheet.usable_length for sheet in on_hand)]))
        amounts = () if fabric.only_on_hand else tuple(_amounts(plan, numbers, fabric))
        sheets = [
            Sheet(
                whole_units(sheet.usable_length, grid),
                whole_units(sheet.usable_stack, grid),
                cost=_sheet_cost(sheet.wide, sheet.long),
            )
            for sheet in on_hand
        ]
        dear = 1 + sum(sheet.cost for sheet in sheets)
        shrinkage = shrinkage_of(fabric, numbers)
        for number, amount in enumerate(amounts, 1):
            cuts = amount.buy_in * (1 - shrinkage.along) - numbers.straightening
            sheets.append(Sheet(whole_units(width, grid), whole_units(cuts, grid), cost=dear * number + 1))
        task = LayoutTask(wants_of(lots, grid), tuple(sheets), Aim.COST)
        return cls(lots, on_hand, amounts, task, grid, is_on_grid(sides_of(lots), grid), fabric, numbers, unit, plan)

    @property
    def everyday_cost(self) -> int | None:
        """What the everyday plan costs in the task; None when it is no plan, or buys what the task does not offer."""
        if self.everyday.left_out:
            return None
        cost = sum(_sheet_cost(sheet.wide, sheet.long) for sheet in self.everyday.hand_sheets)
        if self.everyday.buy_in <= 0:
            return cost
        for sheet, amount in zip(self.task.sheets[len(self.on_hand) :], self.amounts, strict=True):
            if abs(amount.buy_in - self.everyday.buy_in) < _STEP_IN:
                return cost + sheet.cost
        return None

    def fabric_plan(self, answer: Answer) -> FabricPlan:
        """The engine's answer as a plan in rows, on hand and bought."""
        rows: list[Row] = []
        sheets: list[HandSheet] = []
        bought = Purchase(0.0, 0.0)
        used = 0.0
        for layout in answer.layouts:
            own = sorted((row_of(s, self.lots, self.grid) for s in layout.strips), key=lambda row: -row.height)
            if layout.sheet < len(self.on_hand):
                sheets.append(self.on_hand[layout.sheet].cut_in(own))
                continue
            rows += own
            used += layout.used * self.grid
        if rows:
            bought = purchase_for(used, self.numbers, shrinkage_of(self.fabric, self.numbers))
        status = Status.PROVED if self.is_exact and answer.status is Status.PROVED else Status.BEST_FOUND
        return replace(
            plan_in_rows(self.everyday, rows, used, bought, self._bound_in(bought, status), status),
            straightening_in=self.numbers.straightening if rows else 0.0,
            from_hand=from_hand_words(sheets, (), Speaker(self.unit)),
            short_in=0.0,
            hand_sheets=tuple(sheets),
            left_out=(),
            because="",
        )

    def _bound_in(self, bought: Purchase, status: Status) -> float:
        """What is proved is the amount bought, not its inches: more than the next smaller amount is needed."""
        if status is not Status.PROVED or bought.buy_in <= 0:
            return 0.0
        return (
            max((one.buy_in for one in self.amounts if one.buy_in < bought.buy_in - _STEP_IN), default=0.0) + _STEP_IN
        )


def _amounts(plan: FabricPlan, numbers: Numbers, fabric: Fabric) -> list[Purchase]:
    """Every amount the shop cuts up to what the everyday plan buys."""
    out: list[Purchase] = []
    shrinkage = shrinkage_of(fabric, numbers)
    step = numbers.buy_in_steps_of
    buy = max(numbers.buy_at_least, step)
    while buy < plan.buy_in + _STEP_IN and len(out) < _MOST_STEPS:
        if buy * (1 - shrinkage.along) - numbers.straightening > _TOLERANCE:
            out.append(Purchase(buy, buy))
        buy += step
    return out
