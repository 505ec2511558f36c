"""Could this piece be cut closer? Each fabric's everyday plan beside the least that edge-to-edge cutting takes.

The everyday plan cuts strips of one width and whole rows. Where pieces of different widths side by side, or turned,
save a step of the purchase, that is said with what it saves and what it asks of the hand; where nothing can save
a step, that is proved.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from stitchflip.cutting.closer import cut_closer
from stitchflip.cutting.layouts.watch import Patience, Watch
from stitchflip.cutting.shelf_closer import cut_shelf_closer
from stitchflip.lengths import Speaker
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from stitchflip.cutting.closer import Closer
    from stitchflip.cutting.model import FabricPlan, Piece
    from stitchflip.cutting.shelf_closer import ShelfCloser
    from stitchflip.planning.model import Plan

_LOOKS = 400
_SHELF_LOOKS = 60
"""Each look at plans of many pieces of fabric takes longer."""
_LAST_RESORT_S = 30.0


@dataclass(frozen=True, slots=True)
class CloserCut:
    """What cutting closer does for one fabric."""

    fabric: str
    plan: FabricPlan | None
    """The closer plan; None when it saves nothing, or nothing was found."""
    says: str
    """One or two sentences; "" when there is nothing to say."""


def closer_cuts(
    made: Plan,
    fabrics: Iterable[FabricPlan],
    seconds: float | None = None,
    cancelled: Callable[[], bool] | None = None,
    begins: Callable[[str], None] | None = None,
) -> tuple[CloserCut, ...]:
    """What cutting closer does for some fabrics.

    Args:
        made: the plan of the piece.
        fabrics: those that are asked for.
        seconds: how long each search may look; None: a set number of looks, the same on every machine.
        cancelled: asked again and again; True ends the search, what was found so far is told.
        begins: called with the name of each fabric when its search begins.
    """
    out: list[CloserCut] = []
    for plan in fabrics:
        if begins is not None:
            begins(plan.fabric)
        out.append(_one(made, plan, seconds, cancelled))
    return tuple(out)


def with_closer_cuts(made: Plan, cuts: Iterable[CloserCut]) -> Plan:
    """The plan of the piece with the closer plans in the place of the everyday ones.

    Args:
        made: the plan.
        cuts: what cutting closer does.
    """
    closer = {one.fabric: one.plan for one in cuts if one.plan is not None}
    return replace(made, fabrics=tuple(closer.get(plan.fabric, plan) for plan in made.fabrics))


def _clock(seconds: float | None, looks: int) -> Callable[..., Watch]:
    """What makes the clock of one search."""
    return partial(Patience, looks, _LAST_RESORT_S) if seconds is None else partial(Watch, seconds)


def _one(made: Plan, plan: FabricPlan, seconds: float | None, cancelled: Callable[[], bool] | None) -> CloserCut:
    fabric = next(one for one in made.project.fabrics if one.name == plan.fabric)
    pieces = made.pieces_by_fabric[plan.fabric]
    unit = made.project.units
    found = cut_closer(fabric, pieces, made.numbers, unit, plan, _clock(seconds, _LOOKS), cancelled)
    if found is not None:
        return CloserCut(plan.fabric, found.plan, _said(found, plan, pieces, Speaker(unit)))
    if not fabric.on_hand:
        return CloserCut(plan.fabric, None, "")
    clock = _clock(seconds, _SHELF_LOOKS)
    shelf = cut_shelf_closer(fabric, pieces, made.numbers, unit, plan, clock, cancelled)
    if shelf is None:
        return CloserCut(plan.fabric, None, "")
    return CloserCut(plan.fabric, shelf.plan, _said_of_shelf(shelf, plan, Speaker(unit)))


def _said(found: Closer, plan: FabricPlan, pieces: Sequence[Piece], say: Speaker) -> str:
    if found.plan is None:
        if found.is_proved:
            bought = say.purchase(plan.buy_in)
            return f"Proved: rows of different pieces side by side, cut edge to edge, buy no less than {bought} either."
        return (
            f"No closer way was found; whether {say.purchase(found.least_buy_in)} could do was not decided in the time."
        )
    strips = {piece.name for piece in pieces if piece.kind != "rectangle"}
    laid = [piece for row in found.plan.rows for stack in row.stacks for piece in stack.pieces]
    over = ", some over one another" if found.stages > 2 else ""
    over += ", some strips along the fabric" if any(p.along > p.across and p.label in strips for p in laid) else ""
    heights = f"{found.settings} setting{'s' * (found.settings != 1)} of the ruler"
    proof = (
        "Proved: no rows, cut edge to edge, buy less."
        if found.is_proved
        else f"Whether {say.purchase(found.least_buy_in)} could do was not decided in the time."
    )
    return (
        f"{say.purchase(found.plan.buy_in)} instead of {say.purchase(plan.buy_in)} will do when pieces of different "
        f"sizes lie side by side in a row{over}: {heights} for the rows. {proof}"
    )


def _said_of_shelf(found: ShelfCloser, plan: FabricPlan, say: Speaker) -> str:
    if found.plan is None:
        return "No way was found that buys less or leaves more of the shelf whole." if not found.is_proved else ""
    if plan.left_out:
        gives = f"everything comes from what is on hand, {', '.join(dict.fromkeys(plan.left_out))} too"
    elif found.plan.buy_in <= 0 < plan.buy_in:
        gives = f"what is on hand gives everything, {say.purchase(plan.buy_in)} need not be bought"
    elif found.saves_in > 0:
        gives = f"{say.purchase(found.plan.buy_in)} instead of {say.purchase(plan.buy_in)} will do"
    else:
        gives = f"{', '.join(found.leaves_whole)} stays whole" if len(found.leaves_whole) == 1 else "less is cut into"
    return f"When pieces of different sizes lie side by side in a row, {gives}."
