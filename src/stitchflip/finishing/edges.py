"""The edges of the squared-up piece: their names, lengths and distances, all taped.

Strips are named after the side they are sewn to; an edge of a piece with pointed ends needs a name as well,
although it has six of them, so the names are made here and shared by squaring up and binding.
"""

from __future__ import annotations

from math import acos, degrees, hypot

from stitchflip.piecing.geometry import TOLERANCE, edges
from stitchflip.piecing.model import Point, Polygon
from stitchflip.piecing.shapes import side_names
from stitchflip.project.model import Ends, Outline, Project
from stitchflip.values import dataclass

_POINTED_ENDS = {(1, 1): "upper right", (-1, 1): "upper left", (-1, -1): "lower left", (1, -1): "lower right"}
_STRAIGHT = {(1, 0): "right", (0, 1): "top", (-1, 0): "left", (0, -1): "bottom"}


@dataclass(frozen=True, slots=True)
class Edge:
    """One edge of the squared-up piece, in the order of its corners."""

    name: str
    """Such as "right", "upper right" or "side 3"."""
    start: Point
    end: Point
    normal: Point
    """Outward unit normal."""
    distance: float
    """From the center mark, square to the edge; inches, taped."""

    @property
    def length(self) -> float:
        """Length of the edge, inches, taped."""
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    def at(self, along: float) -> Point:
        """The place so many inches from the edge's start."""
        share = along / self.length
        (x0, y0), (x1, y1) = self.start, self.end
        return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))


def trim_edges(project: Project, trim_taped: Polygon) -> tuple[Edge, ...]:
    """The edges of the squared-up piece, counter-clockwise, with the names the maker reads.

    Args:
        project: For its shape: pointed ends are named by where they face.
        trim_taped: The squared-up outline, taped, counter-clockwise.

    Returns:
        One edge for each side longer than nothing, beginning with the one from the first corner.
    """
    found = []
    for start, end in edges(trim_taped):
        length = hypot(end[0] - start[0], end[1] - start[1])
        if length > TOLERANCE:
            normal = ((end[1] - start[1]) / length, (start[0] - end[0]) / length)
            found.append((start, end, normal))
    names = _names(project, tuple(normal for _, _, normal in found))
    return tuple(
        Edge(name, start, end, normal, normal[0] * start[0] + normal[1] * start[1])
        for name, (start, end, normal) in zip(names, found, strict=True)
    )


def _names(project: Project, normals: tuple[Point, ...]) -> tuple[str, ...]:
    """Names by where the edges face; numbers for shapes of which no edge is known by that."""
    wanted = project.squared_up
    if wanted.shape is Outline.RECTANGLE and wanted.ends is Ends.POINTED:
        facing = {**_STRAIGHT, **_POINTED_ENDS}
        return tuple(facing[_sign(x), _sign(y)] for x, y in normals)
    return side_names(normals)


def _sign(part: float) -> int:
    return 0 if abs(part) < TOLERANCE else (1 if part > 0 else -1)


def corner_angles(trim_edges: tuple[Edge, ...]) -> tuple[float, ...]:
    """Inside angle at the start of each edge, degrees.

    Args:
        trim_edges: All edges of a convex outline, counter-clockwise.
    """
    before = trim_edges[-1:] + trim_edges[:-1]
    return tuple(
        180 - degrees(_between(last.normal, edge.normal)) for last, edge in zip(before, trim_edges, strict=True)
    )


def _between(one: Point, other: Point) -> float:
    """Angle between two unit vectors, radians."""
    return acos(max(-1.0, min(1.0, one[0] * other[0] + one[1] * other[1])))


def is_mirrored(polygon: Polygon, axis: str) -> bool:
    """True when a fold on a center line lays every corner on a corner.

    Args:
        polygon: Corners about the center mark.
        axis: "x" folds left on right (the fold line is x = 0), "y" folds top on bottom.
    """
    turned = [(-x, y) if axis == "x" else (x, -y) for x, y in polygon]
    return all(any(hypot(x - p, y - q) < 1e-4 for p, q in polygon) for x, y in turned)


def is_alike_halfway_round(polygon: Polygon) -> bool:
    """True when every corner has another straight across the center mark."""
    return all(any(hypot(x + p, y + q) < 1e-4 for p, q in polygon) for x, y in polygon)
