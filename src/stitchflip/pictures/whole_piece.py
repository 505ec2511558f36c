"""The squared-up piece as it will look bound, and the same as outlines to color in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    BETWEEN_PATCHES,
    DIMENSION_MARGIN,
    OUTLINE,
    bounds,
    color_of,
    letter_for,
    listed,
    natural_width,
    outline_lines,
    patch,
    piece_name,
    reading_angles,
    size_dimensions,
    taped,
    wide_and_long,
)
from stitchflip.pictures.ink import BATTING, CASING, HAIR, INK, SOFT, THIN
from stitchflip.pictures.model import Area, Figure, Label, Line, Margins, NoRoom, Pen, Primitive
from stitchflip.piecing.geometry import edges

if TYPE_CHECKING:
    from stitchflip.piecing.model import Polygon, SewnPiece
    from stitchflip.planning.model import Plan

_COLORING_LINE = Pen(INK, THIN)


def finished(plan: Plan, *, letters: bool = True) -> Figure:
    """The squared-up piece inside its binding, every patch in its fabric.

    Args:
        plan: The plan.
        letters: Also write the fabric letter on each patch and the squared-up size outside.

    Returns:
        The figure, in taped inches.
    """
    build = plan.build
    inner = taped(build, build.trim_inner)
    items: list[Primitive] = [
        _binding(plan),
        *_mitres(build.trim_taped, inner),
        Area(inner, BATTING, what="base"),
        *(patch(plan, piece, polygon) for piece, polygon in _shown(plan)),
        outline_lines(inner, BETWEEN_PATCHES, "binding seam"),
        outline_lines(build.trim_taped, OUTLINE, "trim"),
    ]
    low, high = bounds(build.trim_taped)
    margins = Margins()
    if letters:
        items += [_letter(plan, piece, polygon) for piece, polygon in _shown(plan)]
        items += size_dimensions(plan, build.trim_taped, "squared up")
        margins = Margins(bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN)
    return Figure(
        tuple(items), low, high, f"{plan.project.name}, bound", _described(plan), margins, natural_width(low, high)
    )


def coloring(plan: Plan) -> Figure:
    """Outlines only, small letters, room for crayons.

    Args:
        plan: The plan.

    Returns:
        The figure, in taped inches.
    """
    build = plan.build
    inner = taped(build, build.trim_inner)
    items: list[Primitive] = [
        *(
            Area(polygon, "#ffffff", pen=_COLORING_LINE, what="patch", step=piece.step)
            for piece, polygon in _shown(plan)
        ),
        outline_lines(inner, _COLORING_LINE, "binding seam"),
        outline_lines(build.trim_taped, OUTLINE, "trim"),
        *(Line((outer, corner), _COLORING_LINE) for outer, corner in _corner_pairs(build.trim_taped, inner)),
    ]
    items += [
        Label(
            plan.letter_of(piece.fabric),
            polygon,
            6.0,
            5.0,
            color=SOFT,
            what="letter",
            step=piece.step,
            no_room=NoRoom.DROP,
        )
        for piece, polygon in _shown(plan)
    ]
    low, high = bounds(build.trim_taped)
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, to color in",
        f"Outlines of the squared-up piece to color in: patches inside the binding: {len(_shown(plan))}, "
        f"each with the letter of its fabric.",
        Margins(),
        natural_width(low, high, widest=6.5),
    )


def _shown(plan: Plan) -> list[tuple[SewnPiece, Polygon]]:
    """Every patch that shows inside the binding, taped."""
    return [(piece, taped(plan.build, polygon)) for piece in plan.build.pieces for polygon in piece.shown]


def _binding(plan: Plan) -> Area:
    fabric = plan.project.binding.fabric
    letter = letter_for(plan, fabric)
    return Area(
        plan.build.trim_taped,
        color_of(plan, fabric),
        letter.hatch if letter is not None else None,
        title=f"binding: {fabric}",
        what="binding",
    )


def _mitres(outer: Polygon, inner: Polygon) -> list[Primitive]:
    return [Line(pair, Pen(INK, HAIR, casing=CASING), what="mitre") for pair in _corner_pairs(outer, inner)]


def _corner_pairs(outer: Polygon, inner: Polygon) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """Each corner of the edge with the nearest corner of the binding's seam line."""
    if len(outer) != len(inner):
        return []
    return [
        (corner, min(inner, key=lambda other: (other[0] - corner[0]) ** 2 + (other[1] - corner[1]) ** 2))
        for corner, _ in edges(outer)
    ]


def _letter(plan: Plan, piece: SewnPiece, polygon: Polygon) -> Label:
    return Label(
        plan.letter_of(piece.fabric),
        polygon,
        8.0,
        5.5,
        reading_angles(piece),
        bold=True,
        what="letter",
        step=piece.step,
        no_room=NoRoom.LEAD_IF_FEW,
    )


def _described(plan: Plan) -> str:
    build, project = plan.build, plan.project
    say = Speaker(project.units)
    size = say.size(*wide_and_long(project, plan.square_up.wide, plan.square_up.high))
    first = build.pieces[0]
    rounds: dict[int, dict[str, None]] = {}
    for piece in build.strips:
        if piece.shown:
            rounds.setdefault(piece.round, {}).setdefault(f"{piece.fabric} ({plan.letter_of(piece.fabric)})")
    outward = "; ".join(listed(tuple(names)) for names in rounds.values())
    return (
        f"The finished piece, squared up {size} wide × long. {piece_name(build, first).capitalize()}: {first.fabric} "
        f"({plan.letter_of(first.fabric)}). From there outward: {outward or 'nothing'}. "
        f"Binding: {project.binding.fabric} ({plan.letter_of(project.binding.fabric)})."
    )
