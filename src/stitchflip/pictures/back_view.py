"""The back as stitched: what is to be seen when the piece is turned over."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.pictures.drawing import (
    BASE_LINE,
    STITCHES,
    TRIM_LATER,
    base_rectangle,
    bounds,
    color_of,
    counted,
    natural_width,
    outline_lines,
)
from stitchflip.pictures.ink import BATTING, SOFT, pale
from stitchflip.pictures.model import Area, Figure, Knot, Line, Margins, Primitive, Text
from stitchflip.piecing.model import EndClass

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point
    from stitchflip.planning.model import Plan

_BACKING_PAPER = 0.72


def back(plan: Plan) -> Figure:
    """Every seam as a line of stitches on the backing, seen from behind, with a knot at each end to lock.

    Args:
        plan: The plan.

    Returns:
        The figure, in flat inches, mirrored left to right.
    """
    seams = [(piece.step, piece.seam) for piece in plan.build.strips if piece.seam is not None]
    color = pale(color_of(plan, plan.backing.fabric), _BACKING_PAPER) if plan.backing.fabric else BATTING
    base = tuple(_turned_over(corner) for corner in reversed(base_rectangle(plan)))
    trim = tuple(_turned_over(corner) for corner in reversed(plan.build.trim))
    items: list[Primitive] = [
        Area(base, color, pen=BASE_LINE, what="backing"),
        outline_lines(trim, TRIM_LATER, "trim"),
    ]
    locked = 0
    for number, seam in seams:
        ends = (_turned_over(seam.start.at), _turned_over(seam.end.at))
        items.append(Line(ends, STITCHES, what="seam", step=number))
        for end in (seam.start, seam.end):
            if end.kind is EndClass.LOOSE:
                locked += 1
                items.append(Knot(_turned_over(end.at)))
    low, high = bounds(base)
    top = (0.0, high[1])
    items.append(Text(top, "top, seen from behind", 7.0, color=SOFT, shift=(0.0, 7.0)))
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, the back as stitched",
        f"The back as stitched, seen from behind, so left and right are changed over: {counted(len(seams), 'seam')}; "
        f"{'no end to lock' if not locked else counted(locked, 'end') + ' to lock, marked with a knot'}.",
        Margins(top=17.0),
        natural_width(low, high),
    )


def _turned_over(point: Point) -> Point:
    return (-point[0], point[1])
