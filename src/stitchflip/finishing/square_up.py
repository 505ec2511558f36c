"""Squaring up as planned: what to lay on mat and ruler, counted from the center mark, all taped."""

from __future__ import annotations

from collections.abc import Iterable
from math import hypot

from stitchflip.finishing.edges import is_alike_halfway_round, trim_edges
from stitchflip.finishing.folding import fold_in_words
from stitchflip.finishing.model import PointNumber, SideNumber, SquareUpPlan
from stitchflip.piecing.geometry import area, extent
from stitchflip.piecing.model import CenterPoint, Polygon
from stitchflip.project.model import Project
from stitchflip.project.numbers import Numbers


def plan_square_up(
    project: Project, numbers: Numbers, trim_taped: Polygon, points: Iterable[CenterPoint]
) -> SquareUpPlan:
    """The numbers for squaring up.

    Args:
        project: For its unit and shape.
        numbers: For mat and ruler.
        trim_taped: The squared-up outline, taped, about the center mark, counter-clockwise.
        points: The corners of the center as the build gives them; those that point at an edge get their margin.

    Returns:
        Distances of the edges from the center mark, their lengths, the margin beyond each point to the trim edge
        and after binding, and the way to do it on a small mat. Nothing is rounded.
    """
    sides = trim_edges(project, trim_taped)
    (left, right), (low, top) = extent(trim_taped, 1, 0), extent(trim_taped, 0, 1)
    return SquareUpPlan(
        wide=right - left,
        high=top - low,
        sides=tuple(SideNumber(side.name, side.normal, side.distance, side.length) for side in sides),
        points=tuple(
            PointNumber(point.name, point.to_trim_edge, point.shown) for point in points if point.points_at_edge
        ),
        diagonals=_diagonals(trim_taped),
        corners=trim_taped,
        area=area(trim_taped),
        perimeter=sum(side.length for side in sides),
        folded=fold_in_words(project, numbers, trim_taped),
    )


def _diagonals(corners: Polygon) -> tuple[float, ...]:
    """Corner to corner straight across the center mark; none for a shape without opposite corners."""
    half = len(corners) // 2
    if len(corners) % 2 or not is_alike_halfway_round(corners):
        return ()
    opposite = zip(corners[:half], corners[half:], strict=True)
    return tuple(hypot(x1 - x0, y1 - y0) for (x0, y0), (x1, y1) in opposite)
