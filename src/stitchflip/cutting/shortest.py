"""If you only have so much: the shortest amount of a fabric that still works, and what it gives up.

Four things make do with less, and a maker gives them up in this order: strips cut from the list (trim them after
sewing instead), whole strips for the binding (join it from more pieces), the way a print stands, and at last pieces:
some from another fabric, or fewer of them. Every rung of that ladder is planned, so its number can be relied on.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import TYPE_CHECKING

from stitchflip.cutting.concessions import (
    Cutting,
    JoinedFrom,
    Scales,
    Trimmed,
    joined_otherwise,
    lying,
    strips_saved,
    trimmed,
    turned,
)
from stitchflip.cutting.fabric_plan import plan_fabric
from stitchflip.cutting.moving import Moved, Supply, Terms, fewest_moved, gives
from stitchflip.cutting.stand_in import StandIn, stand_in
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.model import FabricPlan, JoinedLength, Piece
    from stitchflip.project.model import Fabric, Working

_TOLERANCE = 1e-6
_LESS_IN = 1 / 16
"""A rung that saves less than this is none."""


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
    plain = Cutting(fabric, pieces, terms.working, ())
    scales = Scales(terms)
    rungs: list[Rung] = []
    for is_turned, is_joined, is_trimmed in product((False, True), repeat=3):
        if rungs and terms.over():
            break
        cutting = turned(plain) if is_turned else plain
        if cutting is None:
            continue
        options: list[Cutting] = [cutting]
        if is_joined:
            options = list(joined_otherwise(cutting, joined, terms.numbers))
        if is_trimmed:
            options = [own for one in options for own in [trimmed(one, scales)] if own is not None]
        if options:
            best = min(options, key=lambda one: (scales.amount(one).need_in, one.joins))
            rungs += _rung(plain, best, scales, rungs)
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


# --- the rungs --------------------------------------------------------------------------------------------


def _rung(plain: Cutting, own: Cutting, scales: Scales, above: Sequence[Rung]) -> Iterator[Rung]:
    """The rung, when it takes less than all above it."""
    amount = scales.amount(own)
    terms = scales.terms
    if above and (amount.need_in > above[-1].need_in - _LESS_IN or len(amount.left_out) > len(above[-1].plan.left_out)):
        return
    plan = plan_fabric(own.fabric, own.pieces, terms.numbers, own.working, terms.unit)
    yield Rung(
        need_in=amount.need_in,
        buy_in=amount.buy_in,
        trimmed=tuple(strips_saved(plain, own, scales)) if own.working is not plain.working else (),
        joined=own.joined,
        turned=lying(plain, plan),
        fabric=own.fabric,
        pieces=own.pieces,
        working=own.working,
        plan=plan,
    )


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
