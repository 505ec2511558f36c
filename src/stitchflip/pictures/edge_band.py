"""What finishes the edge, as the front shows it: a binding, the backing brought round, or nothing at all."""

from __future__ import annotations

from math import atan2, degrees
from typing import TYPE_CHECKING

from stitchflip.pictures.drawing import BETWEEN_PATCHES, OUTLINE, color_of, letter_for, outline_lines
from stitchflip.pictures.ink import CASING, HAIR, INK
from stitchflip.pictures.model import Area, Line, Pen, Primitive
from stitchflip.piecing.geometry import edges, moved
from stitchflip.project.model import Edge
from stitchflip.values import dataclass

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point, Polygon
    from stitchflip.planning.model import Plan

_CORNER_FROM = 20.0
"""An outline that turns by less than this, degrees, is a curve there and has no miter."""
_MITER = Pen(INK, HAIR, casing=CASING)


@dataclass(frozen=True, slots=True)
class EdgeBand:
    """The edge round a piece."""

    outer: Polygon
    """Where the finished piece ends."""
    inner: Polygon
    """Where the patches end; the same as `outer` when nothing shows of the edge."""
    fabric: str
    """"" when nothing shows of the edge."""
    name: str
    """Such as "binding"."""


def edge_band(plan: Plan, outline: Polygon) -> EdgeBand:
    """The edge of a piece.

    Args:
        plan: The plan.
        outline: Trim edge of the piece, taped.
    """
    kind = plan.project.binding.edge
    if kind is Edge.BINDING:
        return EdgeBand(outline, moved(outline, -plan.binding.seam), plan.project.binding.fabric, "binding")
    if kind is Edge.SELF_BINDING:
        return EdgeBand(outline, moved(outline, -plan.edge.shows), plan.backing.fabric, "backing brought round")
    inside = moved(outline, -plan.edge.seam)
    return EdgeBand(inside, inside, "", "")


def under(plan: Plan, band: EdgeBand) -> list[Primitive]:
    """What is drawn before the patches."""
    if not band.fabric:
        return []
    letter = letter_for(plan, band.fabric)
    hatch = letter.hatch if letter is not None else None
    return [
        Area(band.outer, color_of(plan, band.fabric), hatch, title=f"{band.name}: {band.fabric}", what="binding"),
        *(Line(pair, _MITER, what="mitre") for pair in corner_pairs(band)),
    ]


def over(band: EdgeBand) -> list[Primitive]:
    """What is drawn after the patches."""
    lines: list[Primitive] = []
    if band.fabric:
        lines.append(outline_lines(band.inner, BETWEEN_PATCHES, "binding seam"))
    return [*lines, outline_lines(band.outer, OUTLINE, "trim")]


def corner_pairs(band: EdgeBand) -> list[tuple[Point, Point]]:
    """Each corner of the edge with the nearest corner of the line inside it; a curve has none."""
    if not band.fabric or len(band.outer) != len(band.inner):
        return []
    return [
        (corner, min(band.inner, key=lambda other: (other[0] - corner[0]) ** 2 + (other[1] - corner[1]) ** 2))
        for corner in corners_of(band.outer)
    ]


def corners_of(outline: Polygon) -> tuple[Point, ...]:
    """The corners of an outline without the places where it only bends along a curve."""
    ways = [degrees(atan2(y1 - y0, x1 - x0)) for (x0, y0), (x1, y1) in edges(outline)]
    turns = [(way - before) % 360 for way, before in zip(ways, (ways[-1], *ways[:-1]), strict=True)]
    return tuple(corner for corner, turn in zip(outline, turns, strict=True) if _CORNER_FROM < turn < 360 - 1e-6)


def edge_in_words(plan: Plan) -> str:
    """How the edge is finished, as a sentence for a reader who cannot see it."""
    match plan.project.binding.edge:
        case Edge.BINDING:
            fabric = plan.project.binding.fabric
            return f"Binding: {fabric} ({plan.letter_of(fabric)})."
        case Edge.SELF_BINDING:
            return "The edge is bound with its own backing, brought round to the front."
        case Edge.FACING:
            return "The edge is faced; nothing of the facing shows."
        case Edge.TURNED_THROUGH:
            return "Turned through: the edge is a seam, and nothing shows round it."
