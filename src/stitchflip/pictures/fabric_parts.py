"""What of a piece is which fabric: a strip pieced beforehand changes fabric along its length."""

from __future__ import annotations

from typing import TYPE_CHECKING

from stitchflip.piecing.geometry import clip, counts, extent

if TYPE_CHECKING:
    from collections.abc import Iterator

    from stitchflip.piecing.model import Polygon, SewnPiece


def parts(piece: SewnPiece, polygon: Polygon) -> Iterator[tuple[str, Polygon]]:
    """A polygon of a piece, divided where the fabric changes.

    Args:
        piece: the piece.
        polygon: any part of it, convex, flat.

    Yields:
        Fabric and polygon, in the order of the sections; all of it when the piece is of one fabric.
    """
    if not piece.sections:
        yield piece.fabric, polygon
        return
    tx, ty = -piece.normal[1], piece.normal[0]
    low, high = extent(polygon, tx, ty)
    ends = [low, *_changes(piece), high]
    for section, start, end in zip(piece.sections, ends, ends[1:], strict=False):
        part = clip(clip(polygon, tx, ty, end), -tx, -ty, -start) if start < end else ()
        if counts(part):
            yield section.fabric, part


def largest_part(piece: SewnPiece, polygon: Polygon) -> Polygon:
    """The part of a polygon that a label for the piece stands in: its largest stretch of one fabric."""
    from stitchflip.piecing.geometry import area

    return max((part for _, part in parts(piece, polygon)), key=area, default=polygon)


def _changes(piece: SewnPiece) -> list[float]:
    """Places along the seam where one section ends and the next begins, from the foot of the center mark."""
    tx, ty = -piece.normal[1], piece.normal[0]
    places = []
    for one, other in zip(piece.sections, piece.sections[1:], strict=False):
        ends = [extent(polygon, tx, ty)[1] for polygon in one.visible]
        starts = [extent(polygon, tx, ty)[0] for polygon in other.visible]
        if ends and starts:
            places.append((max(ends) + min(starts)) / 2)
        elif ends or starts:
            places.append(max(ends) if ends else min(starts))
        else:
            places.append(
                piece.reach_start + (piece.reach_end - piece.reach_start) * (len(places) + 1) / len(piece.sections)
            )
    return places
