"""What is said about windows round the motifs of a fabric: how many its length surely gives, and where they lie."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.cutting.motifs import plan_motifs
from stitchflip.lengths import Speaker
from stitchflip.planning.motifs import center_need
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.cutting.motifs import MotifPlan
    from stitchflip.planning.model import Plan
    from stitchflip.planning.motifs import MotifNeed

_MOST_WINDOWS = 48
"""More windows than these are not laid one by one."""


@dataclass(frozen=True, slots=True)
class MotifsTold:
    """Windows round the motifs of one fabric."""

    plan: MotifPlan
    """Where they lie, for the start of the print that gives fewest."""
    says: str


def motifs_told(plan: Plan, fabric: str) -> MotifsTold | None:
    """The windows that are cut from one fabric; None when none is, or its print does not repeat.

    Args:
        plan: the plan of the piece.
        fabric: name of the fabric.
    """
    pieces = plan.pieces_by_fabric.get(fabric, ())
    count = sum(piece.count for piece in pieces if piece.motif_in > 0 or piece.block_in > 0)
    for kind in plan.kinds:
        first = kind.build.pieces[0]
        if first.fabric != fabric or not 0 < count <= _MOST_WINDOWS:
            continue
        need = center_need(kind.project, plan.numbers, first, count)
        if need is not None and need.used_in > 0:
            return MotifsTold(plan_motifs(need.counting, need.used_in, count), _says(need, count, plan))
    return None


def _says(need: MotifNeed, count: int, plan: Plan) -> str:
    say = Speaker(plan.project.units)
    found = need.counting.count(need.used_in)
    many, long = ("1 window" if count == 1 else f"{count} windows"), say.near(need.used_in)
    first = "it before you cut" if count == 1 else "all of them before you cut the first"
    motifs = "a motif" if count == 1 else "motifs"
    whole = f"{found.surely} surely" if found.surely else "none surely"
    best = f", {found.at_best} where it begins best" if found.at_best > found.surely else ""
    chosen = (
        f"; where the place is chosen in the shop, {say.near(need.chosen_in)} are enough"
        if need.chosen_in < need.used_in - 1e-6
        else ""
    )
    return (
        f"{many} round {motifs} from {long} of length: {whole} wherever the print begins{best}{chosen}. Find {first}."
    )
