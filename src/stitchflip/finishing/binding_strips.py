"""Strips joined to one long binding: what each join costs, how many strips it takes, how long it becomes.

A diagonal join costs one cut strip width, a straight one two seams. Rules of thumb leave the joins out and then
fall short by them.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from math import ceil, floor

from stitchflip.errors import BuildError
from stitchflip.lengths import TOLERANCE_IN, Rounding, in_both_units, round_to
from stitchflip.project.model import Fabric
from stitchflip.project.numbers import Numbers
from stitchflip.values import dataclass


class Join(StrEnum):
    """How two strips are joined end to end."""

    DIAGONAL = "diagonal"
    STRAIGHT = "straight"


def join_cost(cut: float, seam: float, join: Join) -> float:
    """Length that one join takes off, inches.

    Args:
        cut: Cut width of the strips, inches.
        seam: Seam allowance of a straight join, inches.
        join: Diagonal or straight.

    Example:
        >>> join_cost(2.5, 0.25, Join.DIAGONAL), join_cost(2.5, 0.25, Join.STRAIGHT)
        (2.5, 0.5)
    """
    return cut if join is Join.DIAGONAL else 2 * seam


def joined_length(lengths: Sequence[float], cost: float) -> float:
    """How long strips are when joined end to end.

    Args:
        lengths: Strips as cut, inches.
        cost: What each join takes off, inches.

    Example:
        >>> joined_length([40, 40, 40], cost=2.5)
        115.0
    """
    return sum(lengths) - cost * max(0, len(lengths) - 1)


_LEAST_SHARE = 20
"""A strip that adds less than this part of what its join takes is no binding strip."""


def strips_needed(need: float, strip_length: float, cost: float) -> int:
    """The fewest strips of one length that are long enough when joined.

    Args:
        need: Length wanted, inches.
        strip_length: Length of each strip, inches.
        cost: What each join takes off, inches; 0 counts as the rules of thumb do.

    Raises:
        BuildError: If a strip is hardly longer than the join that adds it.

    Example:
        >>> strips_needed(111.8, 40, 2.5)
        3
    """
    if need <= strip_length + TOLERANCE_IN:
        return 1
    if strip_length - cost <= cost / _LEAST_SHARE + TOLERANCE_IN:
        raise BuildError(
            what=f"binding strips {in_both_units(strip_length)} long are used up by joins of {in_both_units(cost)}",
            fix="Take longer strips, or give the usable width of the binding fabric.",
            where="binding.fabric",
            code="build.binding-too-short",
        )
    return ceil((need - cost) / (strip_length - cost) - TOLERANCE_IN)


@dataclass(frozen=True, slots=True)
class AddedPieces:
    """What would make up for a binding that is too short; each joined diagonally."""

    missing: float
    one: float
    """Length of the one piece to add, 0 when nothing is missing; inches."""
    two: float
    """Length of each of two pieces to add."""


def pieces_to_add(need: float, made: float, cost: float, step: float) -> AddedPieces:
    """The pieces that close the gap of a binding made from too few strips.

    Args:
        need: Length wanted, inches.
        made: Length joined so far, inches.
        cost: What each further join takes off, inches.
        step: The pieces are cut on this grid, inches.

    Example:
        >>> pieces_to_add(need=111.77, made=77.5, cost=2.5, step=0.25).two
        19.75
    """
    missing = max(0.0, need - made)
    if missing <= TOLERANCE_IN:
        return AddedPieces(0.0, 0.0, 0.0)
    return AddedPieces(
        missing,
        round_to(missing + cost, step, Rounding.UP),
        round_to(missing / 2 + cost, step, Rounding.UP),
    )


@dataclass(frozen=True, slots=True)
class BindingStock:
    """Where binding strips come from; inches."""

    on_hand: tuple[float, ...]
    """Lengths of the strips that pieces on hand give, longest first."""
    further: float
    """Length of every strip beyond those, from full widths."""


def binding_stock(fabric: Fabric | None, numbers: Numbers) -> BindingStock:
    """The strips a fabric gives for binding.

    Strips come from full widths, unless the fabric is precut or nothing of it can be bought; then the pieces on
    hand are cut along their longer side first.

    Args:
        fabric: The binding fabric; None when the project does not describe it.
        numbers: For the cut width, the usable width, and what straightening a piece takes off.
    """
    measured = fabric.usable_width if fabric is not None else None
    further = (numbers.usable_width if measured is None else measured.inches) * (1 - numbers.prewash_across)
    if fabric is None or not fabric.on_hand or not (fabric.only_on_hand or fabric.precut):
        return BindingStock((), further)
    lengths: list[float] = []
    for piece in fabric.on_hand:
        narrow, long = sorted((piece.wide.inches, piece.long.inches))
        if fabric.precut:
            each = int(narrow >= numbers.binding_cut - TOLERANCE_IN)
        else:
            loss = numbers.fat_quarter_straightening
            each = floor((narrow - loss) / numbers.binding_cut + TOLERANCE_IN)
            long -= loss
        lengths += [long] * (each * piece.count)
    longest_first = tuple(sorted(lengths, reverse=True))
    return BindingStock(longest_first, longest_first[0] if longest_first else further)


@dataclass(frozen=True, slots=True)
class JoinedStrips:
    """The strips for all pieces alike, each piece joined on its own."""

    lengths: tuple[float, ...]
    """Strips of one piece (the one that takes most), in the order joined; inches."""
    strips: int
    """For all pieces."""
    made: float
    """Shortest binding of any piece."""


def join_for_all(need: float, cost: float, how_many: int, stock: BindingStock) -> JoinedStrips:
    """Strips for several pieces alike: pieces on hand first, part strips shared where two fit one width.

    Args:
        need: Binding of one piece, inches.
        cost: What each join takes off, inches.
        how_many: Pieces alike.
        stock: Where the strips come from.

    Raises:
        BuildError: If strips are no longer than the joins that add them.
    """
    if stock.on_hand:
        return _from_hand(need, cost, how_many, stock)
    count = strips_needed(need, stock.further, cost)
    part = need - (count - 1) * (stock.further - cost)
    shared = min(how_many, max(1, floor(stock.further / part + TOLERANCE_IN)))
    last = stock.further / shared
    lengths = (*[stock.further] * (count - 1), last)
    strips = how_many * (count - 1) + ceil(how_many / shared)
    return JoinedStrips(lengths, strips, joined_length(lengths, cost))


def _from_hand(need: float, cost: float, how_many: int, stock: BindingStock) -> JoinedStrips:
    left = list(stock.on_hand)
    bindings: list[tuple[float, ...]] = []
    for _ in range(how_many):
        taken: list[float] = []
        while joined_length(taken, cost) < need - TOLERANCE_IN:
            strip = left.pop(0) if left else stock.further
            if taken and strip - cost <= TOLERANCE_IN:
                strips_needed(need, strip, cost)
            taken.append(strip)
        bindings.append(tuple(taken))
    return JoinedStrips(
        max(bindings, key=len),
        sum(len(lengths) for lengths in bindings),
        min(joined_length(lengths, cost) for lengths in bindings),
    )


def least_strips(need: float, cost: float, how_many: int, longest: float) -> int:
    """A count of strips that no way of joining can be under.

    Every piece needs its length and the joins that its shortest chain has, whatever is shared.

    Args:
        need: Binding of one piece, inches.
        cost: What each join takes off, inches.
        how_many: Pieces alike.
        longest: Longest strip there is, inches.
    """
    joins = strips_needed(need, longest, cost) - 1
    return ceil(how_many * (need + joins * cost) / longest - TOLERANCE_IN)
