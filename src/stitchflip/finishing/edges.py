"""The edges of the squared-up piece: their names, lengths and distances, all taped.

Strips are named after the side they are sewn to; an edge of a piece with pointed ends needs a name as well,
although it has six of them, so the names are made here and shared by squaring up and binding. A curve is one edge,
however many sides the polygon has that stands for it: it has one name, its true length, and no corners.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import acos, degrees, hypot, inf

from stitchflip.piecing.geometry import TOLERANCE, edges, extent
from stitchflip.piecing.model import Point, Polygon
from stitchflip.piecing.outlines import circle_length, ellipse_length
from stitchflip.piecing.shapes import side_names
from stitchflip.project.model import Ends, Outline, Project
from stitchflip.values import dataclass

_POINTED_ENDS = {(1, 1): "upper right", (-1, 1): "upper left", (-1, -1): "lower left", (1, -1): "lower right"}
_STRAIGHT = {(1, 0): "right", (0, 1): "top", (-1, 0): "left", (0, -1): "bottom"}


CURVE = "curve"
"""Name of the edge of a round or oval piece; last word of the name of a rounded corner."""
_CORNER_CURVES = ("lower right curve", "upper right curve", "upper left curve", "lower left curve")


@dataclass(frozen=True, slots=True)
class Edge:
    """One edge of the squared-up piece, in the order of its corners."""

    name: str
    """Such as "right", "upper right", "side 3", "curve" or "lower left curve"."""
    start: Point
    end: Point
    normal: Point
    """Outward unit normal; of a curve at its start."""
    distance: float
    """From the center mark, square to the edge, of a curve at its start; inches, taped."""
    bend: Polygon = ()
    """Of a curve: close places on it from start to end, both included; empty for a straight edge."""
    bend_length: float = 0.0
    """Of a curve: its true length, inches, taped."""

    @property
    def is_curve(self) -> bool:
        """True for a round or oval edge and for a rounded corner."""
        return bool(self.bend)

    @property
    def length(self) -> float:
        """Length of the edge, inches, taped."""
        if self.is_curve:
            return self.bend_length
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    def foot_of(self, place: Point) -> tuple[float, float]:
        """(inches from the edge's start, distance) of the nearest place on the edge, or on its line beyond its ends.

        Args:
            place: Any place, taped.
        """
        if not self.is_curve:
            tx, ty = -self.normal[1], self.normal[0]
            along = tx * (place[0] - self.start[0]) + ty * (place[1] - self.start[1])
            return along, abs(self.distance - self.normal[0] * place[0] - self.normal[1] * place[1])
        best, behind = (0.0, inf), 0.0
        for (x0, y0), (x1, y1) in zip(self.bend, self.bend[1:], strict=False):
            step = hypot(x1 - x0, y1 - y0)
            share = ((place[0] - x0) * (x1 - x0) + (place[1] - y0) * (y1 - y0)) / step**2
            share = max(0.0, min(1.0, share))
            off = hypot(place[0] - x0 - share * (x1 - x0), place[1] - y0 - share * (y1 - y0))
            if off < best[1]:
                best = (behind + share * step, off)
            behind += step
        return best


def trim_edges(project: Project, trim_taped: Polygon) -> tuple[Edge, ...]:
    """The edges of the squared-up piece, counter-clockwise, with the names the maker reads.

    Args:
        project: For its shape: pointed ends are named by where they face, curves are one edge each.
        trim_taped: The squared-up outline, taped, counter-clockwise; of a piece cut apart, one panel's or the whole.

    Returns:
        One edge for each side longer than nothing, beginning with the one from the first corner.
    """
    if is_round(project, trim_taped):
        return (_round_edge(trim_taped),)
    radius = corner_radius_of(project, trim_taped)
    if radius > 0:
        return _rounded_edges(trim_taped, radius)
    found = [
        (start, end, _normal(start, end))
        for start, end in edges(trim_taped)
        if hypot(end[0] - start[0], end[1] - start[1]) > TOLERANCE
    ]
    names = _names(project, tuple(normal for _, _, normal in found))
    return tuple(
        Edge(name, start, end, normal, normal[0] * start[0] + normal[1] * start[1])
        for name, (start, end, normal) in zip(names, found, strict=True)
    )


def _normal(start: Point, end: Point) -> Point:
    length = hypot(end[0] - start[0], end[1] - start[1])
    return ((end[1] - start[1]) / length, (start[0] - end[0]) / length)


def is_round(project: Project, trim_taped: Polygon) -> bool:
    """True for a round or oval outline, and for a square whose corners are rounded all the way.

    A base that is cut into round pieces has straight edges as a whole.

    Args:
        project: For the shape wanted.
        trim_taped: The outline in question.
    """
    (left, right), (low, high) = extent(trim_taped, 1, 0), extent(trim_taped, 0, 1)
    is_all_corners = 2 * corner_radius_of(project, trim_taped) >= max(right - left, high - low) - TOLERANCE
    return len(trim_taped) > _BOX and (project.squared_up.shape in _ROUND or is_all_corners)


_ROUND = frozenset({Outline.ROUND, Outline.OVAL})
_BOX = 4
"""Corners of a rectangle."""


def corner_radius_of(project: Project, trim_taped: Polygon) -> float:
    """The radius of an outline's rounded corners, inches; 0 when it has none.

    Args:
        project: For the radius wanted.
        trim_taped: The outline in question.
    """
    wanted = project.squared_up
    is_rounded = wanted.shape is Outline.RECTANGLE and wanted.ends is Ends.SQUARE and len(trim_taped) > _BOX
    return wanted.corner_radius.inches if is_rounded and wanted.corner_radius is not None else 0.0


def _round_edge(trim_taped: Polygon) -> Edge:
    """The one edge of a round or oval piece, from its lowest place round to it again."""
    (left, right), (low, high) = extent(trim_taped, 1, 0), extent(trim_taped, 0, 1)
    length = ellipse_length(right - left, high - low)
    return Edge(
        CURVE, trim_taped[0], trim_taped[0], (0.0, -1.0), -trim_taped[0][1], (*trim_taped, trim_taped[0]), length
    )


def _rounded_edges(trim_taped: Polygon, radius: float) -> tuple[Edge, ...]:
    """Straight edges and the curves between them: bottom, its right curve, right ..."""
    (left, right), (low, high) = extent(trim_taped, 1, 0), extent(trim_taped, 0, 1)
    half_x, half_y = (right - left) / 2, (high - low) / 2
    quarter = circle_length(2 * radius) / 4
    found: list[Edge] = []
    for turn, (name, curve) in enumerate(zip(_FOUR, _CORNER_CURVES, strict=True)):
        nx, ny = ((0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0))[turn]
        far, half = (half_y, half_x - radius) if nx == 0 else (half_x, half_y - radius)
        start, end = (nx * far + ny * half, ny * far - nx * half), (nx * far - ny * half, ny * far + nx * half)
        if half > TOLERANCE:
            found.append(Edge(name, start, end, (nx, ny), far))
        bend = tuple(
            (x, y)
            for x, y in trim_taped
            if nx * x + ny * y >= far - radius - TOLERANCE and nx * y - ny * x >= half - TOLERANCE
        )
        bend = tuple(sorted(bend, key=lambda place: -nx * place[0] - ny * place[1]))
        found.append(Edge(curve, bend[0], bend[-1], (nx, ny), far, bend, quarter))
    return tuple(found)


_FOUR = ("bottom", "right", "top", "left")


def _names(project: Project, normals: tuple[Point, ...]) -> tuple[str, ...]:
    """Names by where the edges face; numbers for shapes of which no edge is known by that."""
    wanted = project.squared_up
    if wanted.shape is Outline.RECTANGLE and wanted.ends is Ends.POINTED:
        facing = {**_STRAIGHT, **_POINTED_ENDS}
        return tuple(facing[_sign(x), _sign(y)] for x, y in normals)
    return side_names(normals)


def _sign(part: float) -> int:
    return 0 if abs(part) < TOLERANCE else (1 if part > 0 else -1)


def edge_named(name: str) -> str:
    """An edge in a sentence: "the right edge", "side 3", "the curve".

    Args:
        name: As the edge is called.
    """
    if name.startswith("side "):
        return name
    return f"the {name}" if name.endswith(CURVE) else f"the {name} edge"


def corner_angles(trim_edges: Sequence[Edge]) -> tuple[float, ...]:
    """Inside angle at each corner, degrees, in the order of the edges that begin there.

    Args:
        trim_edges: All edges of a convex outline, counter-clockwise. Where a curve begins or ends there is no corner.
    """
    before = (*trim_edges[-1:], *trim_edges[:-1])
    return tuple(
        180 - degrees(_between(last.normal, edge.normal))
        for last, edge in zip(before, trim_edges, strict=True)
        if not (last.is_curve or edge.is_curve)
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
