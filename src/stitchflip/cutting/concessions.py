"""What a maker can give up for a shorter length of fabric, each as another list of pieces to cut.

Strips are trimmed after sewing instead of being cut to length; a binding is joined from other lengths than whole
strips; a print lies on its side. How little each then takes is for the plan to say.
"""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.fabric_plan import Amount, amount_of
from stitchflip.cutting.purchase import shrinkage_of
from stitchflip.lengths import Rounding, round_to
from stitchflip.project.model import Working
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.model import FabricPlan, JoinedLength, Piece
    from stitchflip.cutting.moving import Terms
    from stitchflip.project.model import Fabric
    from stitchflip.project.numbers import Numbers

_TOLERANCE = 1e-6
_SHORTEST_PART = 4
"""So many joins long is the shortest part of a binding that is joined on purpose."""
_LAST_STEP = 10_000
"""Parts of a binding are taken after every strip that is sewn."""


@dataclass(frozen=True, slots=True)
class Trimmed:
    """Strips of one width that are trimmed after sewing instead of being cut to length."""

    width: float
    names: tuple[str, ...]
    before: int
    """Strips of new fabric when they are cut from the list."""
    after: int


@dataclass(frozen=True, slots=True)
class JoinedFrom:
    """A binding that is joined from other lengths than whole strips."""

    name: str
    lengths: tuple[float, ...]
    """Of one binding, in the order joined, inches."""
    instead_of: int
    """Whole strips of one binding."""


# --- one way of cutting ------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Cutting:
    """The fabric and the pieces as some concessions make them."""

    fabric: Fabric
    pieces: tuple[Piece, ...]
    working: Working
    joined: tuple[JoinedFrom, ...]

    @property
    def joins(self) -> int:
        """Joins of the bindings that are joined otherwise."""
        return sum(len(one.lengths) for one in self.joined)


class Scales:
    """How much each way of cutting takes, looked up once."""

    def __init__(self, terms: Terms) -> None:
        self.terms = terms
        self._known: dict[tuple[bool, tuple[Piece, ...], Working], Amount] = {}

    def amount(self, own: Cutting) -> Amount:
        """How much a way of cutting takes.

        Args:
            own: the fabric it is cut from is the same in all but its direction.
        """
        key = (own.fabric.one_way, own.pieces, own.working)
        if key not in self._known:
            self._known[key] = amount_of(own.fabric, own.pieces, self.terms.numbers, own.working, self.terms.unit)
        return self._known[key]


# --- trimmed after sewing ----------------------------------------------------------------------------------


def trimmed(cutting: Cutting, scales: Scales) -> Cutting | None:
    """Strips trimmed after sewing, but only those of a width that takes fewer strips for it.

    Args:
        cutting: what it is tried on.
        scales: how much each way takes.

    Returns:
        The other way of cutting; None when there is nothing to trim.
    """
    if cutting.working is Working.TRIM_AS_YOU_GO or not any(_can_be_trimmed(piece) for piece in cutting.pieces):
        return None
    everything = _with_trimming(cutting, None)
    before, after = _by_width(scales.amount(cutting)), _by_width(scales.amount(everything))
    widths = {width for width, count in after.items() if count < before.get(width, 0)}
    some = _with_trimming(cutting, widths)
    is_as_good = scales.amount(some).need_in < scales.amount(everything).need_in + _TOLERANCE
    return some if is_as_good else everything


def _with_trimming(cutting: Cutting, widths: set[float] | None) -> Cutting:
    """Strips of some widths, or of all, are trimmed after sewing; the others are cut first."""
    pieces = tuple(
        replace(piece, cut_first=not (_can_be_trimmed(piece) and (widths is None or round(piece.wide, 6) in widths)))
        if piece.kind == "strip" and piece.step < _LAST_STEP
        else piece
        for piece in cutting.pieces
    )
    return replace(cutting, pieces=pieces, working=Working.TRIM_AS_YOU_GO)


def _can_be_trimmed(piece: Piece) -> bool:
    return piece.kind == "strip" and 0 < piece.shortest < piece.long - _TOLERANCE


def _by_width(amount: Amount) -> dict[float, int]:
    counts: dict[float, int] = {}
    for width, count in amount.strips:
        counts[round(width, 6)] = counts.get(round(width, 6), 0) + count
    return counts


def strips_saved(plain: Cutting, own: Cutting, scales: Scales) -> Iterator[Trimmed]:
    """What trimming after sewing saves, width by width.

    Args:
        plain: as planned.
        own: with strips trimmed after sewing.
        scales: how much each takes.

    Yields:
        The strips of each width that takes fewer.
    """
    before = _by_width(scales.amount(replace(own, pieces=_cut_first(own.pieces), working=plain.working)))
    after = _by_width(scales.amount(own))
    widths = dict.fromkeys(round(p.wide, 6) for p in own.pieces if p.kind == "strip" and not p.cut_first)
    for width in widths:
        names = tuple(
            p.name
            for p in own.pieces
            if p.kind == "strip" and not p.cut_first and round(p.wide, 6) == width
            if p.step < _LAST_STEP
        )
        if names and after.get(width, 0) < before.get(width, 0):
            yield Trimmed(width, names, before.get(width, 0), after.get(width, 0))


def _cut_first(pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    return tuple(replace(piece, cut_first=True) if piece.kind == "strip" else piece for piece in pieces)


# --- the binding -------------------------------------------------------------------------------------------


def joined_otherwise(cutting: Cutting, joined: Sequence[JoinedLength], numbers: Numbers) -> Iterator[Cutting]:
    """The bindings from other lengths than whole strips, each way that has a sense.

    Args:
        cutting: what it is tried on.
        joined: the bindings, what each needs and what a join takes off.
        numbers: the maker's numbers; parts are cut on their grid.

    Yields:
        The same pieces with one binding in other lengths.
    """
    for length in joined:
        whole = [piece for piece in cutting.pieces if piece.name == length.name and piece.kind == "binding"]
        if len(whole) != 1 or length.count < 1:
            continue
        width = _width(cutting.fabric, numbers)
        strip = min(whole[0].long, width) if whole[0].long > 0 else width
        rest = tuple(piece for piece in cutting.pieces if piece is not whole[0])
        each = -(-whole[0].count // length.count)
        for parts in _ways_to_join(length, strip, numbers.round_cuts_to):
            pieces = tuple(_as_pieces(whole[0], parts, strip, length.count))
            yield replace(cutting, pieces=(*rest, *pieces), joined=(JoinedFrom(length.name, parts, each),))


def _ways_to_join(length: JoinedLength, strip: float, step: float) -> Iterator[tuple[float, ...]]:
    """Whole strips and a last part; equal parts; parts of half and of a third of a strip."""
    if strip - length.join > _TOLERANCE:
        whole = max(ceil((length.need - strip) / (strip - length.join) - _TOLERANCE), 0)
        last = round_to(length.need - whole * (strip - length.join), step, Rounding.UP)
        yield (*(strip,) * whole, min(last, strip))
    for share in (1, 2, 3):
        part = strip / share
        if part < max(_SHORTEST_PART * length.join, _TOLERANCE):
            return
        count = max(ceil((length.need - length.join) / (part - length.join) - _TOLERANCE), 1)
        yield (min(round_to((length.need + (count - 1) * length.join) / count, step, Rounding.UP), part),) * count


def _as_pieces(whole: Piece, parts: Sequence[float], strip: float, count: int) -> Iterator[Piece]:
    """Whole strips stay whole; parts may come from what is left of other strips of the width."""
    full = sum(part > strip - _TOLERANCE for part in parts)
    if full:
        yield replace(whole, count=full * count)
    for part in dict.fromkeys(part for part in parts if part <= strip - _TOLERANCE):
        number = sum(abs(other - part) < _TOLERANCE for other in parts)
        yield replace(
            whole, kind="strip", long=part, count=number * count, step=_LAST_STEP, cut_first=False, last_long=0.0
        )


def _width(fabric: Fabric, numbers: Numbers) -> float:
    width = fabric.usable_width.inches if fabric.usable_width is not None else numbers.usable_width
    return width * (1 - shrinkage_of(fabric, numbers).across)


# --- the print ---------------------------------------------------------------------------------------------


def turned(cutting: Cutting) -> Cutting | None:
    """Pieces that must stand upright may lie on their side; a motif or a slanted window is never turned.

    Args:
        cutting: what it is tried on.

    Returns:
        The other way of cutting; None when no piece may be turned that could not before.
    """
    one_way = cutting.fabric.one_way

    def may_lie(piece: Piece) -> bool:
        return piece.kind == "rectangle" and piece.window is None and not piece.motif_in

    if not any(
        may_lie(piece) and (one_way or not piece.can_turn) and not _is_square(piece) for piece in cutting.pieces
    ):
        return None
    pieces = tuple(
        replace(piece, can_turn=may_lie(piece) or (piece.can_turn and not one_way)) for piece in cutting.pieces
    )
    return replace(cutting, fabric=cutting.fabric.model_copy(update={"one_way": False}), pieces=pieces)


def _is_square(piece: Piece) -> bool:
    return abs(piece.wide - piece.long) < _TOLERANCE


def lying(plain: Cutting, plan: FabricPlan) -> tuple[str, ...]:
    """Names of pieces that lie on their side though they should not.

    Args:
        plain: as planned.
        plan: how it is cut after all.
    """
    upright = {
        piece.name: piece
        for piece in plain.pieces
        if piece.kind == "rectangle" and (plain.fabric.one_way or not piece.can_turn) and not _is_square(piece)
    }
    names: dict[str, None] = {}
    rows = [(row, False) for row in plan.rows]
    rows += [(row, sheet.along == "long") for sheet in plan.hand_sheets for row in sheet.rows]
    for row, swapped in rows:
        for label, across in row.pieces:
            piece = upright.get(label)
            if piece is not None and abs(across - (piece.takes[0] if swapped else piece.takes[1])) < _TOLERANCE:
                names[label] = None
    for sheet in plan.hand_sheets:
        if plain.fabric.one_way and sheet.along == "long":
            own = (s for one in plan.strip_plans for s in one.strips if s.stock == sheet.name)
            names.update(dict.fromkeys(label for strip in own for label, _ in strip.pieces))
    return tuple(names)
