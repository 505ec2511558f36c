"""The lines of a numbered foundation as they are drawn: mirrored, because one sews from the back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.pictures.drawing import (
    BETWEEN_PALE,
    DIMENSION_MARGIN,
    OUTLINE,
    PALE,
    bounds,
    color_of,
    counted,
    natural_width,
    outline_lines,
    size_dimensions,
)
from stitchflip.pictures.ink import FIRM, INK, SOFT, pale
from stitchflip.pictures.model import Area, Figure, Label, Line, Margins, Pen, Primitive, Text
from stitchflip.piecing.geometry import area
from stitchflip.piecing.ways.foundation import drawn_patches

if TYPE_CHECKING:
    from stitchflip.piecing.model import Polygon
    from stitchflip.planning.model import Plan

MIRRORED = "mirrored: you sew from this side"
"""What stands over every drawing of the back."""
_DRAWN = Pen(INK, FIRM)


def foundation(plan: Plan) -> Figure:
    """The lines to draw on the back of a foundation, numbered in sewing order, with the fabric of every patch.

    Args:
        plan: The plan of a numbered foundation.

    Returns:
        The figure, in flat inches, mirrored left to right.
    """
    build = plan.build
    trim = turned_over(build.trim)
    drawn = drawn_patches(plan.project, plan.numbers)
    lines = [(one.number, one.line) for one in drawn if one.line is not None]
    items: list[Primitive] = []
    rooms = {piece.step + 1: turned_over(max(piece.visible, key=area)) for piece in build.pieces if piece.visible}
    for one in drawn:
        if one.number in rooms:
            color = pale(color_of(plan, one.fabric), PALE)
            items.append(Area(rooms[one.number], color, pen=BETWEEN_PALE, what="patch", step=one.number - 1))
    items += [Line(line, _DRAWN, what="line", step=number - 1) for number, line in lines]
    items.append(outline_lines(trim, OUTLINE, "trim"))
    for one in drawn:
        if one.number in rooms:
            letter = plan.letter_of(one.fabric)
            room = rooms[one.number]
            items.append(Label(str(one.number), room, 9.0, 6.0, bold=True, tail=letter, what="number"))
    low, high = bounds(trim)
    items.append(Text(((low[0] + high[0]) / 2, high[1]), MIRRORED, 8.5, bold=True, color=SOFT, shift=(0.0, 8.0)))
    items += size_dimensions(plan, trim, "as drawn")
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, lines of the foundation, mirrored",
        f"The lines as drawn on the back you sew from, mirrored left to right: {counted(len(lines), 'line')}; "
        f"each patch has its number in the order sewn and the letter of its fabric. Patch 1 has no line; patch "
        f"{lines[0][0] if lines else 2} and all later ones are sewn along the line that bounds them toward patch 1.",
        Margins(left=8.0, top=20.0, bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN),
        natural_width(low, high),
    )


def turned_over(polygon: Polygon) -> Polygon:
    """A polygon of the front as the back shows it."""
    return tuple((-x, y) for x, y in reversed(polygon))
