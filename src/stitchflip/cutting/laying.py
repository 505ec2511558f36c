"""Pieces as they lie on the fabric, in the whole units of the search engine, and the rows it answers with."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor
from typing import TYPE_CHECKING

from stitchflip.cutting.layouts.model import Want
from stitchflip.cutting.model import Row, RowStack, StackPiece
from stitchflip.lengths import CM_PER_INCH, Unit
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from stitchflip.cutting.layouts.model import Bit, LaidStrip
    from stitchflip.cutting.model import FabricPlan, Piece, Status
    from stitchflip.cutting.purchase import Purchase
    from stitchflip.project.model import Fabric

GRID_IN = {Unit.INCH: 1 / 16, Unit.CM: 0.1 / CM_PER_INCH}
"""One unit of the engine, inches: a sixteenth of an inch, or a millimeter."""
_TOLERANCE = 1e-6
_SAME = 1e-4
"""Parts of a unit that a whole number may be off by."""


@dataclass(frozen=True, slots=True)
class Lot:
    """Equal pieces as they lie on the fabric, not turned."""

    label: str
    across: float
    along: float
    count: int
    can_turn: bool


def lots_of(fabric: Fabric, pieces: Sequence[Piece], width: float) -> tuple[Lot, ...]:
    """Pieces as they lie: strips run across the fabric unless they are longer than it is wide.

    Of whole strips that are joined, the last of each joined length is cut only as long as it need be.

    Args:
        fabric: a one-way print turns nothing.
        pieces: as cut.
        width: usable width, inches.
    """
    return tuple(lot for piece in pieces if piece.count for lot in _lots(piece, width, can_turn=not fabric.one_way))


def _lots(piece: Piece, width: float, *, can_turn: bool) -> Iterator[Lot]:
    turns = can_turn and piece.can_turn
    if piece.kind == "rectangle":
        yield Lot(piece.name, *piece.takes, piece.count, turns)
        return
    long = piece.long or width
    if piece.kind == "binding":
        long = min(long, width)
        short = min(piece.last_count, piece.count) if 0 < piece.last_long < long - _TOLERANCE else 0
        if short:
            yield Lot(piece.name, piece.last_long, piece.wide, short, turns)
        if piece.count > short:
            yield Lot(piece.name, long, piece.wide, piece.count - short, turns)
        return
    across, along = (piece.wide, long) if long > width + _TOLERANCE else (long, piece.wide)
    yield Lot(piece.name, across, along, piece.count, turns)


def wants_of(lots: Sequence[Lot], grid: float) -> tuple[Want, ...]:
    """The same in whole units, sizes rounded up.

    Args:
        lots: pieces as they lie.
        grid: inches in one unit.
    """
    return tuple(Want(units_up(lot.across, grid), units_up(lot.along, grid), lot.count, lot.can_turn) for lot in lots)


def units_up(length: float, grid: float) -> int:
    """A length in whole units, never less than it is.

    Args:
        length: inches.
        grid: inches in one unit.
    """
    return ceil(length / grid - _TOLERANCE)


def whole_units(length: float, grid: float) -> int:
    """How many whole units a length has.

    Args:
        length: inches.
        grid: inches in one unit.
    """
    return floor(length / grid + _TOLERANCE)


def is_on_grid(lengths: Iterable[float], grid: float) -> bool:
    """Whether all lengths are whole units. Only then is what the engine proves true of the pieces themselves.

    Args:
        lengths: inches.
        grid: inches in one unit.
    """
    return all(abs(length / grid - round(length / grid)) < _SAME for length in lengths)


def sides_of(lots: Iterable[Lot]) -> Iterator[float]:
    """Every length of the pieces, inches.

    Args:
        lots: pieces as they lie.
    """
    return (side for lot in lots for side in (lot.across, lot.along))


def row_of(strip: LaidStrip, lots: Sequence[Lot], grid: float) -> Row:
    """The engine's strip as a row of the fabric.

    Args:
        strip: as laid.
        lots: what its wants are.
        grid: inches in one unit.
    """

    def piece(bit: Bit) -> StackPiece:
        lot = lots[bit.want]
        across, along = (lot.along, lot.across) if bit.turned else (lot.across, lot.along)
        return StackPiece(lot.label, across, along)

    stacks = tuple(RowStack(stack.wide * grid, tuple(map(piece, stack.bits))) for stack in strip.stacks)
    pieces = tuple((one.label, one.across) for stack in stacks for one in stack.pieces)
    return Row(strip.high * grid, pieces, turned=False, stacks=stacks)


def may_move(plan: FabricPlan, pieces: Sequence[Piece]) -> bool:
    """Whether pieces may lie anywhere: lengths are known before sewing, and no motif says where to cut.

    Args:
        plan: the everyday plan.
        pieces: what is cut from the fabric.
    """
    return not any(strips.as_you_go for strips in plan.strip_plans) and not any(p.motif_in or p.window for p in pieces)


def plan_in_rows(
    everyday: FabricPlan, rows: Iterable[Row], used_in: float, purchase: Purchase, bound_in: float, status: Status
) -> FabricPlan:
    """A fabric plan in which every piece lies in a row; what is told of strips of one width is left out.

    Args:
        everyday: the plan in whose place it stands.
        rows: from new fabric.
        used_in: length they take, inches.
        purchase: what that means in the shop.
        bound_in: no plan of this kind needs less, inches.
        status: how sure that is.
    """
    return replace(
        everyday,
        strip_plans=(),
        rows=tuple(sorted(rows, key=lambda row: -row.height)),
        losing_rows_in=None,
        used_in=used_in,
        need_in=purchase.need_in,
        buy_in=purchase.buy_in,
        spare_in=purchase.spare_in,
        bound_in=min(bound_in, purchase.need_in),
        status=status,
        tipping_points=(),
        miscuts=0,
        turning_is_refused=False,
        spare_strip_buy_in=purchase.buy_in,
        fits_fat_quarter=False,
    )
