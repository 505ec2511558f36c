"""What a cutting plan says besides its cuts: is it honest about what it leaves out, what stays, what joins take?

Part of the independent check in `verify`, and like it shares no code with what makes plans.
"""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from stitchflip.project.model import Fabric, Wash

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.model import FabricPlan, HandSheet, JoinedLength, Piece, Row
    from stitchflip.project.numbers import Numbers

_NEW = "width of fabric"
_SLACK = 1e-4


def claims_hold(
    plan: FabricPlan, fabric: Fabric, pieces: Sequence[Piece], numbers: Numbers, joined: Sequence[JoinedLength]
) -> Iterator[str]:
    """Everything a plan claims beside its cuts that is not so.

    Args:
        plan: the plan.
        fabric: the fabric it is for.
        pieces: what was asked for.
        numbers: the maker's numbers.
        joined: lengths that are to be joined from strips.

    Yields:
        One sentence for each claim that is not so.
    """
    yield from _left_out_for_a_reason(plan, fabric, pieces)
    yield from _columns_are_left(plan)
    yield from _one_more_is_paid_for(plan, fabric, numbers)
    for length in joined:
        yield from _joins_are_charged(plan, length)


def is_proof(plan: FabricPlan, numbers: Numbers) -> bool:
    """Whether a plan's bound proves it: to the last bit, or where rows are cut closer, in steps of the shop.

    Args:
        plan: the plan.
        numbers: the shop's steps and the least it cuts.
    """
    if plan.bound_in >= plan.need_in - _SLACK:
        return True
    is_closer = any(row.stacks for row in _rows(plan))
    return is_closer and _sold(plan.bound_in, numbers) > _sold(plan.need_in, numbers) - _SLACK


def _sold(need_in: float, numbers: Numbers) -> float:
    """The least the shop sells that is enough."""
    if need_in <= _SLACK:
        return 0.0
    step = numbers.buy_in_steps_of
    return max(ceil((need_in - _SLACK) / step) * step, numbers.buy_at_least)


def _rows(plan: FabricPlan) -> list[Row]:
    return [*plan.rows, *(row for sheet in plan.hand_sheets for row in sheet.rows)]


def _left_out_for_a_reason(plan: FabricPlan, fabric: Fabric, pieces: Sequence[Piece]) -> Iterator[str]:
    """While more can be bought, nothing is left out but what is wider than the fabric."""
    if fabric.only_on_hand:
        return
    for name in dict.fromkeys(plan.left_out):
        sides = [_narrowest(piece, fabric) for piece in pieces if piece.name == name]
        if sides and max(sides) <= plan.usable_width + _SLACK:
            yield f"{name} is left out although it fits on {plan.usable_width:g} in"


def _narrowest(piece: Piece, fabric: Fabric) -> float:
    """Width of fabric a piece takes at least."""
    if piece.kind == "binding":
        return piece.wide
    if piece.kind == "strip":
        return min(piece.wide, piece.long)
    wide, long = piece.takes
    return min(wide, long) if piece.can_turn and not fabric.one_way else wide


def _columns_are_left(plan: FabricPlan) -> Iterator[str]:
    """No wider a column is said to stay of a piece on hand than lies beside its cuts."""
    for sheet in plan.hand_sheets:
        side = sheet.long if sheet.along == "long" else sheet.wide
        beside = side - max(_filled(plan, sheet), default=0.0)
        if sheet.column_left_in > beside + _SLACK:
            yield f"{sheet.name} keeps a column of {beside:g} in, not {sheet.column_left_in:g} in"


def _filled(plan: FabricPlan, sheet: HandSheet) -> Iterator[float]:
    """What each strip and row of a piece on hand takes of its length."""
    for one in plan.strip_plans:
        for strip in one.strips:
            if strip.stock == sheet.name:
                yield sum(length for _, length in strip.pieces)
    for row in sheet.rows:
        yield sum(stack.wide for stack in row.stacks) if row.stacks else sum(across for _, across in row.pieces)


def _one_more_is_paid_for(plan: FabricPlan, fabric: Fabric, numbers: Numbers) -> Iterator[str]:
    """The amount named for one strip more gives one strip more."""
    new = [strip.width for one in plan.strip_plans for strip in one.strips if strip.stock == _NEW]
    heights = [row.height for row in plan.rows]
    if plan.buy_in <= 0 or not (new or heights) or any(row.stacks for row in plan.rows):
        return
    loses = fabric.washed is not Wash.WASHED and not fabric.precut
    along = 1 - numbers.prewash_along * loses
    more = (sum(new) + sum(heights) + max(new or heights) + numbers.straightening) / along
    if plan.spare_strip_buy_in < more - _SLACK:
        yield f"{plan.spare_strip_buy_in:g} in are named for one strip more, which takes {more:g} in"


def _joins_are_charged(plan: FabricPlan, joined: JoinedLength) -> Iterator[str]:
    """The strips are long enough together for every length and for the joins that its shortest chain has."""
    strips = [n for one in plan.strip_plans for s in one.strips for label, n in s.pieces if label == joined.name]
    for row in _rows(plan):
        strips += [max(p.across, p.along) for stack in row.stacks for p in stack.pieces if p.label == joined.name]
    if joined.name in plan.left_out:
        return
    longest = max(strips, default=0.0)
    joins = 0
    if joined.need > longest + _SLACK:
        each = longest - joined.join
        joins = ceil((joined.need - longest - _SLACK) / each) if each > _SLACK else len(strips) + 1
    takes = joined.count * (joined.need + joins * joined.join)
    if sum(strips) < takes - _SLACK:
        yield (
            f"{joined.name}: {len(strips)} strips are {sum(strips):g} in together, "
            f"and {joined.count} lengths with their joins take {takes:g} in"
        )
