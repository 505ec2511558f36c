"""The order of the hand: what is cut first, and what is left of the fabric after each cut.

Large before small, because a slip can still be made good from what is left: squares and rectangles, then the
strips from the widest down. What is cut from the list comes before what is trimmed while sewing.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.model import CutStep, FabricPlan, Piece

if TYPE_CHECKING:
    from collections.abc import Iterable

_WIDTH_OF_FABRIC = "width of fabric"


def cutting_order(pieces: Iterable[Piece]) -> tuple[Piece, ...]:
    """Pieces of one fabric in the order one cuts them.

    Args:
        pieces: the list, in any order.

    Returns:
        Cut first before cut later; rectangles before strips; widest first; the binding after strips of its
        width; then the order sewn.

    Example:
        >>> strip, center = Piece("1", 3.5, 12, step=1), Piece("Center", 3, 3, kind="rectangle")
        >>> [piece.name for piece in cutting_order([strip, center])]
        ['Center', '1']
    """
    return tuple(
        sorted(
            pieces,
            key=lambda piece: (
                not piece.cut_first,
                piece.kind != "rectangle",
                -round(piece.wide, 6),
                piece.kind == "binding",
                piece.step,
            ),
        )
    )


def cuts_in_order(plan: FabricPlan) -> tuple[CutStep, ...]:
    """The cuts across the new fabric, one after the other, with the length that is left.

    Args:
        plan: a fabric's plan.

    Returns:
        Rows from the tallest down, then strips from the widest down; equal ones are one entry. The first end
        is straightened before the first cut, the other end is part of what is left at the end.
    """
    if plan.buy_in <= 0:
        return ()
    cuts: list[tuple[str, float]] = [("row", row.height) for row in plan.rows]
    cuts += [
        ("strip", strips.width)
        for strips in plan.strip_plans
        for strip in strips.strips
        if strip.stock == _WIDTH_OF_FABRIC
    ]
    cuts.sort(key=lambda cut: (cut[0] != "row", -cut[1]))
    left = plan.buy_in * (plan.used_in + plan.straightening_in) / plan.need_in - plan.straightening_in / 2
    steps: list[CutStep] = []
    for kind, wide in dict.fromkeys(cuts):
        count = cuts.count((kind, wide))
        steps.append(CutStep(len(steps) + 1, kind, wide, count, left, left - count * wide))
        left -= count * wide
    return tuple(steps)
