"""What purchases and the shelf leave to look at: fabric, batting, cuts."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.piecing.geometry import TOLERANCE
from stitchflip.planning.findings.words import listed
from stitchflip.planning.model import Cure, Finding, Severity
from stitchflip.project.model import Change

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.cutting.model import FabricPlan, Piece
    from stitchflip.planning.model import Plan

_LITTLE = 1 / 16
"""A spare below this (inches) is nothing to spare: less than one wobble of the ruler."""


def fabric_amounts(plan: Plan) -> Iterator[Finding]:
    """Fabric that is short, and purchases that leave nothing."""
    say = Speaker(plan.project.units)
    for fabric in plan.fabrics:
        if fabric.short_in > TOLERANCE:
            what = f"{fabric.fabric} on hand is not enough: {say.shortage(fabric.short_in)} of length are missing."
            numbers = {"short_in": fabric.short_in}
            cures = tuple(_where_it_is_sold(plan, fabric.fabric))
            yield Finding("fabric.short", Severity.STOP, what, fabric.fabric, numbers=numbers, cures=cures)
        elif fabric.left_out:
            yield _too_narrow(plan, fabric)
        elif fabric.buy_in > 0 and fabric.spare_in < _LITTLE:
            yield _nothing_to_spare(plan, fabric, say)


def _where_it_is_sold(plan: Plan, name: str) -> Iterator[Cure]:
    """What can be done about a fabric that is short: another one for some strips, or more of it."""
    yield Cure(f"Give some of the pieces of {name} another fabric, or cut them narrower.")
    for index, fabric in enumerate(plan.project.fabrics):
        if fabric.name == name and fabric.only_on_hand:
            change = Change(("fabrics", index, "only_on_hand"), "false")
            yield Cure(f"If {name} can still be bought, buy the rest of it.", (change,))


def _too_narrow(plan: Plan, fabric: FabricPlan) -> Finding:
    """Pieces the fabric cannot give, however much of it there is."""
    cures = [Cure(f"Measure the usable width of {fabric.fabric}, or give those pieces another fabric.")]
    if any(one.only_on_hand for one in plan.project.fabrics if one.name == fabric.fabric):
        cures = list(_where_it_is_sold(plan, fabric.fabric))
    numbers = {"usable_width_in": fabric.usable_width}
    return Finding(
        "fabric.too-narrow", Severity.STOP, fabric.because, fabric.fabric, numbers=numbers, cures=tuple(cures)
    )


def _nothing_to_spare(plan: Plan, fabric: FabricPlan, say: Speaker) -> Finding:
    what = (
        f"{fabric.fabric}: {say.near(fabric.used_in)} of cuts and {say.near(fabric.straightening_in)} for "
        f"straightening, {say.purchase(fabric.buy_in)} bought: nothing to spare."
    )
    more = fabric.buy_in + plan.numbers.buy_in_steps_of
    wider = next((point.what for point in fabric.tipping_points if "wider" in point.what), "")
    cures = [Cure(f"Buy {say.purchase(more)}.")]
    if wider:
        cures.append(Cure(f"Measure its width: {wider}"))
    numbers = {"need_in": fabric.need_in, "buy_in": fabric.buy_in, "spare_in": fabric.spare_in}
    return Finding("fabric.nothing-to-spare", Severity.NOTE, what, fabric.fabric, numbers=numbers, cures=tuple(cures))


def batting_amount(plan: Plan) -> Iterator[Finding]:
    """Batting on hand that is not enough."""
    if plan.batting.short > TOLERANCE:
        say = Speaker(plan.project.units)
        what = f"The batting on hand is {say.shortage(plan.batting.short)} too short, whichever way it is turned."
        numbers = {"short_in": plan.batting.short}
        cure = Cure("Buy batting instead of joining what is on hand.", (Change(("batting", "on_hand"), None),))
        yield Finding("batting.short", Severity.STOP, what, "batting", numbers=numbers, cures=(cure,))


def long_cuts(plan: Plan) -> Iterator[Finding]:
    """Cuts longer than the ruler: fold once, and say the folded measure."""
    limit = plan.numbers.longest_cut
    long = [piece for piece in plan.pieces if piece.kind != "binding" and piece.long > limit + TOLERANCE]
    if not long:
        return
    say = Speaker(plan.project.units)
    sizes = sorted({round(piece.long, 6) for piece in long})
    folded = listed([f"{say.cut(size)} long is {say.near(size / 2)} folded" for size in sizes[:3]])
    what = (
        f"{len(long)} {'cut is' if len(long) == 1 else 'cuts are'} longer than your ruler cuts in one go "
        f"({say.near(limit)}): {folded}."
    )
    cure = Cure("Fold once and cut at the folded measure; a slip at the fold doubles.")
    yield Finding("cutting.longer-than-ruler", Severity.NOTE, what, numbers={"longest_in": sizes[-1]}, cures=(cure,))


def near_sizes(plan: Plan) -> Iterator[Finding]:
    """Pieces of one fabric and width whose lengths differ by less than half an inch."""
    say = Speaker(plan.project.units)
    pairs: list[str] = []
    for fabric, pieces in plan.pieces_by_fabric.items():
        strips = sorted(
            (piece for piece in pieces if piece.kind == "strip"), key=lambda piece: (piece.wide, piece.long)
        )
        pairs += [f"{fabric} {say.cut(one.long)} and {say.cut(other.long)}" for one, other in _close(strips)]
    if pairs:
        what = f"Nearly the same size, easy to mix up: {'; '.join(pairs[:4])}{' ...' if len(pairs) > 4 else ''}."
        cure = Cure("Label each piece as you cut it.")
        yield Finding("sizes.nearly-equal", Severity.NOTE, what, numbers={"pairs": float(len(pairs))}, cures=(cure,))


def _close(strips: list[Piece]) -> Iterator[tuple[Piece, Piece]]:
    for one, other in pairwise(strips):
        gap = other.long - one.long
        if abs(other.wide - one.wide) < TOLERANCE < gap < 0.5 - TOLERANCE:
            yield one, other
