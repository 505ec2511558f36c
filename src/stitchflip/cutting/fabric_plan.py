"""One fabric, whole: what the shelf gives, what is bought, how it is cut, and how sure all that is.

Squares and rectangles come first, then the strips, the widest first, then the binding's whole strips: that is
the order of the hand. Strips of one width are cut from strips of that width only; a piece longer than the
fabric is wide is cut along its length. Several orders of using the shelf are tried, and the one that buys
least is kept.
"""

from __future__ import annotations

from dataclasses import replace
from math import isfinite
from typing import TYPE_CHECKING

from stitchflip.cutting.as_you_go import plan_as_you_go
from stitchflip.cutting.model import FabricPlan, HandSheet, Piece, Status, StripPiece, StripPlan, StripStock
from stitchflip.cutting.motif_block import block_row
from stitchflip.cutting.on_hand import Shelf
from stitchflip.cutting.purchase import further_strips, purchase_for, shrinkage_of
from stitchflip.cutting.quarter import fits_fat_quarter
from stitchflip.cutting.rows import Rectangle, RowPlan, lay_in_rows
from stitchflip.cutting.strips import plan_strips
from stitchflip.cutting.tipping import Bought, StripGroup, tipping_points
from stitchflip.cutting.whole import fits
from stitchflip.cutting.words import from_hand_words, why_left_out
from stitchflip.errors import CuttingError
from stitchflip.lengths import Speaker, Unit
from stitchflip.project.model import Fabric, Working
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.cutting.model import Row
    from stitchflip.project.numbers import Numbers

WIDTH_OF_FABRIC = "width of fabric"
MOST_PIECES = 20_000
"""More pieces of one fabric than this are a slip of the hand."""
MOST_SIZES = 2_000
"""More different cut sizes of one fabric than this too."""
_TOLERANCE = 1e-6


def plan_fabric(
    fabric: Fabric, pieces: tuple[Piece, ...], numbers: Numbers, working: Working, unit: Unit
) -> FabricPlan:
    """How to cut one fabric, and how much of it to buy.

    Args:
        fabric: its width as measured, what is on hand, whether more can be bought.
        pieces: what is cut from it, as cut; `cut_first` tells which strips have their length cut from the list.
        numbers: the maker's numbers: usable width, straightening, the shop's steps, prewash.
        working: trim as you go uses the shortest lengths for strips that are not cut first.
        unit: the maker's unit, for the sentences.

    Returns:
        The plan. What the fabric cannot give is listed in it, and it is then impossible or short.

    Raises:
        CuttingError: If a piece has no size, the fabric no width, or there are more pieces than anybody cuts.
    """
    width, asked, cuts = _best_cuts(fabric, pieces, numbers, working, unit)
    return _report(fabric, asked, cuts, numbers, width, unit)


@dataclass(frozen=True, slots=True)
class Amount:
    """How much of a fabric some pieces take, and nothing else about it."""

    need_in: float
    """Length from a new purchase, straightening in it."""
    buy_in: float
    left_out: tuple[str, ...]
    """Labels of pieces the fabric cannot give."""
    strips: tuple[tuple[float, int], ...]
    """(cut width, how many are cut from new fabric), widest first."""


def amount_of(fabric: Fabric, pieces: tuple[Piece, ...], numbers: Numbers, working: Working, unit: Unit) -> Amount:
    """How much of a fabric some pieces take: the numbers of `plan_fabric`, quickly.

    Args:
        fabric: the fabric.
        pieces: what is cut from it, as cut.
        numbers: the maker's numbers.
        working: trim as you go, or cut first.
        unit: the maker's unit.

    Raises:
        CuttingError: If a piece has no size, the fabric no width, or there are more pieces than anybody cuts.
    """
    _, _, cuts = _best_cuts(fabric, pieces, numbers, working, unit, in_order=False)
    purchase = purchase_for(cuts.used_in, numbers, shrinkage_of(fabric, numbers))
    new = [(one.width, sum(s.stock == WIDTH_OF_FABRIC for s in one.strips)) for one in cuts.strips]
    return Amount(purchase.need_in, purchase.buy_in, cuts.left_out, tuple(new))


def _best_cuts(
    fabric: Fabric,
    pieces: tuple[Piece, ...],
    numbers: Numbers,
    working: Working,
    unit: Unit,
    *,
    in_order: bool = True,
) -> tuple[float, _Asked, _Cuts]:
    """Usable width, the pieces sorted, and the way of cutting that leaves out least and buys least.

    Without their order, strips that are trimmed as they are sewn are only counted, not told off one by one: how many it
    takes does not depend on which is in the hand when.
    """
    _refuse_nonsense(fabric, pieces, numbers)
    shrinkage = shrinkage_of(fabric, numbers)
    width = (fabric.usable_width.inches if fabric.usable_width else numbers.usable_width) * (1 - shrinkage.across)
    shelf = Shelf.of(fabric, [piece.wide for piece in pieces if piece.kind != "rectangle"], numbers, shrinkage, unit)
    asked, cuts = min(
        (
            (asked, _cut(fabric, asked, numbers, width, order, unit, in_order=in_order))
            for longest in _longest_strips(fabric, shelf, pieces, width)
            for asked in [_Asked.of(fabric, pieces, working, width, longest)]
            for order in _orders(fabric, asked)
        ),
        key=lambda one: (len(one[1].left_out), round(one[1].used_in, 6), round(one[1].missing_in(width), 6)),
    )
    return width, asked, cuts


def _longest_strips(fabric: Fabric, shelf: Shelf, pieces: Sequence[Piece], width: float) -> list[float]:
    """Up to which length pieces are cut as strips; longer ones are cut along the fabric.

    A strip on hand may be longer than the fabric is wide. It need not be enough for all pieces so long.
    """
    if fabric.only_on_hand:
        return [shelf.longest]
    is_long = any(piece.kind == "strip" and not fits(piece.long, width) for piece in pieces)
    return [shelf.longest, width] if is_long and shelf.longest > width else [max(shelf.longest, width)]


# --- what is asked -----------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Group:
    """Strips of one width that are planned together."""

    width: float
    pieces: tuple[StripPiece, ...]
    is_whole: bool
    as_you_go: bool
    may_shrink_in: float
    """What every piece may be cut shorter and still reach."""


@dataclass(frozen=True, slots=True)
class _Asked:
    """The pieces sorted into what each part of the plan is made for."""

    rectangles: tuple[Rectangle, ...]
    groups: tuple[_Group, ...]
    blocks: tuple[Row, ...]
    """Lengths of the full width in which motifs are found before anything is cut."""

    @classmethod
    def of(cls, fabric: Fabric, pieces: Sequence[Piece], working: Working, width: float, longest: float) -> _Asked:
        blocks = {
            place: row
            for place, piece in enumerate(pieces)
            if piece.block_in and piece.count and not fabric.only_on_hand and (row := block_row(piece, width))
        }
        rectangles = [
            Rectangle(piece.name, *piece.takes, piece.count, piece.can_turn and not fabric.one_way)
            for place, piece in enumerate(pieces)
            if piece.kind == "rectangle" and place not in blocks
        ]
        by_key: dict[tuple[float, bool, bool], list[Piece]] = {}
        for piece in pieces:
            if piece.kind == "rectangle":
                continue
            as_you_go = working is Working.TRIM_AS_YOU_GO and not piece.cut_first and piece.kind == "strip"
            if piece.kind == "strip" and not fits(_length(piece, as_you_go=as_you_go), longest):
                length = _length(piece, as_you_go=as_you_go)
                rectangles.append(Rectangle(piece.name, piece.wide, length, piece.count, can_turn=False))
                continue
            by_key.setdefault((round(piece.wide, 6), piece.kind == "binding", as_you_go), []).append(piece)
        groups = [_group(own, width, is_whole=key[1], as_you_go=key[2]) for key, own in by_key.items()]
        groups.sort(key=lambda group: (-group.width, group.is_whole, group.as_you_go))
        return cls(tuple(rectangles), tuple(groups), tuple(blocks.values()))


def _length(piece: Piece, *, as_you_go: bool) -> float:
    return piece.shortest if as_you_go and piece.shortest > 0 else piece.long


def _group(pieces: Sequence[Piece], width: float, *, is_whole: bool, as_you_go: bool) -> _Group:
    in_order = sorted(pieces, key=lambda piece: piece.step)
    out: list[StripPiece] = []
    for piece in in_order:
        length = _length(piece, as_you_go=as_you_go)
        if is_whole:
            length = min(length, width) if length > 0 else width
        out += [StripPiece(piece.name, length, piece.step)] * piece.count
    spare = min((piece.long - piece.shortest if piece.shortest > 0 else 0.0 for piece in pieces), default=0.0)
    may_shrink = 0.0 if as_you_go or is_whole else max(spare, 0.0)
    return _Group(pieces[0].wide, tuple(out), is_whole, as_you_go, may_shrink)


def _refuse_nonsense(fabric: Fabric, pieces: Sequence[Piece], numbers: Numbers) -> None:
    for piece in pieces:
        sizes = (piece.wide, 1.0 if piece.kind == "binding" else piece.long, 1 + piece.shortest)
        if not all(isfinite(size) and size > 0 for size in sizes) or piece.count < 0:
            raise CuttingError(
                what=f"piece {piece.name} is {piece.wide:g} in wide, {piece.long:g} in long, {piece.count} times",
                fix="Give every piece a width and a length above zero.",
                where=fabric.name,
                code="cutting.no-size",
            )
    total = sum(piece.count for piece in pieces)
    if total > MOST_PIECES:
        raise CuttingError(
            what=f"{total} pieces are to be cut from one fabric",
            fix=f"Ask for at most {MOST_PIECES} at a time.",
            where=fabric.name,
            code="cutting.too-many-pieces",
        )
    different = len({(piece.wide, piece.long) for piece in pieces})
    if different > MOST_SIZES:
        raise CuttingError(
            what=f"pieces of {different} different sizes are to be cut from one fabric",
            fix=f"Ask for at most {MOST_SIZES} sizes at a time.",
            where=fabric.name,
            code="cutting.too-many-sizes",
        )
    width = fabric.usable_width.inches if fabric.usable_width else numbers.usable_width
    on_hand = [size for kind in fabric.on_hand for size in (kind.wide.inches, kind.long.inches)]
    if not (isfinite(width) and width > 0 and all(size > 0 for size in on_hand)):
        raise CuttingError(
            what=f"the fabric is {width:g} in wide, what is on hand {', '.join(f'{size:g}' for size in on_hand)} in",
            fix="Give its usable width and every piece on hand as measured, above zero.",
            where=fabric.name,
            code="cutting.no-width",
        )


# --- cutting -----------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Cuts:
    """One way of cutting everything."""

    rows: RowPlan
    strips: tuple[StripPlan, ...]
    groups: tuple[StripGroup, ...]
    sheets: tuple[HandSheet, ...]
    precut_used: tuple[tuple[str, int], ...]
    left_rectangles: tuple[Rectangle, ...]
    """What nothing gives: too wide, or not on the shelf when nothing can be bought."""
    blocks: tuple[Row, ...] = ()

    @property
    def used_in(self) -> float:
        """Length of new fabric."""
        strips = sum(one.width * sum(s.stock == WIDTH_OF_FABRIC for s in one.strips) for one in self.strips)
        return self.rows.length_in + strips + self.blocks_in

    @property
    def blocks_in(self) -> float:
        """Length of new fabric in which motifs are found."""
        return sum(block.height for block in self.blocks)

    @property
    def left_out(self) -> tuple[str, ...]:
        """Labels of what is not cut, once for each piece."""
        rectangles = [one.label for one in self.left_rectangles for _ in range(one.count)]
        return (*rectangles, *(piece.label for plan in self.strips for piece in plan.left_out))

    def missing_in(self, width: float) -> float:
        """Length of fabric of the usual width that would give what is not cut."""
        rows = lay_in_rows(width, self.left_rectangles).length_in
        stock = [StripStock(WIDTH_OF_FABRIC, width)]
        strips = sum(
            plan.width * len(plan_strips(plan.width, plan.left_out, stock).strips)
            for plan in self.strips
            if plan.left_out
        )
        return rows + strips


def _orders(fabric: Fabric, asked: _Asked) -> list[tuple[_Group, ...]]:
    """Orders in which the groups use the shelf: widest first, and the other way when there is a shelf to share."""
    if not fabric.on_hand or len(asked.groups) < 2:
        return [asked.groups]
    return [asked.groups, tuple(reversed(asked.groups))]


def _cut(
    fabric: Fabric,
    asked: _Asked,
    numbers: Numbers,
    width: float,
    order: Sequence[_Group],
    unit: Unit,
    *,
    in_order: bool,
) -> _Cuts:
    shelf = Shelf.of(fabric, [group.width for group in asked.groups], numbers, shrinkage_of(fabric, numbers), unit)
    wanted = shelf.take_rows(asked.rectangles)
    if fabric.only_on_hand:
        rows, left = lay_in_rows(width, ()), tuple(wanted)
    else:
        rows = lay_in_rows(width, wanted)
        left = rows.left_out
    plans: list[StripPlan] = []
    groups: list[StripGroup] = []
    for group in order:
        stock = shelf.stock_for(group.width)
        if not fabric.only_on_hand:
            stock.append(StripStock(WIDTH_OF_FABRIC, width))
        solve = plan_as_you_go if group.as_you_go and in_order else plan_strips
        plan = solve(group.width, group.pieces, stock)
        plan = replace(plan, strips=shelf.take(plan), is_whole=group.is_whole)
        plans.append(plan)
        groups.append(StripGroup(group.width, group.pieces, tuple(stock), plan, group.may_shrink_in))
    plans.sort(key=lambda plan: (-plan.width, plan.is_whole, plan.as_you_go))
    cuts = _Cuts(rows, tuple(plans), tuple(groups), shelf.cut_sheets(), shelf.used_strips(plans), left, asked.blocks)
    if _leaves_a_step_open(fabric, cuts, numbers):
        from stitchflip.cutting.rows_searched import searched_rows  # seldom, and it brings the engine

        cuts = replace(cuts, rows=searched_rows(width, rows, unit))
    return cuts


def _leaves_a_step_open(fabric: Fabric, cuts: _Cuts, numbers: Numbers) -> bool:
    """Whether rows as short as their bound would buy less than the rows there are."""
    rows = cuts.rows
    strips = cuts.used_in - rows.length_in
    shrinkage = shrinkage_of(fabric, numbers)
    least, now = (purchase_for(strips + used, numbers, shrinkage).buy_in for used in (rows.bound_in, rows.length_in))
    return least < now - _TOLERANCE


# --- the report --------------------------------------------------------------------------------------------


def _report(fabric: Fabric, asked: _Asked, cuts: _Cuts, numbers: Numbers, width: float, unit: Unit) -> FabricPlan:
    shrinkage = shrinkage_of(fabric, numbers)
    purchase = purchase_for(cuts.used_in, numbers, shrinkage)
    widest = _widest(cuts)
    bound_used = cuts.rows.bound_in + cuts.blocks_in + sum(plan.width * plan.new_bound for plan in cuts.strips)
    bought = Bought(fabric.name, width, cuts.groups, cuts.rows, cuts.used_in, purchase, shrinkage)
    both_ways = lay_in_rows(width, asked.rectangles) if cuts.sheets else cuts.rows
    one_more = purchase_for(cuts.used_in + widest, numbers, shrinkage).buy_in if purchase.buy_in else 0.0
    missing = cuts.missing_in(width) if fabric.only_on_hand else 0.0
    return FabricPlan(
        fabric=fabric.name,
        usable_width=width,
        strip_plans=cuts.strips,
        rows=(*cuts.blocks, *cuts.rows.rows),
        losing_rows_in=both_ways.losing_in,
        used_in=cuts.used_in,
        straightening_in=numbers.straightening if purchase.need_in else 0.0,
        need_in=purchase.need_in,
        buy_in=purchase.buy_in,
        spare_in=purchase.spare_in,
        bound_in=min(purchase_for(bound_used, numbers, shrinkage).need_in, purchase.need_in),
        status=_status(cuts),
        tipping_points=tipping_points(bought, numbers, unit),
        from_hand=from_hand_words(cuts.sheets, cuts.precut_used, Speaker(unit)),
        short_in=missing,
        miscuts=further_strips(purchase, widest, shrinkage),
        hand_sheets=cuts.sheets,
        turning_is_refused=both_ways.turning_is_refused,
        spare_strip_buy_in=one_more,
        fits_fat_quarter=bool(purchase.buy_in) and not cuts.blocks and fits_fat_quarter(bought, numbers, unit),
        left_out=cuts.left_out,
        because=why_left_out(fabric, cuts.left_out, missing, width, Speaker(unit)),
    )


def _widest(cuts: _Cuts) -> float:
    """The widest strip of new fabric, or the tallest row when there is no strip."""
    strips = [plan.width for plan in cuts.strips if any(s.stock == WIDTH_OF_FABRIC for s in plan.strips)]
    return max(strips or [row.height for row in (*cuts.blocks, *cuts.rows.rows)], default=0.0)


def _status(cuts: _Cuts) -> Status:
    if cuts.left_out:
        return Status.IMPOSSIBLE
    parts = [cuts.rows.status, *(plan.status for plan in cuts.strips)]
    return Status.PROVED if all(part is Status.PROVED for part in parts) else Status.BEST_FOUND
