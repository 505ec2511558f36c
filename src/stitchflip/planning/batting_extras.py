"""Batting that a quilt takes besides its bases: told piece by piece, and counted in the packaged size."""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING

from stitchflip.finishing.batting import PACKAGED
from stitchflip.lengths import TOLERANCE_IN, Speaker

if TYPE_CHECKING:
    from collections.abc import Sequence

    from stitchflip.finishing.model import BattingPlan
    from stitchflip.finishing.quilt_model import QuiltPlan, Under
    from stitchflip.project.model import Project


def with_more(project: Project, batting: BattingPlan, quilt: QuiltPlan | None) -> BattingPlan:
    """The batting with what lies under triangles, borders and joins.

    Args:
        project: For how many alike, and the unit.
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
    packaged = _package(project, batting, under) if batting.packaged else ""
    return replace(batting, pieces=(*batting.pieces, *told), packaged=packaged)


def _for(name: str) -> str:
    return name if name.startswith("filler") else f"the {name}"


def _package(project: Project, batting: BattingPlan, under: Sequence[Under]) -> str:
    """The smallest packaged batting from which everything comes in rows; long pieces are butted from equal parts."""
    from stitchflip.cutting.rows import Rectangle, lay_in_rows

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
            pieces.append(Rectangle(label, short, whole / parts, count * parts))
        rows = lay_in_rows(wide, pieces)
        if not rows.left_out and rows.length_in <= long + TOLERANCE_IN:
            return f"{name} ({say.size(wide, long)})"
    return ""
