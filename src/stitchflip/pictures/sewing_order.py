"""The strips with their numbers in sewing order and the letters of their fabrics."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.pictures.drawing import (
    OUTLINE,
    QUIET,
    bounds,
    counted,
    letters_of,
    natural_width,
    numbered_sides,
    outline_lines,
    pale_patches,
    piece_name,
    reading_angles,
)
from stitchflip.pictures.fabric_parts import largest_part
from stitchflip.pictures.ink import BATTING
from stitchflip.pictures.model import Area, Figure, Label, Margins, Primitive
from stitchflip.piecing.geometry import area

if TYPE_CHECKING:
    from stitchflip.planning.model import Plan


def order(plan: Plan) -> Figure:
    """Every strip numbered in the order it is sewn, with the letter of its fabric.

    Args:
        plan: The plan.

    Returns:
        The figure, in flat inches, as far as the trim line.
    """
    build = plan.build
    seen = [(piece, polygon) for piece in build.pieces for polygon in piece.visible]
    items: list[Primitive] = [
        Area(build.trim, BATTING, what="base"),
        *(area for piece, polygon in seen for area in pale_patches(plan, piece, polygon, QUIET)),
        outline_lines(build.trim, OUTLINE, "trim"),
        *numbered_sides(plan, build.trim, 0.25),
    ]
    for piece in build.pieces:
        if piece.visible:
            largest = max(piece.visible, key=area)
            items.append(
                Label(
                    piece_name(build, piece),
                    largest_part(piece, largest),
                    7.5,
                    5.5,
                    reading_angles(piece),
                    bold=True,
                    tail=letters_of(plan, piece),
                    what="number",
                    step=piece.step,
                    may_lose_tail=True,
                )
            )
    low, high = bounds(build.trim)
    strips = [piece for piece in build.strips if piece.visible]
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, sewing order",
        f"The {counted(len(strips), 'strip')} numbered in sewing order: "
        + ", ".join(f"{piece_name(build, piece)} {letters_of(plan, piece)} {piece.side}".rstrip() for piece in strips)
        + ".",
        Margins(),
        natural_width(low, high),
    )
