"""The lines of a numbered foundation as they are drawn: mirrored, because one sews from the back."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING

from stitchflip.pictures.drawing import (
    BASE_LINE,
    DIMENSION_MARGIN,
    OUTLINE,
    PALE,
    bounds,
    color_of,
    counted,
    letters_of,
    natural_width,
    outline_lines,
    size_dimensions,
)
from stitchflip.pictures.ink import FIRM, INK, SOFT, pale
from stitchflip.pictures.model import Area, Badge, Figure, Label, Line, Margins, NoRoom, Pen, Primitive, Text
from stitchflip.piecing.geometry import area, half_planes

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.planning.model import Plan

MIRRORED = "mirrored: you sew from this side"
"""What stands over every drawing of the back."""
_FIRST = "first"
_DRAWN = Pen(INK, FIRM)
_BADGE_OFF = 8.0
"""How far a line's number stands off its end, points."""


def foundation(plan: Plan) -> Figure:
    """The lines to draw on the back of a foundation, numbered in sewing order, with the fabric of every patch.

    Args:
        plan: The plan.

    Returns:
        The figure, in flat inches, mirrored left to right.
    """
    build = plan.build
    trim = turned_over(build.trim)
    items: list[Primitive] = []
    for piece in build.pieces:
        for polygon in piece.visible:
            color = pale(color_of(plan, piece.fabric), PALE)
            items.append(Area(turned_over(polygon), color, pen=BASE_LINE, what="patch", step=piece.step))
    lines = [(piece.step, line) for piece in build.strips if (line := drawn_line(plan, piece.step)) is not None]
    items += [Line(line, _DRAWN, what="line", step=step) for step, line in lines]
    items.append(outline_lines(trim, OUTLINE, "trim"))
    items += [Badge(_upper_end(line), str(step), _outward(line)) for step, line in lines]
    for piece in build.pieces:
        if piece.visible:
            room = turned_over(max(piece.visible, key=area))
            name = str(piece.step) if piece.step else _FIRST
            letters = letters_of(plan, piece)
            items.append(
                Label(
                    name, room, 8.0, 6.0, bold=True, tail=letters, what="number", step=piece.step, no_room=NoRoom.LEAD
                )
            )
    low, high = bounds(trim)
    items.append(Text(((low[0] + high[0]) / 2, high[1]), MIRRORED, 8.5, bold=True, color=SOFT, shift=(0.0, 19.0)))
    items += size_dimensions(plan, trim, "as drawn")
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, lines of the foundation, mirrored",
        f"The lines as drawn on the back you sew from, mirrored left to right: {counted(len(lines), 'line')}, "
        f"numbered in the order they are sewn, each patch with its number and the letter of its fabric.",
        Margins(left=14.0, top=30.0, bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN),
        natural_width(low, high),
    )


def turned_over(polygon: Polygon) -> Polygon:
    """A polygon of the front as the back shows it."""
    return tuple((-x, y) for x, y in reversed(polygon))


def drawn_line(plan: Plan, step: int) -> tuple[Point, Point] | None:
    """Both ends of the line of a step where it is drawn inside the outline, mirrored; None where it lies outside.

    Args:
        plan: The plan.
        step: Number of the strip or patch in sewing order.
    """
    seam = plan.build.pieces[step].seam
    if seam is None:
        return None
    (x0, y0), (x1, y1) = seam.start.at, seam.end.at
    low, high = 0.0, 1.0
    for nx, ny, r in half_planes(plan.build.trim):
        start, end = nx * x0 + ny * y0 - r, nx * x1 + ny * y1 - r
        if start > 0 and end > 0:
            return None
        if start > 0 > end:
            low = max(low, start / (start - end))
        elif end > 0 > start:
            high = min(high, start / (start - end))
    if low >= high:
        return None
    one, other = ((x0 + (x1 - x0) * share, y0 + (y1 - y0) * share) for share in (low, high))
    return (-one[0], one[1]), (-other[0], other[1])


def _upper_end(line: tuple[Point, Point]) -> Point:
    """The end that the line's number stands at: the upper one, of a level line the right one."""
    return max(line, key=lambda place: (round(place[1], 3), place[0]))


def _outward(line: tuple[Point, Point]) -> Point:
    """How a number is moved off its line's end, points."""
    at = _upper_end(line)
    other = line[0] if at == line[1] else line[1]
    x, y = at[0] - other[0], at[1] - other[1]
    long = hypot(x, y) or 1.0
    return (_BADGE_OFF * x / long, _BADGE_OFF * y / long)
