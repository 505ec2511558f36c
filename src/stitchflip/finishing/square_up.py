"""Squaring up as planned: what to lay on mat and ruler, counted from the center mark, all taped.

A piece with rounded corners is squared up as a rectangle first and then rounded, so its numbers are those of the
rectangle. A round or oval piece has one edge, and is marked from the center mark instead of laid along the ruler.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import hypot, pi, sqrt

from stitchflip.finishing.edges import CURVE, corner_radius_of, is_alike_halfway_round, is_round, trim_edges
from stitchflip.finishing.folding import fold_in_words
from stitchflip.finishing.model import PointNumber, SideNumber, SquareUpPlan
from stitchflip.lengths import TOLERANCE_IN, Speaker
from stitchflip.piecing.geometry import area, box, extent
from stitchflip.piecing.model import CenterPoint, Polygon
from stitchflip.piecing.shapes import panel_polygon
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
    (left, right), (low, top) = extent(trim_taped, 1, 0), extent(trim_taped, 0, 1)
    is_curve = is_round(project, trim_taped)
    radius = 0.0 if is_curve else corner_radius_of(project, trim_taped)
    cut_first = box((left, low), (right, top)) if radius else trim_taped
    return SquareUpPlan(
        wide=right - left,
        high=top - low,
        sides=_round_sides(project, trim_taped) if is_curve else _straight_sides(project, cut_first),
        points=tuple(
            PointNumber(point.name, point.to_trim_edge, point.shown) for point in points if point.points_at_edge
        ),
        diagonals=() if is_curve else _diagonals(cut_first),
        corners=trim_taped,
        area=_area(trim_taped, radius, is_curve=is_curve),
        perimeter=sum(side.length for side in trim_edges(project, trim_taped)),
        folded="" if is_curve else fold_in_words(project, numbers, cut_first),
        curve=_curve_in_words(project, panel_polygon(project, numbers) if project.cut_apart else trim_taped),
    )


def _straight_sides(project: Project, corners: Polygon) -> tuple[SideNumber, ...]:
    return tuple(
        SideNumber(side.name, side.normal, side.distance, side.length) for side in trim_edges(project, corners)
    )


def _round_sides(project: Project, trim_taped: Polygon) -> tuple[SideNumber, ...]:
    """The one edge of a round piece; of an oval one where it is farthest from the center mark and where nearest."""
    (curve,) = trim_edges(project, trim_taped)
    half_x, half_y = extent(trim_taped, 1, 0)[1], extent(trim_taped, 0, 1)[1]
    if abs(half_x - half_y) <= TOLERANCE_IN:
        return (SideNumber(CURVE, curve.normal, half_y, curve.length, is_curve=True),)
    return (
        SideNumber(f"{CURVE} at top and bottom", (0.0, 1.0), half_y, curve.length, is_curve=True),
        SideNumber(f"{CURVE} at left and right", (1.0, 0.0), half_x, curve.length, is_curve=True),
    )


def _area(trim_taped: Polygon, radius: float, *, is_curve: bool) -> float:
    """Square inches, of curves by what they are and not by the polygon that stands for them."""
    (left, right), (low, top) = extent(trim_taped, 1, 0), extent(trim_taped, 0, 1)
    if is_curve:
        return pi * (right - left) * (top - low) / 4
    if radius:
        return (right - left) * (top - low) - (4 - pi) * radius**2
    return area(trim_taped)


def _curve_in_words(project: Project, outline: Polygon) -> str:
    """How to mark and cut what is not straight, of a base that is cut apart on every panel."""
    say = Speaker(project.units)
    (left, right), (low, high) = extent(outline, 1, 0), extent(outline, 0, 1)
    if not is_round(project, outline):
        radius = corner_radius_of(project, outline)
        return (
            f"Square up with straight edges first. Then round every corner: lay a circle of radius {say.near(radius)} "
            f"into it, its middle {say.near(radius)} from both edges, mark along it and cut on the line with scissors."
            if radius
            else ""
        )
    half_x, half_y = (right - left) / 2, (high - low) / 2
    if abs(half_x - half_y) <= TOLERANCE_IN:
        return (
            f"From the center mark {say.near(half_y)} all round: swing a strip of card on a pin in the center mark, "
            f"the pencil through a hole {say.near(half_y)} from the pin, and cut on the line with scissors."
        )
    far, near = max(half_x, half_y), min(half_x, half_y)
    pins = sqrt(far**2 - near**2)
    line = "up and down" if half_y > half_x else "across"
    return (
        f"From the center mark {say.near(half_y)} to top and bottom and {say.near(half_x)} to left and right: put a "
        f"pin {say.near(pins)} from the center mark on both sides along the center line that runs {line}, lay a loop "
        f"of string {say.near(2 * (far + pins))} round in all about both pins, draw with the pencil in the taut loop, "
        "and cut on the line with scissors."
    )


def _diagonals(corners: Polygon) -> tuple[float, ...]:
    """Corner to corner straight across the center mark; none for a shape without opposite corners."""
    half = len(corners) // 2
    if len(corners) % 2 or not is_alike_halfway_round(corners):
        return ()
    opposite = zip(corners[:half], corners[half:], strict=True)
    return tuple(hypot(x1 - x0, y1 - y0) for (x0, y0), (x1, y1) in opposite)
