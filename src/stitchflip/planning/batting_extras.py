"""Batting that a quilt takes besides its bases: told piece by piece, and counted in the packaged size."""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.cutting.model import Piece
from stitchflip.finishing.batting import PACKAGED
from stitchflip.lengths import TOLERANCE_IN, Length, Speaker
from stitchflip.project.model import Fabric

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.finishing.model import BattingPlan
    from stitchflip.finishing.quilt_model import QuiltPlan, Under
    from stitchflip.project.model import Project
    from stitchflip.project.numbers import Numbers


def with_more(project: Project, numbers: Numbers, batting: BattingPlan, quilt: QuiltPlan | None) -> BattingPlan:
    """The batting with what lies under triangles, borders and joins.

    Args:
        project: For how many alike, and the unit.
        numbers: For cutting.
        batting: The batting of the blocks alone.
        quilt: The quilt; None for a piece by itself.
    """
    under = quilt.under if quilt is not None else ()
    if not under:
        return batting
    say = Speaker(project.units)
    told = tuple(
        f"{one.count * project.how_many} of {say.cut_size(*one.batting)} for {_for(one.name)}" for one in under
    )
    packaged = _package(project, numbers, batting, under) if batting.packaged else ""
    return replace(batting, pieces=(*batting.pieces, *told), packaged=packaged)


def _for(name: str) -> str:
    return name if name.startswith("filler") else f"the {name}"


def _package(project: Project, numbers: Numbers, batting: BattingPlan, under: Sequence[Under]) -> str:
    """The smallest packaged batting from which everything comes in rows; long pieces are butted from equal parts."""
    from stitchflip.cutting import plan_fabric

    say = Speaker(project.units)
    sizes = [("base", (batting.wide, batting.high), project.bases)]
    sizes += [(one.name, one.batting, one.count * project.how_many) for one in under]
    for name, wide, long in PACKAGED:
        if any(min(size) > wide + TOLERANCE_IN for _, size, _ in sizes):
            continue
        pieces = []
        for label, size, count in sizes:
            short, whole = sorted(size)
            parts = ceil(whole / wide - TOLERANCE_IN)
            pieces.append(Piece(label, short, whole / parts, count * parts, "rectangle"))
        roll = Fabric(name=name, usable_width=Length.of_inches(wide))
        rows = plan_fabric(roll, tuple(pieces), numbers, project.working, project.units)
        if not rows.left_out and rows.used_in <= long + TOLERANCE_IN:
            return f"{name} ({say.size(wide, long)})"
    return ""
