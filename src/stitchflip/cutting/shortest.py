"""If you only have so much: the shortest amount of a fabric that still works, and what it gives up.

Four things make do with less, and a maker gives them up in this order: strips cut from the list (trim them after
sewing instead), whole strips for the binding (join it from more pieces), the way a print stands, and at last pieces:
some from another fabric, or fewer of them. Every rung of that ladder is planned, so its number can be relied on.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.fabric_plan import Amount, amount_of, plan_fabric
from stitchflip.cutting.moving import Moved, Supply, Terms, fewest_moved, gives
from stitchflip.cutting.purchase import shrinkage_of
from stitchflip.cutting.stand_in import StandIn, stand_in
from stitchflip.lengths import Rounding, round_to
from stitchflip.project.model import Working
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.model import FabricPlan, JoinedLength, Piece
    from stitchflip.project.model import Fabric
    from stitchflip.project.numbers import Numbers

_TOLERANCE = 1e-6
_LESS_IN = 1 / 16
"""A rung that saves less than this is none."""
_SHORTEST_PART = 4
"""So many joins long is the shortest part of a binding that is joined on purpose."""


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


@dataclass(frozen=True, slots=True)
class Rung:
    """An amount that works, and what is given up for it."""

    need_in: float
    """Exact length, straightening in it."""
    buy_in: float
    """In the shop's steps."""
    trimmed: tuple[Trimmed, ...]
    joined: tuple[JoinedFrom, ...]
    turned: tuple[str, ...]
    """Pieces whose print lies on its side."""
    fabric: Fabric
    pieces: tuple[Piece, ...]
    """As they are cut on this rung."""
    working: Working
    plan: FabricPlan

    @property
    def is_as_planned(self) -> bool:
        """True when nothing is given up."""
        return not (self.trimmed or self.joined or self.turned)


@dataclass(frozen=True, slots=True)
class Shortest:
    """The ladder of one fabric."""

    fabric: str
    rungs: tuple[Rung, ...]
    """The first as planned; each of the others takes less than all before it and gives up more."""

    @property
    def least(self) -> Rung:
        """The shortest amount that gives every piece."""
        return self.rungs[-1]


@dataclass(frozen=True, slots=True)
class Fewer:
    """How many pieces come out of less."""

    alike: int
    """So many of the pieces alike; all but `without` when only one is made."""
    of: int
    without: Moved | None
    """What is left out of the only piece; None when fewer pieces alike are made."""


@dataclass(frozen=True, slots=True)
class OnlyHave:
    """What can be done with a given amount."""

    fabric: str
    have_in: float
    rung: Rung | None
    """The mildest way that gives every piece; None when there is none."""
    least: Rung
    """The shortest amount that would give every piece."""
    stand_in: StandIn | None
    """Pieces that another fabric gives; None when a rung does, or no fabric was named."""
    fewer: Fewer | None
    """Fewer pieces; None when a rung does."""


def shortest(asked: Supply, terms: Terms, joined: Sequence[JoinedLength] = ()) -> Shortest:
    """The shortest amount of a fabric that works as planned, and how much less each concession makes of it.

    Args:
        asked: the fabric with what is cut from it; how much there is of it is not looked at.
        terms: the maker's numbers, working and unit.
        joined: bindings among the pieces: what each needs and what a join takes off.

    Returns:
        At least the rung as planned; pieces the fabric cannot give at all are listed in its plan.
    """
    fabric = asked.fabric.model_copy(update={"only_on_hand": False})
    pieces = tuple(piece for piece in asked.pieces if piece.count > 0)
    plain = _Cutting(fabric, pieces, terms.working, ())
    rungs: list[Rung] = []
    for is_turned, is_joined, is_trimmed in product((False, True), repeat=3):
        cutting = _turned(plain) if is_turned else plain
        if cutting is None:
            continue
        options: list[_Cutting] = [cutting]
        if is_joined:
            options = list(_joined_otherwise(cutting, joined, terms.numbers))
        if is_trimmed:
            options = [own for one in options for own in [_trimmed(one, terms)] if own is not None]
        if options:
            best = min(options, key=lambda one: (one.amount(terms).need_in, one.joins))
            rungs += _rung(plain, best, terms, rungs)
    return Shortest(fabric.name, tuple(rungs))


def with_only(
    have_in: float,
    asked: Supply,
    terms: Terms,
    joined: Sequence[JoinedLength] = (),
    others: Sequence[Supply] = (),
    alike: int = 1,
) -> OnlyHave:
    """What can be done with so much of a fabric and no more.

    Args:
        have_in: length of the usual width, beside what is on hand; inches.
        asked: the fabric with what is cut from it.
        terms: the maker's numbers, working and unit.
        joined: bindings among the pieces.
        others: fabrics that may stand in, with what there is of them.
        alike: how many pieces alike the list is for.

    Returns:
        The mildest way that gives every piece; where there is none, what another fabric gives and how many come out.
    """
    ladder = shortest(asked, terms, joined)
    fitting = (rung for rung in ladder.rungs if rung.need_in <= have_in + _TOLERANCE and not rung.plan.left_out)
    rung = next(fitting, None)
    if rung is not None:
        return OnlyHave(ladder.fabric, have_in, rung, ladder.least, None, None)
    supply = replace(asked, has_in=have_in)
    return OnlyHave(
        ladder.fabric,
        have_in,
        None,
        ladder.least,
        stand_in(supply, others, terms) if others else None,
        _fewer(supply, terms, alike),
    )


# --- one way of cutting ------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Cutting:
    """The fabric and the pieces as some concessions make them."""

    fabric: Fabric
    pieces: tuple[Piece, ...]
    working: Working
    joined: tuple[JoinedFrom, ...]

    @property
    def joins(self) -> int:
        """Joins of the bindings that are joined otherwise."""
        return sum(len(one.lengths) for one in self.joined)

    def amount(self, terms: Terms) -> Amount:
        """How much it takes."""
        return amount_of(self.fabric, self.pieces, terms.numbers, self.working, terms.unit)


def _rung(plain: _Cutting, own: _Cutting, terms: Terms, above: Sequence[Rung]) -> Iterator[Rung]:
    """The rung, when it takes less than all above it."""
    amount = own.amount(terms)
    if above and (amount.need_in > above[-1].need_in - _LESS_IN or len(amount.left_out) > len(above[-1].plan.left_out)):
        return
    plan = plan_fabric(own.fabric, own.pieces, terms.numbers, own.working, terms.unit)
    yield Rung(
        need_in=amount.need_in,
        buy_in=amount.buy_in,
        trimmed=tuple(_strips_saved(plain, own, terms)) if own.working is not plain.working else (),
        joined=own.joined,
        turned=_lying(plain, plan),
        fabric=own.fabric,
        pieces=own.pieces,
        working=own.working,
        plan=plan,
    )


# --- trimmed after sewing ----------------------------------------------------------------------------------


def _trimmed(cutting: _Cutting, terms: Terms) -> _Cutting | None:
    """Strips trimmed after sewing, but only those of a width that takes fewer strips for it."""
    if cutting.working is Working.TRIM_AS_YOU_GO or not any(_can_be_trimmed(piece) for piece in cutting.pieces):
        return None
    everything = _with_trimming(cutting, None)
    before, after = _by_width(cutting.amount(terms)), _by_width(everything.amount(terms))
    widths = {width for width, count in after.items() if count < before.get(width, 0)}
    some = _with_trimming(cutting, widths)
    is_as_good = some.amount(terms).need_in < everything.amount(terms).need_in + _TOLERANCE
    return some if is_as_good else everything


def _with_trimming(cutting: _Cutting, widths: set[float] | None) -> _Cutting:
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


def _strips_saved(plain: _Cutting, own: _Cutting, terms: Terms) -> Iterator[Trimmed]:
    before = _by_width(replace(own, pieces=_cut_first(own.pieces), working=plain.working).amount(terms))
    after = _by_width(own.amount(terms))
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

_LAST_STEP = 10_000
"""Parts of a binding are taken after every strip that is sewn."""


def _joined_otherwise(cutting: _Cutting, joined: Sequence[JoinedLength], numbers: Numbers) -> Iterator[_Cutting]:
    """The bindings from other lengths than whole strips, each way that has a sense."""
    for length in joined:
        whole = [piece for piece in cutting.pieces if piece.name == length.name and piece.kind == "binding"]
        if len(whole) != 1:
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


def _turned(cutting: _Cutting) -> _Cutting | None:
    """Pieces that must stand upright may lie on their side; a motif or a slanted window is never turned."""
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


def _lying(plain: _Cutting, plan: FabricPlan) -> tuple[str, ...]:
    """Names of pieces that lie on their side though they should not."""
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


# --- fewer pieces ------------------------------------------------------------------------------------------


def _fewer(supply: Supply, terms: Terms, alike: int) -> Fewer | None:
    """Fewer pieces alike, or the only piece without some of its pieces of fabric."""
    if alike <= 1:
        without = fewest_moved(supply, None, terms)
        return None if without is None else Fewer(1, 1, without)
    low, high = 0, alike
    while high - low > 1:
        middle = (low + high) // 2
        pieces = [replace(piece, count=-(-piece.count * middle // alike)) for piece in supply.pieces]
        low, high = (middle, high) if gives(supply, pieces, terms) is not None else (low, middle)
    return Fewer(low, alike, None)
