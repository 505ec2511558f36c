"""Two wishes about cutting: kits for a class, and making do with what there is of a fabric.

Both answer with another plan of the same piece, so that everything that is said about cutting, on screen, in the
document and on paper, is said about it too.
"""

from __future__ import annotations

from dataclasses import replace
from math import floor
from typing import TYPE_CHECKING

from stitchflip.cutting.fabric_plan import WIDTH_OF_FABRIC
from stitchflip.cutting.kit_words import packing_slip, teacher_words
from stitchflip.cutting.kits import KitBinding, KitFabric, KitOrder, plan_kits
from stitchflip.cutting.model import JoinedLength
from stitchflip.cutting.moving import Supply, Terms
from stitchflip.cutting.shortest import shortest, with_only
from stitchflip.cutting.shortest_words import only_have_words, shortest_words
from stitchflip.finishing.binding_strips import Join, join_cost
from stitchflip.planning.motifs import center_room
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from stitchflip.cutting.kits import KitPlan
    from stitchflip.cutting.model import FabricPlan, Piece
    from stitchflip.planning.model import Plan

_BINDING = "Binding"
_TOLERANCE = 1e-6


@dataclass(frozen=True, slots=True)
class Slip:
    """A packing slip, and the bags it goes into."""

    kits: tuple[int, ...]
    """Their numbers, spare ones last."""
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class KitsAnswer:
    """Kits of a piece: the plan for all of them, what to know, and the slips."""

    plan: Plan
    """The piece with the cutting of all kits in the place of its own."""
    how_many: int
    spare: int
    teacher: tuple[str, ...]
    slips: tuple[Slip, ...]

    @property
    def bags(self) -> int:
        """Kits, spare ones too."""
        return self.how_many + self.spare


@dataclass(frozen=True, slots=True)
class OnlyAnswer:
    """What can be done with so much of a fabric and no more."""

    fabric: str
    have_in: float | None
    """Length of the usual width; None: only the shortest amounts are asked for."""
    is_enough: bool
    """True: every piece comes from it, or from a fabric that stands in, and nothing need be bought."""
    says: tuple[str, ...]
    stands_in: str = ""
    """The fabric that gives what is missing; "" when none is needed or none can."""


def kits_of(plan: Plan, how_many: int, spare: int) -> KitsAnswer:
    """Kits of a piece: everything its project file has, so many times, cut together.

    Args:
        plan: the plan of the piece.
        how_many: kits that are given out, 1 or more.
        spare: kits beside those.

    Raises:
        CuttingError: If there is no kit, or there are more pieces than anybody cuts.
    """
    order = KitOrder(how_many, tuple(_kit_fabrics(plan, how_many + spare)), _kit_binding(plan), spare)
    made = plan_kits(order, plan.numbers, plan.project.units)
    if any(_has_motif(piece) for one in order.fabrics for piece in one.pieces):
        more = replace(order, how_many=how_many + 1, fabrics=tuple(_kit_fabrics(plan, how_many + spare + 1)))
        made = replace(made, one_more=tuple(_bought_more(made, plan_kits(more, plan.numbers, plan.project.units))))
    names = [one.fabric.name for one in order.fabrics]
    changed = replace(
        plan,
        fabrics=made.fabrics,
        pieces_by_fabric=dict(plan.pieces_by_fabric) | dict(zip(names, made.pieces, strict=True)),
    )
    return KitsAnswer(changed, how_many, spare, teacher_words(made, plan.project.units), tuple(_slips(made, plan)))


def _kit_fabrics(plan: Plan, kits: int) -> Iterator[KitFabric]:
    """What one kit takes of each fabric; windows round motifs have the length that is enough for all kits."""
    own = {fabric.name: fabric for fabric in plan.project.fabrics}
    binding = _kit_binding(plan)
    for fabric in plan.fabrics:
        pieces = [
            _for_kits(plan, fabric.fabric, piece, kits) if _has_motif(piece) else piece
            for piece in plan.pieces_by_fabric.get(fabric.fabric, ())
        ]
        yield KitFabric(own[fabric.fabric], tuple(piece for piece in pieces if binding is None or not _binds(piece)))


def _has_motif(piece: Piece) -> bool:
    return piece.motif_in > 0 or piece.block_in > 0


def _for_kits(plan: Plan, fabric: str, piece: Piece, kits: int) -> Piece:
    """A window round a motif, with the fabric that all kits together take."""
    kind = next((one for one in plan.kinds if one.build.pieces[0].fabric == fabric), None)
    if kind is None:
        return piece
    long = piece.takes[1] - piece.motif_in
    room = center_room(kind.project, plan.numbers, kind.build.pieces[0], long, piece.count * kits)
    return piece if room is None else replace(piece, motif_in=room.beside_in, block_in=room.block_in)


def _bought_more(made: KitPlan, more: KitPlan) -> Iterator[tuple[str, float]]:
    """Fabrics of which one kit more takes another step of the shop."""
    for one, other in zip(made.fabrics, more.fabrics, strict=True):
        if other.buy_in > one.buy_in + _TOLERANCE:
            yield other.fabric, other.buy_in


def _binds(piece: Piece) -> bool:
    return piece.kind == "binding" and piece.name == _BINDING


def _join(plan: Plan) -> float:
    """What one join of the binding takes off."""
    return plan.numbers.binding_join or join_cost(plan.numbers.binding_cut, plan.numbers.seam, Join.DIAGONAL)


def _kit_binding(plan: Plan) -> KitBinding | None:
    binding = plan.binding
    pieces = plan.pieces_by_fabric.get(binding.fabric, ())
    if not any(_binds(piece) for piece in pieces):
        return None
    bound = plan.project.how_many * binding.pieces
    return KitBinding(binding.fabric, binding.cut, binding.need, _join(plan), bound)


def _slips(made: KitPlan, plan: Plan) -> Iterator[Slip]:
    """One slip for all bags with the same in them."""
    found: dict[tuple[str, ...], list[int]] = {}
    for kit in made.kits:
        lines = packing_slip(kit, made, plan.project.units)[1:]
        found.setdefault(lines, []).append(kit.number)
    for lines, numbers in found.items():
        yield Slip(tuple(numbers), lines)


def slip_heading(slip: Slip, bags: int) -> str:
    """Which bags a slip goes into.

    Args:
        slip: one of the slips.
        bags: how many there are.

    Example:
        >>> slip_heading(Slip((1, 2, 3), ()), 3), slip_heading(Slip((2,), ()), 3)
        ('In each of the 3 bags', 'In bag 2')
    """
    if len(slip.kits) == bags:
        return "In the bag" if bags == 1 else f"In each of the {bags} bags"
    if len(slip.kits) == 1:
        return f"In bag {slip.kits[0]}"
    return f"In each of the bags {', '.join(map(str, slip.kits[:-1]))} and {slip.kits[-1]}"


# --- only so much ------------------------------------------------------------------------------------------


def with_only_so_much(
    plan: Plan, wishes: Iterable[tuple[FabricPlan, float | None]]
) -> tuple[Plan, tuple[OnlyAnswer, ...]]:
    """What can be done when there is only so much of some fabrics.

    Args:
        plan: the plan of the piece.
        wishes: each fabric with the length of the usual width there is of it, inches; None asks what the shortest
            amounts are.

    Returns:
        The plan with the cutting that makes do, where there is one, and what is said about each fabric.
    """
    answers: list[OnlyAnswer] = []
    for fabric, have_in in wishes:
        answer, changed = _only(plan, fabric, have_in)
        answers.append(answer)
        plan = changed
    return plan, tuple(answers)


def _only(plan: Plan, fabric: FabricPlan, have_in: float | None) -> tuple[OnlyAnswer, Plan]:
    project, unit = plan.project, plan.project.units
    terms = Terms(plan.numbers, project.working, unit)
    asked = _supply(plan, fabric, None)
    joined = _joined(plan, fabric.fabric)
    if have_in is None:
        return OnlyAnswer(fabric.fabric, None, True, shortest_words(shortest(asked, terms, joined), unit)), plan
    others = [_supply(plan, one, one.buy_in or None) for one in plan.fabrics if one.fabric != fabric.fabric]
    found = with_only(have_in, asked, terms, joined, others, project.how_many)
    says = only_have_words(found, unit)
    if found.rung is not None:
        changed = _with(plan, fabric, _of_length(found.rung.plan, have_in), found.rung.pieces)
        return OnlyAnswer(fabric.fabric, have_in, True, says), changed
    helped = found.stand_in
    if helped is None or not helped.is_enough or helped.moved is None:
        return OnlyAnswer(fabric.fabric, have_in, False, says), plan
    other = next(one for one in plan.fabrics if one.fabric == helped.to)
    moved = helped.moved.pieces
    to = (*plan.pieces_by_fabric.get(other.fabric, ()), *moved)
    plan = _with(plan, fabric, _of_length(helped.plans[0], have_in), _without(asked.pieces, moved))
    return OnlyAnswer(fabric.fabric, have_in, True, says, other.fabric), _with(plan, other, helped.plans[1], to)


def _of_length(cut: FabricPlan, have_in: float) -> FabricPlan:
    """The cutting from a length that is there, whatever the shop sells; mistakes are made good from it alone."""
    if cut.need_in <= 0:
        return cut
    spare = max(have_in - cut.need_in, 0.0)
    washed = (cut.used_in + cut.straightening_in) / cut.need_in
    strips = [one.width for one in cut.strip_plans if any(strip.stock == WIDTH_OF_FABRIC for strip in one.strips)]
    widest = max(strips or [row.height for row in cut.rows], default=0.0)
    return replace(
        cut,
        buy_in=have_in,
        spare_in=spare,
        miscuts=floor(spare * washed / widest + _TOLERANCE) if widest > 0 else 0,
        tipping_points=(),
        spare_strip_buy_in=have_in,
    )


def _with(plan: Plan, fabric: FabricPlan, cut: FabricPlan, pieces: tuple[Piece, ...]) -> Plan:
    """The plan with another cutting of one fabric."""
    return replace(
        plan,
        fabrics=tuple(cut if one.fabric == fabric.fabric else one for one in plan.fabrics),
        pieces_by_fabric=dict(plan.pieces_by_fabric) | {fabric.fabric: pieces},
    )


def _without(pieces: tuple[Piece, ...], moved: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """What stays when some pieces go to another fabric."""
    gone = {replace(piece, count=0): piece.count for piece in moved}
    left = (replace(piece, count=piece.count - gone.get(replace(piece, count=0), 0)) for piece in pieces)
    return tuple(piece for piece in left if piece.count > 0)


def _supply(plan: Plan, fabric: FabricPlan, has_in: float | None) -> Supply:
    own = next(one for one in plan.project.fabrics if one.name == fabric.fabric)
    return Supply(own, plan.pieces_by_fabric.get(fabric.fabric, ()), has_in, frozenset({_BINDING}))


def _joined(plan: Plan, fabric: str) -> tuple[JoinedLength, ...]:
    binding = plan.binding
    if binding.fabric != fabric or not any(_binds(piece) for piece in plan.pieces_by_fabric.get(fabric, ())):
        return ()
    return (JoinedLength(_BINDING, binding.need, _join(plan), plan.project.how_many * binding.pieces),)
