"""Outlines that are not all straight: round, oval, rectangles with rounded corners, and how long they really are.

The kernel knows convex polygons only, so a curve enters it as a polygon with its corners on the curve: so many that it
lies nowhere farther than 1/256 in inside the curve, and placed so that it reaches exactly as far as the curve to the
right, up, left and down. All the way round it is then short by less than 1/64 in, and so is every line straight across
that is at least as long as the radius: less than a ruler shows. What is told about the length of an edge comes from
closed forms, not from the polygon.
"""

from __future__ import annotations

from math import ceil, cos, hypot, pi, radians, sin, sqrt
from typing import TYPE_CHECKING

from stitchflip.errors import BuildError
from stitchflip.lengths import Speaker, Unit
from stitchflip.piecing.geometry import TOLERANCE

if TYPE_CHECKING:
    from stitchflip.piecing.model import Point, Polygon

INSIDE_BY = 1 / 256
"""A curve's polygon lies at most this far inside the curve; inches."""
_FEWEST = 16
"""Corners of the polygon of a curve, however small it is."""


def circle_length(across: float) -> float:
    """Length round a circle.

    Args:
        across: From edge to opposite edge, inches.

    Example:
        >>> round(circle_length(44), 3)
        138.23
    """
    return pi * across


def ellipse_length(wide: float, long: float) -> float:
    """Length round an ellipse, exact to rounding.

    The arithmetic and the geometric mean of the two half axes are taken again and again; they meet after a few turns,
    and what they differed by gives the length (the complete elliptic integral of the second kind).

    Args:
        wide: From edge to opposite edge one way, inches, above 0.
        long: The other way, inches, above 0.

    Source:
        Gauss's arithmetic-geometric mean; a mathematical identity, from memory.

    Example:
        >>> round(ellipse_length(4, 2), 6), ellipse_length(2, 2) == circle_length(2)
        (9.688448, True)
    """
    a, b = wide / 2, long / 2
    if a == b:
        return circle_length(wide)
    total, weight = (a * a + b * b) / 2, 1.0
    mean_a, mean_b = a, b
    while abs(mean_a - mean_b) > 1e-12 * mean_a:
        half = (mean_a - mean_b) / 2
        total -= weight * half * half
        weight *= 2
        mean_a, mean_b = (mean_a + mean_b) / 2, sqrt(mean_a * mean_b)
    return 2 * pi * total / mean_a


def rounded_box_length(wide: float, high: float, radius: float) -> float:
    """Length round a rectangle with rounded corners.

    Args:
        wide: x extent, inches.
        high: y extent, inches.
        radius: Of every corner, inches; 0 for square corners.

    Example:
        >>> round(rounded_box_length(18, 13, 2), 3)
        58.566
    """
    return 2 * (wide + high) - 8 * radius + 2 * pi * radius


def ellipse(wide: float, high: float) -> Polygon:
    """A round or oval outline about the center mark as a polygon on the curve, its lowest place first.

    Args:
        wide: x extent, inches, above 0.
        high: y extent, inches, above 0.

    Returns:
        Corners on the curve, four of them exactly at its lowest, rightmost, highest and leftmost place.

    Example:
        >>> from stitchflip.piecing.geometry import extent
        >>> extent(ellipse(44, 30), 1, 0), extent(ellipse(44, 30), 0, 1)
        ((-22.0, 22.0), (-15.0, 15.0))
    """
    quarter = tuple(_quarter(wide / 2, high / 2, sides_of_circle(max(wide, high)) // 4))
    corners = ((1, -1, quarter), (1, 1, quarter[::-1]), (-1, 1, quarter), (-1, -1, quarter[::-1]))
    return tuple((x * sx, y * sy) for sx, sy, places in corners for x, y in places[:-1])


def sides_of_circle(across: float) -> int:
    """How many sides keep the polygon of a circle within 1/256 in of it; a multiple of four.

    A chord of angle 2a lies inside its arc by a²/2 of the radius, nearly. An ellipse takes as many as the circle round
    it: its sides are shorter where it bends more.

    Args:
        across: Of the circle, inches.

    Example:
        >>> sides_of_circle(44)
        168
    """
    return max(_FEWEST, _fours(pi * sqrt(across / 2 / (2 * INSIDE_BY))))


def _fours(count: float) -> int:
    return 4 * ceil(count / 4 - 1e-9)


def _quarter(half_x: float, half_y: float, steps: int) -> list[Point]:
    """From the highest place of a quarter of an ellipse to its rightmost, both exact."""
    turns = [pi / 2 * step / steps for step in range(1, steps)]
    return [(0.0, half_y), *((half_x * sin(turn), half_y * cos(turn)) for turn in turns), (half_x, 0.0)]


def rounded_box(wide: float, high: float, radius: float, unit: Unit = Unit.INCH) -> Polygon:
    """A rectangle with rounded corners about the center mark, beginning with its bottom edge.

    Args:
        wide: x extent, inches.
        high: y extent, inches.
        radius: Of every corner, inches, above 0.
        unit: The maker's unit, in which a radius that is too large is told.

    Raises:
        BuildError: If the radius is more than half of the shorter side.
    """
    if radius > min(wide, high) / 2 + TOLERANCE:
        say = Speaker(unit)
        raise BuildError(
            what=f"corners rounded by {say.width(radius)} need {say.width(2 * radius)}, and the piece is "
            f"{say.width(min(wide, high))}",
            fix=f"Give a corner_radius of {say.margin(min(wide, high) / 2)} or less, or a round or oval shape.",
            where="squared_up.corner_radius",
            code="build.corner-radius",
        )
    steps = sides_of_circle(2 * radius) // 4
    middles = ((1, -1, -90.0), (1, 1, 0.0), (-1, 1, 90.0), (-1, -1, 180.0))
    corners: list[Point] = []
    for sx, sy, begin in middles:
        x, y = sx * (wide / 2 - radius), sy * (high / 2 - radius)
        for step in range(steps + 1):
            turn = radians(begin + 90 * step / steps)
            corners.append((x + radius * _exact(cos(turn)), y + radius * _exact(sin(turn))))
    last_bottom = corners[-1:] + corners[:-1]
    return tuple(
        corner
        for before, corner in zip(last_bottom[-1:] + last_bottom[:-1], last_bottom, strict=True)
        if hypot(corner[0] - before[0], corner[1] - before[1]) > TOLERANCE
    )


def _exact(part: float) -> float:
    """Zero and one without the crumbs of the sine."""
    return round(part) + 0.0 if abs(part - round(part)) < 1e-12 else part
