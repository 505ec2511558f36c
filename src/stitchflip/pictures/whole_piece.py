"""The squared-up piece as it will look bound, and the same as outlines to color in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.lengths import Speaker
from stitchflip.pictures.drawing import (
    DIMENSION_MARGIN,
    OUTLINE,
    bounds,
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
from stitchflip.pictures.edge_band import EdgeBand, corner_pairs, edge_band, edge_in_words, over, under
from stitchflip.pictures.fabric_parts import parts
from stitchflip.pictures.ink import BATTING, INK, SOFT, THIN
from stitchflip.pictures.model import Area, Figure, Label, Line, Margins, NoRoom, Pen, Primitive
from stitchflip.piecing.geometry import clip_all, counts, half_planes
from stitchflip.project.model import Edge

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Polygon, SewnPiece
    from stitchflip.planning.model import Plan

COLORING_LINE = Pen(INK, THIN)


def finished(plan: Plan, *, letters: bool = True) -> Figure:
    """The squared-up piece with its edge finished, every patch in its fabric; of joined blocks the whole quilt.

    Of a base that is cut apart it shows the panels.

    Args:
        plan: The plan.
        letters: Also write the fabric letter on each patch and the squared-up size outside.

    Returns:
        The figure, in taped inches.
    """
    if plan.quilt is not None:
        from stitchflip.pictures.whole_quilt import finished_quilt

        return finished_quilt(plan, plan.quilt, with_letters=letters)
    if plan.panels is not None and len(plan.panels.panels) > 1:
        from stitchflip.pictures.whole_panels import finished_panels

        return finished_panels(plan, plan.panels, with_letters=letters)
    outline = plan.build.trim_taped
    band = edge_band(plan, outline)
    seen = list(_shown(plan, band))
    items: list[Primitive] = [
        *under(plan, band),
        Area(band.inner, BATTING, what="base"),
        *(patch(plan, piece, polygon, fabric=fabric) for piece, fabric, polygon in seen),
        *over(band),
    ]
    low, high = bounds(band.outer)
    margins = Margins()
    if letters:
        items += [_letter(plan, piece, fabric, polygon) for piece, fabric, polygon in seen]
        items += size_dimensions(plan, band.outer, "squared up" if band.fabric else "finished")
        margins = Margins(bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN)
    ending = "bound" if band.fabric else "finished"
    return Figure(
        tuple(items), low, high, f"{plan.project.name}, {ending}", _described(plan), margins, natural_width(low, high)
    )


def squared_up(plan: Plan, title: str, called: str) -> Figure:
    """A piece as it is squared up, no edge finished yet: every patch in its fabric with its letter, and the size.

    Args:
        plan: The plan of the piece by itself.
        title: Title of the figure.
        called: What the piece is, to begin its description with.
    """
    build = plan.build
    trim = build.trim_taped
    band = EdgeBand(trim, trim, "", "")
    seen = [
        (piece, fabric, taped(build, part))
        for piece in build.pieces
        for polygon in piece.visible
        for fabric, part in parts(piece, polygon)
    ]
    items: list[Primitive] = [
        Area(trim, BATTING, what="base"),
        *(patch(plan, piece, polygon, fabric=fabric) for piece, fabric, polygon in seen),
        *over(band),
        *(_letter(plan, piece, fabric, polygon) for piece, fabric, polygon in seen),
        *size_dimensions(plan, trim, "squared up"),
    ]
    low, high = bounds(trim)
    size = Speaker(plan.project.units).size(*wide_and_long(plan.project, plan.square_up.wide, plan.square_up.high))
    return Figure(
        tuple(items),
        low,
        high,
        title,
        f"{called}, squared up {size} wide × long. {_outward(plan)}",
        Margins(bottom=DIMENSION_MARGIN, right=DIMENSION_MARGIN),
        natural_width(low, high, widest=3.4),
    )


def coloring(plan: Plan) -> Figure:
    """Outlines only, small letters, room for crayons; of joined blocks the whole quilt without letters.

    Args:
        plan: The plan.

    Returns:
        The figure, in taped inches.
    """
    if plan.quilt is not None:
        from stitchflip.pictures.whole_quilt import coloring_quilt

        return coloring_quilt(plan, plan.quilt)
    band = edge_band(plan, plan.build.trim_taped)
    seen = list(_shown(plan, band))
    items: list[Primitive] = [
        *(Area(polygon, "#ffffff", pen=COLORING_LINE, what="patch", step=piece.step) for piece, _, polygon in seen),
        outline_lines(band.inner, COLORING_LINE, "binding seam"),
        outline_lines(band.outer, OUTLINE, "trim"),
        *(Line(pair, COLORING_LINE) for pair in corner_pairs(band)),
    ]
    items += [
        Label(
            plan.letter_of(fabric), polygon, 6.0, 5.0, color=SOFT, what="letter", step=piece.step, no_room=NoRoom.DROP
        )
        for piece, fabric, polygon in seen
    ]
    low, high = bounds(band.outer)
    inside = " inside the binding" if band.fabric else ""
    return Figure(
        tuple(items),
        low,
        high,
        f"{plan.project.name}, to color in",
        f"Outlines of the squared-up piece to color in: patches{inside}: {len(seen)}, "
        f"each with the letter of its fabric.",
        Margins(),
        natural_width(low, high, widest=6.5),
    )


def _shown(plan: Plan, band: EdgeBand) -> Iterator[tuple[SewnPiece, str, Polygon]]:
    """Every patch that shows inside the edge, taped: piece, fabric, polygon."""
    planes = half_planes(band.inner)
    is_bound = plan.project.binding.edge is Edge.BINDING
    for piece in plan.build.pieces:
        for polygon in piece.shown if is_bound else piece.visible:
            for fabric, part in parts(piece, polygon):
                seen = taped(plan.build, part)
                inside = seen if is_bound else clip_all(seen, planes)
                if counts(inside):
                    yield piece, fabric, inside


def _letter(plan: Plan, piece: SewnPiece, fabric: str, polygon: Polygon) -> Label:
    return Label(
        plan.letter_of(fabric),
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
    size = Speaker(plan.project.units).size(*wide_and_long(plan.project, plan.square_up.wide, plan.square_up.high))
    return f"The finished piece, squared up {size} wide × long. {_outward(plan)} {edge_in_words(plan)}"


def _outward(plan: Plan) -> str:
    """First piece and fabrics from there outward."""
    build = plan.build
    first = build.pieces[0]
    rounds: dict[int, dict[str, None]] = {}
    for piece in build.strips:
        if piece.shown:
            for fabric in dict.fromkeys(section.fabric for section in piece.sections) or (piece.fabric,):
                rounds.setdefault(piece.round, {}).setdefault(f"{fabric} ({plan.letter_of(fabric)})")
    outward = "; ".join(listed(tuple(names)) for names in rounds.values())
    name = piece_name(build, first)
    called = f"patch {name}" if name.isdigit() else name
    return (
        f"{called.capitalize()}: {first.fabric} ({plan.letter_of(first.fabric)}). "
        f"From there outward: {outward or 'nothing'}."
    )
