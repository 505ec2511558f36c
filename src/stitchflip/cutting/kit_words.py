"""What stands on the bag of a kit and on the teacher's sheet, in the maker's unit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker, Unit
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from stitchflip.cutting.kits import Kit, KitPlan
    from stitchflip.cutting.model import FabricPlan, Piece
    from stitchflip.cutting.pool import Chain

_SAME_IN = 1 / 16


@dataclass(frozen=True, slots=True)
class PackLine:
    """One line of a packing list."""

    fabric: str
    what: str
    """Names of the pieces."""
    count: int
    size: str
    """Cut size, wide × long."""


def packing_lines(kit: Kit, unit: Unit) -> tuple[PackLine, ...]:
    """What goes into one bag, fabric by fabric; equal sizes of one fabric share a line.

    Args:
        kit: the kit.
        unit: the maker's unit.
    """
    say = Speaker(unit)
    found: dict[tuple[str, str], list[Piece]] = {}
    for one in kit.pieces:
        if one.piece.count:
            found.setdefault((one.fabric, say.cut_size(one.piece.wide, one.piece.long)), []).append(one.piece)
    return tuple(
        PackLine(fabric, _called(pieces), sum(piece.count for piece in pieces), size)
        for (fabric, size), pieces in found.items()
    )


def _called(pieces: Sequence[Piece]) -> str:
    """Strips by their numbers, other pieces by their names, each once."""
    numbers = list(dict.fromkeys(piece.name for piece in pieces if piece.kind == "strip" and piece.name.isdigit()))
    others = dict.fromkeys(_small(piece.name) for piece in pieces if piece.name not in numbers)
    strips = [f"strip{'s' * (len(numbers) != 1)} {', '.join(numbers)}"] if numbers else []
    return "; ".join([*strips, *others])


def packing_slip(kit: Kit, plan: KitPlan, unit: Unit) -> tuple[str, ...]:
    """The slip for one bag, line by line.

    Args:
        kit: the kit.
        plan: all kits.
        unit: the maker's unit.
    """
    say = Speaker(unit)
    head = "Spare kit" if kit.is_spare else f"Kit {kit.number} of {plan.order.how_many}"
    lines = [f"{line.fabric}: {line.count} cut {line.size} ({line.what})" for line in packing_lines(kit, unit)]
    lines += [_binding_line(chain, plan, say, place, len(kit.bindings)) for place, chain in enumerate(kit.bindings, 1)]
    return (f"{head}: {_pieces(kit.count)}", *lines, *_trimming(plan, say))


def _small(name: str) -> str:
    return name[:1].lower() + name[1:]


def _listed(told: Sequence[str]) -> str:
    return " and ".join(filter(None, [", ".join(told[:-1]), *told[-1:]]))


def _pieces(count: int) -> str:
    return "1 piece" if count == 1 else f"{count} pieces"


def _trimming(plan: KitPlan, say: Speaker) -> Iterator[str]:
    """What to do with strips that are cut longer."""
    if plan.extra_in >= _SAME_IN and any(one.extra_in > 0 for kit in plan.kits[:1] for one in kit.pieces):
        yield f"Strips are cut up to {say.near(plan.extra_in)} longer than they are sewn: trim each after opening it."


def _binding_line(chain: Chain, plan: KitPlan, say: Speaker, place: int, of: int) -> str:
    """Which strips make the binding of one piece, how long it becomes, how long it must be."""
    pool, binding = plan.pool, plan.order.binding
    if pool is None or binding is None:
        return ""
    whole = sum(part.length >= pool.strip_length - 1e-6 for part in chain.parts)
    told = [f"{whole} whole strip{'s' * (whole != 1)}"] if whole else []
    told += [f"one of {say.margin(part.length)}" for part in chain.parts if part.length < pool.strip_length - 1e-6]
    name = "Binding" if of == 1 else f"Binding {place}"
    joined = " joined to" if len(chain.parts) > 1 else ""
    return (
        f"{name}, {binding.fabric} {say.width(binding.cut)} wide: {_listed(told)}{joined or ', '} "
        f"{say.margin(chain.made)} ({say.shortage(pool.need)} are needed)"
    ).replace(",  ", ", ")


def teacher_words(plan: KitPlan, unit: Unit) -> tuple[str, ...]:
    """What whoever makes up the kits wants to know: what to buy, what one costs, what one more takes.

    Args:
        plan: all kits.
        unit: the maker's unit.
    """
    say = Speaker(unit)
    kits = f"{plan.order.how_many} kit{'s' * (plan.order.how_many != 1)}"
    spare = plan.order.spare_kits
    beside = "" if not spare else f" and {'one spare' if spare == 1 else f'{spare} spare ones'}"
    lines = [f"{kits}{beside}, cut together:"]
    lines += [_to_buy(fabric, say) for fabric in plan.fabrics]
    if plan.pool is not None and plan.pool.chains:
        lines.append(_pool_words(plan, say))
    lines += _cost_words(plan)
    lines.append(_one_more_words(plan, say))
    return tuple(lines)


def _to_buy(fabric: FabricPlan, say: Speaker) -> str:
    if fabric.left_out:
        return f"{fabric.fabric}: {fabric.because}"
    if fabric.buy_in <= 0:
        return f"{fabric.fabric}: nothing to buy"
    spare = f"{say.margin(fabric.spare_in)} to spare" if fabric.spare_in >= _SAME_IN else "nothing to spare"
    return f"{fabric.fabric}: {say.purchase(fabric.buy_in)}, {say.near(fabric.usable_width)} usable width, {spare}"


def _pool_words(plan: KitPlan, say: Speaker) -> str:
    """The binding of all kits, and why it is not one length divided."""
    pool = plan.pool
    if pool is None:
        return ""
    each = f"{say.shortage(pool.need)} for each piece, its own joins charged"
    proved = "; no way of joining does with fewer" if pool.strips == pool.bound else ""
    is_shared = any(part.length < pool.strip_length - _SAME_IN for chain in pool.chains for part in chain.parts)
    cut = ". Cut the shorter lengths as the bags ask for them" if is_shared else ""
    strips = f"{pool.strips} strip{'s' * (pool.strips != 1)}"
    return f"Binding: {strips} for {_pieces(len(pool.chains))}, {each}{proved}{cut}"


def _cost_words(plan: KitPlan) -> Iterator[str]:
    """What one kit costs, and what is not in it."""
    cost = plan.cost
    if cost.total > 0:
        without = f"; no price is known for {', '.join(cost.unpriced)}" if cost.unpriced else ""
        yield f"Fabric for one kit: {cost.of_one:.2f}, all that is bought shared by {plan.order.how_many}{without}"


def _one_more_words(plan: KitPlan, say: Speaker) -> str:
    """What one kit more takes."""
    if not plan.one_more:
        return "One kit more comes from what is bought"
    said = ", ".join(f"{name} {say.purchase(buy)}" for name, buy in plan.one_more)
    return f"One kit more: buy {said} instead"
