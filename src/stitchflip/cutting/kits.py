"""Several alike, and kits for a class: one purchase, one cutting for all, one pile for each.

Everything of one fabric is cut together, because that is what saves fabric and time; then it is dealt out. The
pieces of all kits are alike, but their bindings are not: each is joined from strips of its own.
"""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.fabric_plan import MOST_PIECES, amount_of, plan_fabric
from stitchflip.cutting.model import FabricPlan, JoinedLength, Piece
from stitchflip.cutting.pool import Chain, Pool, pool_for
from stitchflip.cutting.purchase import shrinkage_of
from stitchflip.errors import CuttingError
from stitchflip.lengths import CM_PER_INCH, INCHES_PER_YARD, Unit
from stitchflip.project.model import Fabric, Working
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.project.numbers import Numbers

ROUGH_EXTRA_IN = {Unit.INCH: 0.5, Unit.CM: 1.5 / CM_PER_INCH}
"""What strips of a kit are cut longer, so that they are trimmed by the one who sews them.

Source: common practice, no source.
"""
_TOLERANCE = 1e-6


@dataclass(frozen=True, slots=True)
class KitFabric:
    """A fabric and what one kit takes of it."""

    fabric: Fabric
    pieces: tuple[Piece, ...]
    """Of one kit, as cut to size; without the binding."""


@dataclass(frozen=True, slots=True)
class KitBinding:
    """The binding of one kit."""

    fabric: str
    """Name of its fabric."""
    cut: float
    """Cut width, inches."""
    need: float
    """Length each piece needs, tails and corners in it, inches."""
    join: float
    """What one join takes off, inches."""
    pieces: int = 1
    """How many pieces of one kit are bound."""


@dataclass(frozen=True, slots=True)
class KitOrder:
    """How many kits, and what is in one."""

    how_many: int
    fabrics: tuple[KitFabric, ...]
    binding: KitBinding | None = None
    spare_kits: int = 0
    """Kits beside those that are given out, for what goes wrong."""
    extra_in: float | None = None
    """What strips are cut longer than their size; 0: cut to size, None: as the house does."""

    @property
    def all_kits(self) -> int:
        """Kits that are cut."""
        return self.how_many + self.spare_kits


@dataclass(frozen=True, slots=True)
class PackedPiece:
    """Equal pieces in one kit."""

    fabric: str
    piece: Piece
    """As cut for the kit, with its count in one kit."""
    extra_in: float
    """What it is longer than its size."""


@dataclass(frozen=True, slots=True)
class Kit:
    """What goes into one bag."""

    number: int
    is_spare: bool
    pieces: tuple[PackedPiece, ...]
    bindings: tuple[Chain, ...]
    """One for each piece that is bound."""

    @property
    def count(self) -> int:
        """Pieces of fabric in the bag, strips for the binding counted too."""
        return sum(one.piece.count for one in self.pieces) + sum(len(chain.parts) for chain in self.bindings)


@dataclass(frozen=True, slots=True)
class KitCost:
    """What the fabric costs at the prices that are known."""

    total: float
    of_one: float
    """Everything that is bought, shared by the kits that are given out."""
    unpriced: tuple[str, ...]
    """Fabrics that are bought and have no price."""


@dataclass(frozen=True, slots=True)
class KitPlan:
    """All kits: what to buy, how to cut it, what goes where."""

    order: KitOrder
    extra_in: float
    fabrics: tuple[FabricPlan, ...]
    kits: tuple[Kit, ...]
    pool: Pool | None
    """Binding strips of all kits; None without a binding."""
    joined: tuple[JoinedLength, ...]
    """For the independent check."""
    pieces: tuple[tuple[Piece, ...], ...]
    """What is cut from each of the fabrics for all kits."""
    cost: KitCost
    one_more: tuple[tuple[str, float], ...]
    """Fabrics of which more must be bought for one kit more, and how much to buy in all; empty: it is there."""


def plan_kits(order: KitOrder, numbers: Numbers, unit: Unit) -> KitPlan:
    """One purchase and one cutting for all kits, and what goes into each.

    Args:
        order: how many kits, what is in one, how each fabric measures.
        numbers: the maker's numbers.
        unit: her unit.

    Returns:
        The plan. A fabric that cannot give everything says so in its own plan.

    Raises:
        CuttingError: If there is no kit, or there are more pieces than anybody cuts.
    """
    _refuse_nonsense(order)
    extra = ROUGH_EXTRA_IN[unit] if order.extra_in is None else order.extra_in
    pool = _pool(order, order.all_kits, numbers)
    packed = tuple(_packed(one, extra, numbers) for one in order.fabrics)
    cut = tuple(_for_all(order, one, numbers, order.all_kits, pool, extra) for one in order.fabrics)
    plans = tuple(
        plan_fabric(one.fabric, pieces, numbers, Working.CUT_FIRST, unit)
        for one, pieces in zip(order.fabrics, cut, strict=True)
    )
    return KitPlan(
        order=order,
        extra_in=extra,
        fabrics=plans,
        kits=tuple(_dealt(order, tuple(piece for own in packed for piece in own), pool)),
        pool=pool,
        joined=() if pool is None else (JoinedLength("Binding", pool.need, pool.join, len(pool.chains)),),
        pieces=cut,
        cost=_cost(order, plans, unit),
        one_more=tuple(_one_more(order, plans, numbers, unit, extra)),
    )


def most_kits(order: KitOrder, numbers: Numbers, unit: Unit) -> int:
    """How many kits come from what there is, when nothing more can be bought of some fabrics.

    Args:
        order: its fabrics as they are on hand; how many kits it names is not looked at.
        numbers: the maker's numbers.
        unit: her unit.

    Returns:
        The largest number all fabrics give, spare kits on top of it; 0 when not even one comes from them.

    Raises:
        CuttingError: If every fabric can be bought: there is no most.
    """
    limited = tuple(
        one
        for one in order.fabrics
        if one.fabric.only_on_hand
        and (any(p.count for p in one.pieces) or (order.binding and order.binding.fabric == one.fabric.name))
    )
    if not limited:
        raise CuttingError(
            what="more can be bought of every fabric",
            fix="Say of which fabrics you have no more than what is on hand.",
            where="fabrics",
            code="cutting.no-limit-to-kits",
        )
    extra = ROUGH_EXTRA_IN[unit] if order.extra_in is None else order.extra_in

    def comes_out(kits: int) -> bool:
        pool = _pool(order, kits + order.spare_kits, numbers)
        cut = [_for_all(order, one, numbers, kits + order.spare_kits, pool, extra) for one in limited]
        if any(sum(piece.count for piece in pieces) > MOST_PIECES for pieces in cut):
            return False
        return not any(
            plan_fabric(one.fabric, pieces, numbers, Working.CUT_FIRST, unit).left_out
            for one, pieces in zip(limited, cut, strict=True)
        )

    low, high = 0, 1
    while comes_out(high):
        low, high = high, high * 2
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if comes_out(middle) else (low, middle)
    return low


# --- what is cut -------------------------------------------------------------------------------------------


def _refuse_nonsense(order: KitOrder) -> None:
    own = sum(piece.count for one in order.fabrics for piece in one.pieces) or 1
    if order.how_many < 1 or order.spare_kits < 0:
        raise CuttingError(
            what=f"{order.how_many} kits and {order.spare_kits} spare ones are asked for",
            fix="Ask for at least one kit, and for no spare kit or some.",
            where="kits",
            code="cutting.no-kit",
        )
    if order.all_kits * own > MOST_PIECES:
        raise CuttingError(
            what=f"{order.all_kits} kits have {order.all_kits * own} pieces together",
            fix=f"Ask for at most {MOST_PIECES // own} kits at a time.",
            where="kits",
            code="cutting.too-many-kits",
        )


def _width(fabric: Fabric, numbers: Numbers) -> float:
    """Usable width, washing first charged."""
    width = fabric.usable_width.inches if fabric.usable_width is not None else numbers.usable_width
    return width * (1 - shrinkage_of(fabric, numbers).across)


def _packed(one: KitFabric, extra: float, numbers: Numbers) -> tuple[PackedPiece, ...]:
    """The pieces of one kit, strips longer by what the order gives them."""
    width = _width(one.fabric, numbers)
    out: list[PackedPiece] = []
    for piece in one.pieces:
        more = 0.0
        if piece.kind == "strip":
            more = min(extra, width - piece.long) if piece.long <= width + _TOLERANCE else extra
        more = max(more, 0.0)
        out.append(PackedPiece(one.fabric.name, replace(piece, long=piece.long + more), more))
    return tuple(out)


def _for_all(
    order: KitOrder, one: KitFabric, numbers: Numbers, kits: int, pool: Pool | None, extra: float
) -> tuple[Piece, ...]:
    """Everything that is cut from one fabric."""
    pieces = [
        replace(packed.piece, count=packed.piece.count * kits, cut_first=True)
        for packed in _packed(one, extra, numbers)
    ]
    if pool is not None and order.binding is not None and order.binding.fabric == one.fabric.name:
        pieces.append(Piece("Binding", order.binding.cut, pool.strip_length, pool.strips, "binding"))
    return tuple(pieces)


def _pool(order: KitOrder, kits: int, numbers: Numbers) -> Pool | None:
    """Binding strips, from full widths of their fabric."""
    binding = order.binding
    if binding is None:
        return None
    own = next((one.fabric for one in order.fabrics if one.fabric.name == binding.fabric), None)
    if own is None:
        raise CuttingError(
            what=f"the binding is cut from {binding.fabric}, which is none of the fabrics of the kit",
            fix="List the fabric of the binding with the others, even if nothing else is cut from it.",
            where="binding",
            code="cutting.no-binding-fabric",
        )
    return pool_for(binding.need, binding.join, kits * binding.pieces, _width(own, numbers), numbers.round_cuts_to)


def _dealt(order: KitOrder, pieces: tuple[PackedPiece, ...], pool: Pool | None) -> Iterator[Kit]:
    """One bag after the other."""
    each = order.binding.pieces if order.binding is not None else 0
    chains = pool.chains if pool is not None else ()
    for place in range(order.all_kits):
        own = chains[place * each : (place + 1) * each]
        yield Kit(place + 1, place >= order.how_many, pieces, own)


# --- what it costs -----------------------------------------------------------------------------------------


def _cost(order: KitOrder, plans: tuple[FabricPlan, ...], unit: Unit) -> KitCost:
    measure = INCHES_PER_YARD if unit is Unit.INCH else 100 / CM_PER_INCH
    total = 0.0
    unpriced: list[str] = []
    for one, plan in zip(order.fabrics, plans, strict=True):
        if one.fabric.price is not None:
            total += one.fabric.price * plan.buy_in / measure
        elif plan.buy_in > 0:
            unpriced.append(one.fabric.name)
    return KitCost(total, ceil(total / order.how_many * 100 - _TOLERANCE) / 100, tuple(unpriced))


def _one_more(
    order: KitOrder, plans: tuple[FabricPlan, ...], numbers: Numbers, unit: Unit, extra: float
) -> Iterator[tuple[str, float]]:
    """Fabrics of which one kit more takes another step of the shop."""
    pool = _pool(order, order.all_kits + 1, numbers)
    for one, plan in zip(order.fabrics, plans, strict=True):
        pieces = _for_all(order, one, numbers, order.all_kits + 1, pool, extra)
        if sum(piece.count for piece in pieces) > MOST_PIECES:
            continue
        more = amount_of(one.fabric, pieces, numbers, Working.CUT_FIRST, unit)
        if more.buy_in > plan.buy_in + _TOLERANCE:
            yield one.fabric.name, more.buy_in
